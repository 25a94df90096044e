"""Do the notches of each seam meet their mates on the walk?"""

from collections.abc import Iterator
from itertools import pairwise

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.checks.walks import Met, WalkedSeam, notches_met, walked_seams
from notchbook.geometry import Point
from notchbook.pattern import Finding, Severity, locate, spoken


@check(
    id="seam-notches",
    title="Notches meet their mates",
    rationale=(
        "The machinist matches notch to notch, not end to end, so that a seam is walked in stretches. A "
        "seam whose ends agree may still be wrong between: one stretch too long, the next too short, and "
        "the hip curve twists. A notch without a mate is worse than none, for she will look for it. "
        "Declared ease may lie in any stretch, but only in its own direction; where the draft says between "
        "which notches it lies, as in a sleeve, the other stretches agree."
    ),
    severity=Severity.STOP,
    reads=("edges", "seams", "notches"),
    messages={
        "notch-mate-missing": "{seam}: the notch {notch} has no mate on the other side.",
        "notch-doubled": "{seam}: two notches named {notch} stand on one side.",
        "notch-stretch-differs": "{seam}: from {start} to {end} the two sides differ.",
        "notch-off-seam": "The notch {notch} serves {seam} but lies on no edge of it.",
        "ease-notch-missing": "{seam}: its ease begins or ends at the notch {notch}, which is not there.",
        "ease-notches-turned": "{seam}: the ease runs from {start} to {end}, which come in another order.",
    },
    suggestion="Move the notch to where it meets its mate, or add the one that is missing.",
)
def seam_notches(subject: Subject) -> Iterator[Finding]:
    """Notches without a mate, and stretches between notches that differ, mm."""
    pattern = subject.pattern
    for walked in walked_seams(pattern):
        sides = (notches_met(pattern, walked, 0), notches_met(pattern, walked, 1))
        seated = {met.notch.name for side in sides for met in side}
        for notch in pattern.notches.values():
            if notch.seam == walked.seam.name and notch.name not in seated:
                yield seam_notches.finding(
                    "notch-off-seam",
                    Spot(None, notch.name, None, (walked.seam.name,)),
                    notch=spoken(notch.name),
                    seam=spoken(walked.seam.name),
                )
        strays = [*_doubled(subject, walked, sides), *_alone(subject, walked, sides)]
        yield from strays
        if not strays:
            yield from _stretches(subject, walked, sides)


def _doubled(subject: Subject, walked: WalkedSeam, sides: tuple[list[Met], list[Met]]) -> Iterator[Finding]:
    for side in sides:
        labels = [met.label for met in side]
        for index, met in enumerate(side):
            if met.label in labels[:index]:
                yield _at_notch(subject, walked, met, "notch-doubled")


def _alone(subject: Subject, walked: WalkedSeam, sides: tuple[list[Met], list[Met]]) -> Iterator[Finding]:
    for side, other in (sides, sides[::-1]):
        labels = {met.label for met in other}
        for met in side:
            if met.label not in labels:
                yield _at_notch(subject, walked, met, "notch-mate-missing")


def _stretches(subject: Subject, walked: WalkedSeam, sides: tuple[list[Met], list[Met]]) -> Iterator[Finding]:
    """Walk from notch to notch; the ends of the seam count as notches."""
    second = {met.label: met for met in sides[1]}
    labels = ("start", *(met.label for met in sides[0]), "end")
    faults = list(_misplaced(subject, walked, labels))
    yield from faults
    if faults or not sides[0]:
        return
    stops = [(0.0, 0.0), *((met.distance, second[met.label].distance) for met in sides[0]), walked.lengths]
    for index, (begin, stop) in enumerate(pairwise(stops)):
        stretch = (stop[0] - begin[0], stop[1] - begin[1])
        least, most = _allowed(subject, walked, labels, index)
        if not least <= stretch[1] - stretch[0] <= most:
            met = second[labels[min(index + 1, len(sides[0]))]]
            yield _stretch(subject, walked, met, stretch, (_said(labels[index]), _said(labels[index + 1])))


def _misplaced(subject: Subject, walked: WalkedSeam, labels: tuple[str, ...]) -> Iterator[Finding]:
    """Ease that is declared between notches that are not there, or stand in another order."""
    between = walked.seam.ease_between
    if between is None:
        return
    step = walked.runs[1][0]
    spot = Spot(
        subject.pattern.carriers[step.edge.name], walked.seam.name, step.path.start, (step.edge.name,)
    )
    said = spoken(walked.seam.name)
    gone = [label for label in between if label not in labels]
    for label in gone:
        yield seam_notches.finding("ease-notch-missing", spot, seam=said, notch=_said(label))
    if not gone and labels.index(between[0]) >= labels.index(between[1]):
        yield seam_notches.finding(
            "ease-notches-turned", spot, seam=said, start=_said(between[0]), end=_said(between[1])
        )


def _allowed(
    subject: Subject, walked: WalkedSeam, labels: tuple[str, ...], index: int
) -> tuple[float, float]:
    """By how much the second side may be longer in the stretch that begins at a notch, mm."""
    limit, ease, between = subject.limits.seam_walk, walked.seam.ease, walked.seam.ease_between
    if between is not None and not labels.index(between[0]) <= index < labels.index(between[1]):
        ease = 0.0
    return min(0.0, ease) - limit, max(0.0, ease) + limit


def _stretch(
    subject: Subject, walked: WalkedSeam, met: Met, lengths: tuple[float, float], words: tuple[str, str]
) -> Finding:
    return seam_notches.finding(
        "notch-stretch-differs",
        _spot(subject, walked, met),
        Reading(lengths[1], lengths[0]),
        seam=spoken(walked.seam.name),
        start=words[0],
        end=words[1],
    )


def _at_notch(subject: Subject, walked: WalkedSeam, met: Met, code: str) -> Finding:
    return seam_notches.finding(
        code, _spot(subject, walked, met), seam=spoken(walked.seam.name), notch=_said(met.label)
    )


def _spot(subject: Subject, walked: WalkedSeam, met: Met) -> Spot:
    place = locate(subject.pattern, met.notch.place)
    position: Point = place.position
    return Spot(place.piece, met.notch.name, position, (walked.seam.name,))


def _said(label: str) -> str:
    return {"start": "the beginning", "end": "the end"}.get(label, label.replace("_", " "))
