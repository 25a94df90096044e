"""Ends of traced pieces beside a zip: there nothing is sewn to each other, or nobody gets into the garment.

The ends are turned in and sewn to the tape of the zip, once it is in and the piece is sewn on.
"""

from collections.abc import Iterator, Sequence

from notchbook.pattern import Edge, Operation, Pattern, Piece, part_name
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.pattern.zip_openings import zip_opening
from notchbook.style.traced.traced_piece import Traced


def at_zip(pattern: Pattern, made: Traced, *, at_end: bool) -> bool:
    """Whether a zip opens the garment beside this end of the traced piece."""
    edge, corner = _beside(made, at_end=at_end)
    return zip_opening(pattern, edge, corner) > 0.0


def with_zip_ends(pattern: Pattern, slug: str, made: Sequence[Traced]) -> Pattern:
    """The pattern, told in the order of work how the ends beside a zip are finished."""
    ends = [(one, at_end) for one in made for at_end in (False, True) if at_zip(pattern, one, at_end=at_end)]
    if not ends:
        return pattern
    edges = tuple(one.end(at_end).name for one, at_end in ends)
    beside = [_beside(one, at_end=at_end)[0].name for one, at_end in ends]
    pieces = tuple(one.piece for one, _ in ends)
    return pattern.with_operations(sewn_to_tape(pattern, slug, pieces, edges, zips_in(pattern, beside)))


def sewn_to_tape(
    pattern: Pattern, slug: str, pieces: Sequence[Piece], edges: tuple[str, ...], zips: Sequence[str]
) -> Operation:
    """The line of the sewing order for ends beside a zip: after its own lines, and once the pieces are on."""
    titles = dict.fromkeys(piece.title.lower() for piece in pieces)
    text = f"Turn the ends of the {' and the '.join(titles)} in beside the zip and sew them to its tape."
    after = (*zips, *_sewn_on(pattern, {piece.name for piece in pieces}))
    return Operation(part_name(slug, "zip_ends"), "neck", text, edges, after)


def zips_in(pattern: Pattern, edges: Sequence[str]) -> tuple[str, ...]:
    """The lines of the order of work that set a zip into one of the edges."""
    named = set(edges)
    return tuple(
        one.name
        for one in pattern.operations.values()
        if last_word(one.name) == "zip" and any(named & set(_edges_of(pattern, name)) for name in one.at)
    )


def _beside(made: Traced, *, at_end: bool) -> tuple[Edge, str]:
    """The edge of the garment beside this end, and its corner there."""
    run = made.runs[-1 if at_end else 0]
    return (run.after.edge, run.end) if at_end else (run.before.edge, run.start)


def _edges_of(pattern: Pattern, name: str) -> Iterator[str]:
    """The edges that a name stands for; a seam's are those of both its runs."""
    if name in pattern.seams:
        seam = pattern.seams[name]
        for use in (*seam.first, *seam.second):
            yield from expand(pattern, use.edge)[0]
    else:
        yield from expand(pattern, name)[0]


def _sewn_on(pattern: Pattern, pieces: set[str]) -> Iterator[str]:
    """The seams in which the pieces are sewn to what they face."""
    for seam in pattern.seams.values():
        if seam.seam_class == TURNED_SEAM and any(pattern.carriers.get(u.edge) in pieces for u in seam.first):
            yield seam.name
