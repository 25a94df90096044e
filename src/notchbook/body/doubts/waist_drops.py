"""Whether the drop of the waist is possible, and whether it is usual."""

from collections.abc import Iterator
from dataclasses import replace

from notchbook.body.doubts.doubt import Doubt, Repair
from notchbook.body.doubts.likely_slip import likely_slips
from notchbook.body.measure_set import MeasureSet
from notchbook.body.waist_drop import DROP_KEY, MOST_DROP, MOST_USUAL_DROP, value_entry
from notchbook.errors import InputError
from notchbook.units import LengthStyle


def refuse_impossible_drop(drop: float, style: LengthStyle) -> None:
    """Refuse a drop (mm) that no waist has (``waist-drop-impossible``)."""
    if drop > MOST_DROP:
        raise _problem("waist-drop-impossible", drop, MOST_DROP, style)


def with_possible_drop(measures: MeasureSet) -> MeasureSet:
    """The set, without a drop that no waist has: by that all its lengths would look wrong.

    It is judged as to the navel then, the drop not known.
    """
    if measures.waist_drop <= MOST_DROP:
        return measures
    return replace(measures, waist_level="navel", waist_drop=0.0)


def waist_drop_doubts(measures: MeasureSet, style: LengthStyle) -> Iterator[Doubt]:
    """A stop for a drop that no waist has, a check for one that is more than usual.

    The doubt speaks of no measure, so it has no keys.
    """
    drop = measures.waist_drop
    if drop <= MOST_USUAL_DROP:
        return
    # Only where one slip alone leads to a usual drop is it plain what was meant.
    meant = likely_slips(value_entry(DROP_KEY), drop, style.unit)
    repairs = tuple(Repair("other-unit", one.question, ((DROP_KEY, one.value),), 1.0) for one in meant)
    if drop > MOST_DROP:
        yield Doubt(
            "stop", (), _problem("waist-drop-impossible", drop, MOST_DROP, style), repairs=repairs[:1]
        )
    else:
        yield Doubt("check", (), _problem("waist-drop-unusual", drop, MOST_USUAL_DROP, style))


def _problem(code: str, drop: float, most: float, style: LengthStyle) -> InputError:
    meant = likely_slips(value_entry(DROP_KEY), drop, style.unit)[:1]
    hint = "".join(f"{style.text(one.value)} would be usual: {one.question} " for one in meant)
    return InputError(code, given=style.text(drop), most=style.text(most), hint=hint, where="")
