"""Does the pattern rest on measures that nobody took?"""

from collections.abc import Iterator

from notchbook.body import measure_entry, plain_key
from notchbook.body.quantity_words import said_key
from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity


@check(
    id="estimates",
    title="The pattern rests on measures that were taken",
    rationale=(
        "A block is as good as the measures below it. An estimate is what bodies with the same other "
        "measures have on average, and nine of ten lie within its ±; this body may lie at the end of it or "
        "beyond. Seams walk and girths close on an estimate as well as on a measure, so nothing else here "
        "would tell. It is said with the pattern until the tape has been laid."
    ),
    severity=Severity.LOOK,
    reads=("measures",),
    messages={
        "estimates-rested-on": "The pattern rests on an estimate: {measure}{source}.",
        "estimates-rested-on-stale": (
            "The pattern rests on an estimate that no longer follows from the measures: {measure}{source}."
        ),
    },
    suggestion="Take the measure and enter it; until then sew a muslin before you cut cloth.",
)
def estimates(subject: Subject) -> Iterator[Finding]:
    """Each estimate that a line of the pattern answers to, with its ± and what it would be now."""
    for name, measure in subject.estimates.items():
        unit = measure_entry(plain_key(name)).unit
        now = subject.stale.get(name)
        yield estimates.finding(
            "estimates-rested-on-stale" if name in subject.stale else "estimates-rested-on",
            Spot(None, None, None, (name,)),
            Reading(measure.value, None if now is None else now.value, unit, measure.error),
            measure=said_key(name, subject.population),
            source=f" ({measure.method})" if measure.method else "",
        )
