"""Do the edges beside each seam run on smoothly across it?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.junctions import Junction, junctions
from notchbook.checks.subject import Subject
from notchbook.pattern import Edge, Finding, Severity, split_side, spoken


@check(
    id="seam-junctions",
    title="Edges run on smoothly across seams",
    rationale=(
        "When a seam is sewn, the edges beside it become one line: the waist across the side seam, the "
        "hem, the neckline across the shoulder. Two angles that do not make 180 degrees leave a point or "
        "a dip there, which shows in wear and cannot be faced or bound cleanly. It is seen by laying the "
        "two pieces together along the seam, as is done here, with the darts closed. A corner in the "
        "armhole stops the papers: no cap is sewn into one."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams", "intakes"),
    messages={
        "junction-peak": "Across {seam}, {first} and {second} meet in a point.",
        "junction-dip": "Across {seam}, {first} and {second} meet in a dip.",
        "armhole-corner": "Across {seam}, {first} and {second} meet in a corner.",
    },
    suggestion="Lay the pieces together along the seam and true the line across it.",
)
def seam_junctions(subject: Subject) -> Iterator[Finding]:
    """Seam ends across which the neighbor edges do not make 180 degrees, intakes closed."""
    for found in junctions(subject.pattern):
        if abs(found.degrees - 180.0) <= subject.limits.junction:
            continue
        first, second = found.first.neighbor, found.second.neighbor
        code, severity = _said_of(found, subject)
        yield seam_junctions.finding(
            code,
            Spot(
                subject.pattern.carriers[second.name],
                found.walked.seam.name,
                found.second.position,
                (first.name, second.name),
            ),
            Reading(found.degrees, 180.0, "deg"),
            severity,
            seam=spoken(found.walked.seam.name),
            first=spoken(first.name),
            second=spoken(second.name),
        )


def _said_of(found: Junction, subject: Subject) -> tuple[str, Severity]:
    """The code and the weight of an angle that is off."""
    meet_in_armhole = _is_armhole(found.first.neighbor) and _is_armhole(found.second.neighbor)
    if meet_in_armhole and abs(found.degrees - 180.0) > subject.limits.underarm:
        return "armhole-corner", Severity.STOP
    return "junction-peak" if found.degrees < 180.0 else "junction-dip", Severity.LOOK


def _is_armhole(edge: Edge) -> bool:
    """Whether an edge is an armhole or a part of one."""
    return "armhole" in split_side(edge.name)[0].split("/")
