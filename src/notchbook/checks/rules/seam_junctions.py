"""Do the edges beside each seam run on smoothly across it?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.corners import Corner, End, corner
from notchbook.checks.subject import Subject
from notchbook.checks.walks import WalkedSeam, walked_seams
from notchbook.pattern import Finding, Pattern, Severity, spoken
from notchbook.pattern.sewn import Directed


@check(
    id="seam-junctions",
    title="Edges run on smoothly across seams",
    rationale=(
        "When a seam is sewn, the edges beside it become one line: the waist across the side seam, the "
        "hem, the neckline across the shoulder. Two angles that do not make 180 degrees leave a point or "
        "a dip there, which shows in wear and cannot be faced or bound cleanly. It is seen by laying the "
        "two pieces together along the seam, as is done here, with the darts closed."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams", "intakes"),
    messages={
        "junction-peak": "Across {seam}, {first} and {second} meet in a point.",
        "junction-dip": "Across {seam}, {first} and {second} meet in a dip.",
    },
    suggestion="Lay the pieces together along the seam and true the line across it.",
)
def seam_junctions(subject: Subject) -> Iterator[Finding]:
    """Seam ends across which the neighbor edges do not make 180 degrees, intakes closed."""
    sewn = _sewn_together(subject.pattern)
    for walked in walked_seams(subject.pattern):
        for at_start in (True, False):
            first, second = (_corner(subject.pattern, walked, side, at_start) for side in (0, 1))
            if first is None or second is None or first.is_open or second.is_open:
                continue
            pair = frozenset((first.neighbor.name, second.neighbor.name))
            turned = first.degrees + second.degrees
            if pair in sewn or abs(turned - 180.0) <= subject.limits.junction:
                continue
            yield seam_junctions.finding(
                "junction-peak" if turned < 180.0 else "junction-dip",
                Spot(
                    subject.pattern.carriers[second.neighbor.name],
                    walked.seam.name,
                    second.position,
                    (first.neighbor.name, second.neighbor.name),
                ),
                Reading(turned, 180.0, "deg"),
                seam=spoken(walked.seam.name),
                first=spoken(first.neighbor.name),
                second=spoken(second.neighbor.name),
            )


def _corner(pattern: Pattern, walked: WalkedSeam, side: int, at_start: bool) -> Corner | None:
    """The corner where a run begins or ends; None where an edge is sewn to its own reflection."""
    run, other = walked.runs[side], walked.runs[1 - side]
    step, mate = (run[0], other[0]) if at_start else (run[-1], other[-1])
    if step.edge.name == mate.edge.name:
        return None
    return corner(pattern.piece_of(step.edge.name), step.edge, _end(step, at_start))


def _end(step: Directed, at_start: bool) -> End:
    return "start" if step.forward == at_start else "end"


def _sewn_together(pattern: Pattern) -> frozenset[frozenset[str]]:
    """Pairs of edges of one seam: where these are the neighbors, the seam turns a corner, as at a vent."""
    return frozenset(
        frozenset((one.edge.name, two.edge.name))
        for walked in walked_seams(pattern)
        for one in walked.runs[0]
        for two in walked.runs[1]
    )
