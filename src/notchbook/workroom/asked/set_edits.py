"""Edits of what is said of a set of measures as a whole, as the page sends them."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.app.bodies import set_edits as app
from notchbook.body import PopulationName, RiseMethod, WaistLevel
from notchbook.body import SetKind as KindOfSet
from notchbook.workroom.asked.form import Asked, Text
from notchbook.workroom.reader import Reader

Note = Annotated[str, Field(max_length=2000)]


class RenameBody(Asked):
    """Another name for the body."""

    do: Literal["rename-body"]
    name: Text

    def for_app(self, _reader: Reader) -> app.RenameBody:
        """The edit."""
        return app.RenameBody(self.name)


class SetCircumstances(Asked):
    """When, by whom and over what she was measured; what is not sent stays. ``heel`` is typed."""

    do: Literal["set-circumstances"]
    taken_on: Text | None = None
    taken_by: Text | None = None
    undergarment: Text | None = None
    heel: Text | None = None

    def for_app(self, reader: Reader) -> app.SetCircumstances:
        """The edit; the app reads the day and the heel."""
        return app.SetCircumstances(reader.unit, self.taken_on, self.taken_by, self.undergarment, self.heel)


class SetPopulation(Asked):
    """Whom the values are held against; null: nobody."""

    do: Literal["set-population"]
    population: PopulationName | None

    def for_app(self, _reader: Reader) -> app.SetPopulation:
        """The edit."""
        return app.SetPopulation(self.population)


class SetWaistLevel(Asked):
    """To which waist the values go; ``drop`` as typed, empty where it is not known or there is none."""

    do: Literal["set-waist-level"]
    level: WaistLevel
    drop: Text = ""

    def for_app(self, reader: Reader) -> app.SetWaistLevel:
        """The edit; the app reads the drop."""
        return app.SetWaistLevel(self.level, reader.unit, self.drop)


class SetRiseMethod(Asked):
    """How the rise was taken; null: not said."""

    do: Literal["set-rise-method"]
    method: RiseMethod | None

    def for_app(self, _reader: Reader) -> app.SetRiseMethod:
        """The edit."""
        return app.SetRiseMethod(self.method)


class SetKind(Asked):
    """A body, a dress form or a size of a chart, and the size written on it; null leaves that as it is."""

    do: Literal["set-kind"]
    kind: KindOfSet
    label_size: Text | None = None

    def for_app(self, _reader: Reader) -> app.SetKind:
        """The edit."""
        return app.SetKind(self.kind, self.label_size)


class NoteSet(Asked):
    """What is noted about the whole set."""

    do: Literal["note-set"]
    note: Note

    def for_app(self, _reader: Reader) -> app.NoteSet:
        """The edit."""
        return app.NoteSet(self.note)
