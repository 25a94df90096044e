"""Estimates on the screen: what a pattern rests on and nobody took; and the same as data."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from notchbook.body import Measure, measure_entry
from notchbook.body.quantity_words import ESTIMATE_SIGN, estimate_text
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit

if TYPE_CHECKING:
    from notchbook.app.filling import Filled


def show_estimates(screen: Screen, estimates: Mapping[str, Measure], unit: Unit) -> None:
    """Each estimate that the pattern rests on; nothing where all was measured."""
    style = LengthStyle(unit)
    for name, measure in estimates.items():
        screen.line(f"{ESTIMATE_SIGN} {estimate_text(name, measure, style)}")
    if estimates:
        screen.line("Estimated, not measured: nine bodies of ten lie within the ±.")
        screen.line()


def show_not_filled(screen: Screen, filled: "Filled | None") -> None:
    """What could help a draft and is not estimated, and why the ± may not hold."""
    if filled is None or filled.estimates is None:
        return
    for left in filled.estimates.left_out:
        screen.line(f"not filled in: {left.problem.text()}")
    for caution in filled.estimates.cautions:
        screen.line(caution.text())
    screen.line()


def not_filled_data(filled: "Filled | None") -> dict[str, Any]:
    """What :func:`show_not_filled` shows, as data; nothing where nothing was to be filled in."""
    if filled is None or filled.estimates is None:
        return {}
    return {
        "not_estimated": [
            {"measure": left.key, "message": left.problem.text()} for left in filled.estimates.left_out
        ],
        "cautions": [caution.text() for caution in filled.estimates.cautions],
    }


def estimate_data(estimates: Mapping[str, Measure]) -> list[dict[str, Any]]:
    """The estimates as data: mm, degrees or kg as ``unit`` says."""
    return [
        {
            "measure": name,
            "value": round(measure.value, 6),
            "error": None if measure.error is None else round(measure.error, 6),
            "unit": measure_entry(name.partition("@")[0]).unit,
            "method": measure.method,
        }
        for name, measure in estimates.items()
    ]
