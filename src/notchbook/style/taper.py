"""Taper or flare: seams swung in or out at the hem, to nothing at a place.

The part of each seam below the place turns about it and keeps its length; the corner at the place is rounded
and the hem bends to meet the seam square.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import Pattern, Piece, locate, require_one, spoken
from notchbook.recipe import AmountText, Change, PlaceParameters, StepContext, StepDefinition, StepParameters
from notchbook.style.edges.evened import evened
from notchbook.style.edges.figures import HEM_BEND
from notchbook.style.edges.hem_corners import squared_corner
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.edges.redrawn import redrawn
from notchbook.style.edges.swinging import swung
from notchbook.units import TOLERANCES


class TaperParameters(StepParameters):
    """The ``amount`` by which each seam moves at the hem, and the places at which it runs to ``nothing``."""

    amount: AmountText
    """How far each edge moves at the hem, square to the grain: out, or with a minus in."""
    nothing_at: Annotated[tuple[PlaceParameters, ...], Field(min_length=1)]
    """One place for each edge that is swung, counted from its end away from the hem."""


def run(pattern: Pattern, context: StepContext, parameters: TaperParameters) -> Change:
    """Swing every edge; all or nothing."""
    amount = context.mm(parameters.amount)
    after = pattern
    if amount != 0.0:
        for place in parameters.nothing_at:
            after = _tapered(after, context, place, amount)
        after = evened(pattern, after)
    return Change(after, notes=seams_put_out(pattern, after, "taper"))


def _tapered(pattern: Pattern, context: StepContext, place: PlaceParameters, amount: float) -> Pattern:
    found = locate(pattern, context.place(pattern, place))
    name = require_one(pattern, place.part or place.edge)
    if found.edge.name != name:
        raise StepRefused("taper-elsewhere", edge=spoken(name), found=spoken(found.edge.name))
    piece = pattern.pieces[found.piece]
    edge = piece.edge(name)
    hem, runs_down = _hem_beside(piece, name)
    seam = edge.path if runs_down else edge.path.reversed()
    distance = found.distance if runs_down else edge.length - found.distance
    if distance > edge.length - TOLERANCES.seam_walk:
        raise StepRefused("taper-at-hem", edge=spoken(name))
    moved = swung(piece, seam, distance, amount, along_outline=runs_down)
    hem_path = piece.edge(hem).path
    toward = hem_path.reversed() if runs_down else hem_path
    corner = squared_corner(moved, toward, HEM_BEND.value, spoken(hem))
    paths: dict[str, Path] = {
        name: corner.seam if runs_down else corner.seam.reversed(),
        hem: corner.hem.reversed() if runs_down else corner.hem,
    }
    return pattern.with_pieces(redrawn(piece, paths))


def _hem_beside(piece: Piece, name: str) -> tuple[str, bool]:
    """The hem at an end of the edge, and whether the edge runs down to it."""
    before, after = piece.edge_before(name), piece.edge_after(name)
    if after.kind == "hem":
        return after.name, True
    if before.kind == "hem":
        return before.name, False
    raise StepRefused("taper-no-hem", edge=spoken(name), piece=spoken(piece.name))


STEP = StepDefinition(
    operation="taper",
    version=1,
    kind="style",
    title="Taper",
    sentence="{amount|wider at the hem|narrower at the hem}, to nothing at {nothing_at}",
    parameters=TaperParameters,
    run=run,
)
