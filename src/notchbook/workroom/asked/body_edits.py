"""Edits of a body's measures as the page sends them. About the set as a whole: set_edits.py."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.app.bodies import body_edits as app
from notchbook.body import Side
from notchbook.workroom.asked.estimate_edits import FillEstimates, RefreshEstimates
from notchbook.workroom.asked.form import Asked, Expected, Key, Text
from notchbook.workroom.asked.repair_edits import RepairMeasures
from notchbook.workroom.asked.set_edits import (
    NoteSet,
    RenameBody,
    SetCircumstances,
    SetKind,
    SetPopulation,
    SetRiseMethod,
    SetWaistLevel,
)
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


class AddReading(Asked):
    """The tape laid once more, as typed; the value becomes the median."""

    do: Literal["add-reading"]
    key: Key
    text: Text
    side: Side = "both"

    def for_app(self, reader: Reader) -> app.AddReading:
        """The edit; the app reads the text."""
        return app.AddReading(self.key, self.text, reader.unit, self.side)


class SetReading(Asked):
    """One reading typed anew, counted from 0; the one after the last is a new one."""

    do: Literal["set-reading"]
    key: Key
    reading: int
    text: Text
    side: Side = "both"

    def for_app(self, reader: Reader) -> app.SetReading:
        """The edit; the app reads the text."""
        return app.SetReading(self.key, self.reading, self.text, reader.unit, self.side)


class ClearReading(Asked):
    """One reading taken out, counted from 0; with the last one the measure is gone."""

    do: Literal["clear-reading"]
    key: Key
    reading: int
    side: Side = "both"

    def for_app(self, _reader: Reader) -> app.ClearReading:
        """The edit."""
        return app.ClearReading(self.key, self.reading, self.side)


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


BodyEdit = Annotated[
    SetMeasure
    | AddReading
    | SetReading
    | ClearReading
    | NoteMeasure
    | ClearMeasure
    | RenameBody
    | SetCircumstances
    | SetPopulation
    | SetWaistLevel
    | SetRiseMethod
    | SetKind
    | NoteSet
    | FillEstimates
    | RefreshEstimates
    | RepairMeasures,
    Field(discriminator="do"),
]


class BodyChange(Expected):
    """An edit of a body and the version that she has seen."""

    edit: BodyEdit


class NewBody(Asked):
    """A body that is to be measured."""

    name: Text


def body_edit(asked: BodyEdit, reader: Reader) -> app.BodyEdit:
    """The edit for the app."""
    return asked.for_app(reader)
