"""Is each edge a fair line: no kink, no S where none was drawn?"""

from collections.abc import Iterator
from itertools import pairwise

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.corners import corner
from notchbook.checks.measured import Dense, dense, end_direction, length, start_direction, wrapped
from notchbook.checks.subject import Subject
from notchbook.checks.traced import traced_edges
from notchbook.checks.turning import Stretch, stretches
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Finding, Piece, Severity, split_side, spoken

_AT_HIP = 15.0
"""mm over the hip line down from which a skirt may begin to flare. Own judgment."""

_JUDGED_BY_SHAPE = frozenset({"armhole", "cap_front", "cap_back"})
"""Edges that may or must bend both ways: their own checks say where."""


@check(
    id="fair-edges",
    title="Edges are fair lines",
    rationale=(
        "A line drawn with a curve ruler has no kink and bends one way between its marks. A kink inside "
        "an edge shows as a corner when sewn; a curve that wavers cannot be followed by a foot and looks "
        "like a mistake. Both come from pulling a curve through a point that lies off it. Where an armhole "
        "and a sleeve cap may bend both ways is the business of their own checks, and a side seam that runs "
        "over the waist to the hip, or flares below the hip, may change once, and so may a seam of a "
        "two-piece sleeve, between the elbow and a hem square to it, and a hem that is let out at the center "
        "front for a full bust, level at center and side; an edge that a step was asked to draw with a wave "
        "has as many changes as were asked; another that is meant to is declared in the profile."
    ),
    severity=Severity.LOOK,
    reads=("edges",),
    messages={
        "edge-kinked": "{edge} has a corner within it.",
        "edge-wavers": "{edge} bends first one way, then the other.",
    },
    suggestion="Move the point that pulls the line; split the edge where a corner is meant.",
)
def fair_edges(subject: Subject) -> Iterator[Finding]:
    """Kinks within edges, and edges that bend both ways, degrees."""
    traced = traced_edges(subject.pattern)
    for piece in subject.pattern.pieces.values():
        for edge in piece.outline:
            kinks = list(_kinks(subject, piece, edge))
            yield from kinks
            if edge.name in traced:
                continue
            if not kinks and not _JUDGED_BY_SHAPE & set(_words(edge.name)):
                yield from _wavers(subject, piece, edge)


def _runs_over_waist(piece: Piece, edge: Edge) -> bool:
    """Whether the edge is a side seam that is hollow at the waist and round at the hip: it changes once."""
    words = {word for line in piece.lines for word in _words(line.name)}
    return "side_seam" in _words(edge.name) and "waist_line" in words


def _shapes_alone(piece: Piece, edge: Edge, line: Dense, changes: list[tuple[Stretch, Stretch]]) -> bool:
    """Whether the edge is the side seam of a panel without darts, which it shapes alone: round at the bust,
    hollow at the waist, round at the hip, so that it changes once above the waist and once below."""
    waists = [mark.path.start.y for mark in piece.lines if "waist_line" in _words(mark.name)]
    has_darts = bool(piece.intakes or piece.inner_darts)
    if len(changes) != 2 or "side_seam" not in _words(edge.name) or has_darts or not waists:
        return False
    heights = sorted(float(line.at(after.begins)[1]) for _, after in changes)
    return heights[0] < waists[0] < heights[1]


def _is_panel_seam_over_waist(
    piece: Piece, edge: Edge, line: Dense, changes: list[tuple[Stretch, Stretch]]
) -> bool:
    """Whether the edge is a cut that goes on over the waist, as a princess seam to the hem does: round over
    the bust, hollow at the waist, round over the hip, so that it changes once above it and once below. Its
    part above or below a seam at the waist changes once."""
    words = _words(edge.name)
    if "style_line" in words[:-1]:
        return len(changes) < 2
    waists = [mark.path.start.y for mark in piece.lines if "waist_line" in _words(mark.name)]
    if words[-1] != "style_line" or not waists or len(changes) > 2:
        return False
    heights = sorted(float(line.at(after.begins)[1]) for _, after in changes)
    return len(changes) < 2 or heights[0] < waists[0] < heights[1]


_ARM_SEAMS = frozenset({"hind_arm_seam", "forearm_seam"})
"""The seams of a two-piece sleeve."""


def _ends_square_to_hem(
    piece: Piece, edge: Edge, line: Dense, changes: list[tuple[Stretch, Stretch]]
) -> bool:
    """Whether the edge is a seam of a tailored sleeve that ends square to its hem: it bends round the elbow,
    and below that once the other way, where it turns to the hem; at the hind arm where the sleeve narrows, at
    the forearm where it widens."""
    elbows = [mark.path.start.y for mark in piece.lines if "elbow_line" in _words(mark.name)]
    if len(changes) != 1 or not _ARM_SEAMS & set(_words(edge.name)) or not elbows:
        return False
    return bool(line.at(changes[0][1].begins)[1] < elbows[0])


_LEG_LEVELS = ("thigh_line", "knee_line", "calf_line")
"""Levels at which a leg that lies on the body is as wide as it: its inseam bends from one to the next."""

_MOST_LEG_CHANGES = 3
"""A leg is round at the thigh, hollow at the knee, round at the calf, hollow at the ankle."""

_MOST_WITHOUT_CALF = 1
"""Where no calf was measured, or the leg ends above it, it is hollow from the thigh down."""


def _follows_leg(piece: Piece, edge: Edge, changes: list[tuple[Stretch, Stretch]]) -> bool:
    """Whether the edge is the inseam of a leg that lies on the body, as its thigh line tells."""
    levels = {word for mark in piece.lines for word in _words(mark.name)}
    is_inseam = any(word.endswith("inseam") for word in _words(edge.name))
    most = _MOST_LEG_CHANGES if levels.issuperset(_LEG_LEVELS) else _MOST_WITHOUT_CALF
    return is_inseam and _LEG_LEVELS[0] in levels and len(changes) <= most


_MOST_SEAT_CHANGES = 2
"""Over the seat a back leg opening is round; at the side and at the crotch it continues the hollow front."""


def _covers_seat(piece: Piece, edge: Edge) -> bool:
    """Whether the edge is a back leg opening: it lies below its straight way over the seat, and continues the
    hollow front one at the crotch and the side."""
    is_back = "back" in _words(piece.name)[0].rpartition(".")[2].split("_")
    return is_back and "leg_opening" in _words(edge.name)


def _runs_from_center_to_center(edge: Edge) -> bool:
    """Whether the edge is a waist that is low in front, high behind, and square to both centers."""
    ends = {_words(end)[-1] for end in (edge.start, edge.end)}
    return ends == {"waist_center_front", "waist_center_back"}


def _runs_from_center_to_side(piece: Piece, edge: Edge, square: float) -> bool:
    """Whether the edge is a hem that lies lower at the center than at the side, as over a full bust, and runs
    to both ends level, or square to what meets it there, within so many degrees."""
    ends = {
        _words(name)[-1]: point for name, point in ((edge.start, edge.path.start), (edge.end, edge.path.end))
    }
    if ends.keys() != {"hem_center", "hem_side"} or ends["hem_center"].y >= ends["hem_side"].y:
        return False
    if abs(wrapped(end_direction(edge.path) - start_direction(edge.path))) <= square:
        return True
    corners = (corner(piece, edge, "start"), corner(piece, edge, "end"))
    return all(abs(one.degrees - 90.0) <= square for one in corners)


def _flares_from_hip(piece: Piece, edge: Edge, line: Dense, change: tuple[Stretch, Stretch]) -> bool:
    """Whether the edge is a seam that is round over the hip and flares below: it changes once. An inseam lies
    below the hip, and a crotch seam is hollow only."""
    levels = [mark.path.start.y for mark in piece.lines if "hip_line" in _words(mark.name)]
    reaches_hip = levels and max(edge.path.start.y, edge.path.end.y) >= max(levels) - _AT_HIP
    if not reaches_hip or any(word.endswith("crotch_seam") for word in _words(edge.name)):
        return False
    runs_up = edge.path.end.y > edge.path.start.y
    below, above = change if runs_up else change[::-1]
    hollow, is_round = -below.turned, above.turned
    at_hip = bool(line.at(change[1].begins)[1] <= max(levels) + _AT_HIP)
    return edge.kind == "seam" and at_hip and hollow > 0.0 and is_round > 0.0


def _words(name: str) -> tuple[str, ...]:
    return tuple(split_side(name)[0].split("/"))


def _is_leg_over_waist(piece: Piece, edge: Edge) -> bool:
    """Whether the edge is a leg of half a double-ended dart, cut off above or below the waist: it bends there
    once, where the dart is widest."""
    waists = [line.path.start.y for line in piece.lines if "waist_line" in _words(line.name)]
    heights = (edge.path.start.y, edge.path.end.y)
    return edge.kind == "leg" and any(min(heights) < waist < max(heights) for waist in waists)


def _kinks(subject: Subject, piece: Piece, edge: Edge) -> Iterator[Finding]:
    parts = [Path((segment,)) for segment in edge.path.segments]
    parts = [part for part in parts if length(part) > subject.limits.shortest]
    if _is_leg_over_waist(piece, edge) and len(parts) == 2:
        return
    for before, after in pairwise(parts):
        turn = wrapped(start_direction(after) - end_direction(before))
        if abs(turn) > subject.limits.kink:
            yield fair_edges.finding(
                "edge-kinked",
                Spot(piece.name, edge.name, after.start),
                Reading(abs(turn), 0.0, "deg"),
                edge=spoken(edge.name),
            )


def _wavers(subject: Subject, piece: Piece, edge: Edge) -> Iterator[Finding]:
    """A change of the side to which the edge turns, where it turns visibly before and after."""
    line = dense(edge.path)
    changes = list(pairwise(stretches(line, subject.limits.inflection)))
    if len(changes) <= subject.waves.get(edge.name, 0):
        return
    if len(changes) == 1 and (
        _runs_over_waist(piece, edge)
        or _runs_from_center_to_center(edge)
        or _runs_from_center_to_side(piece, edge, subject.limits.square)
        or _flares_from_hip(piece, edge, line, changes[0])
    ):
        return
    if len(changes) <= _MOST_SEAT_CHANGES and _covers_seat(piece, edge):
        return
    if _shapes_alone(piece, edge, line, changes) or _follows_leg(piece, edge, changes):
        return
    if _is_panel_seam_over_waist(piece, edge, line, changes):
        return
    if _ends_square_to_hem(piece, edge, line, changes):
        return
    for before, after in changes:
        x, y = line.at(after.begins)
        yield fair_edges.finding(
            "edge-wavers",
            Spot(piece.name, edge.name, Point(float(x), float(y))),
            Reading(min(abs(before.turned), abs(after.turned)), 0.0, "deg"),
            edge=spoken(edge.name),
        )
