"""How far the armholes' upper halves may follow the across widths that were given.

From the shoulder point the armhole starts square to the shoulder seam, leaning inward, and is upright at
the across width. Where the shoulder point lies too far outside for that, or inside of the width, the hand
would tilt the start, then draft the width a little wider or narrower. So does this, within limits, and
says how far.
"""

from dataclasses import dataclass
from math import atan, degrees, radians, tan

from notchbook.blocks.upper.proportions import proportion
from notchbook.errors import DraftRefused
from notchbook.geometry import Point


@dataclass(frozen=True, slots=True)
class UpperArmhole:
    """Where an armhole starts and where it is upright: ``tip``, the height ``across_y`` and half the
    ``width`` that was given there, and by how much (degrees) the square start leans inward."""

    tip: Point
    across_y: float
    width: float
    lean: float

    @property
    def tall(self) -> float:
        """The height of the shoulder point over the across level, mm."""
        return self.tip.y - self.across_y

    @property
    def offset(self) -> float:
        """How far outside of the across width the shoulder point lies, mm."""
        return self.tip.x - self.width

    @property
    def lean_wanted(self) -> float:
        """The inward lean that the start needs so that the armhole does not bend back, degrees."""
        return degrees(atan(self.offset / (proportion("armhole.tip_slack") * self.tall)))


def shoulder_tilt(front: UpperArmhole, back: UpperArmhole) -> float:
    """Degrees by which the back start leans in more and the front's less; together they stay straight.

    Only where one of them asks for it and the other can spare it.
    """
    back_need = back.lean_wanted - back.lean
    front_need = front.lean_wanted - front.lean
    most = proportion("shoulder.most_tilt")
    if back_need > 0.0 > front_need:
        return min(back_need, -front_need, most)
    if front_need > 0.0 > back_need:
        return -min(front_need, -back_need, most)
    return 0.0


def shoulder_extension(front: UpperArmhole, back: UpperArmhole, drafted: float = 0.0) -> float:
    """By how much both shoulder seams are drafted longer, mm: where they end so far inside of the across
    widths that neither a lean nor narrower widths would do. ``drafted`` is by how much they are longer
    already."""
    first = proportion("armhole.first_narrowing")
    short = max(_inmost(upper) - first - upper.offset for upper in (front, back))
    return min(max(drafted + short, 0.0), proportion("shoulder.most_extension"))


def _inmost(upper: UpperArmhole) -> float:
    """How far inside (below 0) the shoulder point may lie, mm."""
    return -upper.tall * tan(radians(proportion("armhole.most_lean")))


def across_change(upper: UpperArmhole, lean: float, spare: float, measure: str) -> float:
    """By how much half the across width is drafted wider than given (narrower below 0), mm.

    ``lean`` is the start's inward lean in use, ``spare`` how much wider it had better be for the armhole
    not to gape (narrower below 0, for an arm that has too little room). DraftRefused
    ``bodice-shoulder-against-width`` where shoulder and width cannot belong to one body, ``measure``
    being the width's name.
    """
    slip = proportion("armhole.least_tip_offset"), proportion("armhole.most_tip_offset")
    if not slip[0] < upper.offset < slip[1]:
        raise DraftRefused(
            "bodice-shoulder-against-width", measure=measure, width=2.0 * upper.width, offset=upper.offset
        )
    outmost = proportion("armhole.tip_slack") * upper.tall * tan(radians(max(lean, 0.0)))
    inmost = _inmost(upper)
    least, most = -proportion("armhole.most_narrowing"), proportion("armhole.most_widening")
    if upper.offset < inmost:
        return max(upper.offset - inmost, least)
    if spare < 0.0:
        return max(spare, min(upper.offset - outmost, 0.0), least)
    widening = max(upper.offset - outmost, 0.0)
    room = max(upper.offset - inmost, 0.0)
    return min(max(widening, min(spare, room)), most)
