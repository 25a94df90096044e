"""The wishes that a recipe keeps beside its numbers, and whether they still come true."""

from dataclasses import dataclass

from notchbook.errors import InputError, NotchbookError
from notchbook.recipe.recipe import Recipe, StepRecord, Target
from notchbook.recipe.replay import Replay
from notchbook.recipe.targets.numbers import StepNumber, number_named
from notchbook.recipe.targets.quantity import measured
from notchbook.recipe.targets.reading import stored_wish
from notchbook.recipe.targets.wish import Wish
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class KeptTarget:
    """A wish that a number was solved for, as it stands on a run.

    ``wanted`` is the amount on this body and ``found`` what is measured now, mm. Where that cannot be said,
    ``found`` is None and ``trouble`` says why: a name is gone, a measure is missing.
    """

    record: StepRecord
    target: Target
    wish: Wish | None
    wanted: float
    found: float | None
    trouble: NotchbookError | None = None

    @property
    def holds(self) -> bool:
        """Whether it comes true, to what a pencil line shows."""
        return self.found is not None and abs(self.found - self.wanted) <= TOLERANCES.closure


def kept_targets(run: Replay) -> tuple[KeptTarget, ...]:
    """Every wish that the recipe keeps, in the order of the steps."""
    return tuple(_kept(run, record, target) for record in run.recipe.ordered() for target in record.targets)


def order_of_target(recipe: Recipe, record: StepRecord, target: Target) -> tuple[Wish, StepNumber]:
    """The wish and the number that a target ties together; InputError when one cannot be read any more."""
    return stored_wish(target.wish), number_named(recipe, f"{record.id}.{target.parameter}")


def _kept(run: Replay, record: StepRecord, target: Target) -> KeptTarget:
    try:
        wish = stored_wish(target.wish)
    except InputError as error:
        return KeptTarget(record, target, None, target.value, None, error)
    try:
        wanted = wish.wanted(run.measures)
        return KeptTarget(record, target, wish, wanted, measured(run, wish.quantity))
    except NotchbookError as error:
        return KeptTarget(record, target, wish, target.value, None, error)
