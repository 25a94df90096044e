"""Measures that contradict each other in a draft: what is said of them, and what an answer makes of them."""

from dataclasses import dataclass, replace
from typing import Final, Literal

from notchbook.app.bodies.repair_edits import RepairMeasures
from notchbook.body import MeasureSet, measure_entry
from notchbook.body.quantity_words import quantity_text, said_key
from notchbook.errors import NotchbookError
from notchbook.pattern import Contradiction
from notchbook.recipe import Replay
from notchbook.units import LengthStyle

WAIST_QUESTION: Final = "measure-to-which-waist"

WaistAnswer = Literal["natural", "other", "navel"]
"""``natural``: everything to the natural waist, as the set says. ``other``: the measure that explains both
was taken to another waist. ``navel``: all of them were taken to the navel."""


@dataclass(frozen=True, slots=True)
class ContradictionWords:
    """A contradiction in words: the two measures with their values, the one that explains both with the
    value that it would have, by how much that differs, and which measure to take again."""

    first: str
    second: str
    explains: str
    by: str
    second_reading: str

    def line(self) -> str:
        """``Front waist length 45 cm and back waist length 40 cm: front waist length 41 cm would explain both
        (4 cm less).``"""
        pair = f"{self.first[:1].upper()}{self.first[1:]} and {self.second}"
        return f"{pair}: {self.explains} would explain both ({self.by})."


def contradiction_in_words(
    told: Contradiction, measures: MeasureSet, style: LengthStyle
) -> ContradictionWords:
    """The words in the reader's unit."""
    size = quantity_text(measure_entry(told.explains), abs(told.by), style)
    now = measures.find(told.explains)
    less = now is not None and told.value < now.value
    return ContradictionWords(
        first=_with_value(told.first, measures, style),
        second=_with_value(told.second, measures, style),
        explains=f"{said_key(told.explains, measures.population)} "
        f"{quantity_text(measure_entry(told.explains), told.value, style)}",
        by=f"{size} {'less' if less else 'more'}",
        second_reading=f"Take {said_key(told.read_again, measures.population)} again.",
    )


def contradictions_of(run: Replay) -> tuple[Contradiction, ...]:
    """What the drafts of a run say of its measures, each once."""
    found = [note.contradiction for note in run.notes if note.contradiction is not None]
    return tuple(dict.fromkeys(found))


def contradiction_in(error: NotchbookError) -> Contradiction | None:
    """The contradiction for which a draft was refused, if that was why."""
    told = error.facts.get("contradiction")
    return told if isinstance(told, Contradiction) else None


def asks_for_waist(told: Contradiction | None, measures: MeasureSet) -> bool:
    """Whether it is to be asked to which waist the lengths were taken: nobody has said so of this set."""
    return told is not None and told.question == WAIST_QUESTION and measures.waist_level == "natural"


def with_waist_answer(measures: MeasureSet, told: Contradiction, answer: WaistAnswer) -> MeasureSet:
    """The set as it is after the answer; refused as ``RepairMeasures`` is."""
    if answer == "navel":
        return replace(measures, waist_level="navel", waist_drop=0.0)
    if answer == "other":
        return RepairMeasures({told.explains: told.value}, is_reckoned=True).apply(measures)
    return measures


def _with_value(key: str, measures: MeasureSet, style: LengthStyle) -> str:
    found = measures.find(key)
    value = "" if found is None else f" {quantity_text(measure_entry(key), found.value, style)}"
    return f"{said_key(key, measures.population)}{value}"
