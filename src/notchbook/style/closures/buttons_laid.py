"""Buttons and their holes drawn on the pieces of a center: marks and lines that go with every size."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from notchbook.geometry import Path
from notchbook.pattern import InternalLine, Mark, Pattern, part_name
from notchbook.style.closures.figures import HOLE_BEYOND_CENTER
from notchbook.style.closures.straight_center import StraightCenter

Holes = Literal["across", "along"]
"""How holes are worked: across the center, or along it as in a narrow band."""


@dataclass(frozen=True, slots=True)
class ButtonSize:
    """A button, its ``diameter`` and ``thickness`` in mm, and how its hole is worked."""

    diameter: float
    thickness: float
    holes: Holes

    @property
    def hole(self) -> float:
        """Length of the hole, mm: the button must pass it on edge, over and under (closed form)."""
        return self.diameter + self.thickness


def with_buttons(
    pattern: Pattern, parts: Sequence[tuple[StraightCenter, str]], places: Sequence[float], size: ButtonSize
) -> Pattern:
    """The pattern with a mark and a hole at each place.

    ``parts``: the centers in a row from the top, each with the name under which its marks are named;
    ``places``: mm down from the top of the first.
    """
    numbered = list(enumerate(places, 1))
    begin = 0.0
    after = pattern
    for index, (center, owner) in enumerate(parts):
        end = begin + center.length
        is_last = index == len(parts) - 1
        here = [(n, at - begin) for n, at in numbered if begin <= at < end or (is_last and at >= end)]
        piece = after.pieces[center.piece.name]
        marks = tuple(Mark(part_name(owner, f"button_{n}"), center.at(at), "button") for n, at in here)
        holes = tuple(_hole(center, owner, n, at, size) for n, at in here)
        after = after.with_pieces(replace(piece, marks=(*piece.marks, *marks), lines=(*piece.lines, *holes)))
        begin = end
    return after


def _hole(center: StraightCenter, owner: str, number: int, at: float, size: ButtonSize) -> InternalLine:
    """The hole, from its end at which the button pulls."""
    beyond = HOLE_BEYOND_CENTER.value
    if size.holes == "across":
        ends = center.at(at, beyond), center.at(at, beyond - size.hole)
    else:
        ends = center.at(at - beyond), center.at(at - beyond + size.hole)
    return InternalLine(part_name(owner, f"buttonhole_{number}"), Path.line(*ends), "buttonhole")


def joints(parts: Sequence[StraightCenter]) -> Iterator[float]:
    """Where the pieces of a center meet, mm down from the top."""
    down = 0.0
    for center in parts[:-1]:
        down += center.length
        yield down
