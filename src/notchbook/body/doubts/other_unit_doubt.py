"""A stop for a set that was typed in another unit than it says: named once, before any single value."""

from notchbook.body.doubts.doubt import Doubt, Repair
from notchbook.body.doubts.slips.whole_set import other_unit
from notchbook.body.doubts.statistic_words import sentence
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError
from notchbook.units import LengthStyle, Unit


def other_unit_doubts(measures: MeasureSet, style: LengthStyle, unit: Unit) -> tuple[Doubt, ...]:
    """One stop with the repair of all values, or nothing; ``unit``: in which they were typed."""
    found = other_unit(measures, unit)
    if found is None:
        return ()
    keys = tuple(key for key, _ in found.values)
    problem = InputError(
        "set-in-other-unit",
        count=len(keys),
        question=sentence(found.question),
        example=style.text(found.values[0][1]),
        typed=style.text(measures.values[keys[0]].value),
        where="",
    )
    return (Doubt("stop", keys, problem, repairs=(Repair("other-unit", found.question, found.values, 1.0),)),)
