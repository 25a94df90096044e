"""The bodice in numbers: what is solved, without names and pieces."""

from notchbook.blocks.upper.bust_line import BustLine, bust_line
from notchbook.blocks.upper.draft_bodice import draft_bodice
from notchbook.blocks.upper.given import BackShoulder, BodiceGiven, BustGiven
from notchbook.blocks.upper.proportions import proportion, proportion_table
from notchbook.blocks.upper.shapes import BackHalf, BodiceHalf, FrontHalf, Lever, OpenDart
from notchbook.blocks.upper.slope_drop import slope_drop
from notchbook.blocks.upper.suppression import dart_counts

__all__ = [
    "BackHalf",
    "BackShoulder",
    "BodiceGiven",
    "BodiceHalf",
    "BustGiven",
    "BustLine",
    "FrontHalf",
    "Lever",
    "OpenDart",
    "bust_line",
    "dart_counts",
    "draft_bodice",
    "proportion",
    "proportion_table",
    "slope_drop",
]
