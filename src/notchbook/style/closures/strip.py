"""A straight strip: a band, belt, tie or casing, drawn flat with its sewn edge below."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.geometry import Path, Point
from notchbook.pattern import CutInstruction, Edge, EdgeKind, Grain, InternalLine, Piece, part_name


@dataclass(frozen=True, slots=True)
class StripPart:
    """A stretch of the lower edge: its word, its length in mm, the point where it begins, and its kind."""

    word: str
    length: float
    begins: str
    kind: EdgeKind = "seam"


@dataclass(frozen=True, slots=True)
class StripEnds:
    """The right-hand end of the strip as drawn, then its upper edge, then the left-hand end.

    ``last``: the lower corner at the right; ``corners``: the upper corners, right then left; ``words``: right
    end, upper edge and left end; ``kinds`` of the same.
    """

    last: str
    corners: tuple[str, str]
    words: tuple[str, str, str]
    kinds: tuple[EdgeKind, EdgeKind, EdgeKind] = ("plain", "plain", "plain")


SHORT_ENDS = StripEnds("lower_right", ("upper_right", "upper_left"), ("right_end", "upper", "left_end"))
"""The names of a strip that is alike at both ends."""


def strip_outline(name: str, parts: Sequence[StripPart], ends: StripEnds, height: float) -> tuple[Edge, ...]:
    """The outline, counter-clockwise from the lower left corner; ``height`` in mm."""
    stops = [0.0]
    for part in parts:
        stops.append(stops[-1] + part.length)
    corners = [Point(x, 0.0) for x in stops] + [Point(stops[-1], height), Point(0.0, height)]
    points = [*(part.begins for part in parts), ends.last, *ends.corners]
    words = [*(part.word for part in parts), *ends.words]
    kinds = [*(part.kind for part in parts), *ends.kinds]
    count = len(corners)
    return tuple(
        Edge(
            part_name(name, *words[index].split("/")),
            Path.line(corners[index], corners[(index + 1) % count]),
            part_name(name, points[index]),
            part_name(name, points[(index + 1) % count]),
            kinds[index],
        )
        for index in range(count)
    )


def folded_along(name: str, outline: Sequence[Edge], height: float) -> InternalLine:
    """The fold along the middle of a strip."""
    length = max(edge.path.end.x for edge in outline)
    fold = Path.line(Point(0.0, height / 2.0), Point(length, height / 2.0))
    return InternalLine(part_name(name, "fold_line"), fold, "fold_line")


def plain_strip(
    name: str,
    title: str,
    size: tuple[float, float],
    *,
    materials: Sequence[CutInstruction] = (CutInstruction("self"),),
    grain: float = 0.0,
    folded: bool = True,
    kind: EdgeKind = "plain",
) -> Piece:
    """A strip alike at both ends, ``size``: its length and its height flat, mm; ``grain`` in degrees."""
    length, height = size
    ends = StripEnds(SHORT_ENDS.last, SHORT_ENDS.corners, SHORT_ENDS.words, (kind, kind, kind))
    outline = strip_outline(name, [StripPart("lower", length, "lower_left", kind)], ends, height)
    return Piece(
        name=name,
        title=title,
        outline=outline,
        lines=(folded_along(name, outline, height),) if folded else (),
        grain=Grain(grain),
        instructions=tuple(materials),
        rule=name.split(".", 1)[0],
    )
