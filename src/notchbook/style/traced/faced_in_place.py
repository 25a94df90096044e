"""A facing that was drawn on the panel that it faces, such as that of a lapel: it lies there as drawn."""

from notchbook.errors import StepRefused
from notchbook.geometry import Point
from notchbook.pattern import Edge, Pattern, Piece, require, spoken
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.style.traced.panels_faced import PanelFaced

_ON_EDGE = 0.5
"""mm that an end of the free edge may lie beside the edge on which the facing ends. Own judgment."""


def faced_in_place(pattern: Pattern, facing: Piece, free: Edge) -> PanelFaced | None:
    """The panel under such a facing; None where the facing was traced off.

    StepRefused ``lining-facing-shaped`` where its free edge does not run from edge to edge of the panel, or a
    dart opens under it.
    """
    panel = _panel(pattern, facing, free)
    if panel is None:
        return None
    before, reach_before = _met(panel, free.path.end, facing.name)
    after, reach_after = _met(panel, free.path.start, facing.name)
    gone = _between(panel, before, after)
    if not gone or any(edge.kind == "leg" for edge in gone):
        raise StepRefused("lining-facing-shaped", facing=spoken(facing.name))
    return PanelFaced(
        piece=panel,
        gone=tuple(edge.name for edge in gone),
        shed=(),
        corners=(before.end, after.start),
        darts=(),
        free=(free.path.reversed(),),
        ends=(before.name, after.name),
        reach=(before.length - reach_before, reach_after),
        cuts=(),
    )


def _panel(pattern: Pattern, facing: Piece, free: Edge) -> Piece | None:
    """The piece whose front edge is the first run of the seam that joins it to the facing: a facing that was
    traced off is itself the first."""
    front = facing.edge_after(facing.edge_after(free.name).name).name
    for seam in pattern.seams.values():
        if seam.seam_class != TURNED_SEAM or front not in {use.edge for use in seam.second}:
            continue
        owners = {pattern.carriers[name] for use in seam.first for name in require(pattern, use.edge)}
        if len(owners) == 1 and facing.name not in owners:
            return pattern.pieces[owners.pop()]
    return None


def _met(panel: Piece, end: Point, facing: str) -> tuple[Edge, float]:
    """The edge of the panel on which an end of the free edge lies, and how far along it, mm."""
    edge = min(panel.outline, key=lambda one: one.path.nearest(end).gap)
    place = edge.path.nearest(end)
    if place.gap > _ON_EDGE:
        raise StepRefused("lining-facing-shaped", facing=spoken(facing))
    return edge, place.distance_along


def _between(panel: Piece, before: Edge, after: Edge) -> list[Edge]:
    """The edges from one to the other, counter-clockwise."""
    count, start = len(panel.outline), panel.edge_index(before.name) + 1
    steps = (panel.edge_index(after.name) - start) % count
    return [panel.outline[(start + step) % count] for step in range(steps)]
