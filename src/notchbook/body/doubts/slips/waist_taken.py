"""To which waist a length may have been taken instead of the one that the set names."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from notchbook.body.measure_set import MeasureSet, PopulationName
from notchbook.body.measure_table import measure_table

NAVEL_DROP: Final[Mapping[PopulationName, tuple[float, float]]] = {"women": (46.0, 17.0), "men": (35.0, 19.0)}
"""mm from the natural waist down to the navel: mean and standard deviation (computed from ANSUR II, with the
natural waist midway between the tenth rib and the iliac crest, ISO 8559-1)."""

_UPPER: Final = (
    "back_waist_length",
    "front_waist_length",
    "center_front_length",
    "shoulder_point_to_center_waist",
)

TO_NAVEL: Final = "to which waist was the tape laid: to the navel?"
TO_NATURAL: Final = "to which waist was the tape laid: to the natural waist?"


@dataclass(frozen=True, slots=True)
class WaistTaken:
    """Another waist: how far lower it lies (``size``, mm, with its SD ``spread``; negative: higher).

    ``directions`` give by how much a measure changes for each mm that its waist is lower. ``groups`` are
    measures that are taken together, so that one wrong waist moves all of them.
    """

    question: str
    size: float
    spread: float
    directions: Mapping[str, float]
    groups: tuple[tuple[str, ...], ...]


def waist_taken(measures: MeasureSet, population: PopulationName) -> WaistTaken | None:
    """The waist that may be confused with the set's own; None for records of a survey."""
    if measures.taken_as == "survey":
        return None
    size, spread = NAVEL_DROP[population]
    question = TO_NAVEL
    if measures.waist_level == "navel":
        size, question = -(measures.waist_drop or size), TO_NATURAL
        spread = 0.0 if measures.waist_drop else spread
    elif measures.waist_level == "lower":
        size, spread, question = -measures.waist_drop, 0.0, TO_NATURAL
    shifts = ((key, entry.waist_shift) for key, entry in measure_table().items())
    directions = {key: float(shift) for key, shift in shifts if shift}
    lower = tuple(key for key in directions if key not in _UPPER)
    return WaistTaken(question, size, spread, directions, (_UPPER, lower, tuple(directions)))
