"""What is done to a facing beside its seams: its free edge is neatened, its seam trimmed, clipped and
understitched, and the facing tacked down inside, or glued in leather (common practice, no source)."""

from collections.abc import Iterator, Mapping, Sequence

from notchbook.finish.sewing.curved import clip_words
from notchbook.finish.sewing.facings import FacedEdge, free_edges, own_seams
from notchbook.finish.sewing.joints import steps
from notchbook.finish.sewing.pulled_through import PulledThrough
from notchbook.finish.sewing.seam_words import seam_word, titled
from notchbook.finish.sewing.stages import stage_of
from notchbook.finish.sewing.task import Task, key_of
from notchbook.pattern import Pattern, Piece, Seam
from notchbook.pattern.operation import listed
from notchbook.pattern.resolve import expand

_UNDERSTITCHED = "press them toward the facing and understitch it"
_GLUED = "turn the facing in, glue it along the edge and tap it flat; air the room while the glue dries"
_AS_FAR = " as far as it goes"
_NEATENED = "neatened_edge"
"""The class of a free edge that is neatened where it is, without anything turned in."""


def facing_tasks(pattern: Pattern, faced: Sequence[FacedEdge], pulled: PulledThrough) -> Iterator[Task]:
    """The lines of all facings, those with neck and armhole in one after they are pulled through."""
    words = {rule: [one.word for one in faced if one.rule == rule] for rule in {one.rule for one in faced}}
    through = {task.key.rpartition("/")[0]: task for task in pulled.tasks}
    for edge in faced:
        if edge.rule not in through:
            yield _trimmed(pattern, edge, is_one_of_several=len(set(words[edge.rule])) > 1)
    sewn = _sewn(pattern)
    yield from _neatened(pattern, faced, pulled, sewn)
    for rule in dict.fromkeys(one.rule for one in faced):
        edges = [one for one in faced if one.rule == rule]
        if rule in through:
            yield _understitched(edges, through[rule])
        yield from _tacked(pattern, edges, sewn)


def zip_ends_after(faced: Sequence[FacedEdge], tasks: Sequence[Task]) -> Mapping[str, frozenset[str]]:
    """For each line that sews a facing's ends to a zip, what comes before it: the facing is understitched."""
    made = {task.key for task in tasks}
    found: dict[str, frozenset[str]] = {}
    for one in faced:
        keys = {_trimmed_key(one), f"{one.rule}/understitched"} & made
        ends = f"{one.rule}/zip_ends"
        found[ends] = found.get(ends, frozenset()) | keys
    return found


def _trimmed_key(edge: FacedEdge) -> str:
    return f"{key_of(edge.seams[0].name)}/trimmed"


def _trimmed(pattern: Pattern, edge: FacedEdge, *, is_one_of_several: bool) -> Task:
    """The allowances of one faced edge. A corner, or another faced edge beside it, is not passed by the
    machine."""
    run = [step.edge for seam in edge.seams for step in steps(pattern, seam.first)]
    clipped = clip_words(run)
    far = _AS_FAR if is_one_of_several or "corner" in clipped else ""
    last = _GLUED if _is_leather(pattern, edge.pieces[0]) else f"{_UNDERSTITCHED}{far}"
    parts = [f"Trim the allowances of the {edge.word} in steps", *([clipped] if clipped else []), last]
    stage, rank = stage_of(pattern, edge.seams[0])
    after = frozenset(key_of(seam.name) for seam in edge.seams)
    at = tuple(one.name for one in run)
    return Task(_trimmed_key(edge), stage, ", ".join(parts), at, after, rank)


def _understitched(edges: Sequence[FacedEdge], through: Task) -> Task:
    """A facing of neck and armhole in one is understitched when it is turned, before its sides are closed."""
    words = listed(tuple(dict.fromkeys(one.word for one in edges)))
    text = f"Understitch the facing at the {words}{_AS_FAR}"
    key = f"{edges[0].rule}/understitched"
    return Task(key, through.stage, text, through.at, frozenset({through.key}), through.rank)


def _neatened(
    pattern: Pattern, faced: Sequence[FacedEdge], pulled: PulledThrough, sewn: frozenset[str]
) -> Iterator[Task]:
    """All free edges in one line, when the facings are closed; what is closed last is not waited for."""
    pieces = [
        piece
        for piece in _pieces(faced)
        if not _is_leather(pattern, piece) and _is_neatened(pattern, piece, sewn)
    ]
    if pieces:
        own = own_seams(pattern, tuple(pieces))
        after = frozenset(key_of(seam.name) for seam in own if seam.name not in pulled.closed_after)
        titles = titled(tuple(dict.fromkeys(piece.title.lower() for piece in pieces)))
        at = tuple(edge.name for piece in pieces for edge in free_edges(piece))
        yield Task("facings/neatened", "neck", f"Neaten the free edge of the {titles}", at, after)


def _tacked(pattern: Pattern, edges: Sequence[FacedEdge], sewn: frozenset[str]) -> Iterator[Task]:
    """The free edges held at the seams that end at them; not where a lining holds them."""
    pieces = tuple(
        piece for piece in _pieces(edges) if not any(edge.name in sewn for edge in free_edges(piece))
    )
    ends = {point for piece in pieces for edge in free_edges(piece) for point in (edge.start, edge.end)}
    own = [seam for seam in own_seams(pattern, pieces) if _ends_at(pattern, seam, ends)]
    if own:
        titles = titled(tuple(dict.fromkeys(piece.title.lower() for piece in pieces)))
        words = listed(tuple(dict.fromkeys(seam_word(pattern, seam) for seam in own)))
        held = "Glue" if _is_leather(pattern, pieces[0]) else "Tack"
        text = f"{held} the free edge of the {titles} to the allowances of the {words}"
        seams = (*own, *(seam for one in edges for seam in one.seams))
        after = {key_of(seam.name) for seam in seams} | {_trimmed_key(one) for one in edges}
        rule = edges[0].rule
        after |= {f"{rule}/zip_ends", f"{rule}/understitched"}
        at = tuple(edge.name for piece in pieces for edge in free_edges(piece))
        yield Task(f"{rule}/tacked", "finish", text, at, frozenset(after))


def _ends_at(pattern: Pattern, seam: Seam, points: set[str]) -> bool:
    run = (*steps(pattern, seam.first), *steps(pattern, seam.second))
    return any(point in points for step in run for point in (step.edge.start, step.edge.end))


def _pieces(faced: Sequence[FacedEdge]) -> list[Piece]:
    return list({piece.name: piece for one in faced for piece in one.pieces}.values())


def _is_neatened(pattern: Pattern, piece: Piece, sewn: frozenset[str]) -> bool:
    given = (pattern.allowances.get(edge.name) for edge in free_edges(piece))
    free = all(edge.name not in sewn for edge in free_edges(piece))
    return free and any(one is not None and one.allowance_class == _NEATENED for one in given)


def _sewn(pattern: Pattern) -> frozenset[str]:
    uses = (use for seam in pattern.seams.values() for use in (*seam.first, *seam.second))
    return frozenset(edge for use in uses for edge in expand(pattern, use.edge)[0])


def _is_leather(pattern: Pattern, piece: Piece) -> bool:
    making = pattern.making
    return making is not None and any(told.material == making.material for told in piece.instructions)
