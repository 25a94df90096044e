"""Do the notches of each seam meet their mates on the walk?"""

from collections.abc import Iterator

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
        "Declared ease may lie in any stretch, but only in its own direction."
    ),
    severity=Severity.STOP,
    reads=("edges", "seams", "notches"),
    messages={
        "notch-mate-missing": "{seam}: the notch {notch} has no mate on the other side.",
        "notch-doubled": "{seam}: two notches named {notch} stand on one side.",
        "notch-stretch-differs": "{seam}: from {start} to {end} the two sides differ.",
        "notch-off-seam": "The notch {notch} serves {seam} but lies on no edge of it.",
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
    limit, ease = subject.limits.seam_walk, walked.seam.ease
    least, most = min(0.0, ease) - limit, max(0.0, ease) + limit
    second = {met.label: met for met in sides[1]}
    before, start = (0.0, 0.0), "the beginning"
    for met in sides[0]:
        mate = second[met.label]
        stretch = (met.distance - before[0], mate.distance - before[1])
        if not least <= stretch[1] - stretch[0] <= most:
            yield _stretch(subject, walked, mate, stretch, (start, _said(met.label)))
        before, start = (met.distance, mate.distance), _said(met.label)
    stretch = (walked.lengths[0] - before[0], walked.lengths[1] - before[1])
    if sides[0] and not least <= stretch[1] - stretch[0] <= most:
        yield _stretch(subject, walked, second[sides[0][-1].label], stretch, (start, "the end"))


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
    return label.replace("_", " ")
