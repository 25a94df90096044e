"""Is the back neck shallow, and does each half neck bend one way?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.necks import lowered_by, necks, outward_bends, rise_and_width
from notchbook.checks.subject import Subject
from notchbook.geometry import Point
from notchbook.pattern import Finding, Severity, spoken

_LONGEST_HALF = 130.0
"""mm; half of a back neck that is longer does not lie round the root of a neck: no neck base measures 52 cm.
Own judgment."""


@check(
    id="neck-shape",
    title="Necklines are round, the back one shallow",
    rationale=(
        "Round the root of the neck the back neckline is shallow and wide, and the front one deep; both "
        "are hollow from the center to the shoulder without a change. A back neck that rises steeply "
        "stands away or pulls the garment back. A neckline that bends outward somewhere cannot be faced "
        "or bound without a pucker; a square one is two lines, of which each bends one way at the most. A "
        "back neck that was cut lower, away from its root, may rise as it will; one is cut so whose "
        "half is longer than a quarter of any neck."
    ),
    severity=Severity.LOOK,
    reads=("edges", "intakes"),
    messages={
        "neck-wavers": "{piece}: the neckline bends outward within its curve.",
        "back-neck-deep": "{piece}: the back neck rises steeply for its width.",
    },
    suggestion="Widen or flatten the neck; look at neck girth, front length and center front again.",
)
def neck_shape(subject: Subject) -> Iterator[Finding]:
    """Half necks that bend both ways (degrees), and back necks too deep for their width (mm)."""
    limits = subject.limits
    for run in necks(subject.pattern):
        words = {"piece": spoken(run.piece.name)}
        for turn in outward_bends(run, limits.inflection):
            x, y = run.line.at(turn.begins)
            spot = Spot(run.piece.name, run.name, Point(float(x), float(y)))
            yield neck_shape.finding("neck-wavers", spot, Reading(turn.turned, 0.0, "deg"), **words)
        rise, width = rise_and_width(run)
        most = limits.back_neck_rise * width + lowered_by(run)
        if run.panel == "back" and rise > most and run.line.length <= _LONGEST_HALF:
            x, y = run.line.points[-1]
            spot = Spot(run.piece.name, run.name, Point(float(x), float(y)))
            reading = Reading(rise, most)
            yield neck_shape.finding("back-neck-deep", spot, reading, **words)
