"""The seat seam of trousers with cloth to let out: wide at the waist, and no wider than usual in the curve.

What a pair of trousers is let out by lies in its center back. The allowance there is an inch at the waist and
runs evenly down to that of the crotch seam, where a wide one would bind. No shape changes.
"""

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import Allowance, Pattern, locate, spoken
from notchbook.recipe import Change, PlaceParameters, StepContext, StepDefinition, StepParameters
from notchbook.style.closures.divided import divided
from notchbook.units import TOLERANCES

_WORDS = ("seat", "curve", "seat_end")
"""What the part above, the part below and the point between them are called."""


class SeatSeamParameters(StepParameters):
    """How far down the center back can be let out."""

    until: PlaceParameters
    """The place on the back crotch seam, counted from the waist, where its curve begins."""


def run(pattern: Pattern, context: StepContext, parameters: SeatSeamParameters) -> Change:
    """Divide the seam where its curve begins, and give the straight part above its allowance.

    StepRefused ``seat-seam-bent`` where the part above is not straight.
    """
    asked = parameters.until
    found = locate(pattern, context.place(pattern, asked))
    begins = found.edge.start == asked.from_point
    depth = found.distance if begins else found.edge.length - found.distance
    cut = divided(pattern, (asked.edge, asked.from_point), depth, _WORDS, context.slug)
    off = _bow(cut.piece.edge(cut.near).path)
    if off > TOLERANCES.sew_length:
        raise StepRefused("seat-seam-bent", edge=spoken(asked.edge), off=off)
    after = pattern.with_pieces(cut.piece).with_allowances({cut.near: Allowance("seat_seam")})
    return Change(after, splits={cut.edge: cut.parts})


def _bow(path: Path) -> float:
    """How far the path stands off the straight way between its ends, mm."""
    straight = Path.line(path.start, path.end)
    return max(straight.nearest(point).gap for point in path.flattened(TOLERANCES.sew_length))


STEP = StepDefinition(
    operation="seat_seam",
    version=1,
    kind="cut",
    title="Seat seam to let out",
    sentence="{until}",
    parameters=SeatSeamParameters,
    run=run,
)
