"""Edits of a body's measures as the page sends them."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.app import edits as app
from notchbook.body import Side
from notchbook.workroom.asked.form import Asked, Expected, Key, Text
from notchbook.workroom.reader import Reader


class SetMeasure(Asked):
    """A measure as typed; a bare number is in the reader's unit."""

    do: Literal["set-measure"]
    key: Key
    text: Text
    side: Side = "both"

    def for_app(self, reader: Reader) -> app.SetMeasure:
        """The edit; the app reads the text."""
        return app.SetMeasure(self.key, self.text, reader.unit, self.side)


class NoteMeasure(Asked):
    """What is noted beside a measure; an ``error`` as typed (± in the reader's unit) makes it an estimate."""

    do: Literal["note-measure"]
    key: Key
    note: Text
    error: Text
    side: Side = "both"

    def for_app(self, reader: Reader) -> app.NoteMeasure:
        """The edit; the app reads the text of the error."""
        return app.NoteMeasure(self.key, reader.unit, self.note, self.error, self.side)


class ClearMeasure(Asked):
    """A measure taken out."""

    do: Literal["clear-measure"]
    key: Key
    side: Side = "both"

    def for_app(self, _reader: Reader) -> app.ClearMeasure:
        """The edit."""
        return app.ClearMeasure(self.key, self.side)


class RenameBody(Asked):
    """Another name for the body."""

    do: Literal["rename-body"]
    name: Text

    def for_app(self, _reader: Reader) -> app.RenameBody:
        """The edit."""
        return app.RenameBody(self.name)


BodyEdit = Annotated[SetMeasure | NoteMeasure | ClearMeasure | RenameBody, Field(discriminator="do")]


class BodyChange(Expected):
    """An edit of a body and the version that she has seen."""

    edit: BodyEdit


class NewBody(Asked):
    """A body that is to be measured."""

    name: Text


def body_edit(asked: BodyEdit, reader: Reader) -> app.BodyEdit:
    """The edit for the app."""
    return asked.for_app(reader)
