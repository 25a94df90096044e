"""Does everything that the pattern refers to still exist?"""

from collections.abc import Iterator

from notchbook.checks.check import Spot, check
from notchbook.checks.subject import Subject
from notchbook.errors import NameLost
from notchbook.pattern import Finding, Intake, Notch, Pattern, Piece, Seam, Severity, directed, spoken
from notchbook.pattern.resolve import Found, Wanted, resolve


@check(
    id="names",
    title="Seams, notches and darts speak of edges that exist",
    rationale=(
        "A pattern is held together by names: a seam names the edges it joins, a notch the edge it stands "
        "on, a dart its legs. When an edge is cut away or joined, a name may be left pointing at nothing, "
        "and what it held is no longer checked or cut. A seam that has lost its edge would otherwise pass "
        "every other check in silence."
    ),
    severity=Severity.STOP,
    reads=("edges", "seams", "notches", "intakes", "allowances"),
    messages={
        "name-dead-seam": "{thing} sews {name}, which is gone.",
        "seam-one-sided": "{thing} has nothing on one of its sides.",
        "name-dead-end": "{thing} starts at {name}, which is no end of that edge.",
        "name-dead-notch": "The notch {thing} speaks of {name}, which is gone.",
        "name-dead-dart": "{thing} speaks of {name}, which is gone.",
        "name-dead-allowance": "An allowance or corner is set for {name}, which is gone.",
    },
    suggestion="Bind it to the edge that took its place, or take it out.",
)
def names(subject: Subject) -> Iterator[Finding]:
    """Names in seams, notches, darts and cut data that stand for nothing."""
    pattern = subject.pattern
    for seam in pattern.seams.values():
        yield from _seam(pattern, seam)
    for notch in pattern.notches.values():
        yield from _notch(pattern, notch)
    for piece in pattern.pieces.values():
        for intake in piece.intakes:
            yield from _intake(pattern, intake, piece.name)
        yield from _inner_darts(piece)
    for name in pattern.allowances:
        yield from _gone(pattern, name, "run", "name-dead-allowance", name, Severity.LOOK)
    for name in pattern.corners:
        yield from _gone(pattern, name, "point", "name-dead-allowance", name, Severity.LOOK)


def _seam(pattern: Pattern, seam: Seam) -> Iterator[Finding]:
    if not seam.first or not seam.second:
        yield _finding("seam-one-sided", seam.name, seam.name)
    for use in (*seam.first, *seam.second):
        gone = list(_gone(pattern, use.edge, "run", "name-dead-seam", seam.name))
        yield from gone or _bad_end(pattern, use.edge, use.starts_at, seam.name)


def _notch(pattern: Pattern, notch: Notch) -> Iterator[Finding]:
    place = notch.place
    gone = list(_gone(pattern, place.edge, "run", "name-dead-notch", notch.name))
    yield from gone or _bad_end(pattern, place.edge, place.from_point, notch.name)
    if notch.seam is not None and not any(notch.serves(seam) for seam in pattern.seams):
        yield _finding("name-dead-notch", notch.name, notch.seam)
    if place.notch is not None:
        yield from _gone(pattern, place.notch, "notch", "name-dead-notch", notch.name)


def _intake(pattern: Pattern, intake: Intake, piece: str) -> Iterator[Finding]:
    parts: list[tuple[str, Wanted]] = [(intake.mouth, "run")]
    if intake.has_legs:
        parts += [(intake.first_leg, "edge"), (intake.second_leg, "edge"), (intake.point, "point")]
    if intake.is_drawn_in:
        parts += [(intake.edge, "run")]
    if intake.is_folded:
        lines = {line.name for line in pattern.pieces[piece].lines}
        for line in (intake.first_line, intake.second_line):
            if line not in lines:
                yield _finding("name-dead-dart", intake.name, line)
    for name, wanted in parts:
        elsewhere = wanted != "run" and pattern.carriers.get(name, piece) != piece
        if elsewhere or not isinstance(resolve(pattern, name, wanted), Found):
            yield _finding("name-dead-dart", intake.name, name)


def _inner_darts(piece: Piece) -> Iterator[Finding]:
    lines, points = {line.name for line in piece.lines}, piece.points
    for dart in piece.inner_darts:
        for leg in (dart.center_leg, dart.side_leg):
            if leg not in lines:
                yield _finding("name-dead-dart", dart.name, leg)
        for point in (dart.upper_point, dart.lower_point):
            if point not in points:
                yield _finding("name-dead-dart", dart.name, point)


def _gone(
    pattern: Pattern, name: str, wanted: Wanted, code: str, thing: str, severity: Severity | None = None
) -> Iterator[Finding]:
    if not isinstance(resolve(pattern, name, wanted), Found):
        yield _finding(code, thing, name, severity)


def _bad_end(pattern: Pattern, edge: str, point: str, thing: str) -> Iterator[Finding]:
    try:
        directed(pattern, edge, point)
    except NameLost:
        yield _finding("name-dead-end", thing, point)


def _finding(code: str, thing: str, name: str, severity: Severity | None = None) -> Finding:
    spot = Spot(None, thing, None, (name,))
    return names.finding(code, spot, None, severity, thing=spoken(thing), name=spoken(name))
