"""What she may do to a style: each edit as data."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from notchbook.app.drafting import add_block
from notchbook.app.wishes.making_it_measure import orders_for
from notchbook.body import MeasureSet
from notchbook.pattern import Side
from notchbook.recipe import (
    Recipe,
    change_step,
    move_step,
    rebind,
    remove_step,
    rename_step,
    replay,
)
from notchbook.recipe.targets import Made, Tell, make_it_measure, number_named, solve_again, without_target
from notchbook.units import Unit


@dataclass(frozen=True, slots=True)
class AddStep:
    """A new step, at the end or before another; a block that it is drafted with and that is not there too."""

    operation: str
    parameters: Mapping[str, Any]
    slug: str = ""
    side: Side = "both"
    before: str | None = None

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe with the step in it."""
        return add_block(
            recipe,
            self.operation,
            self.parameters,
            base=base,
            slug=self.slug,
            side=self.side,
            before=self.before,
        )


@dataclass(frozen=True, slots=True)
class ChangeStep:
    """Other numbers in a step."""

    step: str
    changes: Mapping[str, Any]

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe with the step changed."""
        return change_step(recipe, self.step, self.changes, base=base)


@dataclass(frozen=True, slots=True)
class RemoveStep:
    """A step taken out."""

    step: str

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe without the step."""
        return remove_step(recipe, self.step)


@dataclass(frozen=True, slots=True)
class MoveStep:
    """A step moved before another, or to the end."""

    step: str
    before: str | None = None

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe with the step in its new place."""
        return move_step(recipe, self.step, self.before)


@dataclass(frozen=True, slots=True)
class RenameStep:
    """Another title for a step."""

    step: str
    title: str

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe with the title."""
        return rename_step(recipe, self.step, self.title)


@dataclass(frozen=True, slots=True)
class Rebind:
    """A lost name in a step bound anew, by her choice."""

    step: str
    old: str
    new: str

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe with the name replaced."""
        return rebind(recipe, self.step, self.old, self.new)


@dataclass(frozen=True, slots=True)
class Rename:
    """Another name for the style."""

    name: str

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe under its new name."""
        return replace(recipe, name=self.name.strip() or recipe.name)


@dataclass(frozen=True, slots=True)
class MakeItMeasure:
    """A number solved so that something measures what is wished; with ``hold`` the kept wishes hold too.

    ``wish`` is a text such as ``around hem = 160 cm``, ``number`` one such as ``skirt-1.flare``; a bare
    number of the wish is in ``unit``.
    """

    wish: str
    number: str
    unit: Unit = "mm"
    hold: bool = False

    def solved(self, recipe: Recipe, base: MeasureSet, tell: Tell | None = None) -> Made:
        """What would be written; refused, and told, as :func:`notchbook.recipe.targets.make_it_measure`."""
        run = replay(recipe, base)
        orders = orders_for(run, ((self.wish, self.number),), self.unit, hold=self.hold)
        return make_it_measure(run, orders, tell=tell)

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe with the number in it."""
        return self.solved(recipe, base).recipe


@dataclass(frozen=True, slots=True)
class SolveAgain:
    """Every kept wish solved anew."""

    def solved(self, recipe: Recipe, base: MeasureSet, tell: Tell | None = None) -> Made:
        """What would be written; refused as :func:`notchbook.recipe.targets.solve_again`."""
        return solve_again(replay(recipe, base), tell)

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe with the numbers in it."""
        return self.solved(recipe, base).recipe


@dataclass(frozen=True, slots=True)
class LetWishGo:
    """The wish beside a number let go; the number stays."""

    number: str

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe without the wish."""
        return without_target(recipe, number_named(recipe, self.number))


Solving = MakeItMeasure | SolveAgain
"""Edits that solve numbers, so that what comes of them can be looked at first."""

RecipeEdit = (
    AddStep
    | ChangeStep
    | RemoveStep
    | MoveStep
    | RenameStep
    | Rebind
    | Rename
    | MakeItMeasure
    | SolveAgain
    | LetWishGo
)


@dataclass(frozen=True, slots=True)
class SetBody:
    """The style is drafted for another body."""

    body: int


StyleEdit = RecipeEdit | SetBody
