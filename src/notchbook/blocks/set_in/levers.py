"""What the hand would shift by trial on a sleeve, and how far the draft pulled it."""

import math

from notchbook.blocks.set_in.below import Below
from notchbook.blocks.set_in.cap import Cap, low_share
from notchbook.blocks.set_in.cap_line import CapLine
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.half_cap import HIGHEST, LAID, USUAL
from notchbook.blocks.upper.shapes import Lever

_HALVINGS = 16
"""Rounds in which a place of the cap is sought: to a hundredth of a millimeter."""


def sleeve_levers(given: SleeveGiven, cap: Cap, below: Below) -> tuple[Lever, ...]:
    """How the cap was brought to its length, and how much wider the hem came out than was given."""
    found = [*_half("front", cap), *_half("back", cap)]
    share = cap.height / given.armhole.girth
    low, high = low_share(given), figure("cap.most_share")
    found.append(Lever("cap_height_share", share, low, high, 0.33, ""))
    box = half_width(cap) / cap.biceps
    found.append(Lever("half_height_width", box, 0.5, figure("cap.most_half_width"), 0.6, ""))
    wished = given.biceps if given.keep == "biceps" else cap.biceps
    found.append(Lever("biceps_widened", cap.biceps - wished, -0.5, 0.5, 0.0))
    wider = below.hem_girth - given.hem
    found.append(Lever("hem_widened", wider, -0.5, 0.5, 0.0))
    return tuple(found)


def flank(line: CapLine) -> float:
    """How steep half a cap is at its steepest, the underarm seam upright, degrees."""
    return math.degrees(line.steepest - line.tilt)


def half_width(cap: Cap) -> float:
    """How wide the cap is at half its height, mm."""
    return sum(_inward(line, cap.height / 2.0) for line in (cap.front, cap.back))


def _inward(line: CapLine, height: float) -> float:
    """How far before its crown half a cap is at a height, mm."""
    low, high = 0.0, line.length
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        low, high = (middle, high) if line.at(middle)[1] < height else (low, middle)
    return line.end[0] - line.at(high)[0]


def _half(which: str, cap: Cap) -> tuple[Lever, Lever, Lever]:
    line, lever = (cap.front, cap.front_lever) if which == "front" else (cap.back, cap.back_lever)
    gap = line.laid_gap(figure("lay.least_length"))
    return (
        Lever(f"{which}_lay_gap", gap, -1.0, figure(f"lay.{which}_gap"), 1.5),
        Lever(
            f"{which}_flank",
            flank(line),
            0.0,
            figure("cap.steepest"),
            60.0,
            "deg",
        ),
        Lever(f"{which}_cap_fullness", lever, LAID, HIGHEST, USUAL, ""),
    )
