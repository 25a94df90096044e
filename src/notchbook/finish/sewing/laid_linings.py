"""A lining that lies on a piece, edge on edge: it is sewn with it, in the seam that both end at."""

from collections.abc import Sequence
from dataclasses import replace

from notchbook.finish.sewing.joints import steps
from notchbook.finish.sewing.seam_words import seam_word, titled, titles_of
from notchbook.finish.sewing.task import Task, after_renamed, key_of
from notchbook.pattern import EdgeUse, Pattern, Piece, Seam, title_of
from notchbook.pattern.names import last_word

_IN_ONE = (
    "Lay the {lining} on the wrong side of the {piece}, edge on edge, and sew both to the {other} in one "
    "seam: {word}"
)


def sewn_with_linings(pattern: Pattern, tasks: Sequence[Task]) -> list[Task]:
    """The tasks, a seam that sews a lining to an edge in one line with the seam that edge has already."""
    by_key = {task.key: task for task in tasks}
    renamed: dict[str, str] = {}
    for seam in pattern.seams.values():
        host = _host(pattern, seam)
        if host is None or {key_of(seam.name), key_of(host.name)} - by_key.keys():
            continue
        whole, part = by_key[key_of(host.name)], by_key[key_of(seam.name)]
        by_key[whole.key] = replace(
            whole,
            text=_text(pattern, host, seam),
            at=tuple(dict.fromkeys((*whole.at, *part.at))),
            after=whole.after | part.after,
        )
        renamed[part.key] = whole.key
    return [after_renamed(by_key[task.key], renamed) for task in tasks if task.key not in renamed]


def linings_along(pattern: Pattern, edges: Sequence[str]) -> tuple[str, ...]:
    """The titles of linings that lie on one of these edges' pieces and have an edge of the same name: what
    is stitched to the edge catches them."""
    pieces = {pattern.carriers[name] for name in edges}
    words = {last_word(name) for name in edges}
    found = []
    for seam in pattern.seams.values():
        host = _host(pattern, seam)
        if host is None or not pieces & {_piece(pattern, use) for use in _beside(host, seam)}:
            continue
        linings = {_piece(pattern, use): use for use in seam.second}
        found += [
            title_of(pattern.pieces[name]).lower()
            for name in linings
            if words & {last_word(edge.name) for edge in pattern.pieces[name].outline}
        ]
    return tuple(dict.fromkeys(found))


def _host(pattern: Pattern, seam: Seam) -> Seam | None:
    """The seam into which this one lays its lining: it joins the same edge to a piece of another cloth."""
    linings = [pattern.piece_of(step.edge.name) for step in steps(pattern, seam.second)]
    if not linings or not all(map(_is_lining, linings)):
        return None
    edge = {use.edge for use in seam.first}
    others = (one for one in pattern.seams.values() if one.name != seam.name)
    return next((one for one in others if edge in (_edges(one.first), _edges(one.second))), None)


def _is_lining(piece: Piece) -> bool:
    return {told.material for told in piece.instructions} == {"lining"}


def _edges(uses: Sequence[EdgeUse]) -> set[str]:
    return {use.edge for use in uses}


def _beside(host: Seam, seam: Seam) -> tuple[EdgeUse, ...]:
    """The side of the seam on which the lining lies: the one that it is not sewn to."""
    return host.second if _edges(host.first) == _edges(seam.first) else host.first


def _piece(pattern: Pattern, use: EdgeUse) -> str:
    return pattern.carriers[use.edge]


def _text(pattern: Pattern, host: Seam, seam: Seam) -> str:
    return _IN_ONE.format(
        lining=titled(titles_of(pattern, seam.second)),
        piece=titled(titles_of(pattern, _beside(host, seam))),
        other=titled(titles_of(pattern, seam.first)),
        word=seam_word(pattern, host),
    )
