"""Paths that were cut beside a joint of their curves, without the parts that are too short to draw."""

from notchbook.geometry import Path
from notchbook.units import TOLERANCES

SLIVER = TOLERANCES.closure
"""mm below which a part of a line is too short to draw; outlines are checked for it."""


def tidied(path: Path, least: float = SLIVER) -> Path:
    """The path with the same ends and without parts shorter than ``least`` (mm); as it is where it has no
    others."""
    kept = [segment for segment in path.segments if segment.length >= least]
    if not kept or len(kept) == len(path.segments):
        return path
    tidy = Path.of(kept[0]).with_start(path.start)
    for segment in kept[1:]:
        tidy = tidy.joined(Path.of(segment).with_start(tidy.end))
    return tidy.with_end(path.end)
