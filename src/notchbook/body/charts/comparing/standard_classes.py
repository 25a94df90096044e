"""The classes of EN 13402-3 that a body or form has, girth by girth, whatever its label or chart."""

from dataclasses import dataclass
from typing import Final

from notchbook.body.charts.en13402 import SizeClass, letter_code, size_class
from notchbook.body.measure_set import MeasureSet, PopulationName

CLASSED: Final = ("bust_girth", "waist_girth", "hip_girth")


@dataclass(frozen=True, slots=True)
class StandardClasses:
    """The class of each girth that was measured and lies within the tables, and the letter of the bust.

    ``population``: whose tables were taken.
    """

    population: PopulationName
    girths: tuple[tuple[str, SizeClass], ...]
    letter: SizeClass | None


def standard_classes(
    measures: MeasureSet, population: PopulationName | None = None
) -> StandardClasses | None:
    """The classes as women or men, by the set or else as given; None where neither says.

    A waist that was tied at another level than the natural one has no class.
    """
    people = measures.population or population
    if people is None:
        return None
    found: list[tuple[str, SizeClass]] = []
    for key in CLASSED:
        if key == "waist_girth" and measures.waist_level != "natural":
            continue
        measure = measures.find(key)
        one = None if measure is None else size_class(people, key, measure.value)
        if one is not None:
            found.append((key, one))
    bust = measures.find("bust_girth")
    letter = None if bust is None else letter_code(people, bust.value)
    return StandardClasses(people, tuple(found), letter)
