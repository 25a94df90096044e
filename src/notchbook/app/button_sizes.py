"""Sizes of buttons as they are sold."""

from typing import Final

LIGNE: Final = 25.4 / 40.0
"""mm of a ligne: 40 are an inch, as the trade counts buttons (fact of the trade, no source)."""

_SOLD: Final = (12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 40, 44, 48, 54, 60)
"""Lignes in which buttons are sold (common practice, from memory)."""


def lignes(diameter: float) -> int:
    """The size sold that is nearest to a diameter, mm."""
    return min(_SOLD, key=lambda one: abs(one * LIGNE - diameter))
