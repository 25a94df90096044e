"""Measures that are off in a whole file: named once, and each body judged beside them."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from notchbook.body import Doubt, MeasureSet, PopulationName, Suspect, measure_entry
from notchbook.body.doubts.statistic_words import sentence
from notchbook.body.quantity_words import quantity_text
from notchbook.errors import InputError
from notchbook.units import LengthStyle

if TYPE_CHECKING:
    from notchbook.body.doubts.whole_file import FileShift
    from notchbook.body.population import Population

_CODES = {"waist": "file-to-which-waist", "unit": "file-other-unit", "shifted": "file-shifted"}


@dataclass(frozen=True, slots=True)
class ShiftWords:
    """What is off in the bodies of the file that are held against one population; ``problem`` says it."""

    population: PopulationName
    shift: "FileShift"
    problem: InputError


def shift_words(sets: Sequence[MeasureSet], style: LengthStyle) -> tuple[ShiftWords, ...]:
    """Everything that is off in the whole file, for each population that its bodies are held against."""
    if not any(measures.population for measures in sets):
        return ()
    # Loaded here: a file that is held against nobody can do without numbers of a population.
    from notchbook.body.doubts.whole_file import file_shifts
    from notchbook.body.population import populations

    found: list[ShiftWords] = []
    for population in populations():
        held = [measures for measures in sets if measures.population == population.name]
        for shift in file_shifts(population, held):
            entry = measure_entry(shift.keys[0])
            problem = InputError(
                _CODES[shift.kind],
                labels=", ".join(measure_entry(key).label for key in shift.keys),
                off=quantity_text(entry, abs(shift.off), style),
                more="more" if shift.off >= 0 else "less",
                times=f"{shift.times:.2f}",
                rows=shift.rows,
                population=population.words,
                question=sentence(shift.waist),
                where="",
            )
            found.append(ShiftWords(population.name, shift, problem))
    return tuple(found)


def without_shifts(
    measures: MeasureSet, shifts: Sequence[ShiftWords], style: LengthStyle
) -> tuple[MeasureSet, tuple[Doubt, ...]]:
    """The set as it is to be judged, and doubts about values that are off otherwise than the others."""
    mine = [words.shift for words in shifts if words.population == measures.population]
    if not mine or measures.population is None:
        return measures, ()
    from notchbook.body.population import population

    against = population(measures.population)
    judged = measures
    for shift in mine:
        judged = shift.taken_off(judged)
    single = [shift for shift in mine if len(shift.keys) == 1 and shift.level is None]
    doubts = [_unlike_file(against, measures, judged, shift, style) for shift in single]
    return judged, tuple(doubt for doubt in doubts if doubt is not None)


def _unlike_file(
    against: "Population", measures: MeasureSet, judged: MeasureSet, shift: "FileShift", style: LengthStyle
) -> Doubt | None:
    """A doubt about a value that is not off by what the file's others are."""
    key = shift.keys[0]
    found = measures.find(key)
    expected = against.expect(key, judged)
    if found is None or expected is None or found.status == "estimated":
        return None
    middle = expected.value + shift.off
    z = (found.value - middle) / shift.scatter
    if abs(z) < against.look_again:
        return None
    entry = measure_entry(key)
    half = expected.half_width() * shift.scatter / expected.sd
    suspect = Suspect(key, found.value, middle, max(0.0, middle - half), middle + half, z, 1.0)
    problem = InputError(
        "measure-unlike-file",
        label=entry.label,
        given=quantity_text(entry, found.value, style),
        expected=quantity_text(entry, max(0.0, middle), style),
        where="",
    )
    return Doubt("stop" if abs(z) >= against.stop else "check", (key,), problem, (suspect,))
