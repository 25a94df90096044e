"""Do crotch seams turn their corner as a body does, the back longer and flatter than the front?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.crotches import Crotch, corner_range, crotches, least_end_hollow, least_radius
from notchbook.checks.subject import Subject
from notchbook.geometry import Point
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="crotch-shape",
    title="Crotch seams have their shape",
    rationale=(
        "The front crotch seam is a J: down the belly nearly straight, then round under the body. The back "
        "one is longer and flatter, for it passes under the seat. How far each lies from the corner of "
        "center and crotch level, measured at 45 degrees, is what a patternmaker draws it by. A seam that "
        "stays farther off is a diagonal: it cuts into the seat and pulls whiskers from the fork. One that "
        "goes deeper hangs in folds. The depth alone can be met by a hook, too: straight, a tight bend, "
        "straight again. So the seam bends nowhere tighter than a hand would draw it, and its last third is "
        "still a curve: a straight ramp to the fork binds under the seat."
    ),
    severity=Severity.LOOK,
    reads=("edges",),
    messages={
        "crotch-diagonal": "{piece}: the crotch seam cuts its corner.",
        "crotch-corner-deep": "{piece}: the crotch seam goes deep into its corner.",
        "crotch-hooked": "{piece}: the crotch seam turns its corner in a hook.",
        "crotch-ramp": "{piece}: the crotch seam ends in a straight ramp to the fork.",
        "crotch-front-as-long": "{piece}: the front reaches as far under the body as the back.",
        "crotch-back-not-flatter": "{piece}: the back crotch seam is as hollow as the front one.",
    },
    suggestion="Look at crotch length, rise and hip again; draw the curve through its place at 45 degrees.",
)
def crotch_shape(subject: Subject) -> Iterator[Finding]:
    """Corner depths and radii out of their range (mm), ramps, and backs that are not longer and flatter."""
    found = list(crotches(subject.pattern))
    for crotch in found:
        if crotch.run.piece.stretches:  # what gives finds its own way into the corner
            continue
        least, most = corner_range(crotch, subject.limits)
        if crotch.corner_depth > most:
            yield _finding("crotch-diagonal", crotch, Reading(crotch.corner_depth, most))
        elif crotch.corner_depth < least:
            yield _finding("crotch-corner-deep", crotch, Reading(crotch.corner_depth, least))
        tightest = least_radius(crotch, subject.limits)
        if crotch.least_radius < tightest:
            yield _finding("crotch-hooked", crotch, Reading(crotch.least_radius, tightest))
        least_end = least_end_hollow(crotch, subject.limits)
        if crotch.end_hollow < least_end:
            way = crotch.end_way
            yield _finding("crotch-ramp", crotch, Reading(way * crotch.end_hollow, way * least_end))
    for front in found:
        for back in found:
            if (front.run.panel, back.run.panel) == ("front", "back") and _are_one_leg(front, back):
                if front.extension >= back.extension:
                    reading = Reading(front.extension, back.extension)
                    yield _finding("crotch-front-as-long", front, reading)
                if back.hollow >= front.hollow:
                    reading = Reading(back.hollow, front.hollow, "")
                    yield _finding("crotch-back-not-flatter", back, reading)


def _are_one_leg(front: Crotch, back: Crotch) -> bool:
    return (front.run.instance, front.run.side) == (back.run.instance, back.run.side)


def _finding(code: str, crotch: Crotch, reading: Reading) -> Finding:
    run = crotch.run
    x, y = run.line.at(run.line.length * 0.8)
    spot = Spot(run.piece.name, run.name, Point(float(x), float(y)))
    return crotch_shape.finding(code, spot, reading, piece=spoken(run.piece.name))
