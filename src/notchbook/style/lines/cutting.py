"""One piece of a pattern cut from a place on one edge to a place on another: its parts, seam and notches."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
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
    frozen_map,
    part_name,
    require_one,
    spoken,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.splitting import EdgeCut
from notchbook.recipe import Change, StepContext
from notchbook.style.lines.called_parts import Naming, PartWords, edge_names, naming_of
from notchbook.style.lines.division import FACE, Divided, Draw, OnLine, Part, divide
from notchbook.style.lines.fullness import lies_on, require_no_fullness
from notchbook.style.lines.parameters import DartOnLineParameters
from notchbook.style.lines.seams import (
    BALANCE,
    FaceUse,
    apex_notches,
    balance_notches,
    clear_share,
    line_seam,
    notch_kind,
)


@dataclass(frozen=True)
class Cut:
    """A line from place to place on one piece: ``draw`` draws it, ``first_is_left`` says on which side of it
    the part with the named ends lies, ``keeps_start`` which end lies still where a dart is closed; ``waves``
    how often it may change the side to which it bends."""

    start: Located
    end: Located
    draw: Draw
    first_is_left: bool
    darts: tuple[DartOnLineParameters, ...] = ()
    keeps_start: bool = False
    waves: int = 0


def cut_piece(change: Change, context: StepContext, words: PartWords, cut: Cut) -> Change:
    """The piece cut, added to what was cut before; StepRefused ``line-between-pieces`` where the places lie
    on two pieces."""
    pattern, start, end = change.pattern, cut.start, cut.end
    if start.piece != end.piece:
        raise StepRefused("line-between-pieces", first=spoken(start.edge.name), second=spoken(end.edge.name))
    piece = pattern.pieces[start.piece]
    naming = naming_of(context.slug, piece, words, first_is_left=cut.first_is_left)
    ends = (
        EdgeCut(start, edge_names(start.edge, naming.left, naming.right)),
        EdgeCut(end, edge_names(end.edge, naming.right, naming.left)),
    )
    require_no_fullness(pattern, piece, start.edge.name, end.edge.name)
    divided = divide(piece, ends, cut.draw, _on_line(pattern, piece, cut), (naming.right, naming.left))
    parts, line_splits = _pieces(pattern, piece, divided, naming, words.titles)
    after = pattern.with_pieces(*parts, without=(piece.name,))
    after = _with_face_groups(after, divided, naming, context.step)
    seam, notches = _seam(after, context, words, piece, naming, divided)
    return Change(
        after.with_seams(seam).with_notches(*notches),
        splits={
            **change.splits,
            piece.name: naming.pieces,
            start.edge.name: (ends[0].names.before, ends[0].names.after),
            end.edge.name: (ends[1].names.before, ends[1].names.after),
            **line_splits,
            **divided.splits,
        },
        merges={**change.merges, **divided.right.merges, **divided.left.merges},
        removals={**change.removals, **divided.removals},
        waves={**change.waves, **{part_name(name, FACE): cut.waves for name in naming.pieces}},
    )


def _on_line(pattern: Pattern, piece: Piece, cut: Cut) -> OnLine:
    ended: list[Intake] = []
    crossing: list[Intake] = []
    for one in cut.darts:
        dart = pattern.intakes[require_one(pattern, one.intake, "intake")]
        if pattern.carriers[dart.name] != piece.name:
            raise StepRefused("dart-on-other-piece", intake=spoken(dart.name), piece=spoken(piece.name))
        if dart.kind != "dart":
            raise StepRefused("line-needs-dart", intake=spoken(dart.name))
        (crossing if one.rest == "stays" else ended).append(dart)
    return OnLine(tuple(ended), tuple(crossing), cut.keeps_start)


def _pieces(
    pattern: Pattern, piece: Piece, divided: Divided, naming: Naming, titles: tuple[str, str]
) -> tuple[tuple[Piece, Piece], Mapping[str, tuple[str, ...]]]:
    """The two parts as pieces, the first role first; a line that is cut becomes a group of its parts."""
    roles = {"right": naming.right.role, "left": naming.left.role}
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
        intakes=(
            *(_mouthed(one, part).relined(renamed) for one in piece.intakes if lies_on(pattern, one, edges)),
            *part.intakes,
        ),
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


def _with_face_groups(pattern: Pattern, divided: Divided, naming: Naming, step: str) -> Pattern:
    """Where a line consists of several edges, they are one group under its name."""
    groups = {
        part_name(called.name, FACE): Group(part.faces, step)
        for part, called in ((divided.right, naming.right), (divided.left, naming.left))
        if len(part.faces) > 1
    }
    return replace(pattern, groups=frozen_map({**pattern.groups, **groups}))


def _seam(
    pattern: Pattern,
    context: StepContext,
    words: PartWords,
    piece: Piece,
    naming: Naming,
    divided: Divided,
) -> tuple[Seam, tuple[Notch, ...]]:
    """The seam along the line, walked from where the face of the first part begins, and its notches."""
    left, right = naming.left.name, naming.right.name
    lefts = FaceUse(left, part_name(left, FACE), _face_start(divided.left))
    rights = FaceUse(right, part_name(right, FACE), _face_end(divided.right))
    if not naming.first_is_left:
        lefts = replace(lefts, starts_at=_face_end(divided.left))
        rights = replace(rights, starts_at=_face_start(divided.right))
    faces = (lefts, rights) if naming.first_is_left else (rights, lefts)
    seam = line_seam(part_name(context.slug, f"{last_word(piece.name)}_style_line"), faces)
    kind = notch_kind(piece.name)
    own = divided.left if naming.first_is_left else divided.right
    if words.notches == "apex":
        walked = faces[0]
        line = next(edge.path for edge in own.outline if edge.start == walked.starts_at)
        return seam, apex_notches(pattern, faces, seam, line, kind)
    share = clear_share(_walked_lengths(own, faces[0].starts_at)) if own.intakes else BALANCE
    return seam, balance_notches(faces, seam.name, kind, share) if words.notches == "balance" else ()


def _walked_lengths(part: Part, starts_at: str) -> list[float]:
    """The lengths of the edges along the line in the order in which the seam is walked, mm."""
    lengths = [edge.length for edge in part.outline if edge.name in part.faces]
    return lengths if _face_start(part) == starts_at else lengths[::-1]


def _face_start(part: Part) -> str:
    return next(edge.start for edge in part.outline if edge.name == part.faces[0])


def _face_end(part: Part) -> str:
    return next(edge.end for edge in part.outline if edge.name == part.faces[-1])
