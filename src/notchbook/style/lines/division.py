"""A piece divided along a style line into two parts, darts on the line closed."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from itertools import chain

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge, Intake, Piece, child_name, part_name, spoken
from notchbook.pattern.closing import close_run, darts_in, stretches_between
from notchbook.pattern.names import last_word
from notchbook.pattern.splitting import EdgeCut, Runs, closed_by, dart_crossed, parted_outline
from notchbook.style.lines.clear import edges_met, lost_across
from notchbook.style.lines.darts_on_line import (
    Frame,
    closed_face,
    cut_at,
    face_parts,
    frame_of,
    opened_face,
    still_stretch,
    with_points_on,
    with_true_mouths,
)
from notchbook.style.lines.inner_darts import (
    AcrossInner,
    Called,
    Opened,
    across_inner,
    opened_part,
    splits_of,
)
from notchbook.style.lines.inside import Inside, moved_inside, regions_of, shared_inside

Draw = Callable[[tuple[Point, float], tuple[Point, float]], Path]
"""Draws a line from a place to a place, each with the direction of travel square to its edge, degrees."""

DART_CLOSED = "the dart was closed at the style line"

FACE = "style_line"
"""What the edge along a cut is called on either part."""


@dataclass(frozen=True, slots=True)
class OnLine:
    """The darts that are closed at a line: ``ended`` have their points moved onto it, of the ``crossing``
    ones the rest stays beyond it; ``keeps_start`` says which end of the line lies still."""

    ended: tuple[Intake, ...] = ()
    crossing: tuple[Intake, ...] = ()
    keeps_start: bool = False


@dataclass(frozen=True)
class Part:
    """One part of a divided piece: its outline, with the ``faces`` (its edges along the line) in the order of
    the outline, what is drawn inside, and the ``intakes`` that open from the line only now."""

    outline: tuple[Edge, ...]
    faces: tuple[str, ...]
    inside: Inside
    merges: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    intakes: tuple[Intake, ...] = ()


@dataclass(frozen=True)
class Divided:
    """The parts right and left of a line, and why names are gone. ``divided_lines``: each internal line that
    the cut divides -> its parts, "right" or "left", in its own order; ``splits``: the double-ended darts that
    it divides, and their legs."""

    right: Part
    left: Part
    removals: Mapping[str, str] = field(default_factory=dict)
    divided_lines: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    splits: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


def divide(
    piece: Piece,
    ends: tuple[EdgeCut, EdgeCut],
    draw: Draw,
    on_line: OnLine,
    called: tuple[Called, Called],
) -> Divided:
    """The piece divided from one place to another; ``called`` tells of the right and the left part.

    NameLost ``style-line-crosses`` where the line meets anything but its own ends; StepRefused
    ``darts-on-both-sides`` where darts that it crosses open on both of its sides.
    """
    runs = parted_outline(piece, *ends)
    is_right = _opens_right(runs, on_line.crossing)
    run, tip_run = (runs.right, runs.left) if is_right else (runs.left, runs.right)
    frame = frame_of(run, on_line.crossing, keeps_start=on_line.keeps_start is is_right)
    face = _drawn(ends, frame, draw, is_right=is_right)
    if not (on_line.ended or on_line.crossing):
        across = across_inner(
            piece, face, starts_at_center=is_center(ends[0 if is_right else 1].located.edge)
        )
        if across.darts:
            return _through_inner(piece, across, runs, (face, is_right), (on_line, ends), called)
    opened = opened_face(frame, face_parts(frame, face))
    _require_clear(piece, frame, (face, opened), tip_run, (on_line, ends))
    mine, others, divided_lines = shared_inside(piece, frame.closed.stretches, opened)
    merges = dict(frame.closed.merges)
    mouth_edges = with_true_mouths(frame.closed.edges, _points(merges), grows_at_end=frame.keeps_first)
    mouth_name, tip_name = (one.name for one in (called if is_right else called[::-1]))
    mouth = _with_ended(
        mouth_edges, face, moved_inside(mine, frame.closed, opened), (on_line, is_right), mouth_name
    )
    if frame.darts:
        if darts_in(tip_run, on_line.ended):
            raise StepRefused("darts-on-both-sides", piece=spoken(piece.name))
        tip = _with_rests(tip_run, frame, opened, others, tip_name)
    else:
        tip = _with_ended(tip_run, face.reversed(), others, (on_line, not is_right), tip_name)
    mouth = replace(mouth, merges={**merges, **mouth.merges})
    removals = {
        name: DART_CLOSED
        for dart in on_line.ended
        for name in (dart.name, dart.first_leg, dart.second_leg, dart.point)
    }
    parts = (mouth, tip) if is_right else (tip, mouth)
    return Divided(*parts, removals, _sided(divided_lines, is_right=is_right))


def _sided(divided: Mapping[str, tuple[bool, ...]], *, is_right: bool) -> dict[str, tuple[str, ...]]:
    """For each divided line the side of the cut on which each part lies."""
    sides = {True: "right", False: "left"}
    return {name: tuple(sides[is_first is is_right] for is_first in of) for name, of in divided.items()}


def is_center(edge: Edge) -> bool:
    """Whether the edge is the center of the garment: on the fold, or named so."""
    return edge.kind == "fold" or "center" in edge.name.rsplit("/", 1)[-1].split("_")


def _through_inner(
    piece: Piece,
    across: AcrossInner,
    runs: Runs,
    line: tuple[Path, bool],
    given: tuple[OnLine, tuple[EdgeCut, EdgeCut]],
    called: tuple[Called, Called],
) -> Divided:
    """The piece divided across double-ended darts: on either side each opens from the line."""
    face, is_right = line
    run, other = (runs.right, runs.left) if is_right else (runs.left, runs.right)
    frame = frame_of(run, (), keeps_start=True)
    _require_clear(across.bare, frame, (face, across.parts), other, given)
    mine, others, divided_lines = shared_inside(across.bare, (run,), (face,))
    own, theirs = called if is_right else called[::-1]
    (region,), (beyond,) = regions_of((run,), (face,)), regions_of((other,), (face.reversed(),))
    mouth = _opened(opened_part(piece, across, run, own, region, forward=False), run, mine)
    tip = _opened(opened_part(piece, across, other, theirs, beyond, forward=True), other, others)
    upper = region.contains(piece.points[across.darts[0].dart.upper_point])
    roles = (own.role, theirs.role) if upper else (theirs.role, own.role)
    parts = (mouth, tip) if is_right else (tip, mouth)
    return Divided(*parts, {}, _sided(divided_lines, is_right=is_right), splits_of(across.darts, roles))


def _opened(along: Opened, run: tuple[Edge, ...], inside: Inside) -> Part:
    return Part((*run, *along.edges), along.faces, inside, {}, along.intakes)


def _opens_right(runs: Runs, crossing: tuple[Intake, ...]) -> bool:
    """Whether the darts that the line crosses open in the run on its right; so it is said where there are
    none."""
    right, left = darts_in(runs.right, crossing), darts_in(runs.left, crossing)
    if right and left:
        raise StepRefused("darts-on-both-sides", piece=spoken(crossing[0].name))
    return not left


def _drawn(ends: tuple[EdgeCut, EdgeCut], frame: Frame, draw: Draw, *, is_right: bool) -> Path:
    """The line in the direction of the run, as it is drawn with the crossing darts closed."""
    first, last = frame.closed.motions[0], frame.closed.motions[-1]
    motions = (first, last) if is_right else (last, first)
    line = draw(_place(ends[0], motions[0], 90.0), _place(ends[1], motions[1], -90.0))
    return line if is_right else line.reversed()


def _place(end: EdgeCut, motion: Transform, square: float) -> tuple[Point, float]:
    located = end.located
    along = located.edge.path.tangent_at(located.distance)
    turned = motion.apply(along) - motion.apply(Point(0.0, 0.0))
    return motion.apply(located.position), turned.direction() + square


def _points(merges: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    return tuple(chain.from_iterable(merges.values()))


def _with_ended(
    run: tuple[Edge, ...], face: Path, inside: Inside, on_line: tuple[OnLine, bool], name: str
) -> Part:
    """A part with the darts that end on its one face closed. ``face`` runs in the direction of the run."""
    given, along_line = on_line
    darts = darts_in(run, given.ended)
    merges: Mapping[str, tuple[str, ...]] = {}
    if darts:
        run, places = with_points_on(run, darts, face)
        still = still_stretch(stretches_between(run, darts), keeps_start=given.keeps_start is along_line)
        closed = close_run(run, darts, still)
        parts = cut_at(face, places)
        face = closed_face(parts, closed.motions)
        inside = moved_inside(inside, closed, parts)
        run = with_true_mouths(closed.edges, _points(closed.merges), grows_at_end=still == 0)
        merges = closed.merges
    outline = closed_by(run, part_name(name, FACE), face.reversed())
    return Part(outline, (outline[-1].name,), inside, merges)


def _with_rests(
    run: tuple[Edge, ...], frame: Frame, opened: tuple[Path, ...], inside: Inside, name: str
) -> Part:
    """A part from whose line the rests of the crossing darts open: faces and legs in turn.

    ``frame`` is that of the run across the line, in whose direction the opened faces are.
    """
    whole = part_name(name, FACE)
    edges: list[Edge] = []
    faces: list[str] = []
    start = run[-1].end
    legs = {edge.name: edge for edge in frame.run}
    for index, part in enumerate(opened):
        role = _role(frame, index)
        is_last = index == len(opened) - 1
        dart = None if is_last else frame.darts[index]
        end = (
            run[0].start
            if dart is None
            else part_name(name, f"{last_word(dart.name)}_{_mouth(dart.first_leg)}")
        )
        edges.append(Edge(child_name(whole, role), part, start, end))
        faces.append(edges[-1].name)
        if dart is not None:
            first, second = legs[dart.first_leg], legs[dart.second_leg]
            tip = first.path.end
            start = part_name(name, f"{last_word(dart.name)}_{_mouth(dart.second_leg)}")
            edges.append(replace(first, path=Path.line(part.end, tip), start=end))
            edges.append(replace(second, path=Path.line(tip, opened[index + 1].start), end=start))
    return Part((*run, *edges), tuple(faces), inside)


def _mouth(leg: str) -> str:
    """``center_mouth`` for the center leg of a dart."""
    return f"{last_word(leg).removesuffix('_leg')}_mouth"


def _role(frame: Frame, index: int) -> str:
    """The part of a line across a stretch is called as the part of the edge that the dart opens in."""
    stretch = frame.closed.stretches[index]
    return last_word((stretch[0] if index else stretch[-1]).name)


def _require_clear(
    piece: Piece,
    frame: Frame,
    face: tuple[Path, tuple[Path, ...]],
    tip_run: tuple[Edge, ...],
    given: tuple[OnLine, tuple[EdgeCut, EdgeCut]],
) -> None:
    """The line meets the outline at its own two places and nowhere else, and no dart that is not told."""
    on_line, ends = given
    legs = {name for dart in on_line.ended for name in (dart.first_leg, dart.second_leg)}
    whole, parts = face
    met = edges_met(whole, (edge for edge in frame.closed.edges if edge.name not in legs))
    for part in parts:
        met += edges_met(part, (edge for edge in tip_run if edge.name not in legs))
    if whole.self_crossings():
        met.append(piece.name)
    crossed = met[0] if met else next((d.name for p in parts if (d := dart_crossed(piece, p))), None)
    if crossed is not None:
        raise lost_across(piece, (ends[0].located.edge.name, ends[1].located.edge.name), crossed)
