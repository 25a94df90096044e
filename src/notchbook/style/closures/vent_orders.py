"""What is done with a vent beyond its seam: it is closed across its top, and its corner is finished last."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from notchbook.pattern import Operation, Pattern, directed, part_name


@dataclass(frozen=True, slots=True)
class VentSide:
    """One side of a vent: the edge that was divided, the part of it that opens, and the lower end of its
    extension, which is turned up with the hem or mitered."""

    cut: str
    opens: str
    lower: str


def vent_orders(
    pattern: Pattern, slug: str, sides: Sequence[VentSide], *, mitered: bool
) -> Iterator[Operation]:
    """The lines of the sewing order; ``pattern`` is that before the edges were divided. Common practice, no
    source."""
    closed = part_name(slug, "vent_closed")
    text = (
        "Clip the allowance of the side that lies under to the top of the vent, lay both extensions toward "
        "the side that laps over, and stitch across the top through all layers."
    )
    yield Operation(closed, "sides", text, tuple(one.opens for one in sides), _seams_above(pattern, sides))
    lower = tuple(one.lower for one in sides)
    if mitered:
        text = (
            "Sew the miter of the vent to the end of the hem, right sides together, before both are turned."
        )
        yield Operation(part_name(slug, "miter"), "hems", text, lower)
        return
    text = (
        "Fold the extension of the side that laps over in along its line, over the turned hem, and fell it."
    )
    yield Operation(part_name(slug, "vent_turned"), "hems", text, lower, (closed,))


def _seams_above(pattern: Pattern, sides: Sequence[VentSide]) -> tuple[str, ...]:
    """The seams that end at the top of the vent."""
    cut = {one.cut for one in sides}
    return tuple(
        seam.name
        for seam in pattern.seams.values()
        if any(
            cut & {step.edge.name for step in directed(pattern, use.edge, use.starts_at)}
            for use in (*seam.first, *seam.second)
        )
    )
