"""Between which places down a center its buttons lie, and at which level one of them is wanted."""

from collections.abc import Sequence

from notchbook.errors import StepRefused
from notchbook.pattern import Edge, Pattern, require_one, spoken
from notchbook.style.closures.button_places import ButtonRoom
from notchbook.style.closures.figures import FIRST_BELOW_HALF, LAST_ABOVE_HEM
from notchbook.style.closures.stand_outline import drops
from notchbook.style.closures.straight_center import StraightCenter


def button_room(
    pattern: Pattern,
    centers: Sequence[StraightCenter],
    given: tuple[float | None, float | None],
    level: str | None,
    sizes: tuple[float, float],
) -> ButtonRoom:
    """The room for buttons; ``given``: below the top and above the lower end, mm, or None; ``sizes``:
    diameter of the button and width of the stand.

    Where a V neck runs on over the stand the first lies below the end of the V.

    StepRefused ``buttons-level-elsewhere`` where the level lies on none of the pieces.
    """
    diameter, width = sizes
    usual = diameter / 2.0 + FIRST_BELOW_HALF.value
    first, last = given
    if first is None:
        first = usual + max(0.0, drops(centers[0], width)[0])
    if last is None:
        bottom = centers[-1]
        is_hem = edge_below(bottom).kind == "hem"
        last = LAST_ABOVE_HEM.value if is_hem else usual + max(0.0, -drops(bottom, width)[1])
    length = sum(center.length for center in centers)
    wanted = None if level is None else level_down(pattern, centers, level)
    return ButtonRoom(first, length - last, wanted)


def edge_below(center: StraightCenter) -> Edge:
    """The edge that meets the center at its lower end, such as a hem."""
    name = center.edge.name
    return center.piece.edge_after(name) if center.runs_down else center.piece.edge_before(name)


def level_down(pattern: Pattern, centers: Sequence[StraightCenter], point: str) -> float:
    """How far down the centers the level of a point lies, square to the center of its piece, mm."""
    name = require_one(pattern, point, "point")
    carrier = pattern.carriers[name]
    begin = 0.0
    for center in centers:
        if center.piece.name == carrier:
            return begin + (center.piece.points[name] - center.top).dot(center.down)
        begin += center.length
    raise StepRefused("buttons-level-elsewhere", point=spoken(point), piece=spoken(centers[0].piece.name))
