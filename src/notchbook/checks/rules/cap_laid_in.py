"""Does the lower cap lie on the armhole that it is sewn to?"""

from collections.abc import Iterator

from notchbook.checks.caps import LaidCap, laid_caps, lay_gap, lay_length, most_lay
from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.geometry import Point
from notchbook.pattern import Finding, Severity, spoken

BALANCE = "balance_notch"
"""What the notch below which nothing is eased is called, on cap and armhole alike."""


@check(
    id="cap-laid-in",
    title="The lower cap lies on the armhole",
    rationale=(
        "Laid over each other at the underarm, seam on seam, cap and armhole are one line for the first "
        "hand's breadth: there nothing is eased and the sleeve hangs from it. Where they part, cloth "
        "bunches under the arm or the sleeve drags when the arm moves. The balance notches stand as far "
        "from the underarm on the cap as on the armhole, or the ease slips below them."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams", "notches", "intakes"),
    messages={
        "cap-off-armhole": "{cap} does not lie on {armhole} near the underarm.",
        "cap-notch-off": "{cap}: from underarm to balance notch the cap is not as long as the armhole.",
    },
    suggestion="Draw the lower cap along the lower armhole, and turn the rest of it from there.",
)
def cap_laid_in(subject: Subject) -> Iterator[Finding]:
    """Lower caps that stray from their armhole, and balance notches that do not meet, mm."""
    limits = subject.limits
    for laid in laid_caps(subject.pattern):
        length = lay_length(laid, limits)
        gap = lay_gap(laid, length)
        most = most_lay(subject, laid)
        if gap > most:
            yield _finding("cap-off-armhole", laid, length, Reading(gap, most))
        for label, on_hole, on_cap in laid.notches:
            if label == BALANCE and abs(on_cap - on_hole) > limits.lay_notch:
                yield _finding("cap-notch-off", laid, on_cap, Reading(on_cap, on_hole))


def _finding(code: str, laid: LaidCap, along: float, reading: Reading) -> Finding:
    x, y = laid.cap.line.at(along)
    cap, hole = laid.cap.name, laid.armhole.name
    spot = Spot(laid.cap.piece.name, cap, Point(float(x), float(y)), (hole, laid.walked.seam.name))
    return cap_laid_in.finding(code, spot, reading, cap=spoken(cap), armhole=spoken(hole))
