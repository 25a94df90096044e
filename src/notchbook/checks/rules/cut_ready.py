"""Can the pieces be made cut-ready, and what has finishing to say?"""

from collections.abc import Iterator
from dataclasses import replace

from notchbook.checks.check import Spot, check
from notchbook.checks.subject import Subject
from notchbook.errors import HouseFault, NotchbookError
from notchbook.pattern import Finding, Severity


@check(
    id="cut-ready",
    title="The pieces can be made cut-ready",
    rationale=(
        "Papers are drawn from the cut pieces: sew line, allowance, corners, notches. When they cannot be "
        "made, nothing can be cut, however well the seams walk. What finishing could not do quite as "
        "asked, such as a notch too deep for its allowance or a hem too curved to lie flat, is told here "
        "as well."
    ),
    severity=Severity.STOP,
    reads=("cut",),
    messages={"cut-ready-refused": "The pieces cannot be made cut-ready: {reason}"},
    suggestion="Correct what is named; the other checks of the cut pieces wait for it.",
)
def cut_ready(subject: Subject) -> Iterator[Finding]:
    """Why finishing refuses the pattern, else what it has to say of each piece."""
    try:
        pieces = subject.cut_pieces
    except HouseFault:
        raise
    except NotchbookError as error:
        yield cut_ready.finding("cut-ready-refused", Spot(), reason=error.text())
        return
    for piece in pieces:
        yield from (replace(finding, check=cut_ready.id) for finding in piece.findings)
