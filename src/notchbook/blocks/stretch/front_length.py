"""The front over the bust: longer than the back by what the cloth should not have to give there.

The cloth is added between underarm and waist and eased into the back's side seam between two notches; what
lies below goes down with it. What the side seam does not take is let out at the lower end of the center
front.
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
    longer, ``most`` what the side seam eases in without a pucker and ``lower`` by how much more its center
    ends lower: at the hem or, of a suit, at the crotch.
    """

    lacks: float | None
    gives: float
    longer: float
    most: float
    lower: float

    @property
    def short(self) -> float:
        """What neither the cloth nor the longer front nor its lower center covers, mm."""
        return max((self.lacks or 0.0) - self.gives - self.longer - self.lower, 0.0)


def front_length(given: TorsoGiven, neck_height: float, side: Path) -> FrontLength:
    """The front over the bust of one side; ``neck_height`` is that of the side-neck point over the waist,
    ``side`` the back's side seam."""
    lacks = None if given.front_length is None else given.front_length - neck_height
    eased = cut_at(side, 0.0).length - 2.0 * figure("front.ease_from_end")
    usual, most = (max(figure(f"front.{word}_ease") * eased, 0.0) for word in ("usual", "most"))
    if given.front_longer is not None:
        return FrontLength(lacks, given.front_gives, given.front_longer, most, given.front_lower)
    missing = (lacks or 0.0) - given.front_gives
    longer = _worth(min(missing, usual))
    lower = _worth(min(missing - longer, figure("front.most_lower")))
    return FrontLength(lacks, given.front_gives, longer, most, lower)


def _worth(amount: float) -> float:
    """The amount, or nothing where it is too little to be drawn, mm."""
    return amount if amount >= figure("front.least_longer") else 0.0


def shared(own: FrontLength, other: FrontLength) -> tuple[float, float]:
    """By how much a front that belongs to both of the wearer's sides is longer, as both side seams ease it
    in, and how much lower its center ends, mm: together it has the mean of what its sides have."""
    longer = min(own.longer, other.longer)
    whole = sum(half.longer + half.lower for half in (own, other)) / 2.0
    return longer, min(whole - longer, figure("front.most_lower"))


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
