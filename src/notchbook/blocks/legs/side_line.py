"""The side seam from the hip up to the waist: upright at the hip, or leaning out to a belly above it."""

from math import atan2, degrees

from notchbook.blocks._closed_waist import HIP_PULL
from notchbook.blocks.legs.closing import closed
from notchbook.blocks.legs.proportions import proportion
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Cubic, Point, curve_between


def side_above_hip(hip: Point, take_in: float, hip_depth: float, lean_out: float = 0.0) -> Cubic:
    """From the hip to the waist, ``take_in`` nearer to the center there, its length the hip depth exactly.

    It leaves the hip leaning out by ``lean_out`` degrees. DraftRefused ``trousers-side-short`` when the
    take-in is too much for so short a side.
    """

    factor = _lean_factor(hip_depth)

    def curve(height: float) -> Cubic:
        lean = factor * degrees(atan2(take_in, height)) + lean_out
        end = Point(hip.x - take_in, hip.y + height)
        return curve_between(hip, 90.0 - lean_out, end, 90.0 + lean, HIP_PULL, 1.0)

    try:
        height = closed(
            lambda y: curve(y).length - hip_depth, hip_depth, 1.0, 0.4 * hip_depth, 1.05 * hip_depth, 2.0
        )
    except GeometryError as error:
        raise DraftRefused("trousers-side-short", take_in=take_in, hip_depth=hip_depth) from error
    return curve(height)


def _lean_factor(hip_depth: float) -> float:
    short, long = proportion("side.short"), proportion("side.long")
    share = min(1.0, max(0.0, (hip_depth - short) / (long - short)))
    least = proportion("side.short_lean_factor")
    return least + share * (proportion("side.lean_factor") - least)
