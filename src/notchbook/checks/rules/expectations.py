"""Do the girths on the sew line come out at body plus ease?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import length
from notchbook.checks.subject import Subject
from notchbook.pattern import Expectation, Finding, Pattern, Severity, spoken
from notchbook.pattern.resolve import Found, resolve


@check(
    id="expectations",
    title="Girths come out at body plus ease",
    rationale=(
        "A draft promises that the waist as sewn measures the body's waist plus its ease, and the hip "
        "likewise. Adding up the finished edges is the first thing a patternmaker does before trusting a "
        "draft, and again after every step that touches them. It is measured here from the outline, with "
        "the darts left out, and not taken from the draft's own sums. A tenth of a millimeter off is a "
        "fault of the draft, not of a pencil."
    ),
    severity=Severity.STOP,
    reads=("edges", "expectations"),
    messages={
        "closure-large": "{what} comes out too large.",
        "closure-small": "{what} comes out too small.",
        "closure-unmeasurable": "{what} cannot be measured: {name} is gone.",
        "closure-other-body": "{what} was drafted for another body: its measure is not that of this one.",
    },
    suggestion="Look at the last step that changed these edges; if the new length is meant, change the ease.",
)
def expectations(subject: Subject) -> Iterator[Finding]:
    """Promised lengths that do not come out on the finished outline, mm."""
    for promise in subject.promises:
        yield from _other_body(subject, promise)
        measured, gone = _measured(subject.pattern, promise)
        spot = Spot(_piece(subject.pattern, promise), promise.name, None, promise.names)
        what = spoken(promise.name)
        if gone:
            yield expectations.finding("closure-unmeasurable", spot, what=what, name=spoken(gone))
        elif abs(measured - promise.wanted) > subject.limits.closure:
            code = "closure-large" if measured > promise.wanted else "closure-small"
            yield expectations.finding(code, spot, Reading(measured, promise.wanted), what=what)


def _other_body(subject: Subject, promise: Expectation) -> Iterator[Finding]:
    """A body that differs left and right is drafted from the mean, which no single measure shows."""
    body = subject.body or {}
    if promise.measure not in body or f"{promise.measure}@left" in body or f"{promise.measure}@right" in body:
        return
    now = body[promise.measure]
    if abs(now - promise.body) > subject.limits.closure:
        yield expectations.finding(
            "closure-other-body",
            Spot(None, promise.name, None, promise.names),
            Reading(promise.body, now),
            Severity.LOOK,
            what=spoken(promise.name),
        )


def _measured(pattern: Pattern, promise: Expectation) -> tuple[float, str]:
    """The promised length as it is on the outline, mm; and the name that is gone, if one is."""
    lines = {line.name: line for piece in pattern.pieces.values() for line in piece.lines}
    total = 0.0
    for name in promise.names:
        if name in lines:
            total += length(lines[name].path)
            continue
        answer = resolve(pattern, name)
        if not isinstance(answer, Found):
            return 0.0, name
        total += sum(length(pattern.edges[member].path) for member in answer.members)
    return total * promise.times, ""


def _piece(pattern: Pattern, promise: Expectation) -> str | None:
    """The piece that carries the first of the names, for the page to turn to."""
    answer = resolve(pattern, promise.names[0])
    first = answer.members[0] if isinstance(answer, Found) else promise.names[0]
    return pattern.carriers.get(first)
