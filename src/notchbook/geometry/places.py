"""Places along a curve, given as distances from its start."""

from notchbook.errors import GeometryError
from notchbook.geometry.tolerance import TOLERANCE


def clamped(distance: float, length: float) -> float:
    """The distance, kept within [0, length].

    A distance that lies outside by more than ``place_mm``, or is not a number, is refused with the
    GeometryError ``place-outside``.
    """
    if 0.0 <= distance <= length:
        return distance
    if not -TOLERANCE.place_mm <= distance <= length + TOLERANCE.place_mm:
        raise GeometryError("place-outside", distance=distance, length=length)
    return 0.0 if distance < 0.0 else length
