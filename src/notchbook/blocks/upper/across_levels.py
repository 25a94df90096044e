"""At which height each armhole is upright: where the across widths are taken on the draft."""

from math import radians, tan

from notchbook.blocks.upper.across import UpperArmhole
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.shoulders import Shoulder
from notchbook.errors import DraftRefused
from notchbook.geometry import Point


def upper_armholes(
    given: BodiceGiven, shoulders: tuple[Shoulder, Shoulder], underarms: tuple[Point, Point]
) -> tuple[UpperArmhole, UpperArmhole]:
    """The upper halves of the armholes, front first.

    The wider the room for the arm, the lower their across levels, so that a wide armhole stays upright
    longer. DraftRefused ``bodice-shoulder-below-underarm``.
    """
    front_tall, back_tall = (
        shoulder.tip.y - under.y for shoulder, under in zip(shoulders, underarms, strict=True)
    )
    if min(front_tall, back_tall) < proportion("armhole.least_height"):
        raise DraftRefused("bodice-shoulder-below-underarm", tall=min(front_tall, back_tall))
    arm = underarms[0].x + underarms[1].x - (given.across_chest + given.across_back) / 2.0
    begins, ends = proportion("armhole.wide_from"), proportion("armhole.wide_to")
    wide = min(max((arm / (front_tall + back_tall) - begins) / (ends - begins), 0.0), 1.0)
    front_level = proportion("armhole.front_level") - wide * proportion("armhole.lower_front")
    back_level = proportion("armhole.back_level") - wide * proportion("armhole.lower_back")
    return (
        _upper(shoulders[0], underarms[0], given.across_chest / 2.0, front_level),
        _upper(shoulders[1], underarms[1], given.across_back / 2.0, back_level),
    )


def _upper(shoulder: Shoulder, underarm: Point, width: float, level: float) -> UpperArmhole:
    """The upper half; its lower end lies lower where the shoulder point is far out: so it bends evenly."""
    tall = shoulder.tip.y - underarm.y
    evenly = proportion("armhole.even_bend") * tan(radians(shoulder.slope)) if shoulder.slope > 0.0 else 0.0
    offset = max(shoulder.tip.x - width, 0.0)
    wanted = 1.0 - offset / evenly / tall if evenly > 0.0 else 0.0
    lowered = min(level, max(wanted, level - proportion("armhole.most_lowering")))
    return UpperArmhole(shoulder.tip, underarm.y + lowered * tall, width, shoulder.slope)
