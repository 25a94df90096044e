"""Cut a style line across one or several pieces: a yoke, a panel, a hip seam.

Each piece is cut from a place on one named edge to a place on another. The two parts get paired
seams with a balance notch. The edges that are cut stay as groups under their old names. If on
another body the line would end on another part of an edge or run across another edge, that is lost,
not a new shape: an edge of several parts needs the part that is meant.
"""

from dataclasses import dataclass, replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import NameLost, StepRefused
from notchbook.geometry import Path, curve_between
from notchbook.pattern import (
    CutAs,
    Edge,
    EdgeUse,
    InternalLine,
    Located,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    child_name,
    directed,
    locate,
    part_name,
    piece_name,
    require_one,
    spoken,
)
from notchbook.pattern.names import last_word, split_side
from notchbook.pattern.splitting import EdgeNames, Halves, belongings, cut_lines, cut_outline, dart_crossed
from notchbook.recipe import Change, PlaceParameters, StepContext, StepDefinition, StepParameters, Word
from notchbook.units import TOLERANCES

BALANCE = 0.45
"""Where the balance notch stands on the line, as a share: off the middle, so that a part turned
about does not fit. Common practice, no source."""


class LineParameters(StepParameters):
    """One cut: from a place on one edge to a place on another edge of the same piece.

    The angles (degrees) turn the line from square to the edge it leaves and meets, counter-clockwise.
    """

    start: PlaceParameters
    """Where the line leaves: an edge, the end to count from, how far."""
    end: PlaceParameters
    """Where the line arrives, on another edge of the same piece."""
    start_angle: Annotated[float, Field(ge=-80.0, le=80.0)] = 0.0
    """Degrees by which it leaves turned from square, counter-clockwise."""
    end_angle: Annotated[float, Field(ge=-80.0, le=80.0)] = 0.0
    """Degrees by which it arrives turned from square, counter-clockwise."""


class StyleLineParameters(StepParameters):
    """The cuts, one for each piece, and how the two parts are called.

    The part that holds the named ends (``from_point``) of both places is ``first_role``, the other
    ``second_role``; the titles are added to the title of the piece.
    """

    lines: Annotated[tuple[LineParameters, ...], Field(min_length=1)]
    """One line for each piece that is cut."""
    first_role: Word = "above"
    """What the part with the named ends is called in names."""
    second_role: Word = "below"
    """What the other part is called in names."""
    first_title: str = "yoke"
    """Added to the title of the part with the named ends."""
    second_title: str = ""
    """Added to the title of the other part."""


@dataclass(frozen=True, slots=True)
class _Cut:
    """What one cut made: the two parts, their seam and notches, and the account of the names."""

    parts: tuple[Piece, Piece]
    seam: Seam
    notches: tuple[Notch, Notch]
    splits: dict[str, tuple[str, ...]]


def run(pattern: Pattern, context: StepContext, parameters: StyleLineParameters) -> Change:
    """Cut every line; all or nothing."""
    splits: dict[str, tuple[str, ...]] = {}
    for index, line in enumerate(parameters.lines):
        cut = _cut(pattern, context, parameters, index)
        old = _piece_of(pattern, context, line)
        pattern = pattern.with_pieces(*cut.parts, without=(old.name,))
        pattern = pattern.with_seams(cut.seam).with_notches(*cut.notches)
        splits.update(cut.splits)
    return Change(pattern=pattern, splits=splits)


def _located(pattern: Pattern, context: StepContext, place: PlaceParameters) -> Located:
    """The place on the one edge that is meant: which edge is cut is written down, never a result."""
    found = locate(pattern, context.place(pattern, place))
    wanted = require_one(pattern, place.part or place.edge)
    if found.edge.name != wanted:
        raise NameLost(
            "style-line-elsewhere",
            name=wanted,
            edge=spoken(place.edge),
            found=spoken(found.edge.name),
            wanted=spoken(wanted),
            candidates=(found.edge.name,),
            by="",
        )
    return found


def _piece_of(pattern: Pattern, context: StepContext, line: LineParameters) -> Piece:
    start, end = (_located(pattern, context, place) for place in (line.start, line.end))
    if start.piece != end.piece:
        raise StepRefused("line-between-pieces", first=spoken(start.edge.name), second=spoken(end.edge.name))
    return pattern.pieces[start.piece]


def _cut(pattern: Pattern, context: StepContext, parameters: StyleLineParameters, index: int) -> _Cut:
    line = parameters.lines[index]
    piece = _piece_of(pattern, context, line)
    start, end = (_located(pattern, context, place) for place in (line.start, line.end))
    path = _line(start, end, line)
    _require_clear(piece, path, start, end)
    word = last_word(piece.name)
    names = tuple(
        piece_name(context.slug, f"{word}_{role}") for role in (parameters.first_role, parameters.second_role)
    )
    first_is_left = _first_is_left(pattern, piece, line, start, end)
    left, right = names if first_is_left else (names[1], names[0])
    roles = (parameters.first_role, parameters.second_role)
    left_role, right_role = roles if first_is_left else roles[::-1]
    halves = cut_outline(
        piece,
        path,
        (start, _edge_names(start.edge, left_role, right_role, left, right)),
        (end, _edge_names(end.edge, right_role, left_role, right, left)),
        (part_name(left, "style_line"), part_name(right, "style_line")),
    )
    outlines = (halves.left, halves.right) if first_is_left else (halves.right, halves.left)
    parts = _parts(piece, names, outlines, parameters)
    parts, line_splits = _share_lines(piece, path, parts, roles)
    splits: dict[str, tuple[str, ...]] = {
        piece.name: names,
        **_edge_splits(halves, start, end),
        **line_splits,
    }
    return _Cut(parts, *_seam(context, word, parts, index), splits)


def _line(start: Located, end: Located, line: LineParameters) -> Path:
    """The style line: it leaves and meets the edges square to them, turned by the angles."""
    leaving = start.edge.path.tangent_at(start.distance).direction() + 90.0 + line.start_angle
    arriving = end.edge.path.tangent_at(end.distance).direction() - 90.0 + line.end_angle
    return Path.of(curve_between(start.position, leaving, end.position, arriving))


def _require_clear(piece: Piece, path: Path, start: Located, end: Located) -> None:
    """The line may meet the outline at its own two places and nowhere else, and no dart inside the piece."""
    crossed = next((edge.name for edge in piece.outline if _crosses(path, edge.path)), None)
    if crossed is None:
        dart = dart_crossed(piece, path)
        crossed = None if dart is None else dart.name
    if crossed is not None:
        raise NameLost(
            "style-line-crosses",
            name=crossed,
            piece=spoken(piece.name),
            start=spoken(start.edge.name),
            end=spoken(end.edge.name),
            crossed=spoken(crossed),
            candidates=(),
            by="",
        )


def _crosses(path: Path, other: Path) -> bool:
    ends = TOLERANCES.closure
    return any(ends < crossing.at_self < path.length - ends for crossing in path.intersections(other))


def _first_is_left(
    pattern: Pattern, piece: Piece, line: LineParameters, start: Located, end: Located
) -> bool:
    """Whether the part with the named ends lies left of the line; both ends must say the same.

    Left of the line lies what comes before the start and after the end on their edges.
    """
    start_before = _is_counted_from_start(pattern, line.start, start.edge)
    end_before = _is_counted_from_start(pattern, line.end, end.edge)
    if start_before == end_before:
        raise StepRefused(
            "line-ends-disagree",
            piece=spoken(piece.name),
            first=spoken(line.start.from_point),
            second=spoken(line.end.from_point),
        )
    return start_before


def _is_counted_from_start(pattern: Pattern, place: PlaceParameters, edge: Edge) -> bool:
    """Whether the named end of the place is on the side of the start of the edge that is cut."""
    walk = directed(pattern, place.edge, place.from_point)
    return next(step.forward for step in walk if step.edge.name == edge.name)


def _edge_names(edge: Edge, before: str, after: str, before_piece: str, after_piece: str) -> EdgeNames:
    """The parts under their roles; the new corners are called by all words of the edge, so that two
    edges of one piece never get the same."""
    words = split_side(edge.name)[0].split("/", 1)[1]
    word = f"{words.replace('/', '_')}_end"
    return EdgeNames(
        child_name(edge.name, before),
        child_name(edge.name, after),
        part_name(before_piece, word),
        part_name(after_piece, word),
    )


def _edge_splits(halves: Halves, start: Located, end: Located) -> dict[str, tuple[str, ...]]:
    """For each of the two cut edges its parts, in its own direction."""
    return {
        start.edge.name: (halves.left[-2].name, halves.right[0].name),
        end.edge.name: (halves.right[-2].name, halves.left[0].name),
    }


def _parts(
    piece: Piece,
    names: tuple[str, ...],
    outlines: tuple[tuple[Edge, ...], ...],
    parameters: StyleLineParameters,
) -> tuple[Piece, Piece]:
    titles = (parameters.first_title, parameters.second_title)
    first, second = (
        replace(
            belongings(piece, outline),
            name=name,
            title=f"{piece.title} {title}".strip(),
            cut=_cut_as(piece, outline),
        )
        for name, outline, title in zip(names, outlines, titles, strict=True)
    )
    # A mark that lies on the line itself belongs to the first part alone.
    return first, replace(second, marks=tuple(mark for mark in piece.marks if mark not in first.marks))


def _cut_as(piece: Piece, outline: tuple[Edge, ...]) -> CutAs:
    """A part that no longer reaches the fold is cut as a pair."""
    if piece.cut == "fold" and not any(edge.kind == "fold" for edge in outline):
        return "pair"
    return piece.cut


def _share_lines(
    piece: Piece, path: Path, parts: tuple[Piece, Piece], roles: tuple[str, str]
) -> tuple[tuple[Piece, Piece], dict[str, tuple[str, ...]]]:
    """Give the internal lines to the parts; a line that is cut becomes a group of two."""
    splits: dict[str, tuple[str, ...]] = {}
    given: tuple[list[InternalLine], list[InternalLine]] = ([], [])
    for line, pieces_of_line in cut_lines(piece, path):
        owners = [
            0 if parts[0].sew_line.contains(part.point_at(part.length / 2.0)) else 1
            for part in pieces_of_line
        ]
        if len(set(owners)) == 1:
            given[owners[0]].append(line)
            continue
        names = [child_name(line.name, roles[owner]) for owner in owners]
        for owner, name, part in zip(owners, names, pieces_of_line, strict=True):
            given[owner].append(InternalLine(name, part, line.kind))
        splits[line.name] = tuple(names)
    return (replace(parts[0], lines=tuple(given[0])), replace(parts[1], lines=tuple(given[1]))), splits


def _seam(
    context: StepContext, word: str, parts: tuple[Piece, Piece], index: int
) -> tuple[Seam, tuple[Notch, Notch]]:
    """The seam along the line, walked from where the cut began, and its pair of balance notches."""
    name = part_name(context.slug, f"{word}_style_line")
    lines = [part.edge(part_name(part.name, "style_line")) for part in parts]
    begins = [lines[0].start, lines[1].end]
    if lines[0].path.start.distance_to(lines[1].path.end) > TOLERANCES.join:
        begins = [lines[0].end, lines[1].start]
    seam = Seam(
        name,
        (EdgeUse(lines[0].name, begins[0]),),
        (EdgeUse(lines[1].name, begins[1]),),
        allowance_class="style_line",
    )
    notches = [
        Notch(
            part_name(part.name, "balance_notch"),
            Place(line.name, begin, BALANCE, "fraction"),
            "single" if index == 0 else "double",
            name,
            "balance",
        )
        for part, line, begin in zip(parts, lines, begins, strict=True)
    ]
    return seam, (notches[0], notches[1])


STEP = StepDefinition(
    operation="cut_style_line",
    version=1,
    kind="style",
    title="Cut style line",
    sentence="{lines}",
    parameters=StyleLineParameters,
    run=run,
)
