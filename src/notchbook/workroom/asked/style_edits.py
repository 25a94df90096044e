"""Edits of a style as the page sends them; each knows what it is for the app, its texts read."""

from typing import Annotated, Any, Literal

from pydantic import Field

from notchbook.app import style_edits as app
from notchbook.app.needs.garment_parameters import SIGN, chosen_by_block
from notchbook.body import Side
from notchbook.recipe import Recipe, Replay
from notchbook.recipe.targets import Wish, read_wish
from notchbook.workroom.asked.amounts import typed
from notchbook.workroom.asked.form import Asked, Expected, Key, Text
from notchbook.workroom.asked.schema import step_form
from notchbook.workroom.reader import Reader

Quantity = Annotated[str, Field(max_length=2000)]
"""The kept text of what is measured: it may name many edges."""


class AddStep(Asked):
    """A new step at the end, or before another."""

    do: Literal["add-step"]
    operation: Key
    parameters: dict[str, Any]
    side: Side = "both"
    before: Key | None = None

    def for_app(self, reader: Reader) -> app.AddStep:
        """The edit with its amounts read in the reader's unit."""
        parameters = typed(step_form(self.operation), self.parameters, {}, reader)
        return app.AddStep(self.operation, parameters, side=self.side, before=self.before)


class ChangeStep(Asked):
    """Other numbers in a step; only what she touched is sent."""

    do: Literal["change-step"]
    step: Key
    changes: dict[str, Any]

    def for_app(self, recipe: Recipe, reader: Reader) -> app.ChangeStep:
        """The edit; what still stands as it was written for her stays as it is kept in ``recipe``."""
        record = recipe.step(self.step)
        form = step_form(record.operation)
        return app.ChangeStep(self.step, typed(form, self.changes, record.parameters, reader))


class RemoveStep(Asked):
    """A step taken out."""

    do: Literal["remove-step"]
    step: Key

    def for_app(self) -> app.RemoveStep:
        """The edit."""
        return app.RemoveStep(self.step)


class MoveStep(Asked):
    """A step moved before another, or to the end."""

    do: Literal["move-step"]
    step: Key
    before: Key | None = None

    def for_app(self) -> app.MoveStep:
        """The edit."""
        return app.MoveStep(self.step, self.before)


class RenameStep(Asked):
    """Another title for a step."""

    do: Literal["rename-step"]
    step: Key
    title: Text

    def for_app(self) -> app.RenameStep:
        """The edit."""
        return app.RenameStep(self.step, self.title)


class Rebind(Asked):
    """A lost name bound anew."""

    do: Literal["rebind"]
    step: Key
    old: Key
    new: Key

    def for_app(self) -> app.Rebind:
        """The edit."""
        return app.Rebind(self.step, self.old, self.new)


class SetBody(Asked):
    """The style is drafted for another body."""

    do: Literal["set-body"]
    body: int

    def for_app(self) -> app.SetBody:
        """The edit."""
        return app.SetBody(self.body)


class Rename(Asked):
    """Another name for the style."""

    do: Literal["rename"]
    name: Text

    def for_app(self) -> app.Rename:
        """The edit."""
        return app.Rename(self.name)


class MakeItMeasure(Asked):
    """A number of a step solved so that something measures ``amount``.

    ``quantity`` is the kept text of what is measured, ``parameter`` the path of the number in the step.
    """

    do: Literal["make-it-measure"]
    step: Key
    parameter: Key
    quantity: Quantity
    amount: Text
    hold: bool = False

    def for_app(self, reader: Reader) -> app.MakeItMeasure:
        """The edit; a bare number is in the reader's unit."""
        wish = f"{self.quantity} = {self.amount}"
        return app.MakeItMeasure(wish, f"{self.step}.{self.parameter}", reader.unit, self.hold)


class NumbersAsked(Asked):
    """Which numbers would make something measure ``amount``; ``quantity`` is the kept text of what."""

    quantity: Quantity
    amount: Text

    def for_app(self, run: Replay, reader: Reader) -> Wish:
        """The wish; a bare number is in the reader's unit."""
        return read_wish(f"{self.quantity} = {self.amount}", run, reader.unit)


class SolveAgain(Asked):
    """Every kept wish solved anew."""

    do: Literal["solve-again"]

    def for_app(self) -> app.SolveAgain:
        """The edit."""
        return app.SolveAgain()


class LetWishGo(Asked):
    """The wish beside a number let go."""

    do: Literal["let-wish-go"]
    step: Key
    parameter: Key

    def for_app(self) -> app.LetWishGo:
        """The edit."""
        return app.LetWishGo(f"{self.step}.{self.parameter}")


StyleEdit = Annotated[
    AddStep
    | ChangeStep
    | RemoveStep
    | MoveStep
    | RenameStep
    | Rebind
    | SetBody
    | Rename
    | MakeItMeasure
    | SolveAgain
    | LetWishGo,
    Field(discriminator="do"),
]

SolvingEdit = Annotated[MakeItMeasure | SolveAgain, Field(discriminator="do")]
"""Edits that solve numbers."""


class NewStyle(Asked):
    """A style that begins with a block, drafted for a body; ``parameters`` by plain names, and by dotted ones
    (``bodice.length``) for the blocks that are drafted before it."""

    name: Text
    block: Key
    body: int
    parameters: dict[str, Any] = Field(default_factory=dict)

    def parameters_for_app(self, reader: Reader) -> dict[str, Any]:
        """The parameters with their amounts read in the reader's unit; refused as ``chosen_by_block``."""
        chosen = chosen_by_block(self.block, self.parameters)
        return {
            f"{of}{SIGN}{name}": value
            for of, parameters in chosen.items()
            for name, value in typed(step_form(of), parameters, {}, reader).items()
        }


class StyleFromRack(Asked):
    """A style of the rack to be run on a body; an empty name keeps that of the rack."""

    name: Text
    number: Key
    body: int


class StyleChange(Expected):
    """An edit of a style and the version that she has seen."""

    edit: StyleEdit


def style_edit(asked: StyleEdit, recipe: Recipe, reader: Reader) -> app.StyleEdit:
    """The edit for the app; ``recipe`` is the style as it is kept."""
    if isinstance(asked, AddStep | MakeItMeasure):
        return asked.for_app(reader)
    if isinstance(asked, ChangeStep):
        return asked.for_app(recipe, reader)
    return asked.for_app()
