"""Closures on the screen: how many agree, and what does not; measured on the finished outline."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from notchbook.cli.screen import Screen
from notchbook.pattern import spoken
from notchbook.units import LengthStyle, Unit, format_degrees, length_in_words

if TYPE_CHECKING:
    from notchbook.body import PopulationName
    from notchbook.checks import Closure


def show_closures(
    screen: Screen, closures: "Sequence[Closure]", unit: Unit, population: "PopulationName | None" = None
) -> None:
    """``Closures: 14 of 14 agree, worst length 0.01 mm off.``, and a line for each that does not agree."""
    from notchbook.body.quantity_words import worded_for

    if not closures:
        return
    lengths = [abs(one.misfit) for one in closures if one.kind == "length"]
    worst = f", worst length {length_in_words(max(lengths), LengthStyle(unit))} off" if lengths else ""
    agreeing = sum(one.agrees for one in closures)
    screen.line(f"Closures: {agreeing} of {len(closures)} agree{worst}.")
    for one in closures:
        if not one.agrees:
            measured, wanted = (_text(value, one, unit) for value in (one.measured, one.wanted))
            within = _text(one.within, one, unit)
            aim = f"at most {within}" if one.wanted == 0.0 else f"wanted {wanted} ± {within}"
            if measured == wanted:
                aim = f"{aim}, {abs(one.misfit):.2f} {one.unit} off"
            screen.line(f"     {worded_for(_spoken(one.name), population)}: {measured}, {aim}")


def _spoken(name: str) -> str:
    """``sleeve.sleeve/cap_front: laid on the armhole`` as it is said."""
    of, colon, what = name.partition(":")
    return f"{spoken(of)}{colon}{what}"


def _text(value: float, one: "Closure", unit: Unit) -> str:
    if one.unit == "mm":
        return length_in_words(value, LengthStyle(unit))
    return format_degrees(value) if one.unit == "deg" else f"{value:.3g}"
