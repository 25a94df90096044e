"""What she may do to a style: each edit as data."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from notchbook.app.drafting import add_block
from notchbook.body import MeasureSet
from notchbook.pattern import Side
from notchbook.recipe import (
    Recipe,
    change_step,
    move_step,
    rebind,
    remove_step,
    rename_step,
)


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


RecipeEdit = AddStep | ChangeStep | RemoveStep | MoveStep | RenameStep | Rebind | Rename


@dataclass(frozen=True, slots=True)
class SetBody:
    """The style is drafted for another body."""

    body: int


StyleEdit = RecipeEdit | SetBody
