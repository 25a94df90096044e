"""How high the front's side-neck point and neck pit lie, from whatever was measured of the front."""

from dataclasses import dataclass
from math import sqrt

from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.waist import Waists
from notchbook.errors import DraftRefused
from notchbook.geometry import Point


@dataclass(frozen=True, slots=True)
class FrontHeights:
    """Heights over the waist at the center front, mm, each from the half width of the front neck.

    ``way`` is the measured way from the side-neck point to ``mark`` (the bust point, without bust
    measures a place of the chest). Where it is None, the side-neck point is set by the balance: so far
    above the ``underarm`` (height) as the ``scye`` depth says, less the balance's share. ``center`` is
    the measured height of the neck pit, None where it follows from the neck's width; the pit is drawn
    ``lowered`` below it.
    """

    mark: Point
    way: float | None
    center: float | None
    underarm: float
    scye: float
    neck: float
    lowered: float = 0.0

    def side_neck_y(self, width: float) -> float:
        """The height of the side-neck point; DraftRefused ``bodice-bust-point-far``."""
        if self.way is not None:
            beside = self.mark.x - width
            if self.way <= abs(beside):
                raise DraftRefused("bodice-bust-point-far", way=self.way, beside=abs(beside))
            return self.mark.y + sqrt(self.way**2 - beside**2)
        if self.center is None:
            return self._balanced(width, "bust.balance_without_bust")
        # Nobody measured a balance: it meets the measured center halfway, within its limits; the depth of
        # the neck takes the other half.
        usual = self._balanced(width, "bust.balance_without_bust")
        wanted = (usual + self.center + _usual_depth(width)) / 2.0
        least = self._balanced(width, "bust.most_balance")
        return min(max(wanted, least), self._balanced(width, "bust.least_balance"))

    def pit(self, width: float, side_neck_y: float) -> tuple[float, float]:
        """The height of the neck pit, and how far above its measure it lies before it is lowered: the neck is
        neither too deep nor too shallow. DraftRefused ``bodice-neck-depth``."""
        if self.center is None:
            return side_neck_y - _usual_depth(width) - self.lowered, 0.0
        depth = side_neck_y - self.center
        least, most = self._depths(width)
        moved = depth - min(max(depth, least), most)
        if abs(moved) > proportion("neck.most_moving"):
            raise DraftRefused("bodice-neck-depth", depth=depth, center=self.center, neck=self.neck)
        return self.center + moved - self.lowered, moved

    def _depths(self, width: float) -> tuple[float, float]:
        """The least and the greatest depth of the neck, mm."""
        if self.way is not None:
            least, most = (proportion(f"neck.{word}_depth_share") * self.neck for word in ("least", "most"))
            return least, most
        usual, off = _usual_depth(width), proportion("neck.most_depth_off")
        return usual - off, usual + off

    def _balanced(self, width: float, balance: str) -> float:
        back_width = width + proportion("neck.front_narrower")
        tall = self.scye + proportion("neck.back_rise_share") * back_width
        return self.underarm + (1.0 - proportion(balance)) * tall


def front_heights(given: BodiceGiven, waists: Waists, mark_x: float, underarm_y: float) -> FrontHeights:
    """From the bust measures, else from the front lengths that were measured, else by the balance."""
    shape, mark = given.bust_shape, Point(mark_x, waists.bust_y)
    way, center = None, given.center_front
    if shape is not None:
        way, center = shape.neck_to_bust_point, shape.center_front
    elif given.front_length is not None:
        below = waists.front.darts[0].leg if waists.front.darts else mark.y - waists.front.height_at(mark_x)
        way = given.front_length - below
    return FrontHeights(mark, way, center, underarm_y, given.scye_depth, given.neck, given.pit_lowered)


def _usual_depth(width: float) -> float:
    return width + proportion("neck.depth_over_width")
