"""The part of a bodice below the waist, in numbers: side curves to the hip, and the waist that they round.

Front and back get the same side curve, so that their seams are one line reflected and the hip is shared
alike. Where it meets the side seam from above there is a corner at the waist; it is rounded as with a
curved ruler, which adds a little width at the waist. The bodice is drafted with that much less, so that
the waist as sewn comes out.
"""

from dataclasses import dataclass, replace

from notchbook.blocks._closed_waist import side_curve
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.kept_bodice import kept_bodice
from notchbook.blocks.upper.shapes import BackHalf, BodiceHalf, FrontHalf
from notchbook.blocks.upper.suppression import usual_side
from notchbook.errors import DraftRefused
from notchbook.geometry import Cubic, Line, Path, Point, Transform, curve_between
from notchbook.units import TOLERANCES

ROUNDED = 40.0
"""mm above and below the waist along which the corner of the side seam is rounded. Own judgment: about the
reach of the curve on a hip ruler."""

FRONT_DART_SHARE = 9 / 20
BACK_DART_SHARE = 2 / 3
"""How far down to the hip the darts of front and back reach, as a share of the hip depth: as the skirt's."""

SECOND_SHORTER = 0.9
"""Length of the dart nearer to the side over its neighbor's, below the waist: as the skirt's."""

_ROUNDS = 8
_EXACT = 1e-7
"""mm of half the waist."""


@dataclass(frozen=True, slots=True)
class HipGiven:
    """The whole hip with its ease, how far below the waist it lies along the side, and how far below the
    waist the hem lies at the center back (None: the garment ends at the hip), mm."""

    hip: float
    hip_depth: float
    length: float | None = None


@dataclass(frozen=True)
class HipPanel:
    """What lies below the waist on one panel, in the frame of the upper one.

    ``side`` runs from the hem up to the underarm, its waist rounded. ``waist_side`` is where the waist line
    meets it, ``rounding`` how much wider that makes the waist, ``hip_way`` how far it is from there down the
    side to the hip, mm. ``hip_level`` and ``hem_level`` are the heights of hip line and hem at the center
    over the waist (negative), mm. ``lower_points`` are the lower ends of the waist darts, from the center
    outward.
    """

    side: Path
    waist_side: Point
    rounding: float
    hip_way: float
    hip_level: float
    hem_level: float
    lower_points: tuple[Point, ...]


@dataclass(frozen=True)
class HipHalf:
    """One side of a bodice to the hip. ``take_in`` is what each panel gives up at the side from the hip to
    the waist, mm; negative where it leans out."""

    upper: BodiceHalf
    front: HipPanel
    back: HipPanel
    take_in: float

    @property
    def rounding(self) -> float:
        """How much wider the rounded corners make this side's waist, mm."""
        return self.front.rounding + self.back.rounding


USUAL_TAKE_IN = (8.0, 40.0)
"""mm that one panel gives up at the side from the hip to the waist, as far as the darts can see to it: less
leans inward below the waist, more pulls over the hip bone. Own judgment, inside the skirt's limits."""

MOST_DARTS = 120.0
"""mm that all darts of one side are widened to at most for the hip's sake: two in front and two behind then
stay below 40 each, as they are shared."""

SIDE_ABOVE = (0.0, 40.0)
"""mm that one panel then gives up at the side from the bust line to the waist. Own judgment."""


def side_over_hip(given: BodiceGiven, hip: HipGiven) -> float | None:
    """What each panel gives up at the side above the waist, so that the side runs fair down to the hip, mm.
    None where the waist is larger than the bust.

    A dart in one piece from chest to hip takes the same in both; the sides take what is left over. Where
    the waist is left as it falls the side runs straight from the underarm to the hip.
    """
    if given.waist is None:
        way = given.back_length - given.scye_depth
        return (given.bust - hip.hip) / 4.0 * way / (way + hip.hip_depth)
    if given.waist >= given.bust:
        return None
    above, below = (given.bust - given.waist) / 2.0, (hip.hip - given.waist) / 2.0
    darts = above - 2.0 * usual_side(given)
    take_in = min(max((below - darts) / 2.0, USUAL_TAKE_IN[0]), USUAL_TAKE_IN[1])
    wanted_darts = min(below - 2.0 * take_in, max(darts, MOST_DARTS))
    wanted = (above - wanted_darts) / 2.0
    return min(max(wanted, SIDE_ABOVE[0]), SIDE_ABOVE[1], above / 2.0)


def draft_to_hip(given: BodiceGiven, hip: HipGiven) -> HipHalf:
    """Draft a side so that its waist as sewn is ``given.waist`` with the corners at the side rounded, and
    the side from there to the hip ``hip.hip_depth`` long.

    DraftRefused as the bodice; ``skirt-side-short`` where the side cannot reach the hip.
    """
    depth = hip.hip_depth
    half = kept_bodice(given)
    drawn = with_hip(half, hip, depth)
    for _ in range(_ROUNDS):
        rounding, depth = drawn.rounding, depth + hip.hip_depth - drawn.front.hip_way
        if given.waist is not None:
            half = kept_bodice(replace(given, waist=given.waist - 2.0 * rounding))
        drawn = with_hip(half, hip, depth)
        if abs(drawn.rounding - rounding) + abs(drawn.front.hip_way - hip.hip_depth) < _EXACT:
            break
    return drawn


def with_hip(half: BodiceHalf, hip: HipGiven, depth: float) -> HipHalf:
    """The part below the waist for a drafted bodice; ``depth`` is the length of the side from the hip up to
    the corner at the waist that is rounded, mm."""
    front_waist, back_waist = half.front.side.end, half.back.side.end
    take_in = (hip.hip / 2.0 - front_waist.x - back_waist.x) / 2.0
    curve = side_curve(front_waist.x + take_in, take_in, depth)
    below = _below_hip(hip, back_waist.y - curve.end.y)
    return HipHalf(
        half,
        _panel(half.front, curve, hip, below, FRONT_DART_SHARE),
        _panel(half.back, curve, hip, below, BACK_DART_SHARE),
        take_in,
    )


def with_shared_hems(own: HipHalf, other: HipHalf) -> HipHalf:
    """This side with its hem at each center where the other side's is too: at the lower of the two.

    For sides of one length that differ above the waist by so little that the side seam takes it up.
    """
    return replace(own, front=_as_low_as(own.front, other.front), back=_as_low_as(own.back, other.back))


def _as_low_as(own: HipPanel, other: HipPanel) -> HipPanel:
    return replace(own, hem_level=min(own.hem_level, other.hem_level))


def _below_hip(hip: HipGiven, back_level: float) -> float:
    """How far the hem lies below the hip, mm; ``back_level`` is the height of the back's hip line.

    DraftRefused ``hem-above-hip`` where the garment would end before it.
    """
    if hip.length is None:
        return 0.0
    below = hip.length + back_level
    if below < 0.0:
        raise DraftRefused("hem-above-hip", length=hip.length, hip_depth=-back_level)
    return below


def _panel(
    upper: FrontHalf | BackHalf, curve: Cubic, hip: HipGiven, below_hip: float, dart_share: float
) -> HipPanel:
    """One panel: the common side curve laid under its own waist."""
    waist, darts = upper.side.end, upper.waist_darts
    laid = curve.transformed(Transform.translation(waist.x - curve.end.x, waist.y - curve.end.y))
    hip_level = laid.start.y
    hem = Point(laid.start.x, hip_level - below_hip)
    below = Path.of(laid) if below_hip < TOLERANCES.sew_length else Path.of(Line(hem, laid.start), laid)
    side, bridge = _rounded(below, upper.side.reversed())
    waist_side = _outermost(bridge, upper.waist[-1])
    if waist_side is None:
        raise DraftRefused("skirt-side-short", take_in=curve.start.x - curve.end.x, hip_depth=hip.hip_depth)
    lengths = (hip.hip_depth * dart_share * SECOND_SHORTER**index for index in range(len(darts)))
    return HipPanel(
        side,
        waist_side,
        upper.waist[-1].tangent_at(upper.waist[-1].length).dot(waist_side - waist),
        side.nearest(waist_side).distance_along - below_hip,
        hip_level,
        hem.y,
        tuple(
            Point(dart.first.lerp(dart.second, 0.5).x, dart.first.y - length)
            for dart, length in zip(darts, lengths, strict=True)
        ),
    )


def _rounded(below: Path, above: Path) -> tuple[Path, Cubic]:
    """The two parts of the side seam, upward, with the corner between them rounded; and the rounding."""
    reach = min(ROUNDED, below.length / 3.0, above.length / 3.0)
    stop = below.length - reach
    bridge = curve_between(
        below.point_at(stop),
        below.tangent_at(stop).direction(),
        above.point_at(reach),
        above.tangent_at(reach).direction(),
    )
    head = below.between(0.0, stop).joined(Path.of(bridge))
    return head.joined(above.between(reach, above.length)), bridge


def _outermost(bridge: Cubic, waist: Path) -> Point | None:
    """Where the waist line, drawn straight on, meets the rounding; None where it passes beside."""
    onward = waist.tangent_at(waist.length) * ROUNDED
    line = Path.line(waist.end - onward, waist.end + onward)
    return next((crossing.point for crossing in Path.of(bridge).intersections(line)), None)
