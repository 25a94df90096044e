"""Simple pieces for the tests of finishing: polygons whose cut line is known by other means."""

from collections.abc import Mapping, Sequence
from math import atan2, cos, sin

import shapely

from notchbook.finish import CutPiece, HouseTable, finish, production_table
from notchbook.geometry import Line, Path, Point
from notchbook.pattern import (
    Allowance,
    CornerStyle,
    CutAs,
    CutInstruction,
    Edge,
    EdgeKind,
    Grain,
    Intake,
    Pattern,
    Piece,
    frozen_map,
)


def polygon_piece(
    corners: Sequence[tuple[float, float]],
    kinds: Mapping[int, EdgeKind] | None = None,
    *,
    cut: CutAs = "single",
    grain: float = 90.0,
    instructions: tuple[CutInstruction, ...] = (CutInstruction(),),
) -> Piece:
    """A piece with straight edges e0, e1, ... from corner to corner (p0, p1, ...)."""
    count = len(corners)
    points = [Point(x, y) for x, y in corners]
    outline = tuple(
        Edge(
            f"test.shape/e{index}",
            Path.of(Line(points[index], points[(index + 1) % count])),
            f"test.shape/p{index}",
            f"test.shape/p{(index + 1) % count}",
            (kinds or {}).get(index, "seam"),
        )
        for index in range(count)
    )
    return Piece("test.shape", "Shape", outline, grain=Grain(grain), cut=cut, instructions=instructions)


def darted_square(intake: float, toward: str = "second_leg", size: float = 200.0) -> Piece:
    """A square whose upper edge has a dart in its middle, 120 long, square to the closed edge.

    The halves of the upper edge stand square to the legs, so that the edge is straight when the dart
    is closed.
    """
    leg, half = 120.0, intake / 2.0
    point = Point(size / 2.0, size - leg)
    depth = (leg**2 - half**2) ** 0.5
    right, left = point + Point(half, depth), point + Point(-half, depth)
    lean = atan2(half, depth)
    run = size / 2.0 - half
    right_end = right + Point(cos(lean), -sin(lean)) * run
    left_end = left + Point(-cos(lean), -sin(lean)) * run
    corners = [Point(left_end.x, 0.0), Point(right_end.x, 0.0), right_end, right, point, left, left_end]
    names = ["bottom", "right", "top_right", "first_leg", "second_leg", "top_left", "left"]
    kinds: list[EdgeKind] = ["seam", "seam", "seam", "leg", "leg", "seam", "seam"]
    points = ["low_left", "low_right", "high_right", "first_mouth", "point", "second_mouth", "high_left"]
    outline = tuple(
        Edge(
            f"test.dart/{name}",
            Path.line(corners[index], corners[(index + 1) % 7]),
            f"test.dart/{points[index]}",
            f"test.dart/{points[(index + 1) % 7]}",
            kinds[index],
        )
        for index, name in enumerate(names)
    )
    dart = Intake(
        "test.dart/dart",
        "test.dart/top",
        "test.dart/first_leg",
        "test.dart/second_leg",
        "test.dart/point",
        "first_leg" if toward == "first_leg" else "second_leg",
    )
    return Piece("test.dart", "Darted", outline, intakes=(dart,))


def cut_one(
    piece: Piece,
    widths: Mapping[int | str, float] | float = 10.0,
    corners: Mapping[int, CornerStyle] | None = None,
    house: HouseTable | None = None,
) -> CutPiece:
    """The piece finished with these widths (mm, by the number or the word of the edge, or one for all)."""
    given = widths if isinstance(widths, Mapping) else {}
    usual = 10.0 if isinstance(widths, Mapping) else widths
    allowances = {}
    for index, edge in enumerate(piece.outline):
        word = edge.name.rsplit("/", 1)[-1]
        allowances[edge.name] = Allowance("plain", given.get(index, given.get(word, usual)))
    styles = {f"test.shape/p{index}": style for index, style in (corners or {}).items()}
    pattern = Pattern(
        pieces=frozen_map({piece.name: piece}),
        allowances=frozen_map(allowances),
        corners=frozen_map(styles),
    )
    (cut,) = finish(pattern, house or production_table())
    return cut


def square(size: float = 100.0) -> Piece:
    """A square with its lower left corner at the origin."""
    return polygon_piece([(0.0, 0.0), (size, 0.0), (size, size), (0.0, size)])


def polygon(path: Path) -> shapely.Polygon:
    """A closed path as the polygon of an outside library."""
    return shapely.Polygon([(point.x, point.y) for point in path.flattened(0.001)])
