"""Lengthen or shorten: at the hems, or at levels through all the pieces that cross there together.

A hem moves square to itself, with the hems that run on from it (at the foot of a vent); the edges beside it
are carried on along their own direction, or cut. Where they are curved the hem bends to meet them at the
angle as before. At a level each piece is cut square to its grain and spread, or a band is folded out, and
the edges that were cut are drawn over fair: a straight one stays straight, a curve keeps both its end
directions.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from pydantic import model_validator

from notchbook.errors import InputError, StepRefused
from notchbook.pattern import Finding, Measured, Pattern, Seam, Severity, locate, require, spoken, worded
from notchbook.pattern.seam import EdgeUse
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PlaceParameters,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.edges.evened import evened
from notchbook.style.edges.hem_moves import hem_runs, moved_hem
from notchbook.style.edges.kept_notches import KeptNotches, kept_notches, notches_beyond
from notchbook.style.edges.level_lines import without_lines_outside
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.edges.shared_amounts import beside, side_of_amount
from notchbook.style.edges.spread_piece import LevelCut, is_below, spread_piece

_STEP = "change-length"

_LEAST_BENT = 1.6
"""mm by which a hem must bend to be told: 1/16 in, what the trade keeps between notched seams (memory)."""


class LevelParameters(StepParameters):
    """One piece that is cut: from a ``place`` on one edge, square to the grain, to the edge ``across``."""

    place: PlaceParameters
    """Where the level leaves: an edge, the end to count from, how far, or a notch."""
    across: EdgeName
    """The edge on the other side of the piece, at which the level arrives."""


class LengthParameters(StepParameters):
    """The ``hems`` that move and the ``levels`` at which pieces are cut, and the ``amount``: longer, or
    with a minus shorter."""

    hems: tuple[EdgeName, ...] = ()
    """Every hem that moves, so that the seams between them still agree."""
    amount: AmountText
    """How much longer, or with a minus shorter."""
    levels: tuple[LevelParameters, ...] = ()
    """One level for each piece that is cut instead; all pieces that cross there, so that their seams
    agree."""

    @model_validator(mode="after")
    def _somewhere(self) -> "LengthParameters":
        if not self.hems and not self.levels:
            raise InputError("length-nowhere")
        return self


def run(pattern: Pattern, context: StepContext, parameters: LengthParameters) -> Change:
    """Move every hem and spread every level; all or nothing."""
    cuts = _cuts(pattern, context, parameters.levels)
    _require_mates(pattern, cuts)
    hems = tuple(dict.fromkeys(member for hem in parameters.hems for member in require(pattern, hem)))
    touched = [name for hem in hems for name in beside(pattern.piece_of(hem), hem)]
    touched += [name for cut in cuts.values() for name in cut.edges]
    amount = context.mm(parameters.amount, side_of_amount(pattern, touched))
    if amount == 0.0:
        return Change(pattern)
    spread = _spread(pattern, cuts, amount)
    lowered = _hems_moved(spread.pattern, hems, amount)
    beyond = notches_beyond(pattern, lowered.pattern)
    after = evened(pattern, lowered.pattern.with_notches(without=beyond), lowered.bent)
    cut_away = dict.fromkeys((*lowered.cut_off, *beyond), "it lay beyond the new hem")
    notes = (*lowered.notes, *seams_put_out(pattern, after, _STEP))
    return Change(after, removals=spread.removals | cut_away, notes=notes)


def _spread(pattern: Pattern, cuts: Mapping[str, LevelCut], amount: float) -> KeptNotches:
    """Every piece cut at its level and spread, the notches where they lay on the cloth."""
    if not cuts:
        return KeptNotches(pattern, {})
    return kept_notches(
        pattern,
        pattern.with_pieces(*(spread_piece(pattern.pieces[name], cut, amount) for name, cut in cuts.items())),
        lambda piece, point: piece in cuts and is_below(pattern.pieces[piece], cuts[piece], point),
    )


@dataclass(frozen=True, slots=True)
class _Lowered:
    """The pattern with its hems moved, the edges toward which a hem ``bent``, the lines that were cut away,
    and what is to be told."""

    pattern: Pattern
    bent: frozenset[str]
    cut_off: tuple[str, ...]
    notes: tuple[Finding, ...]


def _hems_moved(pattern: Pattern, hems: tuple[str, ...], amount: float) -> _Lowered:
    """Every hem moved, with the hems that run on from it."""
    bent: set[str] = set()
    cut_off: list[str] = []
    notes: list[Finding] = []
    for piece in dict.fromkeys(pattern.carriers[hem] for hem in hems):
        for run in hem_runs(pattern.pieces[piece], [hem for hem in hems if pattern.carriers[hem] == piece]):
            moved = moved_hem(pattern.pieces[piece], run, amount)
            bent |= set(moved.rises)
            notes += [_bent(name, rise) for name, rise in moved.rises.items() if abs(rise) >= _LEAST_BENT]
            notes += [_along(name, hems, amount) for name in run if name not in hems]
            kept, outside = without_lines_outside(moved.piece)
            pattern = pattern.with_pieces(kept)
            cut_off += outside
    return _Lowered(pattern, frozenset(bent), tuple(cut_off), tuple(notes))


def _bent(edge: str, rise: float) -> Finding:
    """The hem does not run straight to this edge."""
    return worded(
        _STEP,
        "hem-bent",
        Severity.NOTE,
        Measured(abs(rise)),
        where=edge,
        names=(edge,),
        edge=spoken(edge),
        amount=abs(rise),
        way="lower" if rise > 0.0 else "higher",
    )


def _along(hem: str, hems: tuple[str, ...], amount: float) -> Finding:
    """A hem that was not named went with the one that runs on into it."""
    return worded(
        _STEP,
        "hem-went-along",
        Severity.NOTE,
        Measured(abs(amount)),
        names=(hem, *hems),
        hem=spoken(hem),
        amount=abs(amount),
        way="longer" if amount > 0.0 else "shorter",
    )


def _cuts(pattern: Pattern, context: StepContext, levels: tuple[LevelParameters, ...]) -> dict[str, LevelCut]:
    """For each piece its cut; a piece is cut once in a step."""
    cuts: dict[str, LevelCut] = {}
    for level in levels:
        found = locate(pattern, context.place(pattern, level.place))
        if found.piece in cuts:
            raise StepRefused("length-piece-twice", piece=spoken(found.piece))
        across = set(require(pattern, level.across))
        elsewhere = sorted(name for name in across if pattern.carriers[name] != found.piece)
        if elsewhere:
            raise StepRefused("length-across-elsewhere", edge=spoken(elsewhere[0]), piece=spoken(found.piece))
        cuts[found.piece] = LevelCut(found.position, frozenset({found.edge.name, *across}))
    return cuts


def _require_mates(pattern: Pattern, cuts: Mapping[str, LevelCut]) -> None:
    """What is sewn to an edge that is spread must be spread too, else the seam no longer agrees."""
    edges = {name for cut in cuts.values() for name in cut.edges}
    for seam in pattern.seams.values():
        first, second = _members(pattern, seam.first), _members(pattern, seam.second)
        for cut, mate in ((first, second), (second, first)):
            if cut & edges and not mate & edges:
                raise StepRefused(
                    "length-mate-left", edge=spoken(min(cut & edges)), mate=_said(mate), seam=_spoken(seam)
                )


def _members(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> set[str]:
    return {member for use in uses for member in require(pattern, use.edge)}


def _said(names: set[str]) -> tuple[str, ...]:
    return tuple(spoken(name) for name in sorted(names))


def _spoken(seam: Seam) -> str:
    return spoken(seam.name)


STEP = StepDefinition(
    operation="change_length",
    version=2,
    kind="style",
    title="Change length",
    sentence="{amount} at {hems} {levels}",
    parameters=LengthParameters,
    run=run,
    upcasters={1: dict},
)
