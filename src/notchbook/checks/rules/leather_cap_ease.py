"""Can a sleeve cap of leather be set in?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.openings import is_cap
from notchbook.checks.subject import Subject
from notchbook.checks.walks import Run, WalkedSeam, walked_seams
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="leather-cap-ease",
    title="A leather cap has hardly any ease",
    rationale=(
        "The ease of a cap is shrunk in over the top of the arm with steam and thread. Leather and coated "
        "cloth take no steam: what is longer than the armhole lies in puckers, and the needle holes of a "
        "second try stay. The trade gives them 1 cm at most, front and back together. Draft the sleeve for "
        "leather, or lower the cap."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams"),
    messages={
        "leather-cap-long": "{piece}: the cap has more ease than {cloth} takes.",
        "leather-cap-short": "{piece}: the cap is shorter than its armhole.",
    },
    suggestion="Draft the sleeve for leather or coated cloth, which gives the cap less ease.",
)
def leather_cap_ease(subject: Subject) -> Iterator[Finding]:
    """Caps that are longer than their armholes by more than the way of making allows, or shorter, mm."""
    making = subject.pattern.making
    if making is None:
        return
    eases: dict[str, float] = {}
    for walked in walked_seams(subject.pattern):
        for side in (0, 1):
            if _is_cap_run(walked.runs[side]):
                sleeve = subject.pattern.carriers[walked.runs[side][0].edge.name]
                eases[sleeve] = eases.get(sleeve, 0.0) + _longer(walked, side)
    for sleeve, ease in eases.items():
        piece = subject.pattern.pieces[sleeve]
        if not any(told.material == making.material for told in piece.instructions):
            continue
        limit = subject.limits.seam_walk
        if ease > making.cap_ease + limit or ease < -limit:
            code, wanted = ("leather-cap-long", making.cap_ease) if ease > 0.0 else ("leather-cap-short", 0.0)
            spot = Spot(sleeve, sleeve, piece.bounds.center)
            yield leather_cap_ease.finding(
                code, spot, Reading(ease, wanted), None, piece=spoken(sleeve), cloth=making.cloth
            )


def _is_cap_run(run: Run) -> bool:
    return all(is_cap(step.edge.name) for step in run)


def _longer(walked: WalkedSeam, side: int) -> float:
    """How much longer the run on this side is than the other, mm."""
    return walked.lengths[side] - walked.lengths[1 - side]
