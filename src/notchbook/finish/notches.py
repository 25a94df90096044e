"""Notches of a cut piece: those that the pattern asks for, and those that every piece needs."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from notchbook.finish.cut_outline import CutOutline
from notchbook.finish.cut_piece import CutNotch
from notchbook.finish.dart_cap import is_open
from notchbook.finish.house_table import HouseTable
from notchbook.finish.strip import Strip, nearest_crossing, ray
from notchbook.finish.whole import REFLECTED_HALF
from notchbook.geometry import Point
from notchbook.pattern import Edge, Intake, InternalLine, Notch, NotchKind, Pattern, Piece, child_name, locate
from notchbook.pattern.resolve import expand
from notchbook.units import TOLERANCES

_RUNS_OUT = 0.8
"""Cosine. A fold line runs out over an edge when it is less than about 37 degrees off square to it."""


@dataclass(frozen=True, slots=True)
class NotchPlace:
    """A notch before it is cut: where on the sew line, of which edge, and the unit direction outward.

    One that is not needed is left out, instead of marked, where it cannot be slit.
    """

    name: str
    edge: str
    kind: NotchKind
    position: Point
    outward: Point
    purpose: str
    is_needed: bool = True


@dataclass(frozen=True, slots=True)
class SewnPlace:
    """A notch of the pattern on a piece of it: the edge and the distance from the edge's start, mm."""

    notch: Notch
    edge: str
    distance: float


def notches_of(pattern: Pattern, piece: Piece) -> tuple[SewnPlace, ...]:
    """The pattern's own notches that lie on the piece, in the pattern's order."""
    found = []
    for notch in pattern.notches.values():
        place = locate(pattern, notch.place)
        if place.piece == piece.name:
            found.append(SewnPlace(notch, place.edge.name, place.distance))
    return tuple(found)


def own_places(
    strips: tuple[Strip, ...], asked: tuple[SewnPlace, ...], sources: Mapping[str, str]
) -> Iterator[NotchPlace]:
    """The places that the pattern asks for, on both halves of a whole piece (``sources`` are its names).

    A center notch on an edge without allowance is not needed: the center line itself runs to the edge.
    """
    for strip in strips:
        source = sources.get(strip.edge.name, strip.edge.name)
        reflected = strip.edge.name in sources and strip.edge.name.endswith(f"@{REFLECTED_HALF}")
        for place in asked:
            if place.edge != source:
                continue
            distance = strip.edge.length - place.distance if reflected else place.distance
            yield NotchPlace(
                place.notch.name,
                strip.edge.name,
                place.notch.kind,
                strip.edge.path.point_at(distance),
                _outward(strip.edge, distance),
                place.notch.purpose,
                is_needed=place.notch.purpose != "center" or strip.width > TOLERANCES.sew_length,
            )


def dart_places(piece: Piece, strips: tuple[Strip, ...]) -> Iterator[NotchPlace]:
    """Both legs of each open dart, at its mouth, in line with the leg; both lines of each fold."""
    by_start = {strip.edge.start: strip for strip in strips}
    by_end = {strip.edge.end: strip for strip in strips}
    for intake in (one for one in piece.intakes if one.has_legs):
        if not is_open(piece, intake):
            continue
        first, second = piece.edge(intake.first_leg), piece.edge(intake.second_leg)
        inner = first.path.end, second.path.start
        if intake.is_folded:
            inner = piece.line(intake.first_line).path.end, piece.line(intake.second_line).path.end
        sides = (
            ("first", by_end.get(first.start), first.path.start, inner[0]),
            ("second", by_start.get(second.end), second.path.end, inner[1]),
        )
        purpose = "pleat" if intake.is_folded else "dart leg"
        for word, strip, mouth, point in sides:
            if strip is not None:
                name = child_name(intake.name, f"{word}_leg_notch")
                outward = (mouth - point).unit()
                yield NotchPlace(name, strip.edge.name, "single", mouth, outward, purpose)


def drawn_in_places(
    pattern: Pattern, strips: tuple[Strip, ...], sources: Mapping[str, str]
) -> Iterator[NotchPlace]:
    """Both ends of each stretch that is gathered or eased in, on both halves of a whole piece; an end at a
    corner of the piece is marked by the corner."""
    ends = dict(_drawn_in_ends(pattern))
    for strip in strips:
        intake, points = ends.get(sources.get(strip.edge.name, strip.edge.name), (None, frozenset[str]()))
        if intake is None:
            continue
        for point, distance in ((strip.edge.start, 0.0), (strip.edge.end, strip.edge.length)):
            if sources.get(point, point) in points:
                name = child_name(sources.get(point, point), "notch")
                place, outward = strip.edge.path.point_at(distance), _outward(strip.edge, distance)
                yield NotchPlace(name, strip.edge.name, "single", place, outward, intake.kind, False)


def _drawn_in_ends(pattern: Pattern) -> Iterator[tuple[str, tuple[Intake, frozenset[str]]]]:
    """For each edge that is drawn in: its intake, and those of its ends beyond which the mouth goes on."""
    for intake in pattern.intakes.values():
        if intake.is_drawn_in:
            members, whole = expand(pattern, intake.edge)[0], expand(pattern, intake.mouth)[0]
            edges = [pattern.edges[member] for member in members]
            others = [pattern.edges[member] for member in whole if member not in members]
            beside = {point for edge in others for point in (edge.start, edge.end)}
            for edge in edges:
                yield edge.name, (intake, frozenset({edge.start, edge.end} & beside))


def hem_places(strips: tuple[Strip, ...]) -> Iterator[NotchPlace]:
    """The fold of each hem, on the seams beside it, in line with the hem."""
    for first, second in zip(strips, (*strips[1:], strips[0]), strict=True):
        if first.edge.end != second.edge.start:
            continue
        tip = first.edge.path.end
        if second.edge.kind == "hem" and first.edge.kind not in ("hem", "fold") and second.width > 0.0:
            outward = -second.start_direction
            yield NotchPlace(first.edge.end, first.edge.name, "single", tip, outward, "hem fold", False)
        if first.edge.kind == "hem" and second.edge.kind not in ("hem", "fold") and first.width > 0.0:
            outward = first.end_direction
            yield NotchPlace(first.edge.end, second.edge.name, "single", tip, outward, "hem fold", False)


def fold_places(strips: tuple[Strip, ...], lines: tuple[InternalLine, ...]) -> Iterator[NotchPlace]:
    """The ends of each fold line that run out over an edge, such as the ends of a waistband (a facing fold
    is notched, as a hem fold is). One that ends in a corner is marked by the corner; where the fold of a
    pleat has run out to nothing, on the line that it is laid to, there is nothing to notch."""
    laid_to = [end for line in lines if line.kind == "placement" for end in (line.path.start, line.path.end)]
    for line in lines:
        if line.kind != "fold_line":
            continue
        path = line.path
        ends = (
            ("start", path.start, -path.tangent_at(0.0, "after")),
            ("end", path.end, path.tangent_at(path.length, "before")),
        )
        for word, place, outward in ends:
            met = [(strip, strip.edge.path.nearest(place)) for strip in strips]
            met = [(strip, found) for strip, found in met if found.gap <= TOLERANCES.closure]
            if any(place.distance_to(end) <= TOLERANCES.closure for end in laid_to):
                continue
            if met and all(
                _outward(strip.edge, found.distance_along).dot(outward) > _RUNS_OUT for strip, found in met
            ):
                name = child_name(line.name, f"{word}_notch")
                yield NotchPlace(name, met[0][0].edge.name, "single", place, outward, "fold", False)


def width_places(strips: tuple[Strip, ...]) -> Iterator[NotchPlace]:
    """Every place where the allowance changes its width along a line that runs straight on."""
    for first, second in zip(strips, (*strips[1:], strips[0]), strict=True):
        smooth = first.end_direction.dot(second.start_direction) > 0.97
        if first.edge.end != second.edge.start or not smooth:
            continue
        if abs(first.width - second.width) > TOLERANCES.sew_length:
            narrow = min(first, second, key=lambda strip: strip.width)
            tip = first.edge.path.end
            outward = -first.end_direction.perpendicular()
            yield NotchPlace(first.edge.end, narrow.edge.name, "single", tip, outward, "width changes", False)


def center_places(strips: tuple[Strip, ...], ends: tuple[str, ...]) -> Iterator[NotchPlace]:
    """The ends of the center line on a piece supplied whole."""
    for strip in strips:
        if strip.edge.end in ends:
            tip = strip.edge.path.end
            outward = -strip.end_direction.perpendicular()
            yield NotchPlace(strip.edge.end, strip.edge.name, "single", tip, outward, "center", False)


def cut_notches(places: Iterator[NotchPlace], outline: CutOutline, house: HouseTable) -> tuple[CutNotch, ...]:
    """The notches as cut; of several at one place the first one counts."""
    found: list[CutNotch] = []
    for place in places:
        notch = cut_notch(place, outline, house)
        taken = any(
            notch.sew_position.distance_to(other.sew_position) <= TOLERANCES.seam_walk
            and abs(notch.direction.cross(other.direction)) < 0.1
            for other in found
        )
        if not taken and (notch.depth > 0.0 or place.is_needed):
            found.append(notch)
    return tuple(found)


def cut_notch(place: NotchPlace, outline: CutOutline, house: HouseTable) -> CutNotch:
    """One notch on the cut line: as deep as the house wants, but ending clear of the sew line; too narrow
    an allowance is marked, not slit."""
    along = place.outward.perpendicular()
    half = house.mark("notch_spacing") / 2.0
    shifts = (0.0,) if place.kind == "single" else (-half, half)
    starts = [place.position + along * shift for shift in shifts]
    hits = [_on_cut_line(start, place.outward, outline) for start in starts]
    room = min(hit.distance_to(start) for hit, start in zip(hits, starts, strict=True))
    depth = min(house.mark("notch_depth"), room - _clearance(place, room, outline, house))
    if depth < house.mark("notch_least") - TOLERANCES.sew_length:
        depth = 0.0
    return CutNotch(
        place.name,
        place.edge,
        place.kind,
        place.position,
        tuple(hits),
        -place.outward,
        depth,
        place.purpose,
    )


def _clearance(place: NotchPlace, room: float, outline: CutOutline, house: HouseTable) -> float:
    """What a notch must leave before the sew line, along its own direction: more where it runs askew."""
    width = next((strip.width for strip in outline.strips if strip.edge.name == place.edge), room)
    askew = room / width if width > 0.0 else 1.0
    return house.mark("notch_clearance") * max(askew, 1.0)


def _on_cut_line(start: Point, outward: Point, outline: CutOutline) -> Point:
    """Where the line from the sew line outward meets the cut line; the start itself where it does not."""
    reach = max(strip.first for strip in outline.strips)
    crossing = nearest_crossing(outline.path, ray(start - outward * 1.0, outward, reach), start)
    return start if crossing is None else crossing.point


def _outward(edge: Edge, distance: float) -> Point:
    return -edge.path.tangent_at(distance).perpendicular()
