"""Does every notch end clear of the sew line?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import chords_of
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, spoken
from notchbook.units import TOLERANCES


@check(
    id="notch-depth",
    title="Notches end clear of the sew line",
    rationale=(
        "A notch is cut into the allowance with a tool that goes a little deeper than meant. If it "
        "reaches the sew line there is a hole beside the stitches, and in leather or fine silk the panel "
        "is lost. The trade keeps an eighth of an inch, 3 mm, between the end of the notch and the sew "
        "line."
    ),
    severity=Severity.STOP,
    reads=("cut",),
    messages={"notch-too-deep": "{piece}: the notch {notch} ends too near to the sew line."},
    suggestion="Make the notch shallower, widen the allowance, or have it marked instead of cut.",
)
def notch_depth(subject: Subject) -> Iterator[Finding]:
    """Notches that end too near to the sew line, mm."""
    clearance = subject.house_table.mark("notch_clearance")
    for piece in subject.cut_pieces:
        sewn = chords_of(edge.sew for edge in piece.edges)
        for notch in piece.notches:
            if notch.depth <= 0.0:
                continue
            gap = min(
                sewn.nearest(position + notch.direction * notch.depth)[2] for position in notch.cut_positions
            )
            if gap < clearance - TOLERANCES.closure:
                yield notch_depth.finding(
                    "notch-too-deep",
                    Spot(piece.name, notch.name, notch.sew_position),
                    Reading(gap, clearance),
                    piece=piece.title,
                    notch=spoken(notch.name),
                )
