"""The sleeves of a lining whose armholes lie higher: the underarm of the sleeve goes up farther, over the
seam that stands up there, and the crown comes down until the cap fits its armhole with the ease it had."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, direction
from notchbook.geometry.solve import solve_rising
from notchbook.pattern import (
    EdgeUse,
    Notch,
    Pattern,
    Piece,
    Seam,
    require,
    run_length,
    run_of,
    spoken,
    walk_seam,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.sewn import Directed, place_distance
from notchbook.style.edges.carried_edge import Carry, carried_edge
from notchbook.style.edges.redrawn import redrawn

_LOWEST = 25.0
"""mm by which the crown comes down at most: farther the sleeve would hang from its lining. Own judgment."""

_SHARE = 0.5
"""Share of the depth of an under sleeve below its corners by which its underarm goes up at most: farther its
hollow would become a hump. Own judgment."""

_STILL = Point(0.0, 0.0)


@dataclass(frozen=True, slots=True)
class _Half:
    """A half of a cap: its seam, the armhole and the cap as they are sewn in it from the underarm on, and how
    long the cap is to become, mm."""

    seam: str
    armhole: tuple[EdgeUse, ...]
    cap: tuple[EdgeUse, ...]
    wanted: float


@dataclass(frozen=True, slots=True)
class _Moves:
    """The edges of a cap, walked from the underarm; those that begin there (``lowest``) go ``up`` by
    ``raised`` mm, those that end at the crown (``highest``) come down."""

    edges: tuple[Directed, ...]
    lowest: frozenset[str]
    highest: frozenset[str]
    up: Point
    raised: float

    def drawn(self, step: Directed, lowered: float) -> Path:
        """An edge with the crown so many mm lower, walked as before."""
        start = self.up * self.raised if step.edge.name in self.lowest else _STILL
        end = self.up * -lowered if step.edge.name in self.highest else _STILL
        return carried_edge(step.path, Carry(start, end, _STILL))

    def length(self, lowered: float) -> float:
        """The length of all the edges, mm."""
        return sum(self.drawn(step, lowered).length for step in self.edges)


@dataclass(frozen=True, slots=True)
class RaisedCaps:
    """The pattern with its sleeves raised, and by how much, mm: less than asked where the cap is too shallow;
    None where there is no sleeve."""

    pattern: Pattern
    by: float | None


def raised_caps(
    before: Pattern, after: Pattern, seams: Sequence[str], armholes: Sequence[tuple[str, str]], raised: float
) -> RaisedCaps:
    """``after``, in which the armholes (with their underarms) lie higher, with the sleeves that the named
    seams join to them raised by so many mm at the underarm. The ease of the whole cap stays.

    StepRefused ``lining-sleeve-too-high`` where no such cap is found.
    """
    halves = [half for edge, underarm in armholes for half in _halves(before, after, seams, edge, underarm)]
    if not halves:
        return RaisedCaps(after, None)
    runs = [run_of(after, half.cap) for half in halves]
    piece = after.pieces[after.carriers[runs[0][0].edge.name]]
    up = direction(piece.grain.degrees)
    deep = min((run[0].path.end - run[0].path.start).dot(up) for run in runs)
    raised = min(raised, max(_SHARE * deep, 0.0))
    moves = _Moves(
        tuple(step for run in runs for step in run),
        frozenset(run[0].edge.name for run in runs),
        frozenset(run[-1].edge.name for run in runs),
        up,
        raised,
    )
    shrunk = sum(run_length(after, half.cap) - half.wanted for half in halves)
    lowered = _lowered(moves, shrunk, piece, raised)
    drawn = _redrawn(after, moves, lowered)
    for half in halves:
        drawn = _seam_fitted(drawn, half)
    return RaisedCaps(drawn, raised)


def _halves(
    before: Pattern, after: Pattern, seams: Sequence[str], armhole: str, underarm: str
) -> Iterator[_Half]:
    """The halves of caps that are sewn to an armhole from its underarm on."""
    edges = set(require(after, armhole))
    for name in seams:
        seam = before.seams[name]
        for run, other in ((seam.first, seam.second), (seam.second, seam.first)):
            members = {member for use in run for member in require(after, use.edge)}
            if members <= edges and run[0].starts_at == underarm:
                grown = run_length(after, run) - run_length(before, run)
                yield _Half(name, run, other, run_length(before, other) + grown)


def _lowered(moves: _Moves, shrunk: float, piece: Piece, raised: float) -> float:
    """How far the crown comes down, mm, so that the cap shrinks by so much in all."""
    wanted = sum(step.path.length for step in moves.edges) - shrunk
    try:
        return solve_rising(lambda lowered: moves.length(lowered) - wanted, 0.0, 2.0, -_LOWEST, _LOWEST)
    except GeometryError as error:
        raise StepRefused("lining-sleeve-too-high", piece=spoken(piece.name), raised=raised) from error


def _redrawn(pattern: Pattern, moves: _Moves, lowered: float) -> Pattern:
    """The pieces of the sleeve with their cap; underarm seams go on up to it."""
    paths: dict[str, dict[str, Path]] = {}
    for step in moves.edges:
        if step.edge.name not in moves.lowest | moves.highest:
            continue
        drawn = moves.drawn(step, lowered)
        own = paths.setdefault(pattern.carriers[step.edge.name], {})
        own[step.edge.name] = drawn if step.forward else drawn.reversed()
    for name, own in paths.items():
        pattern = pattern.with_pieces(redrawn(pattern.pieces[name], own))
    return pattern


def _seam_fitted(pattern: Pattern, half: _Half) -> Pattern:
    """The seam with the ease that this half has now, and the notches that bound the ease on the cap where
    those of the armhole let them lie."""
    seam = pattern.seams[half.seam]
    fitted = replace(seam, ease=seam.ease + walk_seam(pattern, seam).misfit)
    return pattern.with_seams(fitted).with_notches(*_bounds(pattern, seam, half))


def _bounds(pattern: Pattern, seam: Seam, half: _Half) -> Iterator[Notch]:
    """Below the first notch and above the second nothing is eased: cap and armhole are equally long there."""
    totals = run_length(pattern, half.armhole), run_length(pattern, half.cap)
    for label, from_top in zip(seam.ease_between or (), (False, True), strict=False):
        pair = [
            next((one for one in _notches(pattern, seam, label) if one.place.edge == run[0].edge), None)
            for run in (half.armhole, half.cap)
        ]
        if None in pair:
            continue
        on_armhole, on_cap = (one for one in pair if one is not None)
        place = place_distance(pattern, on_armhole.place) + (totals[1] - totals[0] if from_top else 0.0)
        yield replace(on_cap, place=replace(on_cap.place, amount=place))


def _notches(pattern: Pattern, seam: Seam, label: str) -> Iterator[Notch]:
    return (
        notch
        for notch in pattern.notches.values()
        if last_word(notch.name) == label and notch.serves(seam.name)
    )
