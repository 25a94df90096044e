"""What she may say of a set of measures as a whole: who, when, held against whom, to which waist."""

from dataclasses import dataclass, replace

from notchbook import body as vocabulary
from notchbook.body import Circumstances, MeasureSet, PopulationName, RiseMethod, WaistLevel
from notchbook.body.doubts.waist_drops import refuse_impossible_drop
from notchbook.units import LengthStyle, Unit, parse_length


@dataclass(frozen=True, slots=True)
class RenameBody:
    """Another name for the body."""

    name: str

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set under its new name."""
        return replace(measures, name=self.name)


@dataclass(frozen=True, slots=True)
class SetCircumstances:
    """When, by whom and over what she was measured; what is None stays as it is.

    ``heel`` is a length as typed (a bare number is in ``unit``), empty for none.
    """

    unit: Unit
    taken_on: str | None = None
    taken_by: str | None = None
    undergarment: str | None = None
    heel: str | None = None

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the circumstances; refused: ``date-unreadable``, and a heel that is no length."""
        said = measures.circumstances
        now = Circumstances(
            taken_on=said.taken_on if self.taken_on is None else self.taken_on.strip(),
            taken_by=said.taken_by if self.taken_by is None else self.taken_by,
            undergarment=said.undergarment if self.undergarment is None else self.undergarment,
            heel=said.heel if self.heel is None else _length(self.heel, self.unit),
        )
        return replace(measures, circumstances=now)


@dataclass(frozen=True, slots=True)
class SetPopulation:
    """Whom the values are held against; None: nobody."""

    population: PopulationName | None

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with its population."""
        return replace(measures, population=self.population)


@dataclass(frozen=True, slots=True)
class SetWaistLevel:
    """To which waist the values go. ``drop`` is the length below the natural waist as typed: needed for a
    lower waist, offered for the navel, none for the natural one."""

    level: WaistLevel
    unit: Unit
    drop: str = ""

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the level; InputError ``waist-level`` when the drop does not go with it,
        ``waist-drop-impossible`` when no waist lies so low."""
        drop = 0.0 if self.level == "natural" else _length(self.drop, self.unit)
        refuse_impossible_drop(drop, LengthStyle(self.unit))
        return replace(measures, waist_level=self.level, waist_drop=drop)


@dataclass(frozen=True, slots=True)
class SetRiseMethod:
    """How the rise was taken; None: not said."""

    method: RiseMethod | None

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the method."""
        return replace(measures, rise_method=self.method)


@dataclass(frozen=True, slots=True)
class SetKind:
    """Whether this is a body, a dress form or a size of a chart, and the size that is written on it.

    ``label_size`` None leaves the written size as it is.
    """

    kind: vocabulary.SetKind
    label_size: str | None = None

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set of that kind."""
        label = measures.label_size if self.label_size is None else self.label_size
        return replace(measures, kind=self.kind, label_size=label)


@dataclass(frozen=True, slots=True)
class NoteSet:
    """What is noted about the whole set."""

    note: str

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the note."""
        return replace(measures, note=self.note)


def _length(text: str, unit: Unit) -> float:
    """A length as typed in mm; nothing typed is none."""
    return parse_length(text, unit) if text.strip() else 0.0
