"""Is the grain line long enough to lay a piece straight?"""

from collections.abc import Iterator

import numpy as np

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import dense, wrapped
from notchbook.checks.subject import Subject
from notchbook.finish import CutPiece
from notchbook.pattern import Finding, Severity

_LINES = 64
"""Lines across the piece on which the longest one in the direction of the grain is looked for."""


@check(
    id="grain-line",
    title="The grain line is long enough",
    rationale=(
        "The cutter measures from both ends of the grain line to the selvage to lay the piece straight. "
        "On a short line the error of the ruler turns the whole piece: a millimeter over a hand's breadth "
        "is most of a centimeter at the hem of a skirt or at the wrist of a sleeve. It should run over most "
        "of the piece, and in the piece's own direction."
    ),
    severity=Severity.LOOK,
    reads=("cut",),
    messages={
        "grain-short": "{piece}: the grain line is short for the piece.",
        "grain-astray": "{piece}: the grain line does not run in the direction of the grain.",
    },
    suggestion="Draw the grain line over most of the length of the piece.",
)
def grain_line(subject: Subject) -> Iterator[Finding]:
    """Grain lines of cut pieces that are too short (mm) or run astray (degrees)."""
    for piece in subject.cut_pieces:
        degrees = subject.pattern.pieces[piece.name].grain.degrees
        wanted = _longest(piece, degrees) * subject.limits.grain_share
        line = piece.grain.end - piece.grain.start
        spot = Spot(piece.name, None, piece.grain.start)
        if line.norm() < wanted:
            yield grain_line.finding("grain-short", spot, Reading(line.norm(), wanted), piece=piece.title)
            continue
        off = abs(wrapped(2.0 * (line.direction() - degrees))) / 2.0
        if off > subject.limits.grain:
            yield grain_line.finding("grain-astray", spot, Reading(off, 0.0, "deg"), piece=piece.title)


def _longest(piece: CutPiece, degrees: float) -> float:
    """The longest straight line inside the cut line in the direction of the grain, mm."""
    along = np.array([np.cos(np.radians(degrees)), np.sin(np.radians(degrees))])
    points = dense(piece.cut_line).points
    ys, xs = points @ along, points @ np.array([along[1], -along[0]])
    places = xs.min() + np.ptp(xs) * (np.arange(_LINES) + 0.5) / _LINES
    following_xs, following_ys = np.roll(xs, -1), np.roll(ys, -1)
    lines, sides = np.nonzero((xs > places[:, None]) != (following_xs > places[:, None]))
    shares = (places[lines] - xs[sides]) / (following_xs[sides] - xs[sides])
    met = ys[sides] + shares * (following_ys[sides] - ys[sides])
    met = met[np.lexsort((met, lines))]  # line by line, upward: in and out by turns
    return float((met[1::2] - met[::2]).max(initial=0.0))
