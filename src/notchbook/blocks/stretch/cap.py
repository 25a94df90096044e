"""The cap of a stretch sleeve: each half as long as its half of the armhole, no ease."""

from dataclasses import dataclass, replace
from math import atan2, degrees

from notchbook.blocks.stretch.armholes import Armholes
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import StretchSleeveGiven
from notchbook.errors import DraftRefused
from notchbook.geometry import Cubic, Path, Point, curve_between

_EXACT = 1e-7
"""mm; how exactly both halves are as long as the armhole."""

_STEP = 1e-3
"""mm; for the slopes."""

_NEAR = 1.0
"""mm; steps shorter than this keep the slopes."""

_LONGEST_STEP = 0.12
"""Over the biceps; no step goes farther."""

_ROUNDS = 60

_LAYINGS = 3
"""How often the hollows are drawn anew to the armhole's."""


@dataclass(frozen=True, slots=True)
class Cap:
    """A cap from both underarms to the crown at x = 0; ``tilt`` is how far (degrees) it rises where it leaves
    the underarm, square to the seam."""

    front: Cubic
    back: Cubic
    tilt: float

    @property
    def height(self) -> float:
        """The height of the crown over the biceps line, mm."""
        return self.front.end.y

    @property
    def biceps(self) -> float:
        """The whole width, mm."""
        return self.front.start.x - self.back.start.x


@dataclass(frozen=True, slots=True)
class CapSize:
    """What is solved: the width of the front half and the height (mm), and for how long the halves stay
    square to the seam, over a batten."""

    front: float
    height: float
    front_hollow: float
    back_hollow: float


@dataclass(frozen=True, slots=True)
class _Slopes:
    """How both lengths grow with the front's width and with the height."""

    front_by_width: float
    front_by_height: float
    back_by_width: float
    back_by_height: float

    def step(self, front: float, back: float) -> tuple[float, float] | None:
        """By how much width and height must change for lengths that miss by so much."""
        size = self.front_by_width * self.back_by_height - self.back_by_width * self.front_by_height
        if abs(size) < 1e-12:
            return None
        return (
            (back * self.front_by_height - front * self.back_by_height) / size,
            (front * self.back_by_width - back * self.front_by_width) / size,
        )


def draw_cap(given: StretchSleeveGiven, armholes: Armholes, biceps: float) -> Cap:
    """The cap over this biceps whose halves are as long as the armholes, its lower ends square to the seams
    and hollow as the armholes are.

    DraftRefused ``stretch-cap-not-reached`` where the armhole is hardly longer than the biceps.
    """
    lengths = armholes.front.length, armholes.back.length
    size = _first_size(lengths, biceps)
    for _ in range(_LAYINGS):
        size, cap = _as_long(given, lengths, size, biceps)
        size = replace(
            size,
            front_hollow=_as_hollow(size.front_hollow, cap.front, armholes.front, "front"),
            back_hollow=_as_hollow(size.back_hollow, cap.back, armholes.back, "back"),
        )
    return _as_long(given, lengths, size, biceps)[1]


def cap_length(given: StretchSleeveGiven, front_share: float, biceps: float, height: float) -> float:
    """How long a cap of this height is over this biceps, whose front half takes ``front_share`` of it, mm."""
    size = CapSize(front_share * biceps, height, figure("cap.front_hollow"), figure("cap.back_hollow"))
    cap = _drawn(given, size, biceps)
    return cap.front.length + cap.back.length


def _as_long(
    given: StretchSleeveGiven, lengths: tuple[float, float], size: CapSize, biceps: float
) -> tuple[CapSize, Cap]:
    """Height and place of the crown, by steps along the slopes."""
    refused = DraftRefused("stretch-cap-not-reached", biceps=biceps, armhole=sum(lengths))
    slopes = None
    for _ in range(_ROUNDS):
        cap = _drawn(given, size, biceps)
        misses = cap.front.length - lengths[0], cap.back.length - lengths[1]
        if max(abs(misses[0]), abs(misses[1])) <= _EXACT:
            return size, cap
        slopes = slopes or _slopes(given, size, biceps, cap)
        step = slopes.step(*misses)
        if step is None:
            break
        slopes = None if max(map(abs, step)) > _NEAR else slopes
        most = _LONGEST_STEP * biceps
        wider, higher = (min(max(by, -most), most) for by in step)
        size = _within(replace(size, front=size.front + wider, height=size.height + higher), biceps)
    raise refused


def _as_hollow(hollow: float, cap: Cubic, armhole: Path, which: str) -> float:
    """The hollow that brings the cap, as far up as it should lie on the armhole, as high as that."""
    along = min(figure("cap.lay"), figure("cap.lay_share") * armhole.length)
    last = armhole.length - along
    under, square = armhole.end, armhole.tangent_at(armhole.length)
    wanted = abs(square.cross(armhole.point_at(last) - under))
    drawn = abs(cap.tangent(0.0).cross(cap.point_at(along) - cap.start))
    if wanted <= 0.0:
        return hollow
    least, most = figure("cap.least_hollow"), figure(f"cap.most_{which}_hollow")
    return min(max(hollow * float((drawn / wanted) ** figure("cap.hollow_step")), least), most)


def _tilt(given: StretchSleeveGiven, biceps: float, height: float) -> float:
    """How far the cap rises at the underarm, degrees: square to the seam, which a flat cap holds upright."""
    seam = max(given.length - height, figure("cap.least_seam"))
    chord = min(degrees(atan2((biceps - given.hem) / 2.0, seam)), most_taper(seam))
    most = figure("cap.most_tilt_share") * degrees(atan2(height, biceps / 2.0))
    return min(figure("cap.seam_lean") * chord, most, figure("cap.most_tilt"))


def most_taper(seam: float) -> float:
    """How far the chord of an underarm seam of this length (mm) may lean, degrees."""
    short, long = figure("cap.short_seam"), figure("cap.long_seam")
    share = min(max((seam - short) / (long - short), 0.0), 1.0)
    return figure("cap.short_taper") + share * (figure("cap.most_taper") - figure("cap.short_taper"))


def _first_size(lengths: tuple[float, float], biceps: float) -> CapSize:
    mean, width = sum(lengths) / 2.0, biceps / 2.0
    height = 0.9 * max(mean**2 - width**2, 0.0) ** 0.5
    size = CapSize(
        width + (lengths[0] - lengths[1]) / 2.0, height, figure("cap.front_hollow"), figure("cap.back_hollow")
    )
    return _within(size, biceps)


def _within(size: CapSize, biceps: float) -> CapSize:
    front = min(max(size.front, 0.2 * biceps), 0.8 * biceps)
    return replace(size, front=front, height=max(size.height, 1.0))


def _slopes(given: StretchSleeveGiven, size: CapSize, biceps: float, cap: Cap) -> _Slopes:
    wider = _drawn(given, replace(size, front=size.front + _STEP), biceps)
    higher = _drawn(given, replace(size, height=size.height + _STEP), biceps)
    return _Slopes(
        (wider.front.length - cap.front.length) / _STEP,
        (higher.front.length - cap.front.length) / _STEP,
        (wider.back.length - cap.back.length) / _STEP,
        (higher.back.length - cap.back.length) / _STEP,
    )


def _drawn(given: StretchSleeveGiven, size: CapSize, biceps: float) -> Cap:
    tilt = _tilt(given, biceps, size.height)
    crown = Point(0.0, size.height)
    front, back = Point(size.front, 0.0), Point(size.front - biceps, 0.0)
    return Cap(
        curve_between(front, 180.0 - tilt, crown, 180.0, size.front_hollow, figure("cap.front_crown")),
        curve_between(back, tilt, crown, 0.0, size.back_hollow, figure("cap.back_crown")),
        tilt,
    )
