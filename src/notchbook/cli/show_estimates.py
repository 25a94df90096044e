"""Estimates on the screen: what a pattern rests on and nobody took; and the same as data."""

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Any, Final

from notchbook.body import PopulationName, measure_entry, plain_key
from notchbook.body.quantity_words import ESTIMATE_SIGN, said_key
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit

if TYPE_CHECKING:
    from notchbook.app.bodies.filling_estimates import Filled
    from notchbook.app.bodies.resting_on_estimates import RestedOn
    from notchbook.body.estimating.estimate import NotEstimable

_REASONS: Final = {
    "estimate-not-known": "nothing is known of",
    "estimate-not-possible": "no body has what comes out for",
    "estimate-not-needed": "measured:",
    "estimate-not-on-form": "a dress form has no",
}
"""Why something is not estimated, before the measures of which it is true."""


def show_estimates(
    screen: Screen, estimates: "Mapping[str, RestedOn]", population: PopulationName | None, unit: Unit
) -> None:
    """Each estimate that the pattern rests on; nothing where all was measured."""
    style = LengthStyle(unit)
    for name, one in estimates.items():
        screen.line(f"{ESTIMATE_SIGN} {one.words(name, style, population)}")
    if estimates:
        screen.line("Estimated, not measured: nine bodies of ten lie within the ±.")
        screen.line()


def show_not_filled(screen: Screen, filled: "Filled | None") -> None:
    """In one line what could help a draft and is not estimated; and why the ± may not hold."""
    if filled is None or filled.estimates is None:
        return
    if filled.estimates.left_out:
        screen.line(not_filled_words(filled.estimates.left_out, filled.measures.population))
    for caution in filled.estimates.cautions:
        screen.line(caution.text())
    screen.line()


def not_filled_words(left_out: "Iterable[NotEstimable]", population: PopulationName | None) -> str:
    """``Not estimated: nothing is known of front hip arc, belly girth.``"""
    keys: dict[str, list[str]] = {}
    for one in left_out:
        keys.setdefault(one.problem.code, []).append(said_key(one.key, population))
    parts = [f"{_REASONS[code]} {', '.join(names)}" for code, names in keys.items()]
    return f"Not estimated: {'; '.join(parts)}."


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


def estimate_data(estimates: "Mapping[str, RestedOn]") -> list[dict[str, Any]]:
    """The estimates as data: mm, degrees or kg as ``unit`` says; ``now`` stands beside a stale one."""
    return [
        {
            "measure": name,
            "value": round(one.measure.value, 6),
            "error": None if one.measure.error is None else round(one.measure.error, 6),
            "unit": measure_entry(plain_key(name)).unit,
            "method": one.measure.method,
            "stale": one.is_stale,
            **({} if one.now is None else {"now": round(one.now.value, 6)}),
        }
        for name, one in estimates.items()
    ]
