"""Join two pieces along an edge that they share, such as a cut that is not wanted after all.

A cut that is joined again heals: the piece, and the edges and lines that were cut with it, can be called by
their old names again.

The two edges must be the same line; what does not lie on each other is refused with the gap.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, piece_name, require, require_one, spoken
from notchbook.pattern.joining import join_outlines
from notchbook.pattern.pattern import frozen_map
from notchbook.recipe import Change, EdgeName, StepContext, StepDefinition, StepParameters, Word
from notchbook.style.lines.healing import Healed, healed


class JoinParameters(StepParameters):
    """``first_edge`` lies still, the piece with ``second_edge`` is laid to it; the new piece is called
    ``word`` under the step's name and carries ``title`` (empty: that of the first piece)."""

    first_edge: EdgeName
    """The edge of the piece that lies still."""
    second_edge: EdgeName
    """The edge of the piece that is laid to it."""
    word: Word = "joined"
    """What the new piece is called in names."""
    title: str = ""
    """The title of the new piece; empty keeps that of the first."""
    heal: bool = True
    """Edges that were cut together with the piece are one again, where nothing was told of their parts."""


def run(pattern: Pattern, context: StepContext, parameters: JoinParameters) -> Change:
    """Lay the second piece to the first and take the seam between them out."""
    first_name = require_one(pattern, parameters.first_edge)
    second_name = require_one(pattern, parameters.second_edge)
    first, second = pattern.piece_of(first_name), pattern.piece_of(second_name)
    if first is second:
        raise StepRefused("join-one-piece", piece=spoken(first.name))
    gone = {first_name, second_name}
    seams = tuple(_seams_within(pattern, gone))
    joined, laid = join_outlines(first, first_name, second, second_name)
    new = replace(
        joined, name=piece_name(context.slug, parameters.word), title=parameters.title or first.title
    )
    notches = tuple(_notches_on(pattern, gone))
    seat, partner = first.edge(first_name), laid.edge(second_name)
    merges = {
        first.name: (new.name,),
        second.name: (new.name,),
        partner.start: (seat.end,),
        partner.end: (seat.start,),
    }
    removals = {
        first_name: "joined to the other piece",
        second_name: "joined to the other piece",
        **dict.fromkeys(seams, "its two edges were joined"),
        **dict.fromkeys(notches, "its edge was joined"),
    }
    after = pattern.with_pieces(new, without=(first.name, second.name))
    after = after.with_seams(without=seams).with_notches(without=notches)
    kept = {name: value for name, value in after.allowances.items() if name not in gone}
    after = replace(after, allowances=frozen_map(kept))
    done, again = Healed(after), dict[str, tuple[str, ...]]()
    if parameters.heal:
        done = healed(after, new.name, (seat.start, seat.end))
        again = _pieces_again(pattern, (first.name, second.name), new.name)
    return Change(
        done.pattern,
        splits={**again, **done.splits},
        merges={**merges, **done.merges},
        removals={**removals, **done.removals},
    )


def _pieces_again(pattern: Pattern, parts: tuple[str, str], whole: str) -> dict[str, tuple[str, ...]]:
    """The groups of pieces in which the two parts stood: the joined piece stands there now."""
    return {
        name: tuple(dict.fromkeys(whole if member in parts else member for member in group.members))
        for name, group in pattern.groups.items()
        if set(parts) <= set(group.members)
    }


def _seams_within(pattern: Pattern, gone: set[str]) -> Iterator[str]:
    """Seams that consist of the joined edges; a seam that needs one of them for more is a refusal."""
    for seam in pattern.seams.values():
        used = _edges(pattern, seam.first) | _edges(pattern, seam.second)
        if used <= gone:
            yield seam.name
        elif used & gone:
            raise StepRefused("join-seam-shared", seam=spoken(seam.name), edges=sorted(used & gone))


def _notches_on(pattern: Pattern, gone: set[str]) -> Iterator[str]:
    """Notches on the joined edges; one that is counted along others too is a refusal."""
    for notch in pattern.notches.values():
        used = set(require(pattern, notch.place.edge))
        if used <= gone:
            yield notch.name
        elif used & gone:
            raise StepRefused("join-notch-shared", notch=spoken(notch.name))


def _edges(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> set[str]:
    return {member for use in uses for member in require(pattern, use.edge)}


def _without_healing(parameters: dict[str, Any]) -> dict[str, Any]:
    """A join of the first version left the edges in their parts."""
    return {**parameters, "heal": False}


STEP = StepDefinition(
    operation="join_pieces",
    version=2,
    kind="style",
    title="Join pieces",
    sentence="{second_edge} to {first_edge}",
    parameters=JoinParameters,
    run=run,
    upcasters={1: _without_healing},
)
