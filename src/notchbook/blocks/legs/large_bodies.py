"""Figures that the largest bodies have otherwise than usual ones, and what lies between."""

from notchbook.blocks.legs.proportions import proportion


def share_of_large(hip: float) -> float:
    """How far a body counts as large: from 0 at the hip (with its ease, mm) where that begins to 1."""
    start, full = proportion("large.from_hip"), proportion("large.full_hip")
    return min(1.0, max(0.0, (hip - start) / (full - start)))


def of_size(name: str, hip: float) -> float:
    """The value of a figure that the largest bodies have another of, ``<name>_plus``; between, on the way
    from the one to the other. ``hip`` is the girth with its ease, mm."""
    usual, plus = proportion(name), proportion(f"{name}_plus")
    return usual + share_of_large(hip) * (plus - usual)
