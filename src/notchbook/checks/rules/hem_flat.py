"""Does each hem lie flat on the piece when it is turned up?"""

from collections.abc import Iterator

import numpy as np
from shapely import Polygon, distance
from shapely import points as places

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import Numbers, bend, dense
from notchbook.checks.subject import Subject
from notchbook.finish import CutEdge, CutPiece
from notchbook.geometry import Point
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="hem-flat",
    title="Hems lie flat when turned",
    rationale=(
        "A hem is folded up along its line, and its allowance then lies on the piece. If the sides lean "
        "and the allowance was cut straight down, its corners stick out or fall short, and the side seam "
        "pulls or has a tuck. The allowance must be the reflection of what it lies on. Curved hems are "
        "another matter: there the finishing says how much fullness is left."
    ),
    severity=Severity.LOOK,
    reads=("cut",),
    messages={"hem-sticks-out": "{piece}: turned up, {hem} sticks out beside the piece."},
    suggestion="Fold the corner of the hem back along the side seam, or use a facing.",
)
def hem_flat(subject: Subject) -> Iterator[Finding]:
    """Straight hems whose allowance, turned up, lies outside the piece, mm."""
    for piece in subject.cut_pieces:
        for edge in piece.edges:
            straight = bend(edge.sew)[0] <= subject.limits.straightness
            if edge.kind != "hem" or edge.width <= 0.0 or not straight:
                continue
            stray, place = _stray(piece, edge)
            if stray > subject.limits.hem_flat:
                yield hem_flat.finding(
                    "hem-sticks-out",
                    Spot(piece.name, edge.source, place),
                    Reading(stray, 0.0),
                    piece=piece.title,
                    hem=spoken(edge.source),
                )


def _stray(piece: CutPiece, edge: CutEdge) -> tuple[float, Point]:
    """How far the hem allowance of one edge, folded up, lies outside the cut line, mm, and where."""
    outline = dense(piece.cut_line).points
    start = np.array([edge.sew.start.x, edge.sew.start.y])
    chord = np.array([edge.sew.end.x, edge.sew.end.y]) - start
    along = chord / np.hypot(*chord)
    outward = np.array([along[1], -along[0]])
    beyond = _below(outline, start, along, outward, edge)
    if not len(beyond):
        return 0.0, edge.sew.start
    folded = beyond - 2.0 * ((beyond - start) @ outward)[:, None] * outward
    gaps = distance(Polygon(outline), places(folded))
    worst = int(np.argmax(gaps))
    return float(gaps[worst]), Point(float(folded[worst, 0]), float(folded[worst, 1]))


def _below(outline: Numbers, start: Numbers, along: Numbers, outward: Numbers, edge: CutEdge) -> Numbers:
    """The points of the cut line that belong to this hem's allowance."""
    depth = (outline - start) @ outward
    place = (outline - start) @ along
    reach = 2.0 * edge.width
    inside = (
        (depth > 0.0) & (depth <= edge.width + 0.5) & (place > -reach) & (place < edge.sew.length + reach)
    )
    found: Numbers = outline[inside]
    return found
