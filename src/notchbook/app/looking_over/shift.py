"""Measures that are off in a whole file: named once, and each body judged beside them."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from notchbook.body import Doubt, LookedOver, MeasureSet, PopulationName, look_over, measure_entry, plain_key
from notchbook.body.doubts.statistic_words import sentence
from notchbook.body.quantity_words import quantity_text
from notchbook.errors import InputError
from notchbook.units import LengthStyle

if TYPE_CHECKING:
    from notchbook.body.doubts.file_shift import FileShift
    from notchbook.body.population import Population

_CODES = {
    "survey": "file-taken-as-survey",
    "waist": "file-to-which-waist",
    "waist-of-some": "file-waist-of-some",
    "unit": "file-other-unit",
    "shifted": "file-shifted",
    "a-little": "file-shifted-a-little",
}


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
        found += [
            ShiftWords(population.name, shift, _problem(population, shift, style))
            for shift in file_shifts(population, held)
        ]
    return tuple(found)


def _problem(population: "Population", shift: "FileShift", style: LengthStyle) -> InputError:
    entry = measure_entry(shift.keys[0])
    return InputError(
        _CODES[shift.kind],
        labels=", ".join(measure_entry(key).label for key in shift.keys),
        off=quantity_text(entry, abs(shift.off), style),
        more="more" if shift.off >= 0 else "less",
        times=f"{shift.times:.2f}",
        rows=shift.rows,
        of=shift.of,
        population=population.words,
        question=sentence(shift.waist),
        where="",
    )


def look_over_beside(measures: MeasureSet, shifts: Sequence[ShiftWords], style: LengthStyle) -> LookedOver:
    """The body looked over as the whole file was taken: no value is left out, and none is changed."""
    mine = tuple(words.shift for words in shifts if words.population == measures.population)
    if not mine:
        return look_over(measures, style)
    from notchbook.body.doubts.file_shift import BesideFile

    beside = BesideFile(mine).of(measures)
    looked = look_over(BesideFile(mine).reframed(measures), style, beside=beside)
    moved = {key for shift in beside.shifts if shift.kind in ("unit", "shifted") for key in shift.keys}
    doubts = tuple(_unlike_file(doubt, moved, style) for doubt in looked.doubts)
    return replace(looked, doubts=doubts)


def _unlike_file(doubt: Doubt, moved: set[str], style: LengthStyle) -> Doubt:
    """A doubt about a value that is not off by what the file's others are says so."""
    suspect = doubt.suspects[0] if doubt.suspects else None
    if suspect is None or plain_key(suspect.key) not in moved or len(doubt.keys) > 1:
        return doubt
    entry = measure_entry(plain_key(suspect.key))
    problem = InputError(
        "measure-unlike-file",
        label=entry.label,
        given=quantity_text(entry, suspect.value, style),
        expected=quantity_text(entry, max(0.0, suspect.expected), style),
        where="",
    )
    # What was probably meant is not known where the whole column means something else.
    return replace(doubt, problem=problem, repairs=())
