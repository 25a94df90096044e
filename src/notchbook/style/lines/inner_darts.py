"""Double-ended darts across which a style line runs: each becomes two darts that open from the line.

As where a waist seam divides a sheath: above the seam the dart points up, below it down. The line meets both
legs equally far from the points, so that the legs agree; where it lies aslant, half of what the legs would be
apart is given and half taken on either leg.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from notchbook.geometry import Line, Path, Point, curve_between
from notchbook.pattern import Edge, InnerDart, Intake, Piece, child_name, mouth_of, part_name
from notchbook.pattern.names import last_word
from notchbook.style.lines.mouths_on_line import with_smooth_mouths
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Crossed:
    """A dart that the line crosses, and how far along each leg from the upper point it is cut, mm."""

    dart: InnerDart
    cuts: Mapping[str, float]


AT_MOUTH = 6.0
"""mm; a line that passes this near to where a leg is widest goes through there, so that both darts are
straight. Own judgment: a quarter inch."""


@dataclass(frozen=True)
class AcrossInner:
    """The line parted by the darts it crosses, in its direction: ``parts`` on the cloth, between them the
    openings of the ``darts``.

    ``bare`` is the piece without these darts; ``roles`` call the parts of the line.
    """

    bare: Piece
    parts: tuple[Path, ...]
    darts: tuple[Crossed, ...]
    roles: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Called:
    """How a part is called: its role in names and its own name."""

    role: str
    name: str


@dataclass(frozen=True, slots=True)
class Opened:
    """The edges along the line of one part, legs between them, in the direction of the outline."""

    edges: tuple[Edge, ...]
    faces: tuple[str, ...]
    intakes: tuple[Intake, ...]


def across_inner(piece: Piece, face: Path, *, starts_at_center: bool) -> AcrossInner:
    """The line with the double-ended darts that it crosses once on each leg; others stay in its way.

    ``starts_at_center`` says which leg is met first where a dart takes up nothing.
    """
    found: list[tuple[float, float, Crossed]] = []
    for dart in piece.inner_darts:
        met = [face.intersections(piece.line(leg).path) for leg in (dart.center_leg, dart.side_leg)]
        if all(len(one) == 1 for one in met):
            center, side = met[0][0], met[1][0]
            crossed = _crossed(piece, dart, (center.at_other + side.at_other) / 2.0)
            found.append((center.at_self, side.at_self, crossed))
    found.sort(key=lambda one: one[0] + one[1])
    apart = sum(at_side - at_center for at_center, at_side, _ in found)
    from_center = apart > 0.0 or (apart == 0.0 and starts_at_center)
    darts = tuple(crossed for _, _, crossed in found)
    parts: list[Path] = []
    begin: float = 0.0
    start: Point | None = None
    for at_center, at_side, crossed in found:
        first, second = (at_center, at_side) if from_center else (at_side, at_center)
        places = [
            piece.line(leg).path.point_at(crossed.cuts[leg])
            for leg in _legs(crossed.dart, from_center=from_center)
        ]
        parts.append(_between(face, begin, first, start, places[0]))
        begin, start = second, places[1]
    parts.append(_between(face, begin, face.length, start, None))
    return AcrossInner(_without(piece, darts), tuple(parts), darts, _roles(darts, from_center=from_center))


def _crossed(piece: Piece, dart: InnerDart, along: float) -> Crossed:
    """The dart cut so far along both legs, or where they are widest."""
    mouths = {leg: mouth_of(piece.line(leg).path)[0] for leg in (dart.center_leg, dart.side_leg)}
    if all(abs(along - mouth) <= AT_MOUTH for mouth in mouths.values()):
        return Crossed(dart, mouths)
    return Crossed(dart, dict.fromkeys(mouths, along))


def opened_part(
    piece: Piece, across: AcrossInner, run: tuple[Edge, ...], called: Called, region: Path, *, forward: bool
) -> Opened:
    """The edges that close a run along the line, with the half of each dart that lies in its region.

    ``forward``: the outline follows the line in its own direction, else against it.
    """
    whole = part_name(called.name, "style_line")
    steps = list(zip(across.parts, across.roles, strict=True))
    darts = list(across.darts)
    if not forward:
        steps = [(path.reversed(), role) for path, role in reversed(steps)]
        darts.reverse()
    from_center = (across.roles[0] == _OUTER[0]) is forward
    halves = [_half(piece, one, called, region, from_center=from_center) for one in darts]
    paths, legs = with_smooth_mouths([path for path, _ in steps], [(one.first, one.second) for one in halves])
    edges: list[Edge] = []
    start = run[-1].end
    for path, (_, role), pair in zip(paths, steps, (*legs, None), strict=True):
        end = run[0].start if pair is None else pair[0].start
        edges.append(Edge(child_name(whole, role), path, start, end))
        if pair is not None:
            edges.extend(pair)
            start = pair[1].end
    faces = tuple(child_name(whole, role) for _, role in steps)
    return Opened(tuple(edges), faces, tuple(one.intake for one in halves))


@dataclass(frozen=True, slots=True)
class _Half:
    """One of the two darts that a double-ended dart becomes: its legs in the outline."""

    first: Edge
    second: Edge
    intake: Intake


def _half(piece: Piece, crossed: Crossed, called: Called, region: Path, *, from_center: bool) -> _Half:
    dart = crossed.dart
    is_upper = region.contains(piece.points[dart.upper_point])
    point = dart.upper_point if is_upper else dart.lower_point
    legs = _legs(dart, from_center=from_center)
    corners = [
        part_name(called.name, f"{last_word(dart.name)}_{last_word(leg).removesuffix('_leg')}_mouth")
        for leg in legs
    ]
    paths = [_to_point(piece.line(leg).path, crossed.cuts[leg], is_upper=is_upper) for leg in legs]
    names = [child_name(leg, called.role) for leg in legs]
    first = Edge(names[0], paths[0], corners[0], point, "leg")
    second = Edge(names[1], paths[1].reversed(), point, corners[1], "leg")
    folds_first = (dart.fold_toward == "center_leg") is from_center
    intake = Intake(
        child_name(dart.name, called.role),
        part_name(called.name, "style_line"),
        names[0],
        names[1],
        point,
        "first_leg" if folds_first else "second_leg",
    )
    return _Half(first, second, intake)


def splits_of(darts: Sequence[Crossed], roles: tuple[str, str]) -> Mapping[str, tuple[str, ...]]:
    """The account of the darts and their legs: each name -> its parts, from the upper point down.

    ``roles`` are those of the part with the upper points and of the other.
    """
    names = [name for one in darts for name in (one.dart.name, one.dart.center_leg, one.dart.side_leg)]
    return {name: tuple(child_name(name, role) for role in roles) for name in names}


_OUTER = ("center", "side")
"""What the parts of a line at its two ends are called: toward the center and toward the side."""


def _roles(darts: Sequence[Crossed], *, from_center: bool) -> tuple[str, ...]:
    """``center``, ``side``, and between two darts ``middle``; between more they are called by the dart."""
    if not darts:
        return ("",)
    between = ["middle"] if len(darts) == 2 else [f"by_{last_word(one.dart.name)}" for one in darts[1:]]
    first, last = _OUTER if from_center else _OUTER[::-1]
    return (first, *between, last)


def _legs(dart: InnerDart, *, from_center: bool) -> tuple[str, str]:
    """The legs in the order in which they are met."""
    return (dart.center_leg, dart.side_leg) if from_center else (dart.side_leg, dart.center_leg)


def _to_point(leg: Path, cut: float, *, is_upper: bool) -> Path:
    """The part of a leg from the line to the upper or the lower point."""
    above, below = leg.split_at(cut)
    return above.reversed() if is_upper else below


def _without(piece: Piece, darts: Sequence[Crossed]) -> Piece:
    """The piece without these darts, their legs and their points."""
    taken = {one.dart.name for one in darts}
    gone = {
        name
        for one in darts
        for name in (one.dart.center_leg, one.dart.side_leg, one.dart.upper_point, one.dart.lower_point)
    }
    return replace(
        piece,
        inner_darts=tuple(dart for dart in piece.inner_darts if dart.name not in taken),
        lines=tuple(line for line in piece.lines if line.name not in gone),
        marks=tuple(mark for mark in piece.marks if mark.name not in gone),
    )


def _between(face: Path, begin: float, end: float, start: Point | None, stop: Point | None) -> Path:
    """The line from one distance to another, its ends led to these places; a straight one keeps its direction
    at the end of the whole, so that it stays square at the center."""
    part = face.between(begin, end)
    first, last = start or part.start, stop or part.end
    if len(part.segments) == 1 and isinstance(part.segments[0], Line):
        return _led_straight(part, first, last)
    return part.with_start(first).with_end(last)


def _led_straight(part: Path, first: Point, last: Point) -> Path:
    """A straight line led to these ends: evenly bent from the end that stays, straight where both move."""
    stays = [
        one.distance_to(other) <= TOLERANCES.join for one, other in ((part.start, first), (part.end, last))
    ]
    if all(stays) or not any(stays):
        return Path.line(first, last)
    along, chord = (part.end - part.start).direction(), (last - first).direction()
    turned = 2.0 * chord - along
    leaving, arriving = (along, turned) if stays[0] else (turned, along)
    return Path.of(curve_between(first, leaving, last, arriving))
