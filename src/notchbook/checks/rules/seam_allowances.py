"""Have both sides of a seam the same allowance?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.checks.walks import WalkedSeam, walked_seams
from notchbook.pattern import Finding, Severity, spoken
from notchbook.pattern.sewn import Directed
from notchbook.units import TOLERANCES

_PLACES = 21
"""Places along the seam where the widths are compared."""


@check(
    id="seam-allowances",
    title="Both sides of a seam have the same allowance",
    rationale=(
        "The machinist lays the cut edges together and sews at one distance from them. If one side has "
        "more allowance, the sew lines do not lie on each other, and the seam that walked on paper is "
        "wrong in cloth. Where the two must differ, as at a lapped zip, say so in the profile and notch "
        "it."
    ),
    severity=Severity.LOOK,
    reads=("cut",),
    messages={"seam-allowances-differ": "{seam}: the two sides have different allowances."},
    suggestion="Set one allowance on the seam rather than on its edges.",
)
def seam_allowances(subject: Subject) -> Iterator[Finding]:
    """Seams whose two sides differ in allowance somewhere along them, mm."""
    widths = {edge.source: edge.width for piece in subject.cut_pieces for edge in piece.edges}
    for walked in walked_seams(subject.pattern):
        for index in range(_PLACES):
            share = (index + 0.5) / _PLACES
            (here, _), (there, rest) = _at(walked, 0, share), _at(walked, 1, share)
            first, second = widths.get(here.edge.name), widths.get(there.edge.name)
            if first is None or second is None:
                continue  # the side of a slash has no cut edge of its own
            if abs(first - second) > TOLERANCES.seam_walk:
                carrier = subject.pattern.carriers[walked.runs[1][0].edge.name]
                yield seam_allowances.finding(
                    "seam-allowances-differ",
                    Spot(carrier, walked.seam.name, there.path.point_at(rest)),
                    Reading(second, first),
                    seam=spoken(walked.seam.name),
                )
                break


def _at(walked: WalkedSeam, side: int, share: float) -> tuple[Directed, float]:
    """The edge at a share of a run, and how far along it the place is, mm."""
    run = walked.runs[side]
    rest = share * walked.lengths[side]
    for step in run:
        if rest <= step.edge.length or step is run[-1]:
            break
        rest -= step.edge.length
    return step, min(rest, step.edge.length)
