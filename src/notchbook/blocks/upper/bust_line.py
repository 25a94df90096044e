"""The bust line of a drafted side: where the bust girth closes."""

from dataclasses import dataclass

from notchbook.blocks.upper.shapes import BodiceHalf
from notchbook.geometry import Point


@dataclass(frozen=True, slots=True)
class BustLine:
    """Places on the bust line. The front's lie in the lower frame, at the level of the bust point; where
    the underarm lies lower than that, the line falls from the bust point to the underarm. The back's lie
    as far above the waist along the side seam as the front's. Both widths together are half the bust with
    its ease, exactly."""

    front_center: Point
    bust_point: Point
    front_side: Point
    back_center: Point
    back_side: Point

    @property
    def width(self) -> float:
        """Front and back together, mm."""
        front = self.front_center.distance_to(self.bust_point) + self.bust_point.distance_to(self.front_side)
        return front + self.back_center.distance_to(self.back_side)


def bust_line(half: BodiceHalf) -> BustLine:
    """The bust line; it lies at the underarm where no bust was measured."""
    front, back = half.front, half.back
    level = front.bust_point.y
    foot, top = front.side.end, front.side.start
    front_side = foot.lerp(top, min((level - foot.y) / (top.y - foot.y), 1.0))
    way = foot.distance_to(front_side)
    back_foot, back_top = back.side.end, back.side.start
    back_side = back_foot.lerp(back_top, way / back_foot.distance_to(back_top))
    return BustLine(Point(0.0, level), front.bust_point, front_side, Point(0.0, back_side.y), back_side)
