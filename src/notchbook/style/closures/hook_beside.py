"""A hook and its bar on a folded band: as far from the fold, the hook inside and the bar outside."""

from collections.abc import Iterator

from notchbook.geometry import Point
from notchbook.pattern import Finding, Mark, Measured, Pattern, Piece, Severity, worded
from notchbook.style.closures.within_trade import CHECK

_BESIDE = 2.0
"""mm by which a hook may lie beside the line of its bar: half of what a flat hook is wide. Own judgment."""


def beside_notes(pattern: Pattern, hook: Mark, bar: Mark) -> Iterator[Finding]:
    """To look at, where a band that is folded brings the hook elsewhere than to its bar; nothing where one of
    them lies on no folded band."""
    over, under = (_marked(pattern, mark) for mark in (hook, bar))
    lies, wanted = _below_fold(over, hook.position), _below_fold(under, bar.position)
    if lies is None or wanted is None:
        return
    if lies < 0.0 < wanted and abs(lies + wanted) <= _BESIDE:
        return
    yield worded(
        CHECK,
        "hook-beside-bar",
        Severity.LOOK,
        Measured(-lies, wanted),
        piece=over.name,
        where=hook.name,
        names=(hook.name, bar.name),
        lies=abs(lies),
        half="inner" if lies < 0.0 else "outer",
        wanted=abs(wanted),
        other="inner" if wanted < 0.0 else "outer",
    )


def _marked(pattern: Pattern, mark: Mark) -> Piece:
    return next(piece for piece in pattern.pieces.values() if mark in piece.marks)


def _below_fold(piece: Piece, place: Point) -> float | None:
    """How far the place lies from the fold of the band toward the edge that is sewn to the garment, mm: below
    0 on the half that lies inside. None where the piece is no folded band."""
    fold = next((line.path for line in piece.lines if line.kind == "fold_line"), None)
    sewn = [edge.path for edge in piece.outline if edge.name.split("/")[1] == "lower"]
    if fold is None or not sewn:
        return None
    nearest = fold.nearest(place)
    from_place, from_fold = (min(one.nearest(at).gap for one in sewn) for at in (place, nearest.point))
    return nearest.gap if from_place < from_fold else -nearest.gap
