"""Solving anew for every size: which numbers each of them needs; asked for, never done by itself."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from notchbook.app.drafting import completed
from notchbook.body import MeasureSet
from notchbook.errors import HouseFault, NotchbookError
from notchbook.recipe import Recipe, replay
from notchbook.recipe.targets import Made, make_it_measure, orders_with_kept, solve_again
from notchbook.recipe.targets.making import Order


@dataclass(frozen=True, slots=True)
class SizeSolved:
    """What one size needs: the solved numbers, or why there are none."""

    name: str
    made: Made | None
    refusal: NotchbookError | None


def solved_by_size(
    recipe: Recipe, sets: Iterable[MeasureSet], orders: Sequence[Order] = ()
) -> tuple[SizeSolved, ...]:
    """The recipe run on each set and solved there: for these orders, or for every wish that it keeps.

    A set on which the recipe stops, or for which a wish is out of reach, gets its reason.
    """
    return tuple(_solved(recipe, measures, orders) for measures in sets)


def _solved(recipe: Recipe, measures: MeasureSet, orders: Sequence[Order]) -> SizeSolved:
    try:
        run = completed(replay(recipe, measures))
        made = make_it_measure(run, orders_with_kept(run, orders)) if orders else solve_again(run)
        return SizeSolved(measures.name, made, None)
    except HouseFault:
        raise
    except NotchbookError as refusal:
        return SizeSolved(measures.name, None, refusal)
