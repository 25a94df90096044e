"""Does each armhole lean forward, hollow low in front, and is it never a diagonal?"""

from collections.abc import Iterator

from notchbook.checks.armholes import armholes, pairs, wrong_turns
from notchbook.checks.bow import bow
from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.checks.word_runs import WordRun
from notchbook.geometry import Point
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="armhole-shape",
    title="Armholes lean forward",
    rationale=(
        "The arm hangs and moves forward, so the front armhole is scooped low, in its lower third, and "
        "is hollower than the back. An armhole drawn as a lazy diagonal leaves a fold of cloth before "
        "the arm and binds when it is raised. Between underarm and tip it bends one way; only near the "
        "tip, where it is square to the shoulder, may it turn back a little."
    ),
    severity=Severity.LOOK,
    reads=("edges", "intakes"),
    messages={
        "armhole-wavers": "{piece}: the armhole bends outward below its tip.",
        "armhole-diagonal": "{piece}: the armhole is almost a straight line from underarm to tip.",
        "armhole-hollow-high": "{piece}: the armhole is hollowest above its lower third.",
        "armhole-leans-back": "{piece}: the front armhole is less hollow than the back.",
    },
    suggestion="Scoop the armhole lower down, or look at across chest and across back against the shoulder.",
)
def armhole_shape(subject: Subject) -> Iterator[Finding]:
    """Armholes that waver (degrees), are too straight (share of the straight way) or hollow too high
    (share of the height of the tip over the underarm)."""
    limits = subject.limits
    for run in armholes(subject.pattern):
        for turn in wrong_turns(subject, run):
            yield _finding("armhole-wavers", run, turn.begins, Reading(turn.turned, 0.0, "deg"))
        shape = bow(run)
        if shape.chord == 0.0:
            continue
        if shape.into < limits.hollow_depth * shape.chord:
            wanted = limits.hollow_depth * shape.chord
            yield _finding("armhole-diagonal", run, run.line.length / 2.0, Reading(shape.into, wanted))
        elif run.panel == "front" and shape.into_height > limits.hollow_height:
            reading = Reading(shape.into_height * shape.tall, limits.hollow_height * shape.tall)
            yield _finding("armhole-hollow-high", run, shape.into_share * run.line.length, reading)
    for front, back in pairs(subject.pattern):
        hollow, other = bow(front), bow(back)
        if hollow.chord and other.chord and hollow.into / hollow.chord < other.into / other.chord:
            wanted = other.into * hollow.chord / other.chord
            yield _finding("armhole-leans-back", front, front.line.length / 3.0, Reading(hollow.into, wanted))


def _finding(code: str, run: WordRun, along: float, reading: Reading) -> Finding:
    x, y = run.line.at(along)
    spot = Spot(run.piece.name, run.name, Point(float(x), float(y)))
    return armhole_shape.finding(code, spot, reading, piece=spoken(run.piece.name))
