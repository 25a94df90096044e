"""Draw a new armhole: cut away, lowered, or raised for a garment without sleeves, on front and back together.

The armhole's own shape is carried to its new ends on the shoulder and the side seam, and hollowed where
that is asked. What a front without a sleeve would gape by is closed into a dart. The sleeve is taken away
by name, or the step says by how much it no longer fits.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Point, direction
from notchbook.pattern import Finding, Pattern, Piece, require, require_one, spoken
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    IntakeName,
    PieceName,
    PivotName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.darts.found import bust_point_of, still_edge
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.carried_edge import Carry, carried_edge
from notchbook.style.edges.edge_points import outward_at
from notchbook.style.edges.evened import evened, is_sewn
from notchbook.style.edges.figures import ARMHOLE_GAPE, CUTAWAY_FROM, CUTAWAY_GAPE
from notchbook.style.edges.following_sleeve import following_sleeve
from notchbook.style.edges.gape_choice import gape_closed, gape_goes, gape_left
from notchbook.style.edges.gapes import Gape, closed_gape, smoothed
from notchbook.style.edges.kept_notches import kept_notches
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.edges.neck_edges import NeckEdges, neck_edges, with_paths
from notchbook.style.edges.redrawn import redrawn
from notchbook.style.edges.taken_away import without_piece
from notchbook.units import TOLERANCES

_CHECK = "change-armhole"


class ArmholeParameters(StepParameters):
    """An armhole, its end at the underarm, and how much its middle is hollowed."""

    edge: EdgeName
    """The armhole of the piece."""
    underarm: PointName
    """Its end at the side seam."""
    hollow: AmountText = "0 cm"
    """How far its middle moves into the piece, square to the grain; with a minus out."""


class ChangeArmholeParameters(StepParameters):
    """The ``armholes`` of front and back, how they move at shoulder and side, and what becomes of the
    sleeve."""

    armholes: Annotated[tuple[ArmholeParameters, ...], Field(min_length=1)]
    """The armholes that are drawn anew, front and back."""
    shoulder: AmountText = "0 cm"
    """How much shorter the shoulder seam becomes at the armhole; with a minus longer."""
    lower: AmountText = "0 cm"
    """How much lower the armhole lies at the side seam; with a minus higher."""
    sleeve: PieceName | None = None
    """A sleeve that is taken away, for a garment without sleeves."""
    following: PieceName | None = None
    """A sleeve that follows: its underarm goes down with the armhole and out until its cap fits as before."""
    gape_dart: IntakeName | None = None
    """The dart into which the gape of the front is closed; empty leaves it."""
    gape_point: PivotName | None = None
    """The point to which the gape runs out; empty takes the bust point of the piece."""
    gape: AmountText | None = None
    """How much is closed on one half of the front; empty takes it from the table."""
    still: EdgeName | None = None
    """An edge of the front that does not move while the gape is closed; empty: the one on the fold."""


def run(pattern: Pattern, context: StepContext, parameters: ChangeArmholeParameters) -> Change:
    """Draw every armhole; all or nothing."""
    removals: dict[str, str] = {}
    before = pattern
    if parameters.sleeve is not None:
        before, removals = without_piece(
            pattern, _piece(pattern, parameters.sleeve), "the sleeve was taken away"
        )
    after, corners, notes = before, dict[str, tuple[Point, ...]](), list[Finding]()
    moves = context.mm(parameters.shoulder), context.mm(parameters.lower)
    for one in parameters.armholes:
        edges = neck_edges(after, one.edge, one.underarm)
        hollow = context.mm(one.hollow)
        if (*moves, hollow) != (0.0, 0.0, 0.0):
            corners[edges.piece.name] = (edges.neck.path.start, edges.neck.path.end)
            after = after.with_pieces(_drawn(edges, moves, hollow))
        after = _contoured(after, context, parameters, one, notes)
    if parameters.following is not None and after is not before:
        sleeve = _piece(before, parameters.following)
        names = frozenset(one.edge for one in parameters.armholes)
        after = evened(before, following_sleeve(before, after, sleeve, moves[1], names))
        corners[sleeve] = _moved_corners(before.pieces[sleeve], after.pieces[sleeve])
    kept = kept_notches(before, after, lambda piece, point: _is_corner(corners.get(piece, ()), point))
    notes += seams_put_out(before, kept.pattern, _CHECK)
    return Change(kept.pattern, removals={**removals, **kept.removals}, notes=tuple(notes))


def _moved_corners(before: Piece, after: Piece) -> tuple[Point, ...]:
    return tuple(
        edge.path.start
        for edge in before.outline
        if edge.path.start.distance_to(after.edge(edge.name).path.start) > TOLERANCES.closure
    )


def _is_corner(corners: tuple[Point, ...], point: Point) -> bool:
    """Whether the place was a corner that moved along what it lies on."""
    return any(point.distance_to(corner) <= TOLERANCES.closure for corner in corners)


def _piece(pattern: Pattern, name: str) -> str:
    return require_one(pattern, name, "piece")


def _drawn(edges: NeckEdges, moves: tuple[float, float], hollow: float) -> Piece:
    """The armhole between its new ends; walked from the underarm, the edge there is the side seam."""
    side, shoulder = edges.center_path, edges.shoulder_path
    for edge, path, amount in ((edges.center, side, moves[1]), (edges.shoulder, shoulder, moves[0])):
        if amount >= path.length - TOLERANCES.closure:
            raise StepRefused("armhole-past-edge", edge=spoken(edge.name), length=path.length, amount=amount)
    new_side, new_shoulder = carried_on(side, -moves[1]), carried_on(shoulder, -moves[0])
    path = edges.neck.path
    across = direction(edges.piece.grain.degrees - 90.0)
    is_outward = outward_at(edges.neck, path.length / 2.0).dot(across) > 0.0
    belly = across * (-hollow if is_outward else hollow)
    drawn = carried_edge(path, Carry(new_side.end - path.start, new_shoulder.end - path.end, belly))
    return with_paths(edges, new_side, drawn, new_shoulder)


def _contoured(
    pattern: Pattern,
    context: StepContext,
    parameters: ChangeArmholeParameters,
    one: ArmholeParameters,
    notes: list[Finding],
) -> Pattern:
    """The gape of the front closed, where it has the dart for it; else said how much there is."""
    members = require(pattern, one.edge)
    if len(members) > 1:  # an armhole with a dart of its own has its contour there
        return pattern
    name = members[0]
    piece = pattern.piece_of(name)
    amount = _table_gape(context, parameters) if parameters.gape is None else context.mm(parameters.gape)
    goes = gape_goes(pattern, piece, parameters.gape_dart, parameters.gape_point)
    if goes is None or amount <= 0.0:
        is_open = bust_point_of(piece) is not None and not is_sewn(pattern, name)
        if parameters.gape_dart is None and is_open:
            notes.append(gape_left(_CHECK, "armhole-gape-left", piece, name, amount))
        return pattern
    dart, pivot = goes
    notes.append(gape_closed(_CHECK, "armhole-gape-closed", piece, dart, amount))
    still = still_edge(pattern, piece, parameters.still)
    return pattern.with_pieces(_without_gape(piece, Gape(name, amount, pivot, dart, still)))


def _without_gape(piece: Piece, gape: Gape) -> Piece:
    place = piece.edge(gape.edge).path.nearest(gape.pivot).distance_along
    closed = closed_gape(piece, gape)
    path = closed.edge(gape.edge).path
    joint = min(path.corners(0.5) or (place,), key=lambda corner: abs(corner - place))
    return redrawn(closed, {gape.edge: smoothed(path, joint)})


def _table_gape(context: StepContext, parameters: ChangeArmholeParameters) -> float:
    """1/2 in for a cutaway armhole, else 1/4 in."""
    cut_away = context.mm(parameters.shoulder) >= CUTAWAY_FROM.value
    return CUTAWAY_GAPE.value if cut_away else ARMHOLE_GAPE.value


STEP = StepDefinition(
    operation="change_armhole",
    version=1,
    kind="style",
    title="Change armhole",
    sentence=(
        "{armholes:{edge}, hollowed by {hollow}}: {shoulder|shorter at the shoulder|longer at the "
        "shoulder}, {lower|lower at the side|higher at the side}, gape into {gape_dart}"
    ),
    parameters=ChangeArmholeParameters,
    run=run,
)
