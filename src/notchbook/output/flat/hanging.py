"""What is hung beside or along the body: half of a sleeve from the crown, bands and collars as strips."""

from collections.abc import Iterator, Mapping, Sequence

from shapely.geometry import Polygon
from shapely.geometry import box as rectangle_between

from notchbook.geometry import Point, Transform
from notchbook.output.flat.cuffed import with_cuff
from notchbook.output.flat.joined import Placing, pieces_of, sewn_side
from notchbook.output.flat.outer import ViewWord, is_outer, is_sleeve
from notchbook.output.flat.shapes import FlatShape
from notchbook.output.flat.yoke import shoulder_point
from notchbook.pattern import EdgeUse, Pattern, Piece
from notchbook.pattern.names import last_word, split_side

HANG = 24.0
"""Degrees by which a sleeve hangs off the plumb line, so that it stands clear of the body."""

_FINE = 0.2

_FAR = 5000.0


def sleeve_shapes(pattern: Pattern, view: ViewWord, motions: Mapping[str, Placing]) -> Iterator[FlatShape]:
    """The half of each sleeve that is seen from this side, its crown at the shoulder point."""
    for seam in pattern.seams.values():
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            sleeves = [one for one in pieces_of(pattern, other) if is_sleeve(pattern.pieces[one])]
            bodies = [one for one in pieces_of(pattern, own) if one in motions]
            if sleeves and bodies:
                sleeve = max((pattern.pieces[one] for one in sleeves), key=_area)  # of two the top sleeve
                top = _shoulder(pattern, own, bodies, motions)
                if top is not None and is_outer(sleeve):
                    yield from _hung(pattern, sleeve, top, view)
                    return


def _shoulder(
    pattern: Pattern, armhole: tuple[EdgeUse, ...], bodies: Sequence[str], motions: Mapping[str, Placing]
) -> Point | None:
    """The upper end of the armhole in the view; on a yoke where the shoulder seam would lie."""
    for name in bodies:
        on_yoke = shoulder_point(pattern.pieces[name])
        if on_yoke is not None:
            return motions[name](on_yoke)
    body = sewn_side(pattern, armhole, bodies[0])
    if body is None:
        return None
    return max((motions[bodies[0]](place) for place in (body.start, body.end)), key=lambda place: place.y)


def _area(piece: Piece) -> float:
    return abs(piece.sew_line.area())


def _hung(pattern: Pattern, sleeve: Piece, shoulder: Point, view: ViewWord) -> Iterator[FlatShape]:
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
    for shape in with_cuff(pattern, sleeve, places):
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
