"""Close a dart and let its fullness out at the hem.

The piece is slashed along the grain from the dart point to the hem; the part that does not hold the
``still`` edge turns about the dart point until the legs meet. The angle of the dart is kept, so the
hem opens by more than the dart was wide. The hem is trued with one smooth curve.
"""

from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Line, Path, Transform, curve_between, direction
from notchbook.pattern import Edge, Intake, Pattern, Piece, require, require_one, spoken
from notchbook.pattern.slashing import (
    Bridge,
    Division,
    Shut,
    Slash,
    applied,
    assemble,
    dart_angle,
    dart_cut,
    divide,
    located_on,
    slash_to,
    turned_about,
)
from notchbook.recipe import Change, EdgeName, IntakeName, StepContext, StepDefinition, StepParameters
from notchbook.style.darts.found import darts_named
from notchbook.units import TOLERANCES

_SLASH = 5000.0
"""mm; how far the slash is followed to find the hem: beyond any piece."""


class FlareParameters(StepParameters):
    """The ``intake`` (dart) that is closed, the ``hem`` that opens, and an edge that stays ``still``."""

    intake: IntakeName
    """The dart that is closed."""
    hem: EdgeName
    """The hem that opens where the dart points."""
    still: EdgeName
    """An edge of the piece that stays where it is, such as the center; what lies across the dart turns."""


def run(pattern: Pattern, context: StepContext, parameters: FlareParameters) -> Change:
    """Turn the part beside the dart about its point."""
    piece, (dart,) = darts_named(pattern, (parameters.intake,))
    hem = piece.edge(_on(piece, require_one(pattern, parameters.hem)))
    point = piece.points[dart.point]
    slash = _slash(piece, dart, hem)
    division = divide(piece, (dart_cut(piece, dart), slash))
    still = _still(pattern, division, parameters.still, hem)
    angle = dart_angle(piece, dart)
    motions = turned_about(division, {dart.name: -angle, slash.label: angle}, point, still)
    flared = assemble(division, motions, {dart.name: Shut(), slash.label: Bridge()})
    closed = dict.fromkeys(flared.removals, "the dart was closed into flare")
    flared = replace(
        flared, removals=closed, piece=_with_hem(flared.piece, hem, _beside_hem(division, motions, slash))
    )
    after, removals = applied(pattern, flared)
    return Change(after, flared.splits, flared.merges, removals)


def _on(piece: Piece, edge: str) -> str:
    if not piece.has_edge(edge):
        raise StepRefused("flare-hem-elsewhere", edge=spoken(edge), piece=spoken(piece.name))
    return edge


def _still(pattern: Pattern, division: Division, named: str, hem: Edge) -> str:
    """The edge that lies still: whole, on this piece, and neither the hem nor a leg of the dart."""
    still = require(pattern, named)
    whole = {division.piece.outline[span.edge].name for arc in division.arcs for span in arc} - {hem.name}
    if len(still) != 1 or still[0] not in whole:
        raise StepRefused("flare-still-elsewhere", edge=spoken(named), piece=spoken(division.piece.name))
    return still[0]


def _slash(piece: Piece, dart: Intake, hem: Edge) -> Slash:
    """The slash from the hem up to the dart point, along the grain."""
    point = piece.points[dart.point]
    down = Line(point, point + direction(piece.grain.degrees + 180.0) * _SLASH)
    met = hem.path.intersections(Path.of(down))
    if not met:
        raise StepRefused("flare-misses-hem", intake=spoken(dart.name), edge=spoken(hem.name))
    return slash_to("flare", located_on(piece, hem.name, met[0].at_self), point)


def _beside_hem(
    division: Division, motions: dict[int, Transform], slash: Slash
) -> tuple[Transform, Transform]:
    """How the two parts of the hem were turned, in its direction."""
    before, after = division.beside(slash.label)
    return motions[before], motions[after]


def _with_hem(flared: Piece, hem: Edge, turned: tuple[Transform, Transform]) -> Piece:
    """The hem as one smooth curve that meets both neighbors at the angles at which the old hem met them."""
    opened = flared.edge(hem.name).path
    ends = opened.start.distance_to(hem.path.start), opened.end.distance_to(hem.path.end)
    if max(ends) <= TOLERANCES.join:
        trued = hem.path
    else:
        leaving = _turned(hem.path.tangent_at(0.0).direction(), turned[0])
        arriving = _turned(hem.path.tangent_at(hem.length).direction(), turned[1])
        trued = Path.of(curve_between(opened.start, leaving, opened.end, arriving))
    return flared.with_edges(replace(flared.edge(hem.name), path=trued))


def _turned(degrees: float, motion: Transform) -> float:
    """A direction after a turn, degrees."""
    start, end = motion.apply(direction(0.0) * 0.0), motion.apply(direction(degrees))
    return (end - start).direction()


STEP = StepDefinition(
    operation="dart_to_flare",
    version=1,
    kind="style",
    title="Dart to flare",
    sentence="{intake} closed, {hem} opened",
    parameters=FlareParameters,
    run=run,
)
