"""Does the grain agree with the center?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import bend, start_direction, wrapped
from notchbook.checks.subject import Subject
from notchbook.checks.walks import walked_seams
from notchbook.pattern import Edge, Finding, Pattern, Piece, Severity, split_side, spoken


@check(
    id="grain-direction",
    title="The grain runs with the center",
    rationale=(
        "The grain line is what the cutter lays along the selvage; it decides how the piece hangs. Where "
        "a piece has a straight center, on a fold or at a seam to its reflection, the grain runs along it "
        "or, for a band, square to it. A few degrees off, and one half hangs on another bias than the "
        "other: the panel twists. A crotch seam slants as the seat asks: trousers hang from their crease. "
        "Where a step was asked to cut a piece on the bias it is meant, on the true bias both halves hang "
        "alike; but a half on a fold is then better cut opened out."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams", "grain"),
    messages={
        "grain-off-center": "{piece}: the grain runs neither along {center} nor square to it.",
        "bias-on-fold": "{piece} is cut on the bias on the fold: cut it opened out, in one layer.",
    },
    suggestion="Set the grain parallel to the center; unfold a half that is cut on the bias.",
)
def grain_direction(subject: Subject) -> Iterator[Finding]:
    """Grains that run neither along a straight center nor square to it, degrees."""
    for piece in subject.pattern.pieces.values():
        for center in _centers(subject.pattern, piece):
            if bend(center.path)[0] > subject.limits.straightness:
                continue
            off = abs(wrapped(2.0 * (start_direction(center.path) - piece.grain.degrees))) / 2.0
            astray = min(off, 90.0 - off)
            if astray <= subject.limits.grain:
                continue
            is_asked = piece.name in subject.grains
            if is_asked and center.kind != "fold":
                continue
            yield grain_direction.finding(
                "bias-on-fold" if is_asked else "grain-off-center",
                Spot(piece.name, center.name, center.path.start),
                Reading(off, 0.0 if off < 45.0 else 90.0, "deg"),
                Severity.NOTE if is_asked else None,
                piece=spoken(piece.name).capitalize() if is_asked else spoken(piece.name),
                center=spoken(center.name),
            )


def _centers(pattern: Pattern, piece: Piece) -> Iterator[Edge]:
    """The folds of the piece; where it has none, its edges that are sewn to their own reflection.

    On the fold a piece is laid by its fold: the other center of a circle skirt in one piece lies anywhere.
    A crotch seam is no center to lay a leg by.
    """
    folds = [edge for edge in piece.outline if edge.kind == "fold"]
    if folds:
        yield from folds
        return
    sewn = {
        one.edge.name
        for walked in walked_seams(pattern)
        for one, two in zip(walked.runs[0], walked.runs[1], strict=False)
        if one.edge.name == two.edge.name
    }
    yield from (edge for edge in piece.outline if edge.name in sewn and not _is_crotch(edge))


def _is_crotch(edge: Edge) -> bool:
    """Whether it is a crotch seam or a part of one, straight as it may be where a yoke was cut off."""
    return "crotch_seam" in split_side(edge.name)[0].split("/")
