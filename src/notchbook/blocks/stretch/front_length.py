"""The front over the bust: longer than the back by what the cloth should not have to give there.

The cloth is added between underarm and waist and eased into the back's side seam between two notches; what
lies below goes down with it.
"""

from dataclasses import dataclass

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.blocks.stretch.side_seam import cut_at
from notchbook.geometry import Cubic, Line, Path, Point, Segment, Transform


@dataclass(frozen=True, slots=True)
class FrontLength:
    """How the front comes to its length over the bust, mm.

    ``lacks`` is by how much a front as long as the back is shorter than the body there (below 0: longer;
    None: not measured), ``gives`` what the cloth may give of it, ``longer`` by how much the front is drafted
    longer and ``most`` what the side seam eases in without a pucker.
    """

    lacks: float | None
    gives: float
    longer: float
    most: float

    @property
    def short(self) -> float:
        """What neither the cloth nor the longer front covers, mm."""
        return max((self.lacks or 0.0) - self.gives - self.longer, 0.0)


def front_length(given: TorsoGiven, neck_height: float, side: Path) -> FrontLength:
    """The front over the bust of one side; ``neck_height`` is that of the side-neck point over the waist,
    ``side`` the back's side seam."""
    lacks = None if given.front_length is None else given.front_length - neck_height
    eased = cut_at(side, 0.0).length - 2.0 * figure("front.ease_from_end")
    usual, most = (max(figure(f"front.{word}_ease") * eased, 0.0) for word in ("usual", "most"))
    if given.front_longer is not None:
        return FrontLength(lacks, given.front_gives, given.front_longer, most)
    longer = min((lacks or 0.0) - given.front_gives, usual)
    return FrontLength(
        lacks, given.front_gives, longer if longer >= figure("front.least_longer") else 0.0, most
    )


def lengthened(side: Path, longer: float) -> Path:
    """The side seam of a front that is so much longer: its part over the waist is drawn longer with the same
    directions at its ends, all below it moved down."""
    if longer == 0.0:
        return side
    above = cut_at(side, 0.0)
    (over,) = above.segments
    drawn = Path.of(_longer(over, longer))
    if side.length - above.length <= _SAME:
        return drawn
    below = side.between(above.length, side.length).transformed(moved_down(longer))
    return Path((*drawn.segments, *below.segments))


_SAME = 1e-6
"""mm; a seam that ends so near to the waist ends there."""


def moved_down(by: float) -> Transform:
    """All that lies below the waist of a longer front."""
    return Transform.translation(0.0, -by)


def _longer(segment: Segment, by: float) -> Segment:
    """Its end lower by so much, its directions at both ends as they were."""
    start, end = segment.start, segment.end + Point(0.0, -by)
    if not isinstance(segment, Cubic):
        return Line(start, end)
    grown = (start.y - end.y) / (segment.start.y - segment.end.y)
    return Cubic(
        start,
        start + (segment.start_handle - segment.start) * grown,
        end + (segment.end_handle - segment.end) * grown,
        end,
    )
