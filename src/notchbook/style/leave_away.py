"""Leave pieces away: what a style line cut off and no seam needs, such as the shoulders of a slip on straps.

What was sewn to them is free then, to be faced, bound or turned. A seam that only began on them is sewn from
where they end; on both of its sides as much must go.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Allowance,
    EdgeUse,
    Intake,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    locate,
    part_name,
    piece_name,
    require_one,
    spoken,
)
from notchbook.pattern.elastic_lengths import without_elastics_on
from notchbook.pattern.names import Side, last_word
from notchbook.pattern.operation import without_places
from notchbook.pattern.pattern import Group, frozen_map
from notchbook.pattern.promise_parts import LEFT_AWAY
from notchbook.pattern.resolve import expand
from notchbook.pattern.sewn import Directed, run_of, sewn_edge_length
from notchbook.recipe import Change, PieceName, StepContext, StepDefinition, StepParameters
from notchbook.units import TOLERANCES


class LeaveAwayParameters(StepParameters):
    """The ``pieces`` that are left away, all in one step."""

    pieces: Annotated[tuple[PieceName, ...], Field(min_length=1)]
    """Pieces that are not cut."""


def run(pattern: Pattern, context: StepContext, parameters: LeaveAwayParameters) -> Change:
    """Take the pieces out, with all that only they need; all or nothing."""
    pieces = {require_one(pattern, name, "piece") for name in parameters.pieces}
    if pieces == set(pattern.pieces):
        raise StepRefused("leave-away-all")
    edges = frozenset(edge.name for name in pieces for edge in pattern.pieces[name].outline)
    seams = {name: _left(pattern, seam, edges) for name, seam in pattern.seams.items()}
    own = {name for piece in pieces for name in pattern.pieces[piece].names()}
    lost = sorted(name for name, seam in seams.items() if seam is None)
    notches = {name: _kept(pattern, notch, edges, seams) for name, notch in pattern.notches.items()}
    off = sorted(name for name, notch in notches.items() if notch is None)
    after = _with_darts_named(without_elastics_on(pattern, edges).with_pieces(without=pieces), context.slug)
    after = after.with_seams(*(seam for seam in seams.values() if seam is not None), without=lost)
    after = after.with_notches(*(notch for notch in notches.values() if notch is not None), without=off)
    gone = frozenset({*own, *lost})
    after = replace(
        after,
        operations=frozen_map((one.name, one) for one in without_places(after.operations.values(), gone)),
        corners=frozen_map((point, one) for point, one in after.corners.items() if point not in gone),
        allowances=frozen_map(_allowances(pattern, after, gone)),
    )
    return Change(after, removals=dict.fromkeys([*sorted(own), *lost, *off], LEFT_AWAY))


def _with_darts_named(pattern: Pattern, slug: str) -> Pattern:
    """The pattern with each dart on what is left of the edge from which it opens."""
    groups = dict(pattern.groups)
    changed: list[Piece] = []
    for piece in pattern.pieces.values():
        intakes: list[Intake] = []
        for intake in piece.intakes:
            living, lost = expand(pattern, intake.mouth)
            if not lost:
                intakes.append(intake)
                continue
            left = part_name(piece_name(slug, last_word(piece.name)), last_word(intake.mouth))
            groups[left] = Group(living, slug)
            intakes.append(replace(intake, mouth=left))
        changed.append(replace(piece, intakes=tuple(intakes)))
    return replace(pattern.with_pieces(*changed), groups=frozen_map(groups))


def _left(pattern: Pattern, seam: Seam, gone: frozenset[str]) -> Seam | None:
    """The seam without what is gone, as it is where nothing is; None where one of its runs is gone whole.

    StepRefused ``leave-away-across`` where only a part of it goes and the two runs would not match.
    """
    runs = [run_of(pattern, uses) for uses in (seam.first, seam.second)]
    kept = [[step for step in run if step.edge.name not in gone] for run in runs]
    if not all(kept):
        return None
    if [len(run) for run in runs] == [len(run) for run in kept]:
        return seam
    cut = [_cut_off(pattern, run, gone) for run in runs]
    if any(one is None for one in cut) or not _agree(cut):
        raise StepRefused("leave-away-across", seam=spoken(seam.name))
    uses = [
        tuple(
            EdgeUse(step.edge.name, step.start, side)
            for step, side in zip(run, _sides(pattern, given), strict=True)
            if step.edge.name not in gone
        )
        for run, given in zip(runs, (seam.first, seam.second), strict=True)
    ]
    return replace(seam, first=uses[0], second=uses[1])


def _cut_off(pattern: Pattern, run: tuple[Directed, ...], gone: frozenset[str]) -> tuple[float, float] | None:
    """How much goes at the beginning and at the end of a run, mm; None where something goes between."""
    flags = [step.edge.name in gone for step in run]
    first = flags.index(False)
    last = len(flags) - flags[::-1].index(False)
    if any(flags[first:last]):
        return None
    lengths = [sewn_edge_length(pattern, step.edge) for step in run]
    return sum(lengths[:first]), sum(lengths[last:])


def _agree(cut: list[tuple[float, float] | None]) -> bool:
    first, second = cut
    if first is None or second is None:
        return False
    return all(abs(one - two) <= TOLERANCES.sew_length for one, two in zip(first, second, strict=True))


def _sides(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> Iterator[Side]:
    """The wearer's side of each step of a run."""
    for use in uses:
        yield from (use.side for _ in run_of(pattern, (use,)))


def _kept(
    pattern: Pattern, notch: Notch, gone: frozenset[str], seams: dict[str, Seam | None]
) -> Notch | None:
    """The notch on the one edge where it lies, as it was where that is the same; None where it is gone."""
    found = locate(pattern, notch.place)
    if found.edge.name in gone or (notch.seam is not None and seams.get(notch.seam, notch) is None):
        return None
    if notch.place.edge == found.edge.name and notch.place.notch is None:
        return notch
    share = sewn_edge_length(pattern, found.edge) / found.edge.length
    return replace(notch, place=Place(found.edge.name, found.edge.start, found.distance * share))


def _allowances(pattern: Pattern, after: Pattern, gone: frozenset[str]) -> Iterator[tuple[str, Allowance]]:
    """What is left of the allowances; what was sewn to the pieces is turned, faced or bound from now on."""
    for name, one in pattern.allowances.items():
        living, lost = expand(after, name)
        if not lost:
            yield name, one
        elif name not in gone:
            yield from ((member, one) for member in living if member not in pattern.allowances)
    sewn = {step.edge.name for seam in pattern.seams.values() for step in _steps(pattern, seam)}
    still = {step.edge.name for seam in after.seams.values() for step in _steps(after, seam)}
    for name in sorted(sewn - still - gone):
        yield name, Allowance("facing_edge")


def _steps(pattern: Pattern, seam: Seam) -> tuple[Directed, ...]:
    return (*run_of(pattern, seam.first), *run_of(pattern, seam.second))


STEP = StepDefinition(
    operation="leave_away",
    version=1,
    kind="style",
    title="Leave pieces away",
    sentence="{pieces}",
    parameters=LeaveAwayParameters,
    run=run,
)
"""The step."""
