"""Is each sleeve cap round on top, hollow at the underarm, hollower in front?"""

from collections.abc import Iterator

from notchbook.checks.bow import Bow, bow, rounded
from notchbook.checks.caps import caps
from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.checks.word_runs import WordRun
from notchbook.geometry import Point
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="cap-shape",
    title="Sleeve caps have their shape",
    rationale=(
        "A cap is hollow where it lies on the armhole at the underarm and round over the top of the arm, "
        "with one change between on each half. The front is scooped more than the back, as the armhole "
        "is, and the back is fuller for reach. A cap that changes twice cannot be set in smoothly; one "
        "that never does has no hollow, and binds under the arm."
    ),
    severity=Severity.LOOK,
    reads=("edges", "intakes"),
    messages={
        "cap-turns": "{cap} bends the other way {count} times; it should once.",
        "cap-crown-hollow": "{cap} is hollow at the top.",
        "cap-hollower-behind": "{piece}: the cap is hollower behind than in front.",
    },
    suggestion="Draw the lower cap along the armhole and the crown as one round line.",
)
def cap_shape(subject: Subject) -> Iterator[Finding]:
    """Halves of caps with a wrong number of changes or a hollow crown (degrees), or hollower behind (mm)."""
    found = list(caps(subject.pattern))
    for run in found:
        turns = rounded(run, subject.limits.inflection)
        if len(turns) != 2:
            count = max(len(turns) - 1, 0)
            yield _finding("cap-turns", run, run.line.length / 2.0, Reading(count, 1.0, ""), count=count)
        elif turns[-1].turned < 0.0:
            reading = Reading(turns[-1].turned, 0.0, "deg")
            yield _finding("cap-crown-hollow", run, turns[-1].begins, reading)
    for front in found:
        for back in found:
            same = (front.piece.name, front.side) == (back.piece.name, back.side)
            if same and (front.word, back.word) == ("cap_front", "cap_back"):
                hollow, other = bow(front), bow(back)
                if _depth(hollow) < _depth(other):
                    place = front.line.length / 4.0
                    wanted = _depth(other) * hollow.chord
                    yield _finding("cap-hollower-behind", front, place, Reading(hollow.into, wanted))


def _depth(shape: Bow) -> float:
    """The hollow as a share of the straight way, so that halves of unequal size compare."""
    return shape.into / shape.chord if shape.chord else 0.0


def _finding(code: str, run: WordRun, along: float, reading: Reading, **facts: object) -> Finding:
    x, y = run.line.at(along)
    spot = Spot(run.piece.name, run.name, Point(float(x), float(y)))
    words = {"piece": spoken(run.piece.name), "cap": spoken(run.name)}
    return cap_shape.finding(code, spot, reading, **words, **facts)
