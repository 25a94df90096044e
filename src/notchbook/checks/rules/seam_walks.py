"""Do the two sides of each seam agree in length?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.checks.walks import walked_seams
from notchbook.pattern import Finding, Seam, Severity, spoken
from notchbook.pattern.seam import TURNED_SEAM

_MOST_TURN = 6.4
"""mm; the turn of heavy cloth, 1/8 in, at both ends (course notes: 1/16 to 1/8 in)."""


@check(
    id="seam-walks",
    title="Seams agree in length",
    rationale=(
        "Two edges that are sewn together are walked along each other on the sew line before anything is "
        "cut. A side that is too long ends in a pucker or is cut off by the machinist, and the fault "
        "travels to the next seam. Ease and stretch are right only where they were declared. The cut edges "
        "say nothing: on a curve they differ by allowance times the angle turned."
    ),
    severity=Severity.STOP,
    reads=("edges", "seams"),
    messages={
        "seam-second-longer": "{seam}: {second} is longer than {first}.",
        "seam-second-shorter": "{seam}: {second} is shorter than {first}.",
        "seam-eased": "{seam}: {second} is eased into {first}, as declared.",
        "seam-stretched": "{seam}: {first} is stretched onto {second}, as declared.",
    },
    suggestion="True one side to the other, or declare the difference as ease.",
)
def seam_walks(subject: Subject) -> Iterator[Finding]:
    """Seams whose two sides differ in length, declared ease apart, mm."""
    limit = subject.limits.seam_walk
    for walked in walked_seams(subject.pattern):
        seam = walked.seam
        first, second = (_said(run[0].edge, len(run)) for run in (seam.first, seam.second))
        facts = {"seam": spoken(seam.name), "first": first, "second": second}
        step = walked.runs[1][0]
        middle = step.path.point_at(step.path.length / 2)
        names = tuple(use.edge for use in (*seam.first, *seam.second))
        spot = Spot(subject.pattern.carriers[step.edge.name], seam.name, middle, names)
        wanted = walked.lengths[0] + seam.ease
        if abs(walked.misfit) > limit:
            code = "seam-second-longer" if walked.misfit > 0 else "seam-second-shorter"
            yield seam_walks.finding(code, spot, Reading(walked.lengths[1], wanted), **facts)
        elif seam.ease != 0.0 and not _is_turn(seam):
            if seam.ease < 0.0:
                facts.update(first=second, second=first)
            ease = Reading(abs(seam.ease), None)
            code = "seam-eased" if seam.gives == "longer" else "seam-stretched"
            yield seam_walks.finding(code, spot, ease, Severity.NOTE, **facts)


def _is_turn(seam: Seam) -> bool:
    """Whether a turned seam differs by no more than the turn of the cloth: then nothing is eased in."""
    return seam.seam_class == TURNED_SEAM and abs(seam.ease) <= _MOST_TURN


def _said(edge: str, count: int) -> str:
    return spoken(edge) if count == 1 else f"the run from {spoken(edge)}"
