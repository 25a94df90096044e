"""A drawn leg put together: outlines in the frame of the crease, with the places that pieces need."""

from notchbook.blocks.legs.drawing import DrawnPanel
from notchbook.blocks.legs.shapes import TrouserPanel
from notchbook.blocks.legs.widths import place_at_level
from notchbook.blocks.upper.shapes import OpenDart
from notchbook.geometry import Line, Path, Transform, curve_between


def panel(drawn: DrawnPanel, fork_angle: float) -> TrouserPanel:
    """The panel as the pieces take it; ``fork_angle`` is that inside the piece at the crotch point,
    degrees."""
    move = Transform.translation(drawn.leg.center.x, drawn.leg.center.y)
    waist = tuple(part.transformed(move) for part in drawn.top.waist)
    upper = Path.of(drawn.top.side.transformed(move)).reversed()
    below = Path(drawn.leg.side)
    side = Path((*upper.segments, *below.with_start(upper.end).segments))
    inseam = Path(drawn.leg.inseam.segments)
    crotch = Path((Line(waist[0].start, drawn.curve.curve.start), drawn.curve.curve))
    knee_side = None if drawn.leg.leg.knee_y is None else drawn.leg.side[0].end
    return TrouserPanel(
        waist,
        tuple(
            OpenDart(move.apply(dart.first), move.apply(dart.point), move.apply(dart.second))
            for dart in drawn.top.darts
        ),
        drawn.top.closed,
        side,
        _hem(side, inseam),
        inseam,
        crotch,
        drawn.leg.center.y,
        drawn.leg.leg.knee_y,
        drawn.leg.center,
        upper.end,
        place_at_level(drawn.leg.side, 0.0),
        knee_side,
        drawn.leg.inseam.knee,
        drawn.slant,
        drawn.corner.extension,
        drawn.curve.depth,
        fork_angle,
        drawn.top.take_in,
    )


def _hem(side: Path, inseam: Path) -> Path:
    """From the side to the inseam, square to both."""
    start, end = side.end, inseam.end
    leaving = side.tangent_at(side.length).direction() - 90.0
    arriving = inseam.tangent_at(inseam.length).direction() - 90.0
    level = (end - start).direction()
    if max(abs(turn) for turn in (_turn(level, leaving), _turn(level, arriving))) < 0.5:
        return Path.line(start, end)
    return Path.of(curve_between(start, leaving, end, arriving + 0.0))


def _turn(one: float, two: float) -> float:
    return (two - one + 180.0) % 360.0 - 180.0
