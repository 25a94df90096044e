"""Where a yoke would end on a skirt panel: a line so far below the waist, drawn with the darts closed.

It leaves the center and meets the side square, as a style line that is cut there does, and is then opened
with the darts that it crosses.
"""

from itertools import pairwise

from notchbook.blocks._closed_waist import Panel
from notchbook.blocks._waist_edges import PART_ROLES
from notchbook.geometry import Path, Point, Transform
from notchbook.geometry.met_square import met_square
from notchbook.pattern import InternalLine, part_name

BELOW_POINT = 10.0
"""mm by which the legs of a dart are followed beyond its point, to find where a line passes close by it."""


def yoke_lines(piece: str, panel: Panel, depth: float | None) -> tuple[InternalLine, ...]:
    """The yoke line of a panel so far below the waist, mm; in parts where it crosses darts."""
    if depth is None:
        return ()
    parts = yoke_paths(panel, depth)
    name = part_name(piece, "yoke_line")
    words = PART_ROLES[len(parts) - 1]
    names = [part_name(name, word) for word in words] if words else [name]
    return tuple(InternalLine(one, path, "placement") for one, path in zip(names, parts, strict=True))


def crossed_darts(panel: Panel, depth: float) -> tuple[int, ...]:
    """The darts, by their number from the center, that reach down to the yoke line."""
    return tuple(
        index
        for index, point in enumerate(panel.points)
        if panel.intake(index) > 0.0 and point.distance_to(panel.parts[index].end) > depth
    )


def yoke_paths(panel: Panel, depth: float) -> list[Path]:
    """The parts of the line, from the center outward, as they lie on flat cloth."""
    crossed = crossed_darts(panel, depth)
    motions = _closing(panel, crossed)
    side = Path.of(panel.side).transformed(motions[-1])
    at_side = side.length - depth
    square = side.tangent_at(at_side).direction() - 90.0
    line = met_square((Point(0.0, panel.height - depth), 0.0), (side.point_at(at_side), square))
    stops = [0.0]
    for index, motion in zip(crossed, motions, strict=False):
        mouth, point = panel.parts[index].end, panel.points[index]
        leg = Path.line(point + (point - mouth).unit() * BELOW_POINT, mouth).transformed(motion)
        stops.extend(crossing.at_self for crossing in line.intersections(leg)[:1])
    stops.append(line.length)
    return [
        line.between(begin, end).transformed(motion.inverse())
        for (begin, end), motion in zip(pairwise(stops), motions, strict=True)
    ]


def _closing(panel: Panel, crossed: tuple[int, ...]) -> list[Transform]:
    """The motion that closes the crossed darts before each part of the panel between them."""
    motions = [Transform.identity()]
    for index in crossed:
        point = panel.points[index]
        near, far = (
            panel.parts[at].end if at == index else panel.parts[at].start for at in (index, index + 1)
        )
        angle = (near - point).direction() - (far - point).direction()
        motions.append(Transform.rotation(angle, point).then(motions[-1]))
    return motions
