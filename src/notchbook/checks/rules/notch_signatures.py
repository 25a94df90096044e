"""Can a side of one seam be sewn to another seam, because length and notches are the same?"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.checks.walks import WalkedSeam, notches_met, walked_seams
from notchbook.pattern import Finding, Pattern, Severity, split_side, spoken
from notchbook.pattern.sewn import Directed


@check(
    id="notch-signatures",
    title="No two seams have the same notches",
    rationale=(
        "Notches tell the machinist which edge belongs to which. Where two seams of a style are equally long "
        "and their notches of one kind stand in the same places, a panel can be sewn in at the wrong seam or "
        "upside down, and nothing stops her. A second notch, a double one or another place makes each seam "
        "its own. Mirrored seams of the wearer's two sides are one seam, and panels that are cut from one "
        "piece may be exchanged. A hollow edge is not taken for a straight one, an armhole for a waist, "
        "nor a lining for its cloth, nor a seam that goes on over a fold for one that ends."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams", "notches"),
    messages={"notches-alike": "{first} and {second} are equally long and notched alike."},
    suggestion="Move a notch of one of them together with its mate, or make it double.",
)
def notch_signatures(subject: Subject) -> Iterator[Finding]:
    """Pairs of notched seams of a style that could be taken for each other; mm between them at most."""
    if subject.is_block:
        return
    signed = [_signed(subject.pattern, walked) for walked in walked_seams(subject.pattern)]
    notched = [one for one in signed if any(one.stops)]
    for first, second in combinations(notched, 2):
        if _is_same_seam(first, second) or not _look_alike(first, second) or not first.cloth & second.cloth:
            continue
        if first.is_folded != second.is_folded:
            continue
        apart = _apart(first, second)
        if apart is not None and apart < subject.limits.notch_alike:
            names = (first.walked.seam.name, second.walked.seam.name)
            yield notch_signatures.finding(
                "notches-alike",
                Spot(first.piece, names[0], None, names),
                Reading(apart, subject.limits.notch_alike),
                first=spoken(names[0]),
                second=spoken(names[1]),
            )


@dataclass(frozen=True, slots=True)
class _Signed:
    """A seam with the kind and distance of every notch on its first side, from its beginning; ``cloth`` are
    the materials that its pieces are cut in, ``is_folded``: it goes on over a fold, and is twice as long."""

    walked: WalkedSeam
    piece: str
    stops: tuple[tuple[str, float], ...]
    cloth: frozenset[str]
    is_folded: bool


def _signed(pattern: Pattern, walked: WalkedSeam) -> _Signed:
    met = notches_met(pattern, walked, 0)
    piece = pattern.carriers[walked.runs[0][0].edge.name]
    owners = (pattern.piece_of(step.edge.name) for run in walked.runs for step in run)
    cloth = frozenset(one.material for owner in owners for one in owner.instructions)
    stops = tuple((one.notch.kind, one.distance) for one in met)
    return _Signed(walked, piece, stops, cloth, _goes_over_fold(pattern, walked))


def _goes_over_fold(pattern: Pattern, walked: WalkedSeam) -> bool:
    """Whether a side of the seam ends at the fold of a piece, beyond which the other half goes on."""
    steps = [step for run in walked.runs for step in run]
    ends = {end for step in steps for end in (step.edge.start, step.edge.end)}
    pieces = {owner.name: owner for owner in (pattern.piece_of(step.edge.name) for step in steps)}
    folds = (edge for piece in pieces.values() for edge in piece.outline if edge.kind == "fold")
    return any({edge.start, edge.end} & ends for edge in folds)


def _apart(first: _Signed, second: _Signed) -> float | None:
    """By how much their lengths and notches differ at most, mm; None where the notches are of other kinds or
    number."""
    if [kind for kind, _ in first.stops] != [kind for kind, _ in second.stops]:
        return None
    notches = (abs(one[1] - two[1]) for one, two in zip(first.stops, second.stops, strict=True))
    return max(abs(first.walked.lengths[0] - second.walked.lengths[0]), *notches)


_AS_BENT = 0.08
"""How much less of its length the straight way along an edge may be for it still to look like another. Own
judgment: an armhole is about 0.85, a waist above 0.98, a princess seam between."""


def _look_alike(first: _Signed, second: _Signed) -> bool:
    """Whether a side of the one is about as hollow as a side of the other."""
    return any(
        abs(_straightness(one) - _straightness(other)) <= _AS_BENT
        for one in first.walked.runs
        for other in second.walked.runs
    )


def _straightness(run: tuple[Directed, ...]) -> float:
    """The straight ways along the edges of the run, as a share of its length."""
    paths = [step.edge.path for step in run]
    length = sum(path.length for path in paths)
    return sum(path.start.distance_to(path.end) for path in paths) / length if length > 0.0 else 1.0


def _is_same_seam(first: _Signed, second: _Signed) -> bool:
    """Whether they are one seam on the wearer's two sides, join the same pieces, or are sewn to one edge of
    which each side has its own (a fly: its facing to the one, its shield to the other)."""
    names = {split_side(one.walked.seam.name)[0] for one in (first, second)}
    return len(names) == 1 or _pieces(first) == _pieces(second) or _on_both_sides(first, second)


def _on_both_sides(first: _Signed, second: _Signed) -> bool:
    """Whether a run of the one is a run of the other on the wearer's other side."""
    runs, others = (
        {tuple(step.edge.name for step in run) for run in one.walked.runs} for one in (first, second)
    )
    plain = {tuple(split_side(name)[0] for name in run) for run in runs - others}
    return any(tuple(split_side(name)[0] for name in run) in plain for run in others - runs)


def _pieces(signed: _Signed) -> frozenset[str]:
    return frozenset(
        split_side(step.edge.name)[0].split("/")[0] for run in signed.walked.runs for step in run
    )
