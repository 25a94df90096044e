"""Does the back leg opening cover the seat, and is only the front scooped?"""

from collections.abc import Iterator
from dataclasses import replace

from notchbook.checks.bow import bow
from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.checks.word_runs import WordRun, word_runs
from notchbook.geometry import Point
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="leg-opening-shape",
    title="Leg openings cover the seat",
    rationale=(
        "The leg opening of a suit is hollow in front, where the thigh folds up. Behind it runs over the "
        "seat and lies below the straight way from side seam to crotch. Scooped like the front it climbs "
        "over the seat with every step, and too much cloth below hangs in folds."
    ),
    severity=Severity.LOOK,
    reads=("edges",),
    messages={
        "leg-leaves-seat": "{piece}: the leg opening does not cover the seat.",
        "leg-below-seat": "{piece}: the leg opening lies far below the seat.",
        "leg-not-scooped": "{piece}: the front leg opening is not hollow.",
    },
    suggestion="Draw the back leg line below its straight way, and hollow the front alone.",
)
def leg_opening_shape(subject: Subject) -> Iterator[Finding]:
    """How far the back lies below its straight way, and the front above, mm."""
    limits = subject.limits
    for run in word_runs(subject.pattern, "leg_opening"):
        shape = bow(run)
        covered = outward(run)
        if run.panel == "front" and shape.into <= subject.limits.closure:
            yield _finding("leg-not-scooped", run, Reading(shape.into, None))
        elif run.panel == "back" and covered < limits.seat_cover_least - limits.closure:
            yield _finding("leg-leaves-seat", run, Reading(covered, limits.seat_cover_least))
        elif run.panel == "back" and covered > limits.seat_cover_most + limits.closure:
            yield _finding("leg-below-seat", run, Reading(covered, limits.seat_cover_most))


def outward(run: WordRun) -> float:
    """How far a run lies beyond the straight way between its ends, away from the piece, mm: less what it is
    hollow elsewhere."""
    shape = bow(run)
    other = bow(_seen_from_outside(run))
    return other.into if other.into > shape.into else -shape.into


def _seen_from_outside(run: WordRun) -> WordRun:
    """The run as the piece on its other side would have it."""
    return replace(run, first_point=run.last_point, last_point=run.first_point)


def _finding(code: str, run: WordRun, reading: Reading) -> Finding:
    x, y = run.line.at(run.line.length / 2.0)
    spot = Spot(run.piece.name, run.name, Point(float(x), float(y)))
    return leg_opening_shape.finding(code, spot, reading, piece=spoken(run.piece.name))
