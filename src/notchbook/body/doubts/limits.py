"""Whether one value is possible, and whether it is usual."""

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.likely_slip import slip_words, within
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import MeasureEntry, measure_entry
from notchbook.body.quantity_words import exact_text, quantity_text
from notchbook.body.sides import plain_key
from notchbook.errors import InputError
from notchbook.units import LengthStyle


def refuse_impossible(text_key: str, value: float, style: LengthStyle) -> None:
    """Refuse a value (mm, degrees, kg) that no body has (``measure-impossible``, 0: ``measure-zero``)."""
    entry = measure_entry(plain_key(text_key))
    if value == 0.0 < entry.possible[0]:
        raise InputError("measure-zero", label=entry.label, where="")
    if not within(value, entry.possible):
        raise _problem("measure-impossible", text_key, entry, value, entry.possible, style)


def limit_doubts(measures: MeasureSet, style: LengthStyle) -> tuple[Doubt, ...]:
    """A stop for every impossible value, a check for every one outside the usual adult range."""
    found: list[Doubt] = []
    for text_key, measure in measures.values.items():
        entry = measure_entry(plain_key(text_key))
        value = measure.value
        if not within(value, entry.possible):
            problem = _problem("measure-impossible", text_key, entry, value, entry.possible, style)
            found.append(Doubt("stop", (text_key,), problem))
            continue
        usual = entry.usual_at(measures.drop_below_natural)
        if measure.status != "estimated" and not within(value, usual):
            problem = _problem("measure-unusual", text_key, entry, value, usual, style)
            found.append(Doubt("check", (text_key,), problem))
    return tuple(found)


def _problem(
    code: str,
    text_key: str,
    entry: MeasureEntry,
    value: float,
    limits: tuple[float, float],
    style: LengthStyle,
) -> InputError:
    least, most = (quantity_text(entry, limit, style) for limit in limits)
    given = exact_text(entry, value, style)
    hint = slip_words(entry, value, style)
    return InputError(
        code,
        key=text_key,
        label=entry.label,
        value=value,
        given=given,
        least=least,
        most=most,
        hint=hint,
        where="",
    )
