"""Trying numbers: the recipe is run again with them, and what was asked for is measured."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from notchbook.errors import NotchbookError
from notchbook.recipe.editing import change_step
from notchbook.recipe.parameter_paths import SIGN, with_value
from notchbook.recipe.recipe import Recipe
from notchbook.recipe.replay import Replay, replay
from notchbook.recipe.targets.numbers import StepNumber
from notchbook.recipe.targets.quantity import Quantity, measured


@dataclass(frozen=True, slots=True)
class Tried:
    """What came of a trial: the values measured (mm) and the run, or the refusal that stopped it."""

    values: tuple[float, ...] = ()
    run: Replay | None = None
    refusal: NotchbookError | None = None


Known = dict[tuple[str | float, ...], Tried]
"""What came of the trials done so far, by what was stored."""


Tell = Callable[[int], None]
"""Hears before each run of the recipe how many were done; what it raises ends the search."""


class Trials:
    """Trials of some numbers of a run against some quantities; each is done once.

    ``done`` counts the runs of the recipe. ``known`` may hold trials of the same numbers and quantities of
    the same run that were done elsewhere, and takes up those that are done here.
    """

    def __init__(
        self,
        run: Replay,
        numbers: Sequence[StepNumber],
        quantities: Sequence[Quantity],
        known: Known | None = None,
        tell: Tell | None = None,
    ) -> None:
        self.run = run
        self.numbers = tuple(numbers)
        self.quantities = tuple(quantities)
        self.done = 0
        self.tell = tell
        self._known: Known = {} if known is None else known

    def at(self, values: Sequence[float]) -> Tried:
        """What comes of these values of the numbers; a refusal is an answer."""
        stored = tuple(number.at(value) for number, value in zip(self.numbers, values, strict=True))
        if stored not in self._known:
            self._known[stored] = self._tried(stored)
        return self._known[stored]

    def _tried(self, stored: tuple[str | float, ...]) -> Tried:
        if self.tell is not None:
            self.tell(self.done)
        self.done += 1
        try:
            run = replay(
                written(self.run.recipe, self.numbers, stored, self.run), self.run.measures, self.run
            )
            if run.suspended is not None:
                return Tried(refusal=run.suspended.error)
            return Tried(tuple(measured(run, quantity) for quantity in self.quantities), run)
        except NotchbookError as refusal:  # however it ends: so far this number cannot go
            return Tried(refusal=refusal)


def written(
    recipe: Recipe, numbers: Sequence[StepNumber], stored: Sequence[str | float], run: Replay
) -> Recipe:
    """The recipe with these values written where the numbers stand; refused as the step refuses them."""
    for number, value in zip(numbers, stored, strict=True):
        parameters = with_value(recipe.step(number.step).parameters, number.path, value)
        top = number.path.split(SIGN, 1)[0]
        recipe = change_step(recipe, number.step, {top: parameters[top]}, base=run.measures)
    return recipe
