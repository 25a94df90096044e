"""Where each panel gives up what the waist is smaller than the hip: at the center, at the side, in darts.

Women's front: a little at the center, a dart, the rest at the side. Their back: the slant of the center
first, little at the side, two darts. Men's front is flat, their back has one dart. A front dart is never
wider than a back one. What does not fit moves the side seam at the waist back: the front then has more of the
waist.
"""

from collections.abc import Callable
from dataclasses import dataclass

from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.proportions import of_wearer, proportion

_HALVINGS = 44
"""Halvings after which 100 mm are below 1e-11 mm."""


@dataclass(frozen=True, slots=True)
class Take:
    """What one panel gives up from hip to waist, mm (below 0 where it gains), and its sewn waist."""

    center: float
    side: float
    darts: float
    net: float


@dataclass(frozen=True, slots=True)
class WaistPlan:
    """Both panels; ``moved`` is by how much the front has more of half the waist than its own share.

    ``lacking`` is by how much the panels together would have to be wider at the hip, mm: 0 when it goes.
    """

    front: Take
    back: Take
    moved: float
    lacking: float


@dataclass(frozen=True, slots=True)
class _Shares:
    """What the panels have to give up, before the side seam is moved, mm."""

    given: TrousersGiven
    front_has: float
    back_has: float
    front_net: float
    back_net: float
    back_center: float
    fullness: float

    def plan(self, moved: float) -> WaistPlan:
        """The plan with the side seam at the waist moved back."""
        back = _back_take(self, self.back_has + moved, self.back_net - moved)
        front = _front_take(self, self.front_has - moved, self.front_net + moved, _each(back, self.given))
        return WaistPlan(front, back, moved, max(0.0, proportion("front.least_side") - front.side))


def panel_widths(given: TrousersGiven, hip: float) -> tuple[float, float]:
    """Width of the front and back panel at the hip, mm."""
    if given.front_hip is not None:
        front = given.front_hip / 2.0 + (hip - given.hip) / 4.0
    else:
        front = hip / 4.0 - proportion("hip.back_wider")
    return front, hip / 2.0 - front


def own_waists(given: TrousersGiven) -> tuple[float, float]:
    """The sewn waist of the front and of the back panel before the side seam is moved, mm."""
    front = given.waist / 4.0 if given.front_waist is None else given.front_waist / 2.0
    return front, given.waist / 2.0 - front


def plan_waist(given: TrousersGiven, hip: float, back_center: float, fullness: float = 0.0) -> WaistPlan:
    """Share the suppression out. ``back_center`` is what the slant of the back center takes, mm.

    ``fullness`` is by how much each panel keeps wider at its side than is usual, for a belly: its darts take
    that up.
    """
    front_width, back_width = panel_widths(given, hip)
    front_net, back_net = own_waists(given)
    shares = _Shares(
        given,
        front_width - front_net,
        back_width - back_net - back_center,
        front_net,
        back_net,
        back_center,
        fullness,
    )
    most = proportion("waist.most_moved")
    least = max(0.0, proportion("back.least_side") - shares.back_has)
    for_darts = least
    if given.back_darts:
        most_for_darts = proportion("waist.moved_for_darts")
        for_darts = _first(lambda moved: _darts_served(shares, moved), least, most_for_darts)
    for_side = _first(
        lambda moved: proportion("front.most_side") - shares.plan(moved).front.side, for_darts, most
    )
    return shares.plan(for_side)


def _darts_served(shares: _Shares, moved: float) -> float:
    """At least 0 where the back's darts are worth their sewing, or the front side has no more to give."""
    plan = shares.plan(moved)
    short = plan.back.darts - proportion("dart.usual_back")
    return max(short, of_wearer("front.spared_side", shares.given.wearer) - plan.front.side)


def _first(served: Callable[[float], float], low: float, high: float) -> float:
    """The least place from ``low`` on where a rising function is at least 0; ``high`` where it never is."""
    if low >= high or served(low) >= 0.0:
        return low
    if served(high) < 0.0:
        return high
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        low, high = (low, middle) if served(middle) >= 0.0 else (middle, high)
    return high


def _each(back: Take, given: TrousersGiven) -> float:
    """One dart of the back, mm."""
    return back.darts / given.back_darts if given.back_darts else back.darts


def _front_take(shares: _Shares, suppression: float, net: float, back_dart: float) -> Take:
    share, most, least = (
        proportion(f"front.{name}") for name in ("center_share", "most_center", "least_center")
    )
    center = min(most, max(least, share * suppression))
    rest = suppression - center
    darts = 0.0
    if shares.given.front_darts:
        wished = max(0.0, proportion("front.dart_share") * rest) + shares.fullness
        widest = (
            proportion("front.under_back_dart") * back_dart * shares.given.front_darts
            if shares.given.back_darts
            else wished
        )
        darts = _worth_sewing(min(proportion("front.most_darts"), wished, widest))
    return Take(center, rest - darts, darts, net)


def _back_take(shares: _Shares, rest: float, net: float) -> Take:
    count = shares.given.back_darts
    if not count:
        return Take(shares.back_center, rest, 0.0, net)
    most_darts = proportion("back.most_dart") * count
    usual = min(proportion("back.usual_side"), max(0.0, proportion("back.side_share") * rest))
    side = usual - shares.fullness
    if rest - side > most_darts:
        side = min(proportion("back.most_side"), rest - most_darts)
    darts = _worth_sewing(rest - side)
    return Take(shares.back_center, rest - darts, darts, net)


def _worth_sewing(intake: float) -> float:
    """A panel's dart intake, mm: too small a one goes to the side; between nothing and a whole dart it grows
    without a jump, so that a body a little larger has a draft a little different."""
    least, whole = proportion("dart.least"), proportion("dart.whole")
    if intake >= whole:
        return intake
    return max(0.0, (intake - least) * whole / (whole - least))
