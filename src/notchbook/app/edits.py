"""What she may do to a style or to a body's measures: each edit as data."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from notchbook.body import MeasureSet, RawValue, Side, Status, measure_entry, read_value, sided_key
from notchbook.body.files.raw_value import read_quantity
from notchbook.errors import InputError
from notchbook.pattern import Side as PatternSide
from notchbook.recipe import (
    Recipe,
    add_step,
    change_step,
    move_step,
    rebind,
    remove_step,
    rename_step,
)
from notchbook.units import Unit


@dataclass(frozen=True, slots=True)
class AddStep:
    """A new step, at the end or before another."""

    operation: str
    parameters: Mapping[str, Any]
    slug: str = ""
    side: PatternSide = "both"
    before: str | None = None

    def apply(self, recipe: Recipe, base: MeasureSet) -> Recipe:
        """The recipe with the step in it."""
        return add_step(
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


@dataclass(frozen=True, slots=True)
class SetMeasure:
    """A measure as she typed it; a bare number is in ``unit``.

    A note that stood beside it stays, and so does its estimate: :class:`NoteMeasure` changes them.
    """

    key: str
    text: str
    unit: Unit
    side: Side = "both"
    note: str = ""

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the measure; refused in words when it cannot be read or no body has it."""
        name = sided_key(self.key, self.side)
        known = measures.values.get(name)
        note = self.note or (known.note if known else "")
        _, measure = read_value(name, RawValue(self.text, note=note), self.unit)
        if known is not None and known.status == "estimated":
            measure = replace(measure, status=known.status, error=known.error)
        return measures.with_value(self.key, measure, self.side)


@dataclass(frozen=True, slots=True)
class NoteMeasure:
    """What is noted beside a measure; ``error`` as typed makes it an estimate (±), empty a measured one."""

    key: str
    unit: Unit
    note: str
    error: str = ""
    side: Side = "both"

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the note; InputError ``measure-missing`` when the measure was not taken."""
        name = sided_key(self.key, self.side)
        known = measures.values.get(name)
        if known is None:
            raise InputError("measure-missing", keys=(name,), name=measures.name)
        status: Status = "measured" if known.status == "estimated" else known.status
        error: float | None = None
        typed = self.error.replace("±", "").strip()
        if typed:
            status, error = "estimated", read_quantity(measure_entry(self.key), typed, "", self.unit)[0]
        noted = replace(known, note=self.note, status=status, error=error)
        return measures.with_value(self.key, noted, self.side)


@dataclass(frozen=True, slots=True)
class ClearMeasure:
    """A measure taken out; a side falls back to the plain value."""

    key: str
    side: Side = "both"

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set without the measure."""
        return measures.without(self.key, self.side)


@dataclass(frozen=True, slots=True)
class RenameBody:
    """Another name for the body."""

    name: str

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set under its new name."""
        return replace(measures, name=self.name)


BodyEdit = SetMeasure | NoteMeasure | ClearMeasure | RenameBody
