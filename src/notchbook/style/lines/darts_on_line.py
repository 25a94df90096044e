"""Darts that end on a style line or cross it: closed where they open, the rest stays or is left out."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.errors import StepRefused
from notchbook.geometry import Line, Path, Transform
from notchbook.pattern import Edge, Intake, spoken
from notchbook.pattern.closing import ClosedRun, close_run, darts_in, stretches_between
from notchbook.style.lines.truing import LOST_AT_MOUTH, needs_one_curve, smooth, smooth_parts, trued


@dataclass(frozen=True, slots=True)
class Frame:
    """A run with the darts that cross the line closed, as it lies while the line is drawn.

    ``darts`` are those darts in the order of the run; ``closed`` is the run as it lies then; ``keeps_first``
    says that its first stretch stayed.
    """

    run: tuple[Edge, ...]
    darts: tuple[Intake, ...]
    closed: ClosedRun
    keeps_first: bool


def frame_of(run: tuple[Edge, ...], crossing: Sequence[Intake], *, keeps_start: bool) -> Frame:
    """The run with the crossing darts closed; a stretch on the fold stays, else the one at the named end."""
    darts = darts_in(run, crossing)
    still = still_stretch(stretches_between(run, darts), keeps_start=keeps_start)
    return Frame(run, darts, close_run(run, darts, still), still == 0)


def still_stretch(stretches: Sequence[Sequence[Edge]], *, keeps_start: bool) -> int:
    """Which stretch stays: the one with a fold, else the first or the last."""
    on_fold = [index for index, one in enumerate(stretches) if any(edge.kind == "fold" for edge in one)]
    if on_fold:
        return on_fold[0]
    return 0 if keeps_start else len(stretches) - 1


def face_parts(frame: Frame, face: Path) -> tuple[Path, ...]:
    """The line in the direction of the run, cut where the closed darts meet it, as it lies.

    StepRefused ``dart-not-crossed`` where the line does not meet a closed dart between mouth and point.
    """
    parts: list[Path] = []
    rest, travelled = face, 0.0
    for index, dart in enumerate(frame.darts):
        motion = frame.closed.motions[index]
        leg = next(edge.path for edge in frame.run if edge.name == dart.first_leg).transformed(motion)
        met = face.intersections(leg)
        if len(met) != 1:
            raise StepRefused("dart-not-crossed", intake=spoken(dart.name), times=len(met))
        part, rest = rest.split_at(met[0].at_self - travelled)
        travelled = met[0].at_self
        parts.append(part)
    return (*parts, rest)


def opened_face(frame: Frame, parts: Sequence[Path]) -> tuple[Path, ...]:
    """The parts of the line as they lie with the darts open."""
    return tuple(
        part.transformed(motion.inverse()) for part, motion in zip(parts, frame.closed.motions, strict=True)
    )


def with_points_on(
    run: tuple[Edge, ...], darts: Sequence[Intake], face: Path
) -> tuple[tuple[Edge, ...], tuple[float, ...]]:
    """The run with the points of its darts moved along their middles onto the line, and where they lie on it.

    ``face`` runs in the direction of the run. StepRefused ``dart-misses-line`` where the middle of a dart,
    led on, does not meet the line.
    """
    edges = {edge.name: edge for edge in run}
    places: list[float] = []
    for dart in darts:
        first, second = edges[dart.first_leg], edges[dart.second_leg]
        middle = first.path.start.lerp(second.path.end, 0.5)
        along = first.path.end - middle
        ray = Path.of(Line(middle, middle + along.unit() * (along.norm() + _FARTHEST)))
        met = face.intersections(ray)
        if len(met) != 1 or (places and met[0].at_self <= places[-1]):
            raise StepRefused("dart-misses-line", intake=spoken(dart.name))
        point = met[0].point
        places.append(met[0].at_self)
        edges[first.name] = replace(first, path=Path.line(first.path.start, point))
        edges[second.name] = replace(second, path=Path.line(point, second.path.end))
    return tuple(edges[edge.name] for edge in run), tuple(places)


_FARTHEST = 400.0
"""mm that the middle of a dart is followed beyond its point: farther than any yoke is deep."""


def cut_at(path: Path, places: Sequence[float]) -> tuple[Path, ...]:
    """The path cut at these distances from its start."""
    stops = [0.0, *places, path.length]
    return tuple(path.between(a, b) for a, b in pairwise(stops))


def closed_face(parts: Sequence[Path], motions: Sequence[Transform]) -> Path:
    """The parts of the line moved with their stretches and drawn as one smooth line."""
    moved = [part.transformed(motion) for part, motion in zip(parts, motions, strict=True)]
    for index in range(1, len(moved)):
        moved[index] = moved[index].with_start(moved[index - 1].end)
    return smooth(moved)


def with_true_mouths(
    edges: tuple[Edge, ...], joints: Sequence[str], *, grows_at_end: bool
) -> tuple[Edge, ...]:
    """The edges with the corners at these points (where darts were closed) drawn smooth, as long as before.

    A smooth corner is a little shorter: by as much the edge is led on where it moved most, at the end of the
    run or at its beginning. Where a corner is too sharp to be rounded so, all edges that meet at such
    corners are drawn as one fair curve.
    """
    done = list(edges)
    places = [index for index in range(len(done) - 1) if done[index].end in joints]
    for first, last in _in_a_row(places):
        parts = [edge.path for edge in done[first : last + 2]]
        sharp = needs_one_curve(parts, LOST_AT_MOUTH)
        for index, path in enumerate(smooth_parts(parts) if sharp else trued(parts, LOST_AT_MOUTH), first):
            done[index] = replace(done[index], path=path)
    if not places:
        return edges
    lost = sum(edge.length for edge in edges) - sum(edge.length for edge in done)
    outer = places[-1] + 1 if grows_at_end else places[0]
    return _led_on(done, outer, lost, at_end=grows_at_end)


def _in_a_row(places: Sequence[int]) -> list[tuple[int, int]]:
    """The first and last of the places that follow each other without a gap."""
    rows: list[tuple[int, int]] = []
    for place in places:
        if rows and rows[-1][1] == place - 1:
            rows[-1] = (rows[-1][0], place)
        else:
            rows.append((place, place))
    return rows


def _led_on(edges: list[Edge], index: int, by: float, *, at_end: bool) -> tuple[Edge, ...]:
    """The edge longer by so little at one end, and its neighbor there led to the new corner."""
    path = edges[index].path
    end = path.length if at_end else 0.0
    corner = path.point_at(end) + path.tangent_at(end) * (by if at_end else -by)
    edges[index] = replace(edges[index], path=path.with_end(corner) if at_end else path.with_start(corner))
    beside = index + 1 if at_end else index - 1
    if 0 <= beside < len(edges):
        path = edges[beside].path
        edges[beside] = replace(
            edges[beside], path=path.with_start(corner) if at_end else path.with_end(corner)
        )
    return tuple(edges)
