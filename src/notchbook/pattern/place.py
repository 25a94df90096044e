"""A place along an edge or a group, measured as sewn from a named end."""

from dataclasses import dataclass
from typing import Literal

PlaceMeasure = Literal["distance", "fraction"]


@dataclass(frozen=True, slots=True)
class Place:
    """Where on an edge: ``amount`` mm (``distance``) or share 0..1 (``fraction``) from ``from_point``.

    ``edge`` is an edge or a group; the length runs as sewn, intakes closed. ``notch`` names a notch
    instead ("at notch X"): then the amount is counted from it, toward the other end.
    """

    edge: str
    from_point: str
    amount: float
    measure: PlaceMeasure = "distance"
    notch: str | None = None
