"""From runs to traced pieces, and the seams and allowances that tie them to what they were traced from."""

from collections.abc import Mapping, Sequence

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import (
    Allowance,
    EdgeUse,
    Intake,
    Pattern,
    Seam,
    part_name,
    require,
    split_side,
    spoken,
    with_side,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.style.traced.allowance_of import allowance_of
from notchbook.style.traced.beside import Laid
from notchbook.style.traced.faced_run import FacedRun
from notchbook.style.traced.mates import End, Mates, left_to_right
from notchbook.style.traced.shape import ShapeEnd, traced_shape
from notchbook.style.traced.traced_names import end_word
from notchbook.style.traced.traced_notches import traced_notches
from notchbook.style.traced.traced_piece import Making, Traced, traced_piece
from notchbook.style.traced.zip_ends import at_zip, with_zip_ends


def traced(runs: Sequence[FacedRun], making: Making, turn: float, free: Path | None = None) -> Traced:
    """The laid runs traced as one piece, shorter by the turn (mm) at an end that a seam joins to another.

    ``free`` is the line of the free edge, where it is not parallel to the traced edges.
    """
    paths = [faced.path for run in runs for faced in run.faced]
    depths = [faced.depth for run in runs for faced in run.faced]
    first, last = (
        ShapeEnd(beside, depth, 0.0 if meets is None else turn, meets)
        for beside, depth, meets in (
            (runs[0].before, depths[0], making.meets[0]),
            (runs[-1].after, depths[-1], making.meets[1]),
        )
    )
    made = traced_piece(runs, traced_shape(paths, depths, (first, last), free), making)
    _require_clear(made)
    return made


def _require_clear(made: Traced) -> None:
    """The free edge must not run through a dart that stays open: it would have to be closed in the piece."""
    for run in made.runs:
        for laid in (*run.panels, *run.before.panels, *run.after.panels):
            for dart in laid.piece.darts:
                if not _was_closed(run, dart.mouth) and _crossed(laid, dart, made.free.path):
                    piece = spoken(laid.piece.name)
                    raise StepRefused("facing-meets-dart", dart=spoken(dart.name), piece=piece)


def _crossed(laid: Laid, dart: Intake, line: Path) -> bool:
    """Whether the line crosses a leg of the dart as the piece was laid."""
    legs = [laid.piece.edge(name).path for name in (dart.first_leg, dart.second_leg)]
    if legs[0].length <= 1.0:
        return False
    return any(leg.transformed(laid.motion).intersections(line) for leg in legs)


def _was_closed(run: FacedRun, mouth: str) -> bool:
    """Whether a dart opens in a traced edge, or in an edge beside them."""
    names = [edge.name for faced in run.faced for edge in faced.members]
    names += [run.before.edge.name, run.after.edge.name]
    return any(name == mouth or name.startswith(f"{mouth}/") for name in names)


def with_traced(pattern: Pattern, slug: str, made: Sequence[Traced], free_edge: str) -> Pattern:
    """The pattern with the pieces, each sewn to what it faces, notched, and its free edge finished as the
    class of allowance ``free_edge`` says."""
    after = pattern.with_pieces(*(one.piece for one in made))
    for one in made:
        after = after.with_allowances(_finished(pattern, one, free_edge))
        after = after.with_seams(*_center_seams(pattern, slug, one))
        for index, (faced, _) in enumerate(one.faced):
            if faced.faces:
                seam = _faced_seam(pattern, slug, one, index)
                notches = traced_notches(after, one, index, seam.name)
                after = after.with_seams(seam).with_notches(*notches)
    return with_zip_ends(after, slug, made)


def seams_between(slug: str, ends: Mapping[End, tuple[Traced, bool]], mates: Mates) -> list[Seam]:
    """The seams that join the ends of traced pieces, as the pieces are joined there.

    Each is named as its seam is; where two would be called alike, by what they lie beside too.
    """
    seams: dict[str, Seam] = {}
    for one, (other, parent) in mates.items():
        if one not in ends or other not in ends or (other.run, other.at_end) < (one.run, one.at_end):
            continue
        uses = []
        for made, at_end in (ends[one], ends[other]):
            edge = made.end(at_end)
            uses.append(EdgeUse(edge.name, edge.start if at_end else edge.end))
        base, side = split_side(parent.name)
        name = with_side(part_name(slug, last_word(base)), side)
        if name in seams:
            made, at_end = ends[one]
            beside = end_word(made.faced[-1 if at_end else 0][0].name)
            name = with_side(part_name(slug, f"{beside}_{last_word(base)}"), side)
        seams[name] = Seam(name, (uses[0],), (uses[1],), allowance_class=parent.allowance_class)
    return list(seams.values())


def shoulder_seams(pattern: Pattern, slug: str, made: Sequence[Traced]) -> list[Seam]:
    """The seams between traced edges that face nothing, as those that they were traced from are sewn."""
    own: dict[str, tuple[str, Traced, str]] = {}
    for one in made:
        for faced, edge in one.faced:
            if not faced.faces:
                own |= {member.name: (faced.name, one, edge.name) for member in faced.members}
    seams: list[Seam] = []
    for parent in pattern.seams.values():
        uses = [(use, require(pattern, use.edge)) for use in (*parent.first, *parent.second)]
        if len(uses) != 2 or any(set(members) - own.keys() for _, members in uses):
            continue
        taken = []
        for use, members in uses:
            _, one, name = own[members[0]]
            edge = one.piece.edge(name)
            is_first = pattern.edges[members[0]].start == use.starts_at
            taken.append(EdgeUse(name, edge.start if is_first else edge.end))
        name = part_name(slug, last_word(parent.name))
        seam = Seam(name, (taken[0],), (taken[1],), parent.ease, parent.allowance_class)
        seams.append(seam)
    return seams


def _finished(pattern: Pattern, made: Traced, free_edge: str) -> dict[str, Allowance]:
    """The free edge as asked for; the traced edges and the ends as what they were traced from."""
    sources = [(edge.name, faced.members[0].name) for faced, edge in made.faced]
    sources.append((made.first.name, made.runs[0].before.edge.name))
    sources.append((made.last.name, made.runs[-1].after.edge.name))
    found = {name: allowance_of(pattern, source) for name, source in sources}
    given = {name: allowance for name, allowance in found.items() if allowance is not None}
    return {**given, made.free.name: Allowance(free_edge)}


def _center_seams(pattern: Pattern, slug: str, made: Traced) -> list[Seam]:
    """Left and right of an end that is sewn to its own reflection on the piece meet here too; not beside a
    zip, which parts them there."""
    seams: list[Seam] = []
    for at_end, beside in ((False, made.runs[0].before), (True, made.runs[-1].after)):
        end, parent = made.end(at_end), left_to_right(pattern, beside.edge.name)
        if parent is None or end.kind == "fold" or at_zip(pattern, made, at_end=at_end):
            continue
        start = end.start if at_end else end.end
        name = part_name(slug, f"{last_word(made.piece.name)}_{last_word(end.name)}")
        right, left = EdgeUse(end.name, start, "right"), EdgeUse(end.name, start, "left")
        seams.append(Seam(name, (right,), (left,), allowance_class=parent.allowance_class))
    return seams


def _faced_seam(pattern: Pattern, slug: str, made: Traced, index: int) -> Seam:
    """The traced edge to the edge that it faces, which is longer by the turn of the cloth."""
    faced, edge = made.faced[index]
    word, side = last_word(edge.name), split_side(edge.name)[1]
    if len(made.runs) == 1:
        word = f"{made.runs[0].word}_{word}"
    allowance = allowance_of(pattern, faced.members[0].name)
    is_forward = faced.members[0].start == faced.starts_at
    return Seam(
        with_side(part_name(slug, word), side),
        (EdgeUse(edge.name, edge.start if is_forward else edge.end),),
        (EdgeUse(faced.name, faced.starts_at),),
        ease=sum(faced.trim) + sum(made.shape.trims[index]) + faced.less,
        allowance_class="plain" if allowance is None else allowance.allowance_class,
        seam_class=TURNED_SEAM,
    )
