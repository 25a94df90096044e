"""The upper part of a panel, from the hip line to the waist: side, darts, waistline, closed and then opened.

It is drawn upright at its slanted center, where the waistline starts square, and turned back afterwards. The
center of the hip line is the origin, the side lies toward +x.
"""

from dataclasses import dataclass
from math import cos, radians, sin, tan

from notchbook.blocks._closed_waist import DartPlan, Panel, PanelDrafter, PanelPlan
from notchbook.blocks._together import Together, Vector
from notchbook.blocks.legs.closing import closed
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.side_line import side_above_hip
from notchbook.blocks.legs.waist_plan import Take, WaistPlan
from notchbook.blocks.upper.shapes import OpenDart
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Cubic, Path, Point, Transform

_BACK_PLACES = {1: (0.5, 0.75), 2: (0.36, 0.68)}
"""Where the back's darts stand on the sewn waist, as shares from the center, by how many are sewn; beside a
single one an empty one stands. Set by eye."""

_ROUNDS = 30
_EXACT = 1e-8
"""mm."""


@dataclass(frozen=True, slots=True)
class TopPlan:
    """What one top is drawn from: width at the hip, the slant of the center and how far the side leans out
    at the hip (degrees), the dart lengths and their places on the sewn waist (shares from the center), how
    many of them are sewn (the first; the others take up nothing), and by how much the waist at the center is
    raised (mm)."""

    width: float
    hip_depth: float
    slant: float
    lean_out: float
    dart_lengths: tuple[float, ...]
    dart_places: tuple[float, ...]
    sewn_darts: int
    raised: float


@dataclass(frozen=True)
class Top:
    """A drawn top in the frame of its hip line.

    ``waist`` parts from the center to the side, ``side`` from the hip to the waist; ``center`` is how far up
    the slanted center the waist lies, ``take_in`` what the side gives up.
    """

    waist: tuple[Path, ...]
    darts: tuple[OpenDart, ...]
    closed: Path
    side: Cubic
    center: float
    take_in: float


@dataclass(frozen=True, slots=True)
class _Height:
    """The waist's height at the center over the hip line, along the center; see ``_closed_waist``."""

    raised: float
    hip_depth: float

    def __call__(self, closed_side: Point, turn: float) -> float:
        span = closed_side.x * tan(radians(turn / 2.0))
        usual, flattest = proportion("waist.flatness") * span, proportion("waist.least_flatness") * span
        if turn > 0.0:
            usual = min(usual, max(flattest, proportion("waist.usual_dip") * self.hip_depth))
        low, high = sorted((proportion("waist.least_bend") * span, proportion("waist.most_bend") * span))
        return closed_side.y - min(high, max(low, usual - self.raised))


class TopDrafter:
    """Draws the tops of one panel. Where its darts lay last is where the next search begins."""

    def __init__(self, darts: int) -> None:
        self._search = Together(darts + 1, _EXACT, _ROUNDS)
        self._darts: Vector | None = None
        self._off_plan = 0.0

    def draw(self, plan: TopPlan, take: Take) -> Top:
        """The top whose sewn waist is ``take.net`` exactly: by its darts, where it has any, else by its side.

        DraftRefused ``trousers-waist-unreachable``, ``trousers-side-short``.
        """
        try:
            return self._by_darts(plan, take) or self._by_side(plan, take)
        except GeometryError as error:
            raise DraftRefused(
                "trousers-waist-unreachable", waist=take.net, hip=plan.width, hip_depth=plan.hip_depth
            ) from error

    def _by_darts(self, plan: TopPlan, take: Take) -> Top | None:
        if not plan.sewn_darts or take.darts <= 0.0:
            return None
        drafter = _drafter(plan, take.side, take.net)
        found = self._near_the_last(drafter, take) or drafter.closed_to(
            take.net, self._search, drafter.start_of(take.darts)
        )
        if found is None:
            return None
        self._darts = found[1]
        return _turned(plan, take.side, found[0])

    def _near_the_last(self, drafter: PanelDrafter, take: Take) -> tuple[Panel, Vector] | None:
        """The panel sought from where its darts lay last; None where it is not found from there."""
        if self._darts is None:
            return None
        try:
            return drafter.closed_to(take.net, self._search, self._darts)
        except GeometryError:
            return None

    def _by_side(self, plan: TopPlan, take: Take) -> Top:
        reach = proportion("waist.most_correction")
        take_in = closed(
            lambda side: _drafter(plan, side, take.net).sewn(0.0) - take.net,
            take.side + self._off_plan,
            -1.0,
            take.side - reach,
            take.side + reach,
            2.0,
        )
        self._off_plan = take_in - take.side
        return _turned(plan, take_in, _drafter(plan, take_in, take.net).panel(0.0))


def _drafter(plan: TopPlan, take_in: float, net: float) -> PanelDrafter:
    side = side_above_hip(Point(plan.width, 0.0), take_in, plan.hip_depth, plan.lean_out)
    upright = side.transformed(Transform.rotation(plan.slant, Point(0.0, 0.0)))
    sewn = plan.sewn_darts
    darts = tuple(
        DartPlan(place, length, 1.0 / sewn if index < sewn else 0.0)
        for index, (place, length) in enumerate(zip(plan.dart_places, plan.dart_lengths, strict=True))
    )
    slack = proportion("waist.square_slack")
    return PanelDrafter(PanelPlan(upright, darts, slack), _Height(plan.raised, plan.hip_depth), net)


def _turned(plan: TopPlan, take_in: float, panel: Panel) -> Top:
    back = Transform.rotation(-plan.slant, Point(0.0, 0.0))
    darts = tuple(
        OpenDart(
            back.apply(panel.parts[index].end), back.apply(point), back.apply(panel.parts[index + 1].start)
        )
        for index, point in enumerate(panel.points)
    )
    return Top(
        tuple(part.transformed(back) for part in panel.parts),
        darts,
        panel.closed,
        panel.side.transformed(back),
        panel.height,
        take_in,
    )


def dart_lengths(given: TrousersGiven, waist: WaistPlan) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The lengths of the front and the back darts, the one at the center first, empty ones last, mm."""
    front = given.front_dart_length or _usual_length("front", given, waist.front.darts, given.front_darts)
    back = given.back_dart_length or _usual_length("back", given, waist.back.darts, given.back_darts)
    second = proportion("dart.second")
    return (
        tuple(front * second**index for index in range(given.front_darts + given.front_empty)),
        tuple(back * second**index for index in range(given.back_darts + given.back_empty)),
    )


def _usual_length(panel: str, given: TrousersGiven, darts: float, count: int) -> float:
    """The length of the first of a panel's darts that take up so much together, mm: less of a narrow one."""
    usual = proportion(f"dart.{panel}_share") * given.hip_depth
    most = proportion("dart.for_intake") * darts / max(count, 1)
    return max(min(usual, most), proportion("dart.shortest"))


def front_places(
    given: TrousersGiven, slant: float, lengths: tuple[float, ...], take: Take, crease: float
) -> tuple[float, ...]:
    """Where the front's darts stand on the sewn waist: the first with its point on the crease, which is
    pressed up to it; a second halfway from there to the side.

    ``crease`` is how far it lies from the center at the hip line, mm.
    """
    if not lengths:
        return ()
    angle, up = radians(slant), given.hip_depth - lengths[0]
    point = crease * cos(angle) - up * sin(angle)
    opened = proportion("dart.front_opens") * take.darts / max(given.front_darts, 1)
    first = (point - opened / 2.0) / take.net
    first = min(proportion("dart.farthest"), max(proportion("dart.nearest"), first))
    return (first, (1.0 + first) / 2.0)[: len(lengths)]


def back_places(given: TrousersGiven) -> tuple[float, ...]:
    """Where the back's darts stand on the sewn waist, as shares from the center."""
    all_darts = given.back_darts + given.back_empty
    return _BACK_PLACES[given.back_darts or max(all_darts, 1)][:all_darts]
