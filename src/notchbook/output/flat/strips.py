"""Bands and collars in the flat: strips outside the edges that they are sewn to, and falls over them."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from shapely.geometry import LineString

from notchbook.geometry import Path, Point
from notchbook.output.flat.collar_back import back_of_collar
from notchbook.output.flat.hood import hood_half, is_hood
from notchbook.output.flat.joined import Placing, pieces_of, sewn_side
from notchbook.output.flat.lying_collar import lies_flat, lying_collar, roll_stand, shoulder_at
from notchbook.output.flat.outer import ViewWord, strip_pieces, words_of
from notchbook.output.flat.shapes import FlatShape
from notchbook.output.flat.shawl import edge_of, has_shawl, shawl_roll
from notchbook.output.flat.yoke import run_in
from notchbook.pattern import EdgeUse, Pattern, Piece, run_of
from notchbook.pattern.names import last_word

_AT_CENTER = 2.0
"""mm from the center within which a strip goes on to the other side."""

_GORGE = "gorge"

_COLLARS = frozenset({"collar", "stand"})
"""Words of the pieces that stand up at the neck."""

_MEET = 2.0
"""mm within which the runs of two pieces go on into each other."""

_BEYOND = 20.0
"""mm from the center within which the front end of a collar lies on it or on a button stand."""

_FAR = 500.0
"""mm; wider than any strip."""

_CLEAR = 12.0
"""mm from the point of a collar to where its outer edge follows the neck."""


def strip_shapes(pattern: Pattern, motions: Mapping[str, Placing], view: ViewWord) -> Iterator[FlatShape]:
    """Bands, cuffs and collars as strips outside the edges that they are sewn to; falls over them last."""
    falls: list[FlatShape] = []
    for strip in _sewn_strips(pattern, motions):
        fall = _fall_on(pattern, strip.piece)
        for run in _runs(pattern, strip.own, motions, view):
            way = "right" if _runs_with_outline(pattern, strip.own, run) else "left"
            piece, stand = pattern.pieces[strip.piece], roll_stand(pattern.pieces[strip.piece])
            if lies_flat(piece):
                shoulder, is_front = _shoulder(pattern, run, motions), view == "front"
                goes_on = not is_front and _is_whole_behind(pattern, piece)
                falls.extend(lying_collar(piece, run[1], shoulder, is_front=is_front, goes_on=goes_on))
            elif stand > 0.0:
                falls.extend(_fall(run[1], _Falls(piece, stand, _center_width(piece) - stand, True), way))
            else:
                yield from _strip(run[1], strip.depth, way)
            if fall is not None:
                falls.extend(_fall(run[1], _Falls(fall, strip.depth, _center_width(fall)), way))
    if view == "back":
        falls.extend(_shawl_falls(pattern, motions))
    falls.extend(_hoods(pattern, motions, view))
    yield from falls


def _hoods(pattern: Pattern, motions: Mapping[str, Placing], view: ViewWord) -> Iterator[FlatShape]:
    """The hoods that are sewn to a neck."""
    for seam in pattern.seams.values():
        sewn = [pattern.pieces[name] for name in pieces_of(pattern, seam.first)]
        hood = next((piece for piece in sewn if is_hood(piece)), None)
        if hood is None or seam.allowance_class != "neckline":
            continue
        middle = next((2.0 * piece.bounds.width for piece in sewn if not is_hood(piece)), 0.0)
        for run in _runs(pattern, seam.second, motions, view):
            yield from hood_half(hood, run[1], middle, is_front=view == "front")


def _shawl_falls(pattern: Pattern, motions: Mapping[str, Placing]) -> Iterator[FlatShape]:
    """The fall of a collar that is cut on the front, on the back neck."""
    for seam in pattern.seams.values():
        fronts = [pattern.pieces[name] for name in pieces_of(pattern, seam.first)]
        front = next((piece for piece in fronts if has_shawl(piece)), None)
        neck = edge_of(front, "neck_edge") if front is not None else None
        if front is None or neck is None or neck.name not in {use.edge for use in seam.first}:
            continue
        roll, width = shawl_roll(front), _center_width(front)
        stand = neck.path.nearest(roll.end).gap if roll is not None else 0.0
        for run in _runs(pattern, seam.second, motions, "back"):
            way = "right" if _runs_with_outline(pattern, seam.second, run) else "left"
            yield from _fall(run[1], _Falls(front, stand, width - stand, True), way)


def collar_backs(pattern: Pattern, motions: Mapping[str, Placing]) -> Iterator[FlatShape]:
    """What is seen from the front of the back of each collar: it lies inside the neck, below all else."""
    for strip in _sewn_strips(pattern, motions):
        piece = pattern.pieces[strip.piece]
        stand = roll_stand(piece)
        if lies_flat(piece) or not (words_of(piece) & _COLLARS or stand):
            continue
        for run in _runs(pattern, strip.own, motions, "front"):
            inner = run[1]
            way = "right" if _runs_with_outline(pattern, strip.own, run) else "left"
            outer = _beside(inner, stand or strip.depth, way)
            if outer is not None:
                at = max((0, -1), key=lambda end: inner[end].y)
                yield back_of_collar(inner[at], outer[at])


@dataclass(frozen=True, slots=True)
class _SewnStrip:
    """The name of a strip, the run that it is sewn to, and how wide it is when finished."""

    piece: str
    own: tuple[EdgeUse, ...]
    depth: float


def _sewn_strips(pattern: Pattern, motions: Mapping[str, Placing]) -> Iterator[_SewnStrip]:
    """The strips that are seen: of several layers sewn to one run the first."""
    faced: set[tuple[EdgeUse, ...]] = set()
    strips = {piece.name for piece in strip_pieces(pattern) if piece.name not in motions}
    for seam in pattern.seams.values():
        if any(last_word(use.edge) == _GORGE for use in (*seam.first, *seam.second)):
            continue  # a collar on a lapel is drawn with it
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            sewn_on = [one for one in pieces_of(pattern, other) if one in strips]
            depth = strip_depth(pattern, other, sewn_on)
            if depth > 0.0 and own not in faced:
                faced.add(own)
                yield _SewnStrip(sewn_on[0], own, depth)


_Run = tuple[str, list[Point]]
"""The piece on which a run begins, and its places in the view."""


def _runs(
    pattern: Pattern, uses: tuple[EdgeUse, ...], motions: Mapping[str, Placing], view: ViewWord
) -> list[_Run]:
    """The run where this view shows it, over several pieces as far as they meet."""
    found: list[_Run] = []
    for name in pieces_of(pattern, uses):
        side = sewn_side(pattern, uses, name) if name in motions else None
        if side is None:
            continue
        run = run_in(pattern.pieces[name], side.run, view)
        places = [motions[name](place) for place in (run.start, *(one.end for one in run.segments))]
        if found and found[-1][1][-1].distance_to(places[0]) <= _MEET:
            found[-1][1].extend(places[1:])
        else:
            found.append((name, places))
    return found


def _is_whole_behind(pattern: Pattern, collar: Piece) -> bool:
    """Whether a layer of the collar goes on over the center back without a seam."""
    layers = [piece for piece in pattern.pieces.values() if piece.rule == collar.rule and lies_flat(piece)]
    return any(piece.cut != "pair" for piece in layers)


def _shoulder(pattern: Pattern, run: _Run, motions: Mapping[str, Placing]) -> tuple[Point, Point] | None:
    """The ends of the shoulder of the piece where the run lies, that at the neck first."""
    piece, places = pattern.pieces[run[0]], run[1]
    ends = [(motions[run[0]](edge.path.start), motions[run[0]](edge.path.end)) for edge in piece.outline]
    return shoulder_at(piece, ends, max((places[0], places[-1]), key=lambda place: abs(place.x)))


def _runs_with_outline(pattern: Pattern, uses: tuple[EdgeUse, ...], run: _Run) -> bool:
    """Whether the run goes along the edges of its first piece as its outline does, counter-clockwise."""
    return next(step.forward for step in run_of(pattern, uses) if pattern.carriers[step.edge.name] == run[0])


def _strip(inner: Sequence[Point], depth: float, way: str) -> Iterator[FlatShape]:
    outer = _beside(_over_center(inner), depth, way)
    if outer is None:
        return
    outer = _up_to_center(inner, outer)
    closed = Path.polyline([*inner, *outer[::-1]], closed=True)
    ends = ((inner[0], outer[0]), (inner[-1], outer[-1]))
    sides = [Path.line(*end) for end in ends if abs(end[0].x) > _AT_CENTER]
    yield FlatShape(closed, (Path.polyline(inner), Path.polyline(outer), *sides))


def _over_center(inner: Sequence[Point]) -> list[Point]:
    """The run led on to the other side of the wearer where it ends at the center, so that what runs beside it
    is as smooth there."""
    other = [Point(-place.x, place.y) for place in reversed(inner)]
    before = other[:-1] if abs(inner[0].x) <= _AT_CENTER else []
    after = other[1:] if abs(inner[-1].x) <= _AT_CENTER else []
    return [*before, *inner, *after]


def _up_to_center(inner: Sequence[Point], outer: Sequence[Point]) -> list[Point]:
    """Of the outer line of a strip what lies on the side of its run, up to the center line where the run
    ends on it, so that both sides of the wearer meet there."""
    outward = -1.0 if sum(place.x for place in inner) < 0.0 else 1.0
    kept = [place for place in outer if outward * place.x > 0.0]
    if not kept or min(abs(inner[0].x), abs(inner[-1].x)) > _AT_CENTER:
        return list(outer)
    first = [Point(0.0, kept[0].y)] if abs(inner[0].x) <= _AT_CENTER else []
    last = [Point(0.0, kept[-1].y)] if abs(inner[-1].x) <= _AT_CENTER else []
    return [*first, *kept, *last]


@dataclass(frozen=True, slots=True)
class _Falls:
    """A fall: its ``piece``, the ``stand`` that it lies over and its ``width``, mm; ``rolls``: its stand is
    of one piece with it and runs out at the front of the neck."""

    piece: Piece
    stand: float
    width: float
    rolls: bool = False


def _fall(run: Sequence[Point], fall: _Falls, way: str) -> Iterator[FlatShape]:
    """The fall turned down over the stand: from its upper edge to below the seam, with its point."""
    upper = _beside(run, fall.stand, way)
    below = _beside(run, max(fall.width - fall.stand, 1.0), "left" if way == "right" else "right")
    if upper is None or below is None:
        return
    if abs(run[0].x) <= _BEYOND < abs(run[-1].x):
        if fall.rolls:
            upper = [run[0], *upper[len(upper) // 2 :]]
        front = _front_edge(fall.piece)
        outward = -1.0 if run[-1].x < 0.0 else 1.0
        start = Point(0.0, upper[0].y)
        upper = [start, *(place for place in upper if place.x * outward > 0.0)]
        tip = start + Point(outward * 0.55, -0.84) * front
        below = [tip, *(place for place in below if (place.x - tip.x) * outward > _CLEAR)]
    closed = Path.polyline([*upper, *below[::-1]], closed=True)
    ends = ((upper[0], below[0]), (upper[-1], below[-1]))
    sides = [Path.line(*end) for end in ends if abs(end[1].x) > _AT_CENTER]
    yield FlatShape(closed, (Path.polyline(upper), Path.polyline(below), *sides))


def _beside(run: Sequence[Point], distance: float, way: str) -> list[Point] | None:
    """The run moved square to itself, in its direction; None where nothing of it is left."""
    clean = [run[0], *(place for before, place in pairwise(run) if before.distance_to(place) > 1e-6)]
    if len(clean) < 2:
        return None
    moved = LineString([(place.x, place.y) for place in clean]).parallel_offset(
        distance, way, join_style="mitre"
    )
    if moved.is_empty or moved.geom_type != "LineString":
        return None
    places = [Point(x, y) for x, y in moved.coords]
    if places[0].distance_to(clean[0]) > places[-1].distance_to(clean[0]):
        places.reverse()
    return places


def strip_depth(pattern: Pattern, uses: tuple[EdgeUse, ...], sewn_on: Sequence[str]) -> float:
    """How wide the strip is when it is finished: from its sewn edge to its fold, else to its far edge."""
    if not sewn_on:
        return 0.0
    strip = pattern.pieces[sewn_on[0]]
    sewn = [step.edge.name for step in run_of(pattern, uses)]
    edges = [strip.edge(name).path for name in sewn if name in {e.name for e in strip.outline}]
    if not edges:
        return 0.0
    middle = edges[0].point_at(edges[0].length / 2.0)
    folds = [line.path for line in strip.lines if line.kind in ("fold_line", "roll_line")]
    if folds:
        return min(path.nearest(middle).gap for path in folds)
    return _across(strip, edges[0]) if len(edges) == 1 else 0.0


def _across(strip: Piece, sewn: Path) -> float:
    """How far the far edge of the strip lies from the middle of its sewn edge, square to that."""
    half = sewn.length / 2.0
    middle, square = sewn.point_at(half), sewn.tangent_at(half).perpendicular()
    beyond = Path.line(middle - square * _FAR, middle + square * _FAR)
    return max(
        middle.distance_to(beyond.point_at(met.at_self)) for met in beyond.intersections(strip.sew_line)
    )


def _fall_on(pattern: Pattern, stand: str) -> Piece | None:
    """The fall that is sewn to a stand."""
    slug = stand.split(".", 1)[0]
    falls = [piece for piece in pattern.pieces.values() if "fall" in words_of(piece)]
    return next((piece for piece in falls if piece.name.split(".", 1)[0] == slug), None)


def _center_width(fall: Piece) -> float:
    """How wide the fall is at the center back."""
    return next((edge.length for edge in fall.outline if "center_back" in edge.name), 0.0)


def _front_edge(fall: Piece) -> float:
    """How long its front edge is."""
    return next((edge.length for edge in fall.outline if edge.name.endswith("/end")), 0.0)
