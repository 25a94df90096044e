"""Does the crease of a leg lie on the grain, in the middle of knee and hem and between them?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.leg_halves import halves_below_knee
from notchbook.checks.measured import dense, start_direction, wrapped
from notchbook.checks.subject import Subject
from notchbook.geometry import Path
from notchbook.pattern import Finding, InternalLine, Piece, Severity, spoken
from notchbook.pattern.names import last_word


@check(
    id="crease-line",
    title="The crease lies on the grain, in the middle of the leg",
    rationale=(
        "A leg hangs from its crease: pressed along the warp it stays, a few degrees off it winds round the "
        "leg. From knee to hem the crease halves the panel, so that the cloth hangs alike to both sides. "
        "Where it does not, one seam swings to the front and the leg twists. An inseam that still turns "
        "below the knee takes from one half what the other keeps."
    ),
    severity=Severity.LOOK,
    reads=("edges", "grain"),
    messages={
        "crease-off-grain": "{piece}: the crease does not run along the grain.",
        "crease-off-middle": "{piece}: the crease does not halve {level}.",
        "leg-off-balance": "{piece}: below the knee the two halves of the leg are not as wide as each other.",
    },
    suggestion=(
        "Lay the crease through the middles of knee and hem and the grain along it; draw both seams from the "
        "hem straight up to the knee."
    ),
)
def crease_line(subject: Subject) -> Iterator[Finding]:
    """Creases off the grain (degrees) or off the middle of knee or hem, halves that differ between (mm)."""
    for piece in subject.pattern.pieces.values():
        for line in piece.lines:
            if last_word(line.name) == "crease_line":
                yield from _off_grain(subject, piece, line)
                off_middle = list(_off_middle(subject, piece, line))
                yield from off_middle or _off_balance(subject, piece, line)


def _off_grain(subject: Subject, piece: Piece, line: InternalLine) -> Iterator[Finding]:
    off = abs(wrapped(2.0 * (start_direction(line.path) - piece.grain.degrees))) / 2.0
    if off > subject.limits.grain:
        spot = Spot(piece.name, line.name, line.path.start)
        yield crease_line.finding(
            "crease-off-grain", spot, Reading(off, 0.0, "deg"), piece=spoken(piece.name)
        )


def _off_middle(subject: Subject, piece: Piece, line: InternalLine) -> Iterator[Finding]:
    levels = [(one.name, one.path) for one in piece.lines if last_word(one.name) == "knee_line"]
    levels += [(edge.name, edge.path) for edge in piece.outline if last_word(edge.name) == "hem"]
    for name, path in levels:
        off = _distance_from(line.path, path)
        if off > subject.limits.crease_middle:
            spot = Spot(piece.name, name, line.path.start, (line.name,))
            yield crease_line.finding(
                "crease-off-middle", spot, Reading(off, 0.0), piece=spoken(piece.name), level=spoken(name)
            )


def _off_balance(subject: Subject, piece: Piece, line: InternalLine) -> Iterator[Finding]:
    """The level below the knee at which the halves of the leg differ most, where that is too much."""
    found = [(abs(one.off), one) for one in halves_below_knee(piece, line.path)]
    off, halves = max(found, key=lambda pair: pair[0], default=(0.0, None))
    if halves is not None and off > subject.limits.leg_balance:
        spot = Spot(piece.name, line.name, halves.place)
        yield crease_line.finding("leg-off-balance", spot, Reading(off, 0.0), piece=spoken(piece.name))


def _distance_from(crease: Path, level: Path) -> float:
    """How far the middle between the ends of a level lies off the crease, mm."""
    ends = dense(level).points
    x, y = (ends[0] + ends[-1]) / 2.0
    way = crease.end - crease.start
    size = way.norm()
    return abs(way.x * (y - crease.start.y) - way.y * (x - crease.start.x)) / size if size else 0.0
