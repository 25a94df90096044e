"""The bodice in numbers, kept: settling the choices, the draft and its other side ask for the same one."""

from functools import lru_cache

from notchbook.blocks.upper.draft_bodice import draft_bodice
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.shapes import BodiceHalf


@lru_cache(maxsize=64)
def kept_bodice(given: BodiceGiven) -> BodiceHalf:
    """As :func:`~notchbook.blocks.upper.draft_bodice.draft_bodice`, drawn once for the same numbers."""
    return draft_bodice(given)
