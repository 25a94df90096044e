"""Can the cloth take the ease that was declared?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.openings import is_cap
from notchbook.checks.subject import Subject
from notchbook.checks.walks import WalkedSeam, walked_seams
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="ease-taken",
    title="The cloth can take the ease",
    rationale=(
        "Ease that is declared does not go away by that: it has to be shrunk or stretched into the "
        "cloth. Some percent go into most woven cloth unseen; the cap of a sleeve, eased on the bias "
        "with steam, takes the most. Beyond that the seam puckers, and what is left is a gather, which must "
        "be drawn as one. The share is reckoned on the shorter side of the whole seam."
    ),
    severity=Severity.STOP,
    reads=("edges", "seams"),
    messages={
        "ease-beyond-cloth": "{seam}: {share:.0f} percent of ease are more than woven cloth takes.",
        "ease-to-be-tried": "{seam}: {share:.0f} percent of ease; try it in this cloth.",
    },
    suggestion="True the longer side, take the rest up in a dart, or gather it.",
)
def ease_taken(subject: Subject) -> Iterator[Finding]:
    """Seams whose declared ease is a larger share of their length than cloth takes; mm of ease."""
    for walked in walked_seams(subject.pattern):
        first, second = (walked.runs[side][0].edge.name for side in (0, 1))
        if walked.seam.ease == 0.0 or _stretches(subject, walked):
            continue
        limits = subject.limits
        length = max(min(walked.lengths), 1.0)
        share = abs(walked.seam.ease) / length
        eased_cap = is_cap(first) or is_cap(second)
        usual, most = limits.ease_of_cap if eased_cap else limits.ease_usual, limits.ease_most
        if share <= usual:
            continue
        beyond = share > most
        yield ease_taken.finding(
            "ease-beyond-cloth" if beyond else "ease-to-be-tried",
            Spot(subject.pattern.carriers[second], walked.seam.name, None, (first, second)),
            Reading(abs(walked.seam.ease), length * (most if beyond else usual)),
            Severity.STOP if beyond else Severity.LOOK,
            seam=spoken(walked.seam.name),
            share=100.0 * share,
        )


def _stretches(subject: Subject, walked: WalkedSeam) -> bool:
    """Whether cloth that was chosen for its stretch is sewn here: its block or band says what it takes."""
    return any(subject.pattern.piece_of(step.edge.name).stretches for run in walked.runs for step in run)
