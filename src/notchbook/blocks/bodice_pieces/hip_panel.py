"""A panel to the waist made one to the hem: the waist becomes a level, its darts get a second point."""

from notchbook.blocks.bodice_pieces.below_waist import HipPanel
from notchbook.blocks.bodice_pieces.panel import InnerOpening, Level, PanelShape, Run
from notchbook.blocks.upper.shapes import BackHalf, FrontHalf
from notchbook.geometry import Line, Path, Point
from notchbook.units import TOLERANCES


def hip_panel(shape: PanelShape, upper: FrontHalf | BackHalf, below: HipPanel) -> PanelShape:
    """The panel with its part below the waist. The bust dart must not open in the waist."""
    runs = {run.edge: run for run in shape.runs}
    hem_center = Point(0.0, below.hem_level)
    hip_side = _side_at(below, below.hip_level)
    return PanelShape(
        shape.which,
        (
            Run("hem", (Path.of(Line(hem_center, below.side.start)),)),
            _side_run(runs["side_seam"], below),
            *(runs[edge] for edge in ("armhole", "shoulder", "neck")),
            _center_run(runs["center"], hem_center),
        ),
        (
            *shape.levels,
            Level("waist_line", _waist_parts(runs["waist"], below)),
            Level("hip_line", (Path.line(Point(0.0, below.hip_level), hip_side),)),
        ),
        (*shape.marks, ("waist_center", upper.waist[0].start)),
        _inner_darts(runs["waist"], below),
    )


_REDRAWN = 13.0
"""mm below a dart that are taken from the panel, where the edge was trued across the dart."""


def _side_run(run: Run, below: HipPanel) -> Run:
    """The side seam from the hem: its lowest part up to the first dart or the underarm is drawn anew."""
    if not run.openings:
        return Run(run.edge, (below.side,))
    part = run.parts[0]
    kept = part.length - min(_REDRAWN, part.length / 3.0)
    joint = below.side.nearest(part.point_at(kept)).distance_along
    below_dart, beside_dart = below.side.between(0.0, joint), part.between(kept, part.length)
    gap = below_dart.end.distance_to(beside_dart.start)
    if TOLERANCES.join < gap < TOLERANCES.closure:  # a dart that opens within the rounding of the waist
        below_dart = below_dart.with_end(beside_dart.start)
    return Run(run.edge, (below_dart.joined(beside_dart), *run.parts[1:]), run.openings)


def _center_run(run: Run, hem_center: Point) -> Run:
    onward = Path.of(Line(run.parts[-1].end, hem_center))
    return Run(run.edge, (*run.parts[:-1], run.parts[-1].joined(onward)), run.openings)


def _waist_parts(run: Run, below: HipPanel) -> tuple[Path, ...]:
    """The parts of the waist between the darts, the last drawn on (or back) to the rounded side seam."""
    last = run.parts[-1]
    if below.rounding < 0.0:
        return (*run.parts[:-1], last.between(0.0, last.length + below.rounding))
    return (*run.parts[:-1], last.joined(Path.of(Line(last.end, below.waist_side))))


def _inner_darts(run: Run, below: HipPanel) -> tuple[InnerOpening, ...]:
    return tuple(
        InnerOpening(opening.dart, opening.point, opening.first, lower, opening.second)
        for opening, lower in zip(run.openings, below.lower_points, strict=True)
    )


def _side_at(below: HipPanel, level: float) -> Point:
    """Where the side seam is at the hip: its start where the garment ends there."""
    if level <= below.side.start.y:
        return below.side.start
    return Point(below.side.start.x, level)
