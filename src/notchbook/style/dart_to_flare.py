"""Close a dart and let its fullness out at the hem.

The piece is slashed along the grain from the dart point to the hem; the part that does not hold the
``still`` edge turns about the dart point until the legs meet. The angle of the dart is kept, so the
hem opens by more than the dart was wide. The hem is trued with one smooth curve.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Line, Path, Point, Transform, curve_between, direction
from notchbook.pattern import (
    Edge,
    Intake,
    InternalLine,
    Pattern,
    Piece,
    closing_motion,
    require,
    require_one,
    spoken,
)
from notchbook.recipe import Change, EdgeName, IntakeName, StepContext, StepDefinition, StepParameters
from notchbook.units import TOLERANCES

_SLASH = 5000.0
"""mm; how far the slash is followed to find the hem: beyond any piece."""


class FlareParameters(StepParameters):
    """The ``intake`` (dart) that is closed, the ``hem`` that opens, and an edge that stays ``still``."""

    intake: IntakeName
    """The dart that is closed."""
    hem: EdgeName
    """The hem that opens where the dart points."""
    still: EdgeName
    """An edge of the piece that stays where it is, such as the center; what lies across the dart turns."""


def run(pattern: Pattern, context: StepContext, parameters: FlareParameters) -> Change:
    """Turn the part beside the dart about its point."""
    intake = pattern.intakes[require_one(pattern, parameters.intake, "intake")]
    piece = pattern.piece_of(intake.name)
    hem = piece.edge(_on(piece, require_one(pattern, parameters.hem)))
    still = require(pattern, parameters.still)
    after_dart = _run_names(piece, intake.second_leg, hem.name)
    before_dart = _run_names(piece, hem.name, intake.first_leg)
    if len(still) != 1 or still[0] not in after_dart | before_dart:
        raise StepRefused("flare-still-elsewhere", edge=spoken(parameters.still), piece=spoken(piece.name))
    motion = closing_motion(piece, intake)
    keeps_after = still[0] in after_dart
    moved = before_dart if keeps_after else after_dart
    turn = motion.inverse() if keeps_after else motion
    first, second = piece.edge(intake.first_leg), piece.edge(intake.second_leg)
    kept, merged = (second.end, first.start) if keeps_after else (first.start, second.end)
    flared = _flared(piece, intake, hem, _Turn(moved, turn, merged, kept))
    closed = "the dart was closed into flare"
    return Change(
        pattern.with_pieces(flared),
        merges={merged: (kept,)},
        removals=dict.fromkeys((intake.name, first.name, second.name, intake.point), closed),
    )


def _on(piece: Piece, edge: str) -> str:
    if not piece.has_edge(edge):
        raise StepRefused("flare-hem-elsewhere", edge=spoken(edge), piece=spoken(piece.name))
    return edge


def _renamed(edge: Edge, old: str, new: str) -> Edge:
    return replace(
        edge, start=new if edge.start == old else edge.start, end=new if edge.end == old else edge.end
    )


def _run_names(piece: Piece, after: str, before: str) -> set[str]:
    """The edges strictly between two edges, counter-clockwise."""
    count = len(piece.outline)
    begin = piece.edge_index(after)
    steps = (piece.edge_index(before) - begin) % count
    return {piece.outline[(begin + step) % count].name for step in range(1, steps)}


@dataclass(frozen=True, slots=True)
class _Turn:
    """What turns: the edges that move, the motion, and the mouth point that becomes the other."""

    moved: set[str]
    motion: Transform
    merged: str
    kept: str


def _flared(piece: Piece, intake: Intake, hem: Edge, turn: _Turn) -> Piece:
    point = piece.edge(intake.first_leg).path.end
    slash = Line(point, point + direction(piece.grain.degrees + 180.0) * _SLASH)
    if not hem.path.intersections(Path.of(slash)):
        raise StepRefused("flare-misses-hem", intake=spoken(intake.name), edge=spoken(hem.name))
    legs = (intake.first_leg, intake.second_leg)
    outline = [
        _renamed(edge.transformed(turn.motion) if edge.name in turn.moved else edge, turn.merged, turn.kept)
        for edge in piece.outline
        if edge.name not in legs
    ]
    is_moved = _beside_slash(point, piece.grain.degrees, _holds_right(piece, hem, turn.moved))
    return replace(
        piece,
        outline=tuple(_closed_up(outline, hem, turn.moved, turn.motion)),
        intakes=tuple(one for one in piece.intakes if one.name != intake.name),
        lines=tuple(_spread_line(line, Path.of(slash), is_moved, turn.motion) for line in piece.lines),
        marks=tuple(
            replace(mark, position=turn.motion.apply(mark.position)) if is_moved(mark.position) else mark
            for mark in piece.marks
        ),
    )


def _closed_up(outline: list[Edge], hem: Edge, moved: set[str], turn: Transform) -> list[Edge]:
    """The outline with its hem drawn anew between its two ends, and the mouth of the dart shut."""
    closed: list[Edge] = []
    for index, edge in enumerate(outline):
        before, after = outline[index - 1], outline[(index + 1) % len(outline)]
        if edge.name == hem.name:
            closed.append(replace(edge, path=_trued_hem(hem, before, after, moved, turn)))
        else:
            closed.append(edge)
    for index, edge in enumerate(closed):
        following = closed[(index + 1) % len(closed)]
        if 0.0 < edge.path.end.distance_to(following.path.start) <= TOLERANCES.closure:
            closed[index] = replace(edge, path=edge.path.with_end(following.path.start))
    return closed


def _trued_hem(hem: Edge, before: Edge, after: Edge, moved: set[str], turn: Transform) -> Path:
    """One smooth curve that meets both neighbours at the angles at which the old hem met them."""
    start, end = before.path.end, after.path.start
    if (
        start.distance_to(hem.path.start) <= TOLERANCES.join
        and end.distance_to(hem.path.end) <= TOLERANCES.join
    ):
        return hem.path
    leaving = hem.path.tangent_at(0.0)
    arriving = hem.path.tangent_at(hem.length)
    if before.name in moved:
        leaving = turn.apply(leaving) - turn.apply(Point(0.0, 0.0))
    if after.name in moved:
        arriving = turn.apply(arriving) - turn.apply(Point(0.0, 0.0))
    return Path.of(curve_between(start, leaving.direction(), end, arriving.direction()))


def _holds_right(piece: Piece, hem: Edge, moved: set[str]) -> bool:
    """Whether the moved part lies right of the slash when looking along the grain.

    Round the outline the hem runs from the part on its left to the part on its right.
    """
    after = piece.outline[(piece.edge_index(hem.name) + 1) % len(piece.outline)]
    return after.name in moved


def _beside_slash(point: Point, grain: float, right: bool) -> Callable[[Point], bool]:
    """Tells whether a place lies on the given side of the slash, looking along the grain."""
    along = direction(grain)
    return lambda place: (along.cross(place - point) < 0.0) is right


def _spread_line(
    line: InternalLine, slash: Path, is_moved: Callable[[Point], bool], turn: Transform
) -> InternalLine:
    """An internal line whose moved part is turned; it runs on across the opening as one smooth curve."""
    crossings = line.path.intersections(slash)
    if not crossings:
        middle = line.path.point_at(line.path.length / 2.0)
        return replace(line, path=line.path.transformed(turn)) if is_moved(middle) else line
    first, second = line.path.split_at(crossings[0].at_self)
    if is_moved(first.start):
        first = first.transformed(turn)
    else:
        second = second.transformed(turn)
    if first.end.distance_to(second.start) <= TOLERANCES.join:
        return replace(line, path=Path((*first.segments, *second.segments)))
    leaving, arriving = first.tangent_at(0.0), second.tangent_at(second.length)
    smooth = curve_between(first.start, leaving.direction(), second.end, arriving.direction())
    return replace(line, path=Path.of(smooth))


STEP = StepDefinition(
    operation="dart_to_flare",
    version=1,
    kind="style",
    title="Dart to flare",
    sentence="{intake} closed, {hem} opened",
    parameters=FlareParameters,
    run=run,
)
