"""The front as a panel: its bust dart opened, the points drawn back, the levels on it."""

from dataclasses import dataclass
from itertools import pairwise

from notchbook.blocks.bodice_pieces.dart_places import (
    FROM_WAIST,
    Cut,
    DartPlace,
    OpenedFront,
    Share,
    cut_of,
    edge_path,
)
from notchbook.blocks.bodice_pieces.dart_point import dart_angle, drawn_back, with_short_points
from notchbook.blocks.bodice_pieces.panel import Level, PanelShape
from notchbook.blocks.bodice_pieces.waist_darts import waist_words
from notchbook.blocks.upper.shapes import FrontHalf
from notchbook.geometry import Path, Point
from notchbook.units import TOLERANCES

BUST_DART = "bust_dart"
CONTOUR_DART = "contour_dart"
WAIST_UNDER_BUST = "waist_under_bust"

CONTOUR_SHORTER = 25.0
"""mm by which the small dart in the neck ends farther from the bust point than the bust dart, so that the
two points do not meet. Common practice, no source."""


SECOND_LOWER = 15.0
"""mm that the second waist dart ends lower than the first. Common practice, no source."""

CLEAR_OF_DART = 20.0
"""mm, upright, that the point of a waist dart stays below a dart from the side seam. Common practice, no
source."""


@dataclass(frozen=True, slots=True)
class FrontDarts:
    """What is drawn of the front's darts: the place of the bust dart (None: no bust shaping), whether there
    is a dart in the neck, how wide its mouth is to be, how far points are drawn back, and how much of the
    side seam stays whole above the waist, mm."""

    bust_dart: DartPlace | None
    has_contour_dart: bool = False
    contour: float = 0.0
    short_by: float = 25.0
    from_waist: float = FROM_WAIST


def front_panel(front: FrontHalf, darts: FrontDarts, bust_side: Point) -> PanelShape:
    """The front with its darts where they are wanted, before names. ``bust_side`` is where the bust line
    meets the side seam, in the lower frame."""
    words = waist_words(len(front.waist_darts), darts.bust_dart == "waist")
    opened = OpenedFront(front, shares_of(front, darts), words, darts.from_waist)
    return PanelShape(
        "front",
        with_short_points(opened.runs, _short_by(opened, darts.short_by)),
        (_bust_line(opened, bust_side), _across_chest_line(opened)),
        (("bust_point", front.bust_point), *(_foot(opened) if darts.bust_dart else ())),
    )


def _foot(opened: OpenedFront) -> tuple[tuple[str, Point], ...]:
    """Where the front length ends on a front that has no dart at the waist: right below the bust point."""
    run, bust = opened.run("waist"), opened.front.bust_point
    if run.openings or not 0.0 < bust.x < run.parts[0].end.x:
        return ()
    reach = Point(0.0, bust.y)
    (crossing, *_) = run.parts[0].intersections(Path.line(bust - reach * 2.0, bust))
    return ((WAIST_UNDER_BUST, crossing.point),)


def _short_by(opened: OpenedFront, by: float) -> dict[str, float]:
    """How far each dart is drawn back, mm: those that point at the bust, and those in the way of one."""
    bust = opened.front.bust_point
    found: dict[str, float] = {}
    for opening in (opening for run in opened.runs for opening in run.openings):
        if _is_at(opening.point, bust):
            more = CONTOUR_SHORTER if opening.dart == CONTOUR_DART else 0.0
            found[opening.dart] = drawn_back(by + more, opening.leg)
        elif (drop := opening.point.y - _highest(opened, opening.point.x, by)) > 0.0:
            found[opening.dart] = drop
    return found


def _highest(opened: OpenedFront, place: float, by: float) -> float:
    """How high the point of the second waist dart may lie at its x: lower than that of the first, and clear
    of a dart from the side seam."""
    bust = opened.front.bust_point
    first = opened.run("waist").openings[0]
    highest = bust.y - drawn_back(by, first.leg) - SECOND_LOWER
    side = opened.run("side_seam").openings
    if side:
        share = (place - bust.x) / (side[0].first.x - bust.x)
        highest = min(highest, bust.lerp(side[0].first, share).y - CLEAR_OF_DART)
    return highest


def shares_of(front: FrontHalf, darts: FrontDarts) -> tuple[Share, ...]:
    """The angle of the bust dart shared out; the neck's part first, for it is asked by its width."""
    if darts.bust_dart is None:
        return ()
    neck = _contour_angle(front, darts.contour) if darts.has_contour_dart else 0.0
    found = [Share(BUST_DART, darts.bust_dart, front.dart_angle - neck)]
    if darts.has_contour_dart:
        found.append(Share(CONTOUR_DART, "neck", neck))
    return tuple(found)


def _contour_angle(front: FrontHalf, contour: float) -> float:
    """The angle that opens the neck by ``contour`` mm, at most the whole dart."""
    cut = cut_of(front, Share(CONTOUR_DART, "neck", 0.0))
    mouth = edge_path(front, "neck").point_at(cut.distance)
    return min(dart_angle(contour, mouth.distance_to(front.bust_point)), front.dart_angle)


def _is_at(point: Point, other: Point) -> bool:
    return point.distance_to(other) < 0.5


def _bust_line(opened: OpenedFront, outer: Point) -> Level:
    """From the center over the bust point to ``outer`` on the side seam (in the lower frame): level, or
    falling to an underarm that lies lower. Straight where the bust dart is closed at the side, in two
    parts where it opens below."""
    bust = opened.front.bust_point
    distance = edge_path(opened.front, "side_seam").nearest(outer).distance_along
    center, side = Point(0.0, bust.y), opened.motion_at("side_seam", distance).apply(outer)
    if side.distance_to(outer) > TOLERANCES.join:
        return Level("bust_line", (Path.line(center, bust), Path.line(bust, side)))
    is_level = abs(outer.y - bust.y) <= TOLERANCES.join
    return Level("bust_line", (Path.polyline([center, outer] if is_level else [center, bust, outer]),))


def _across_chest_line(opened: OpenedFront) -> Level:
    """Level with the place where the armhole is upright, in parts where darts open across it.

    The parts end at a dart as it opens from the bust point: what its drawn-back point leaves unsewn there
    is room for the bust, and no part of the width.
    """
    front = opened.front
    end = front.across
    distance = edge_path(front, "armhole").nearest(end).distance_along
    passed = [cut for cut in opened.cuts if _opens_after(cut, distance)]
    stops = [end, *(_on_ray(front, cut, end.y) for cut in passed), Point(0.0, end.y)]
    angle = opened.opened_before("armhole", distance)
    parts: list[Path] = []
    for index, (outer, inner) in enumerate(pairwise(stops)):
        if index:
            angle += passed[index - 1].share.angle
        motion = opened.turned("armhole", angle)
        parts.append(Path.line(motion.apply(inner), motion.apply(outer)))
    return Level("across_chest_line", tuple(reversed(parts)))


def _opens_after(cut: Cut, distance: float) -> bool:
    """Whether a dart opens on the way round from the armhole at a distance to the neck pit."""
    if cut.edge == "armhole":
        return cut.distance > distance
    return cut.edge in ("shoulder", "neck")


def _on_ray(front: FrontHalf, cut: Cut, level: float) -> Point:
    """Where the dart's line from the bust point is met at a height, in the frame of its edge."""
    mouth = edge_path(front, cut.edge).point_at(cut.distance)
    bust = front.bust_point
    share = 0.0 if mouth.y == bust.y else (level - bust.y) / (mouth.y - bust.y)
    return bust.lerp(mouth, min(max(share, 0.0), 1.0))
