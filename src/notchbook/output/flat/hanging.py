"""What is hung beside or along the body: half of a sleeve from the crown, bands and collars as strips."""

from collections.abc import Iterator, Mapping

from shapely.geometry import LineString, Polygon
from shapely.geometry import box as rectangle_between

from notchbook.geometry import Path, Point, Transform
from notchbook.output.flat.joined import Placing, pieces_of, sewn_side
from notchbook.output.flat.outer import ViewWord, is_outer, is_sleeve, strip_pieces
from notchbook.output.flat.shapes import FlatShape
from notchbook.pattern import EdgeUse, Pattern, Piece, Seam, run_of
from notchbook.pattern.names import last_word, split_side

HANG = 24.0
"""Degrees by which a sleeve hangs off the plumb line, so that it stands clear of the body."""

_FINE = 0.2

_AT_CENTER = 2.0
"""mm from the center within which a strip goes on to the other side."""

_FAR = 5000.0


def sleeve_shapes(pattern: Pattern, view: ViewWord, motions: Mapping[str, Placing]) -> Iterator[FlatShape]:
    """The half of each sleeve that is seen from this side, its crown at the shoulder point."""
    for seam in pattern.seams.values():
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            sleeves = [one for one in pieces_of(pattern, other) if is_sleeve(pattern.pieces[one])]
            bodies = [one for one in pieces_of(pattern, own) if one in motions]
            if sleeves and bodies:
                sleeve = max((pattern.pieces[one] for one in sleeves), key=_area)  # of two the top sleeve
                body = sewn_side(pattern, own, bodies[0])
                if body is not None and is_outer(sleeve):
                    tops = (motions[bodies[0]](place) for place in (body.start, body.end))
                    yield from _hung(sleeve, max(tops, key=lambda place: place.y), view)
                    return


def _area(piece: Piece) -> float:
    return abs(piece.sew_line.area())


def _hung(sleeve: Piece, shoulder: Point, view: ViewWord) -> Iterator[FlatShape]:
    """The half of the sleeve toward this side of the body, its crown laid on the shoulder."""
    crown = max(sleeve.sew_line.flattened(_FINE), key=lambda place: place.y)
    toward_right = _half_lies_right(sleeve, view, crown)
    low, high = (crown.x, crown.x + _FAR) if toward_right else (crown.x - _FAR, crown.x)
    outline = Polygon([(place.x, place.y) for place in sleeve.sew_line.flattened(_FINE)]).buffer(0.0)
    half = outline.intersection(rectangle_between(low, -_FAR, high, _FAR))
    parts = [part for part in getattr(half, "geoms", [half]) if isinstance(part, Polygon)]
    if not parts:
        return
    largest = max(parts, key=lambda part: part.area)
    places = [Point(x, y) for x, y in largest.exterior.coords[:-1]]
    fill = Path.polyline(places, closed=True)
    shape = FlatShape(fill, (fill,))
    outward = -1.0 if shoulder.x < 0.0 else 1.0
    # The fold of the flat sleeve is its outer line: the underarm must lie toward the body.
    turned = shape if toward_right == (outward < 0.0) else shape.transformed(_reflected(crown.x))
    moved = Transform.translation(shoulder.x - crown.x, shoulder.y - crown.y)
    yield turned.transformed(moved).transformed(Transform.rotation(HANG * outward, shoulder))


def _reflected(x: float) -> Transform:
    return Transform.reflection(Point(x, 0.0), Point(x, 1.0))


def _half_lies_right(sleeve: Piece, view: ViewWord, crown: Point) -> bool:
    """Whether the half of this view lies toward larger x: by the edges that say front or back."""
    for edge in sleeve.outline:
        if view in split_side(last_word(edge.name))[0].split("_"):
            return edge.path.point_at(edge.length / 2.0).x > crown.x
    return view == "front"


def strip_shapes(pattern: Pattern, motions: Mapping[str, Placing]) -> Iterator[FlatShape]:
    """Bands, cuffs and collars as strips outside the edges that they are sewn to."""
    strips = {piece.name for piece in strip_pieces(pattern)}
    for seam in pattern.seams.values():
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            sewn_on = [one for one in pieces_of(pattern, other) if one in strips]
            if sewn_on:
                strip = pattern.pieces[sewn_on[0]]
                yield from _strips(pattern, seam, own is seam.first, strip, motions)


def _strips(
    pattern: Pattern, seam: Seam, own_is_first: bool, strip: Piece, motions: Mapping[str, Placing]
) -> Iterator[FlatShape]:
    own, other = (seam.first, seam.second) if own_is_first else (seam.second, seam.first)
    depth = _depth(strip, [step.edge.name for step in run_of(pattern, other)])
    names = pieces_of(pattern, own)
    for index, name in enumerate(names):
        side = sewn_side(pattern, own, name) if name in motions and depth > 0.0 else None
        if side is None:
            continue
        inside = LineString([(p.x, p.y) for p in (side.run.start, *(s.end for s in side.run.segments))])
        way = "right" if _runs_with_outline(pattern, own, name) else "left"
        beyond = inside.parallel_offset(depth, way, join_style="mitre")
        if beyond.is_empty or beyond.geom_type != "LineString":
            continue
        outer = [Point(x, y) for x, y in beyond.coords]
        inner = [Point(x, y) for x, y in inside.coords]
        if outer[0].distance_to(inner[-1]) > outer[-1].distance_to(inner[-1]):
            outer = outer[::-1]
        closed = Path.polyline([*inner, *outer], closed=True)
        goes_on = (
            index > 0 and names[index - 1] in motions,
            index + 1 < len(names) and names[index + 1] in motions,
        )
        ends = ((inner[0], outer[-1]), (inner[-1], outer[0]))
        sides = [
            Path.line(*end)
            for end, more in zip(ends, goes_on, strict=True)
            if not more and abs(motions[name](end[0]).x) > _AT_CENTER
        ]
        lines = (Path.polyline(inner), Path.polyline(outer), *sides)
        yield FlatShape(closed, lines).placed(motions[name])


def _runs_with_outline(pattern: Pattern, uses: tuple[EdgeUse, ...], piece: str) -> bool:
    """Whether the run goes along the edges of the piece as its outline does, counter-clockwise."""
    return next(step.forward for step in run_of(pattern, uses) if pattern.carriers[step.edge.name] == piece)


def _depth(strip: Piece, sewn: list[str]) -> float:
    """How wide the strip is when it is finished: from its sewn edge to its fold, else to its far edge."""
    edges = [strip.edge(name).path for name in sewn if name in {e.name for e in strip.outline}]
    if not edges:
        return 0.0
    middle = edges[0].point_at(edges[0].length / 2.0)
    folds = [line.path for line in strip.lines if line.kind in ("fold_line", "roll_line")]
    if folds:
        return min(path.nearest(middle).gap for path in folds)
    places = strip.sew_line.flattened(1.0)
    return max(edges[0].nearest(place).gap for place in places) if len(sewn) == 1 else 0.0
