"""Does each label lie within its piece?"""

from collections.abc import Iterator

from shapely import Polygon

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import dense
from notchbook.checks.subject import Subject
from notchbook.finish import CutPiece
from notchbook.geometry import direction
from notchbook.pattern import Finding, Severity


@check(
    id="label-fits",
    title="Labels lie within their pieces",
    rationale=(
        "What is written outside a pattern piece is cut away with the waste. A label over notches, darts "
        "or the grain line hides what the cutter must see. On a piece too small to be written on, a tag "
        "is tied to it, and the card must say so."
    ),
    severity=Severity.LOOK,
    reads=("cut",),
    messages={
        "label-outside": "{piece}: the label does not fit inside the piece.",
        "label-over-lines": "{piece}: the label lies over other lines.",
    },
    suggestion="Shorten the title, or tie a tag to the piece.",
)
def label_fits(subject: Subject) -> Iterator[Finding]:
    """Labels that do not lie within the cut line, or lie over other lines."""
    for piece in subject.cut_pieces:
        label = _box(piece)
        spot = Spot(piece.name, None, piece.label.center)
        outside = label.area - label.intersection(Polygon(dense(piece.cut_line).points)).area
        if outside > label.area * _SLACK:
            yield label_fits.finding("label-outside", spot, Reading(outside, 0.0, "mm2"), piece=piece.title)
        elif not piece.label.is_clear:
            yield label_fits.finding("label-over-lines", spot, None, Severity.NOTE, piece=piece.title)


_SLACK = 1e-6
"""Share of the label's area that arithmetic may put outside."""


def _box(piece: CutPiece) -> Polygon:
    """The corners of the label's room."""
    label = piece.label
    along = direction(label.degrees) * (label.length / 2)
    across = along.perpendicular().unit() * (label.height / 2)
    corners = (along + across, across - along, -along - across, along - across)
    return Polygon([((label.center + corner).x, (label.center + corner).y) for corner in corners])
