"""Room for girths between waist and hip: a belly, a high hip.

First the sides keep wider and the darts take that up at the waist, then the sides lean out at the hip, then
the hip is made wider: each within its limits, together along one path.
"""

from dataclasses import dataclass

from notchbook.blocks.legs.crotch_fit import CrotchFit
from notchbook.blocks.legs.drawing import Belly, Drawn
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.widths import top_width
from notchbook.errors import DraftRefused

_OF_A_BELLY = ("trousers-waist-unreachable", "trousers-side-short")
"""Refusals that mean that the room for a belly cannot be had; any other speaks for itself."""

_MOST_STAGES = 3.0
_STEP = 0.25
_FINE = 1e-3
"""Of a stage: about a twentieth of a millimeter of girth."""


@dataclass(frozen=True, slots=True)
class Stand:
    """Where the levers of the crotch stand: steps, and extension given from back to front, mm."""

    steps: float = 0.0
    shift: float = 0.0


def room_for(given: TrousersGiven, stand: Stand | None = None) -> Belly:
    """What must be done so that every girth between waist and hip is reached, at one stand of the crotch's
    levers: the usual one before the crotch is fitted.

    DraftRefused ``trousers-belly-unreachable``.
    """
    fit, stand = CrotchFit(given, Belly()), stand or Stand()
    if not given.between or _lacking_with(fit, given, Belly(), stand) <= 0.0:
        return Belly()
    low, high = _bracket(fit, given, stand)
    while high - low > _FINE:
        middle = (low + high) / 2.0
        is_short = _lacking_with(fit, given, _belly(middle), stand) > 0.0
        low, high = (middle, high) if is_short else (low, middle)
    return _belly(high)


def _bracket(fit: CrotchFit, given: TrousersGiven, stand: Stand) -> tuple[float, float]:
    """Two stages, of which the first is not enough and the second is. DraftRefused
    ``trousers-belly-unreachable``, and as the parts of the leg refuse."""
    low, cause = 0.0, None
    while low < _MOST_STAGES:
        high = low + _STEP
        try:
            if _lacking_with(fit, given, _belly(high), stand) <= 0.0:
                return low, high
        except DraftRefused as refused:
            if refused.code not in _OF_A_BELLY:
                raise
            cause = refused
            break
        low = high
    level = max(given.between, key=lambda one: one.girth)
    raise DraftRefused(
        "trousers-belly-unreachable", belly=level.girth, depth=level.depth, hip=given.hip
    ) from cause


def lacking(drawn: Drawn, given: TrousersGiven, hip_depth: float) -> float:
    """By how much the leg is too narrow for the girths between waist and hip, mm (0: every one is reached).

    ``hip_depth`` runs down to the hip level in use.
    """
    return max(
        (level.girth - _girth_at(drawn, hip_depth - level.depth) for level in given.between), default=0.0
    )


def _girth_at(drawn: Drawn, up: float) -> float:
    """The girth of the trousers so far above the hip line, mm; at the hip for a level below it."""
    up = max(0.0, up)
    return 2.0 * (top_width(drawn.front.top, up) + top_width(drawn.back.top, up))


def _lacking_with(fit: CrotchFit, given: TrousersGiven, belly: Belly, stand: Stand) -> float:
    return lacking(fit.at(stand.steps, stand.shift, belly), given, fit.hip_depth)


def _belly(stage: float) -> Belly:
    first, second, third = (min(1.0, max(0.0, stage - number)) for number in range(3))
    return Belly(
        first * proportion("belly.most_fullness"),
        second * proportion("belly.most_lean_out"),
        third * proportion("belly.most_wider"),
    )
