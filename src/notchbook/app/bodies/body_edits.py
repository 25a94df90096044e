"""What she may do to the measures of a body: each edit as data. About the set as a whole: set_edits.py."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notchbook.app.bodies.estimate_edits import FillEstimates, RefreshEstimates
from notchbook.app.bodies.repair_edits import RepairMeasures
from notchbook.app.bodies.set_edits import (
    NoteSet,
    RenameBody,
    SetCircumstances,
    SetKind,
    SetPopulation,
    SetRiseMethod,
    SetWaistLevel,
)
from notchbook.body import (
    Measure,
    MeasureSet,
    RawValue,
    Side,
    Status,
    measure_entry,
    read_value,
    sided_key,
)
from notchbook.body.estimate_method import is_own_estimate
from notchbook.body.files.raw_value import read_quantity
from notchbook.errors import InputError
from notchbook.units import Unit


@dataclass(frozen=True, slots=True)
class SetMeasure:
    """A measure as she typed it; a bare number is in ``unit``. Earlier readings of it are gone.

    A note that stood beside it stays, and so does her own ±: :class:`NoteMeasure` changes them. What she
    types over an estimate of the book was measured.
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
        if known is not None and known.status == "estimated" and not is_own_estimate(known):
            measure = replace(measure, status=known.status, error=known.error)
        return measures.with_value(self.key, measure, self.side)


@dataclass(frozen=True, slots=True)
class AddReading:
    """The tape laid once more, as typed: the value becomes the median of all readings.

    A value of a chart or an estimate is no reading: what the tape says takes its place.
    """

    key: str
    text: str
    unit: Unit
    side: Side = "both"

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with one reading more; refused as :class:`SetMeasure`."""
        name = sided_key(self.key, self.side)
        taken = (*readings_of(measures.values.get(name)), _read(name, self.text, self.unit))
        return _with_readings(measures, self.key, self.side, taken)


@dataclass(frozen=True, slots=True)
class SetReading:
    """One reading typed anew, counted from 0; the one after the last is a new one."""

    key: str
    reading: int
    text: str
    unit: Unit
    side: Side = "both"

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the reading; InputError ``reading-missing`` when those before it are not there."""
        name = sided_key(self.key, self.side)
        taken = list(readings_of(measures.values.get(name)))
        if self.reading == len(taken):
            return AddReading(self.key, self.text, self.unit, self.side).apply(measures)
        _check_reading(name, self.reading, taken)
        taken[self.reading] = _read(name, self.text, self.unit)
        return _with_readings(measures, self.key, self.side, taken)


@dataclass(frozen=True, slots=True)
class ClearReading:
    """One reading taken out, counted from 0; with the last one the measure is gone."""

    key: str
    reading: int
    side: Side = "both"

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set without the reading; InputError ``reading-missing`` when it is not there."""
        name = sided_key(self.key, self.side)
        taken = list(readings_of(measures.values.get(name)))
        _check_reading(name, self.reading, taken)
        del taken[self.reading]
        if not taken:
            return measures.without(self.key, self.side)
        return _with_readings(measures, self.key, self.side, taken)


@dataclass(frozen=True, slots=True)
class NoteMeasure:
    """What is noted beside a measure; ``error`` as typed makes it an estimate (±), empty a measured one.

    An estimate has no readings: those that it had are gone.
    """

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
        typed = self.error.replace("±", "").strip()
        if not typed:
            status: Status = "measured" if known.status == "estimated" else known.status
            method = "" if is_own_estimate(known) else known.method
            noted = replace(known, note=self.note, status=status, error=None, method=method)
        else:
            error = read_quantity(measure_entry(self.key), typed, "", self.unit)[0]
            # A ± of her own makes the estimate hers.
            is_hers = is_own_estimate(known) and abs(error - (known.error or 0.0)) > _SAME_ERROR
            method = "" if is_hers else known.method
            noted = replace(
                known, note=self.note, status="estimated", error=error, method=method, readings=()
            )
        return measures.with_value(self.key, noted, self.side)


@dataclass(frozen=True, slots=True)
class ClearMeasure:
    """A measure taken out; a side falls back to the plain value."""

    key: str
    side: Side = "both"

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set without the measure."""
        return measures.without(self.key, self.side)


_SAME_ERROR = 1.0
"""mm by which a ± may come back otherwise when the page has written it in sixteenths of an inch."""


def readings_of(measure: Measure | None) -> tuple[float, ...]:
    """All that the tape said (mm, degrees, kg): a measured value that was taken once is one reading."""
    if measure is None or measure.status != "measured":
        return ()
    return measure.readings or (measure.value,)


def _read(name: str, text: str, unit: Unit) -> float:
    return read_value(name, RawValue(text), unit)[1].value


def _with_readings(measures: MeasureSet, key: str, side: Side, taken: Sequence[float]) -> MeasureSet:
    """The set with the median of these readings; method, name and note beside the value stay."""
    known = measures.values.get(sided_key(key, side))
    note = "" if known is None else known.note
    if known is not None and known.status == "measured":
        measure = Measure.of_readings(taken, known.method, known.by, note)
    else:
        measure = Measure.of_readings(taken, note=note)
    return measures.with_value(key, measure, side)


def _check_reading(name: str, reading: int, taken: Sequence[float]) -> None:
    if not 0 <= reading < len(taken):
        raise InputError("reading-missing", key=name, reading=reading + 1, count=len(taken))


BodyEdit = (
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
    | RepairMeasures
)

__all__ = [
    "AddReading",
    "BodyEdit",
    "ClearMeasure",
    "ClearReading",
    "FillEstimates",
    "NoteMeasure",
    "NoteSet",
    "RefreshEstimates",
    "RenameBody",
    "RepairMeasures",
    "SetCircumstances",
    "SetKind",
    "SetMeasure",
    "SetPopulation",
    "SetReading",
    "SetRiseMethod",
    "SetWaistLevel",
    "readings_of",
]
