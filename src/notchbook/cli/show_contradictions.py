"""What came of an answer about measures that disagree, on the screen; and the contradictions as data."""

from collections.abc import Iterable
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit

if TYPE_CHECKING:
    from notchbook.app.contradictions import WaistAnswer
    from notchbook.body import MeasureSet
    from notchbook.pattern import Contradiction


def show_substituted(screen: Screen, as_taken: "MeasureSet", used: "MeasureSet", unit: Unit) -> None:
    """Which measures the draft took otherwise than the file has them, because she said so."""
    from notchbook.body.quantity_words import measure_text, said_key

    style = LengthStyle(unit)
    for name, measure in used.values.items():
        before = as_taken.values.get(name)
        if before is not None and before.value != measure.value:
            was, now = (measure_text(name, one, style) for one in (before, measure))
            words = f"{said_key(name, used.population)} {now} instead of {was}"
            screen.line(f"Drafted with {words}, as you said; the file of measures is as it was.")
    if as_taken.waist_level != used.waist_level:
        screen.line("Drafted for a waist at the navel, as you said; the file of measures is as it was.")


def show_question(
    screen: Screen, told: "Iterable[Contradiction]", measures: "MeasureSet", answer: "WaistAnswer | None"
) -> None:
    """How to answer where it is to be asked to which waist lengths were taken; or that it was answered."""
    from notchbook.app.contradictions import asks_for_waist

    if not any(asks_for_waist(one, measures) for one in told):
        return
    if answer == "natural":
        screen.line("You said: all to the natural waist. So it is drafted as measured.")
    elif answer is None:
        screen.line("To which waist were the lengths taken? Add --waist other, --waist navel, or, where all")
        screen.line("is as it should be, --waist natural.")


def contradiction_data(told: "Iterable[Contradiction]") -> list[dict[str, Any]]:
    """Contradictions as data; mm, and degrees for an angle."""
    return [asdict(one) for one in told]
