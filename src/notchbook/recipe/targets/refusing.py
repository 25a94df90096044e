"""Refusals of wishes: how far a number goes, and what stops it."""

from typing import Final

from notchbook.errors import InputError, NotchbookError
from notchbook.geometry.solve_between import Sought
from notchbook.recipe.targets.numbers import StepNumber
from notchbook.recipe.targets.trials import Trials
from notchbook.recipe.targets.wish import Wish
from notchbook.units import TOLERANCES

EXACT: Final = TOLERANCES.sew_length
"""mm; a wish comes true when what is measured is no farther from it."""

LIMIT: Final = 1e-2
"""How exactly the limit of a number is found where a step refuses it and the wish may lie beside it, mm or
degrees."""

_TOLD: Final = 0.5
"""How exactly it is found where the wish is out of reach, as a share of the first step of the number: half a
millimeter. Each trial near a limit is a whole draft, and the slowest of all."""


def told_to(number: StepNumber) -> float:
    """How exactly the limit of a number is told."""
    return _TOLD * number.first_step


def out_of_reach(trials: Trials, wish: Wish, wanted: float, sought: Sought) -> InputError:
    """How far the one number of the trials goes, and what stands in its way on either side."""
    number = trials.numbers[0]
    if sought.least.value < 0.0 < sought.most.value:
        return jumps(trials, wish, wanted, (sought.least.at + sought.most.at) / 2.0)
    if sought.most.value - sought.least.value <= EXACT:
        return InputError("wish-not-moved", wish=wish.said, number=number.said)
    return InputError(
        "wish-out-of-reach",
        wish=wish.said,
        wanted=wanted,
        number=number.said,
        least=wanted + sought.least.value,
        at_least=str(number.at(_tidy(sought.least.at))),
        most=wanted + sought.most.value,
        at_most=str(number.at(_tidy(sought.most.at))),
        below=_limit(trials, sought.low.at, sought.below, -1.0),
        above=_limit(trials, sought.high.at, sought.above, 1.0),
        least_number=sought.least.at,
        most_number=sought.most.at,
    )


def _limit(trials: Trials, at: float, refused: float | None, way: float) -> str:
    """Why the number goes no further than ``at``, in words; ``refused`` is the nearest place beyond it that
    was, None where none was asked for."""
    beyond = at + way * 1.01 * told_to(trials.numbers[0]) if refused is None else refused
    refusal: NotchbookError | None = trials.at((beyond,)).refusal
    if refusal is None:
        return "it was sought no further"
    if refusal.code == "parameter-refused":
        return f"its field takes no {'less' if way < 0.0 else 'more'}"
    return refusal.text().rstrip(".")


def jumps(trials: Trials, wish: Wish, wanted: float, at: float) -> InputError:
    """From what to what the measured amount jumps at a value of the number."""
    number = trials.numbers[0]
    sides = [trials.at((at + by,)).values for by in (-LIMIT, LIMIT)]
    found = [side[0] for side in sides if side]
    return InputError(
        "wish-jumps",
        wish=wish.said,
        wanted=wanted,
        number=number.said,
        least=min(found, default=wanted),
        most=max(found, default=wanted),
        at=str(number.at(_tidy(at))),
    )


def _tidy(value: float) -> float:
    return round(value, 3)
