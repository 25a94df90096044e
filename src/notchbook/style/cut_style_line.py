"""Cut a style line across one or several pieces: a yoke, a panel, a hip seam, a seam under the bust.

Each piece is cut from a place on one named edge to a place on another, along a fair curve or straight. The
two parts get paired seams with balance notches. Darts that end on the line are closed into the part in which
they open. The edges that are cut stay as groups under their old names. If on another body the line would end
on another part of an edge or run across another edge, that is lost, not a new shape: an edge of several parts
needs the part that is meant.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import NameLost, StepRefused
from notchbook.pattern import (
    CutAs,
    Edge,
    Group,
    Intake,
    Located,
    Notch,
    Pattern,
    Piece,
    Seam,
    child_name,
    directed,
    frozen_map,
    locate,
    part_name,
    piece_name,
    require_one,
    spoken,
)
from notchbook.pattern.names import last_word, split_side
from notchbook.pattern.splitting import EdgeCut, EdgeNames
from notchbook.recipe import Change, PlaceParameters, StepContext, StepDefinition, StepParameters, Word
from notchbook.style.lines.division import FACE, Divided, OnLine, Part, divide
from notchbook.style.lines.fullness import lies_on, require_no_fullness
from notchbook.style.lines.parameters import LineParameters
from notchbook.style.lines.seams import (
    FaceUse,
    NotchChoice,
    apex_notches,
    balance_notches,
    line_seam,
    notch_kind,
)
from notchbook.style.lines.shape import line_path


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
    notches: NotchChoice = "balance"
    """balance: one pair off the middle; apex: two pairs, above and below where the curve is deepest."""


@dataclass(frozen=True, slots=True)
class _Naming:
    """How the parts of one cut are called: first that with the named ends, which lies left or right."""

    roles: tuple[str, str]
    pieces: tuple[str, str]
    first_is_left: bool

    @property
    def left(self) -> tuple[str, str]:
        """Role and name of the part left of the line."""
        index = 0 if self.first_is_left else 1
        return self.roles[index], self.pieces[index]

    @property
    def right(self) -> tuple[str, str]:
        """Role and name of the part right of the line."""
        index = 1 if self.first_is_left else 0
        return self.roles[index], self.pieces[index]


def run(pattern: Pattern, context: StepContext, parameters: StyleLineParameters) -> Change:
    """Cut every line; all or nothing."""
    change = Change(pattern)
    for line in parameters.lines:
        change = _cut(change, context, parameters, line)
    return change


def _cut(
    change: Change, context: StepContext, parameters: StyleLineParameters, line: LineParameters
) -> Change:
    """One piece cut, added to what was cut before."""
    pattern = change.pattern
    start, end = (_located(pattern, context, place) for place in (line.start, line.end))
    if start.piece != end.piece:
        raise StepRefused("line-between-pieces", first=spoken(start.edge.name), second=spoken(end.edge.name))
    piece = pattern.pieces[start.piece]
    naming = _naming(pattern, context, parameters, piece, line)
    ends = (
        EdgeCut(start, _edge_names(start.edge, naming.left, naming.right)),
        EdgeCut(end, _edge_names(end.edge, naming.right, naming.left)),
    )
    require_no_fullness(pattern, piece, start.edge.name, end.edge.name)
    divided = divide(
        piece,
        ends,
        lambda begins, stops: line_path(line, begins, stops, context.mm),
        _on_line(pattern, piece, line),
        (naming.right[1], naming.left[1]),
    )
    titles = (parameters.first_title, parameters.second_title)
    parts, line_splits = _pieces(pattern, piece, divided, naming, titles)
    after = pattern.with_pieces(*parts, without=(piece.name,))
    after = _with_face_groups(after, divided, naming, context.step)
    seam, notches = _seam(after, context, parameters, piece, naming, divided)
    return Change(
        after.with_seams(seam).with_notches(*notches),
        splits={
            **change.splits,
            piece.name: naming.pieces,
            start.edge.name: (ends[0].names.before, ends[0].names.after),
            end.edge.name: (ends[1].names.before, ends[1].names.after),
            **line_splits,
        },
        merges={**change.merges, **divided.right.merges, **divided.left.merges},
        removals={**change.removals, **divided.removals},
    )


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


def _naming(
    pattern: Pattern,
    context: StepContext,
    parameters: StyleLineParameters,
    piece: Piece,
    line: LineParameters,
) -> _Naming:
    """The part with the named ends lies left of the line or right; both ends must say the same.

    Left of the line lies what comes before the start and after the end on their edges.
    """
    before_start = _is_counted_from_start(pattern, context, line.start)
    before_end = _is_counted_from_start(pattern, context, line.end)
    if before_start == before_end:
        raise StepRefused(
            "line-ends-disagree",
            piece=spoken(piece.name),
            first=spoken(line.start.from_point),
            second=spoken(line.end.from_point),
        )
    roles = (parameters.first_role, parameters.second_role)
    first, second = (piece_name(context.slug, f"{last_word(piece.name)}_{role}") for role in roles)
    return _Naming(roles, (first, second), first_is_left=before_start)


def _is_counted_from_start(pattern: Pattern, context: StepContext, place: PlaceParameters) -> bool:
    """Whether the named end of the place is on the side of the start of the edge that is cut."""
    walk = directed(pattern, place.edge, place.from_point)
    wanted = _located(pattern, context, place).edge.name
    return next(step.forward for step in walk if step.edge.name == wanted)


def _edge_names(edge: Edge, before: tuple[str, str], after: tuple[str, str]) -> EdgeNames:
    """The parts under their roles; the new corners are called by all words of the edge, so that two
    edges of one piece never get the same."""
    words = split_side(edge.name)[0].split("/", 1)[1]
    word = f"{words.replace('/', '_')}_end"
    return EdgeNames(
        child_name(edge.name, before[0]),
        child_name(edge.name, after[0]),
        part_name(before[1], word),
        part_name(after[1], word),
    )


def _on_line(pattern: Pattern, piece: Piece, line: LineParameters) -> OnLine:
    ended: list[Intake] = []
    crossing: list[Intake] = []
    for one in line.darts:
        dart = pattern.intakes[require_one(pattern, one.intake, "intake")]
        if pattern.carriers[dart.name] != piece.name:
            raise StepRefused("dart-on-other-piece", intake=spoken(dart.name), piece=spoken(piece.name))
        if dart.kind != "dart":
            raise StepRefused("line-needs-dart", intake=spoken(dart.name))
        (crossing if one.rest == "stays" else ended).append(dart)
    return OnLine(tuple(ended), tuple(crossing), line.keeps_grain == "start")


def _pieces(
    pattern: Pattern, piece: Piece, divided: Divided, naming: _Naming, titles: tuple[str, str]
) -> tuple[tuple[Piece, Piece], Mapping[str, tuple[str, ...]]]:
    """The two parts as pieces, the first role first; a line that is cut becomes a group of its parts."""
    roles = {"right": naming.right[0], "left": naming.left[0]}
    splits = {
        name: tuple(child_name(name, roles[side]) for side in sides)
        for name, sides in divided.divided_lines.items()
    }
    ordered = (divided.left, divided.right) if naming.first_is_left else (divided.right, divided.left)
    first, second = (
        _piece(pattern, piece, part, (name, title), {line: child_name(line, role) for line in splits})
        for part, name, title, role in zip(ordered, naming.pieces, titles, naming.roles, strict=True)
    )
    return (first, second), splits


def _piece(
    pattern: Pattern, piece: Piece, part: Part, called: tuple[str, str], renamed: Mapping[str, str]
) -> Piece:
    name, title = called
    edges = {edge.name for edge in part.outline}
    lines = tuple(replace(line, name=renamed.get(line.name, line.name)) for line in part.inside.lines)
    return replace(
        piece,
        name=name,
        title=f"{piece.title} {title}".strip(),
        outline=part.outline,
        intakes=tuple(_mouthed(one, part) for one in piece.intakes if lies_on(pattern, one, edges)),
        lines=lines,
        marks=part.inside.marks,
        inner_darts=part.inside.inner_darts,
        cut=_cut_as(piece, part.outline),
    )


def _mouthed(dart: Intake, part: Part) -> Intake:
    """A dart whose rest opens from the line has its mouth there now."""
    if not dart.first_leg:
        return dart
    before = next(edge.name for edge in part.outline if edge.end == _start_of(part, dart.first_leg))
    return replace(dart, mouth=before.rsplit("/", 1)[0]) if before in part.faces else dart


def _start_of(part: Part, edge: str) -> str:
    return next(one.start for one in part.outline if one.name == edge)


def _cut_as(piece: Piece, outline: tuple[Edge, ...]) -> CutAs:
    """A part that no longer reaches the fold is cut as a pair."""
    if piece.cut == "fold" and not any(edge.kind == "fold" for edge in outline):
        return "pair"
    return piece.cut


def _with_face_groups(pattern: Pattern, divided: Divided, naming: _Naming, step: str) -> Pattern:
    """Where a line consists of several edges, they are one group under its name."""
    groups = {
        part_name(name, FACE): Group(part.faces, step)
        for part, name in ((divided.right, naming.right[1]), (divided.left, naming.left[1]))
        if len(part.faces) > 1
    }
    return replace(pattern, groups=frozen_map({**pattern.groups, **groups}))


def _seam(
    pattern: Pattern,
    context: StepContext,
    parameters: StyleLineParameters,
    piece: Piece,
    naming: _Naming,
    divided: Divided,
) -> tuple[Seam, tuple[Notch, ...]]:
    """The seam along the line, walked from where the face of the first part begins, and its notches."""
    word = last_word(piece.name)
    lefts = FaceUse(naming.left[1], part_name(naming.left[1], FACE), _face_start(divided.left))
    rights = FaceUse(naming.right[1], part_name(naming.right[1], FACE), _face_end(divided.right))
    if not naming.first_is_left:
        lefts = replace(lefts, starts_at=_face_end(divided.left))
        rights = replace(rights, starts_at=_face_start(divided.right))
    faces = (lefts, rights) if naming.first_is_left else (rights, lefts)
    seam = line_seam(part_name(context.slug, f"{word}_style_line"), faces)
    kind = notch_kind(piece.name)
    if parameters.notches == "apex":
        walked = faces[0]
        own = divided.left if naming.first_is_left else divided.right
        line = next(edge.path for edge in own.outline if edge.start == walked.starts_at)
        return seam, apex_notches(pattern, faces, seam, line, kind)
    return seam, balance_notches(faces, seam.name, kind) if parameters.notches == "balance" else ()


def _face_start(part: Part) -> str:
    return next(edge.start for edge in part.outline if edge.name == part.faces[0])


def _face_end(part: Part) -> str:
    return next(edge.end for edge in part.outline if edge.name == part.faces[-1])


STEP = StepDefinition(
    operation="cut_style_line",
    version=1,
    kind="style",
    title="Cut style line",
    sentence="{lines}",
    parameters=StyleLineParameters,
    run=run,
)
