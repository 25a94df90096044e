"""Room for girths between waist and hip: a belly, a high hip.

First the sides keep wider and the darts take that up at the waist, then the sides lean out at the hip, then
the hip is made wider: each within its limits, together along one path.
"""

from notchbook.blocks.legs.crotch_fit import CrotchFit
from notchbook.blocks.legs.drawing import Belly, Drawn
from notchbook.blocks.legs.given import LevelGirth, TrousersGiven
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.widths import top_width
from notchbook.errors import DraftRefused

_MOST_STAGES = 3.0
_STEP = 0.25
_FINE = 1e-3
"""Of a stage: about a twentieth of a millimeter of girth."""


def room_for(given: TrousersGiven) -> Belly:
    """What must be done so that every girth between waist and hip is reached, before the crotch is fitted.

    DraftRefused ``trousers-belly-unreachable``.
    """
    fit = CrotchFit(given, Belly())
    if not given.between or _lacking(fit, given, Belly()) <= 0.0:
        return Belly()
    low, high = _bracket(fit, given)
    while high - low > _FINE:
        middle = (low + high) / 2.0
        low, high = (middle, high) if _lacking(fit, given, _belly(middle)) > 0.0 else (low, middle)
    return _belly(high)


def _bracket(fit: CrotchFit, given: TrousersGiven) -> tuple[float, float]:
    """Two stages, of which the first is not enough and the second is."""
    low = 0.0
    while low < _MOST_STAGES:
        high = low + _STEP
        try:
            if _lacking(fit, given, _belly(high)) <= 0.0:
                return low, high
        except DraftRefused:
            break
        low = high
    level = max(given.between, key=lambda one: one.girth)
    raise DraftRefused("trousers-belly-unreachable", belly=level.girth, depth=level.depth, hip=given.hip)


def girth_at(drawn: Drawn, given: TrousersGiven, level: LevelGirth) -> float:
    """The girth of the trousers at a level between waist and hip, mm; at the hip for one below it."""
    up = max(0.0, given.hip_depth - level.depth)
    return 2.0 * (top_width(drawn.front.top, up) + top_width(drawn.back.top, up))


def _lacking(fit: CrotchFit, given: TrousersGiven, belly: Belly) -> float:
    drawn = fit.at(0.0, belly=belly)
    return max(level.girth - girth_at(drawn, given, level) for level in given.between)


def _belly(stage: float) -> Belly:
    first, second, third = (min(1.0, max(0.0, stage - number)) for number in range(3))
    return Belly(
        first * proportion("belly.most_fullness"),
        second * proportion("belly.most_lean_out"),
        third * proportion("belly.most_wider"),
    )
