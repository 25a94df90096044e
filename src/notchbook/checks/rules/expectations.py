"""Do the girths and lengths on the sew line come out at body plus ease?"""

from collections.abc import Iterator, Mapping

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.promised import promised
from notchbook.checks.subject import Subject
from notchbook.pattern import Expectation, Finding, Pattern, Severity, split_side, spoken
from notchbook.pattern.promise_parts import Gone, promise_parts
from notchbook.pattern.resolve import Found, resolve


@check(
    id="expectations",
    title="Girths and lengths come out at body plus ease",
    rationale=(
        "A draft promises that the waist as sewn measures the body's waist plus its ease, and every "
        "other girth and length likewise. Adding up the finished edges is the first thing a patternmaker "
        "does before trusting a draft, and again after every step that touches them. It is measured here "
        "from the outline, with the darts left out, and not taken from the draft's own sums. A tenth of a "
        "millimeter off is a fault of the draft, not of a pencil."
    ),
    severity=Severity.STOP,
    reads=("edges", "expectations"),
    messages={
        "closure-large": "{what} comes out too large.",
        "closure-small": "{what} comes out too small.",
        "closure-unmeasurable": "{what} cannot be measured: {name} is gone.",
        "closure-left-away": "{what} is not measured any more: {name} was left away.",
        "closure-other-body": "{what} was drafted for another body: its measure is not that of this one.",
    },
    suggestion="Look at the last step that changed these edges; if the new length is meant, change the ease.",
)
def expectations(subject: Subject) -> Iterator[Finding]:
    """Promised lengths that do not come out on the finished outline, mm."""
    for promise in subject.promises:
        yield from _other_body(subject, promise)
        measured, gone = promised(subject.pattern, promise)
        spot = Spot(_piece(subject.pattern, promise), promise.name, None, promise.names)
        what = spoken(promise.name)
        if gone and _is_left_away(subject.pattern, promise):
            yield expectations.finding(
                "closure-left-away", spot, None, Severity.NOTE, what=what, name=spoken(gone)
            )
        elif gone:
            yield expectations.finding("closure-unmeasurable", spot, what=what, name=spoken(gone))
        elif abs(measured - promise.wanted) > subject.limits.closure:
            code = "closure-large" if measured > promise.wanted else "closure-small"
            yield expectations.finding(code, spot, Reading(measured, promise.wanted), what=what)


def _is_left_away(pattern: Pattern, promise: Expectation) -> bool:
    parts = promise_parts(pattern, promise)
    return isinstance(parts, Gone) and parts.is_left_away


def _other_body(subject: Subject, promise: Expectation) -> Iterator[Finding]:
    """What was promised on another measure than this body has, on the wearer's side that it speaks of."""
    now = _measure_now(subject.body or {}, promise)
    if now is not None and abs(now - promise.body) > subject.limits.closure:
        yield expectations.finding(
            "closure-other-body",
            Spot(None, promise.name, None, promise.names),
            Reading(promise.body, now),
            Severity.LOOK,
            what=spoken(promise.name),
        )


def _measure_now(body: Mapping[str, float], promise: Expectation) -> float | None:
    """The measure of this body, mm; the mean of the two sides where a promise is of the whole."""
    side = split_side(promise.name)[1]
    plain = body.get(promise.measure)
    sides = (side,) if side != "both" else ("right", "left")
    found = [body.get(f"{promise.measure}@{one}", plain) for one in sides]
    values = [value for value in found if value is not None]
    return sum(values) / len(values) if len(values) == len(found) else None


def _piece(pattern: Pattern, promise: Expectation) -> str | None:
    """The piece that carries the first of the names, for the page to turn to."""
    name = promise.parts[0]
    answer = resolve(pattern, name)
    first = answer.members[0] if isinstance(answer, Found) else name
    return pattern.carriers.get(first)
