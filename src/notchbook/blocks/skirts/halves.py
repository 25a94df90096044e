"""The straight skirt in numbers: how the difference between hip and waist is shared and closed.

Half a skirt (one side of the body) is a front and a back panel. Their side seams are the same line.
What the waist is smaller than the hip is taken in at the side and in darts; the darts' intake is
what makes the sewn waist come out, so it is solved, not guessed.
"""

from dataclasses import dataclass, replace
from math import atan2, degrees, radians, tan

from notchbook.blocks._closed_waist import LEAN_FACTOR, DartPlan, Panel, PanelDrafter, PanelPlan, side_curve
from notchbook.blocks._together import Together
from notchbook.blocks.skirts.waist_height import LEAST_RISE, USUAL_RISE, WaistHeight
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry.solve import solve_rising
from notchbook.units import TOLERANCES

BACK_WIDER = 7.5
"""mm at the hip by which the back panel is wider than half of half the hip, the front narrower.
Source: handbook drafts T1 and T2 (hip/4 + 1.5 cm behind of hip/2 + 1.5 cm; half + 0.75 cm)."""

SIDE_SHARE = 0.56
"""Share of the difference taken in at the side (T1: 57 %, T2: 72 %)."""

MOST_SIDE_TAKE_IN = 48.0
"""mm; more makes a hip curve that pulls. Common practice, no source."""

LEAST_SIDE_TAKE_IN = -15.0
"""mm; how far the side may lean out where the waist is larger than the hip, before the hip ease is
raised instead. Common practice, no source."""

BEARABLE_FRONT_DART, BEARABLE_BACK_DART = 20.0, 28.0
"""mm that one dart of a panel bears before the side takes its share of what is more. Own judgment beside
handbook practice (one dart to 25 mm; one of a front is short and bears less)."""

USUAL_DARTS = (2, 2)
"""Darts of a front and a back of a body with much to take in, on which the side counts while no count is
chosen."""

BACK_DART_SHARE = 0.64
"""Share of the dart intake that the back takes (T1: 67 %)."""

MOST_TO_BACK = 6.0
"""mm by which the back's darts take more for the sake of a single front one: beyond, two would serve the
front. Own judgment."""

MOST_SPARED = 8.0
"""mm that sides and front darts together take of what would make the back's darts too wide. Own judgment."""

MOST_HIP_LEAN = 0.6
"""Most lean of the side at the hip over that of its chord to the waist, where it flares below. A wider flare
curves out below the hip. Own judgment."""

DART_PLACES = {1: (0.5,), 2: (0.36, 0.68), 3: (0.27, 0.52, 0.77)}
"""Where the darts stand on the sewn waist, as shares from the center. Set by eye; thirds in T1."""

SHORTEST_DART = 78.0
"""mm; a shorter dart makes a point that stands away. Common practice, no source."""

CLOSED_EXACTNESS = 1e-8
"""mm by which a waist that is closed may still miss its length."""

CLOSING_ROUNDS = 16
"""Most drawings in which intake and dart points are sought together."""

SECOND_DART = 0.9
"""Length of each dart nearer to the side over its neighbour's (T1: 125 to 140 mm)."""

SQUARE_SLACK = 1.0
"""Degrees by which each panel may stay short of square at the side, so that the waist rises less;
two panels together stay within the 3 degrees allowed across the side seam."""


@dataclass(frozen=True, slots=True)
class HalfMeasures:
    """What one side of the skirt is drafted from, mm. ``hip`` and ``waist`` are whole girths with
    their ease; ``front_*`` are front arcs with their share of ease, None when not measured.
    ``front_height`` and ``back_height`` fix the waist over the hip line at the centers. ``hip_lean`` is how
    much the side leans at the hip where it flares below, degrees; ``lean_factor`` how round it is above.
    ``front_dart_widest`` is how wide a single front dart may be: what is more goes to the back (None: no
    limit); ``back_drop`` how much lower than usual the waist lies at the center back. ``side_widest`` is how
    much each panel takes in at the side while the darts bear the rest (None: its share, whatever that is).
    ``back_dart_widest`` is how wide each of two or more back darts is planned: what is more, sides and
    front darts share, as far as they go (None: no limit)."""

    waist: float
    hip: float
    hip_depth: float
    front_waist: float | None = None
    front_hip: float | None = None
    front_height: float | None = None
    back_height: float | None = None
    hip_lean: float = 0.0
    lean_factor: float = LEAN_FACTOR
    front_dart_widest: float | None = None
    back_drop: float = 0.0
    side_widest: float | None = None
    back_dart_widest: float | None = None

    def lean_at_hip(self, take_in: float) -> float:
        """How much the side leans at the hip, degrees: never so much that it is not round above.

        Where it leans out to the waist and tapers below, it may run straight over the hip.
        """
        chord = degrees(atan2(take_in, self.hip_depth))
        return max(min(0.0, chord), min(max(0.0, MOST_HIP_LEAN * chord), self.hip_lean))

    def widest_at_side(self) -> float | None:
        """How much a panel takes in at the side while the darts bear the rest, mm (None: no limit).

        Where the side flares it may take in more, so that it runs into the flare without turning back.
        """
        if self.side_widest is None:
            return None
        flaring = radians(max(self.hip_lean, 0.0) / MOST_HIP_LEAN)
        return max(self.side_widest, self.hip_depth * tan(flaring))


@dataclass(frozen=True, slots=True)
class DartLengths:
    """Lengths of the darts of each panel, from the center outward, mm."""

    front: tuple[float, ...]
    back: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Half:
    """One drafted side: the panels, the side take-in (mm) and the hip girth with the ease in use; how much
    the side leans at the hip (degrees), and by how much the center back is lowered (mm)."""

    front: Panel
    back: Panel
    take_in: float
    hip: float
    hip_lean: float = 0.0
    back_drop: float = 0.0


def draft_half(measures: HalfMeasures, lengths: DartLengths) -> Half:
    """Draft front and back of one side so that the sewn waist is right.

    DraftRefused: ``skirt-waist-unreachable`` when no side seam within its limits closes the waist,
    ``skirt-darts-too-wide``, ``skirt-side-short``, ``dart-misses-waist``.
    """
    try:
        half = _closed_half(measures, lengths)
    except GeometryError as error:
        raise DraftRefused(error.code) from error
    if abs(half.front.length + half.back.length - measures.waist / 2.0) > TOLERANCES.sew_length:
        raise DraftRefused("skirt-waist-unreachable", waist=measures.waist, hip=measures.hip)
    return half


def _closed_half(measures: HalfMeasures, lengths: DartLengths) -> Half:
    difference = (measures.hip - measures.waist) / 2.0
    take_in = side_take_in(measures, len(lengths.front), len(lengths.back))
    drawn = _with_darts(measures, lengths, take_in) if difference > 0.0 else None
    return drawn or _by_side_seam(measures, lengths, take_in)


def side_take_in(measures: HalfMeasures, front_darts: int, back_darts: int) -> float:
    """What each panel takes in at the side, mm: its share of the difference between hip and waist, and a part
    of what would make the back's darts too wide."""
    own = _side_share(measures, front_darts, back_darts)
    return min(own + _spared_behind(measures, own, front_darts, back_darts) / 4.0, MOST_SIDE_TAKE_IN)


def _side_share(measures: HalfMeasures, front_darts: int, back_darts: int) -> float:
    """The share of the side, mm: no more than its widest, while so many darts bear the rest; of what they do
    not bear, its share again."""
    difference = (measures.hip - measures.waist) / 2.0
    share, widest = SIDE_SHARE * difference / 2.0, measures.widest_at_side()
    if widest is not None and share > widest:
        borne = front_darts * BEARABLE_FRONT_DART + back_darts * BEARABLE_BACK_DART
        left = max(difference - 2.0 * widest - borne, 0.0)
        share = min(share, widest + SIDE_SHARE * left / 2.0)
    return min(share, MOST_SIDE_TAKE_IN)


def _spared_behind(measures: HalfMeasures, take_in: float, front_darts: int, back_darts: int) -> float:
    """What both sides and the front's darts, one half each, take so that no back dart is wider than its
    widest, mm: where front and back have two darts or more, and as far as the front's bear it. Measured
    arcs know better."""
    widest = measures.back_dart_widest
    if widest is None or measures.front_waist is not None or min(front_darts, back_darts) < 2:
        return 0.0
    rest = _left_for_darts(measures, take_in)
    over = BACK_DART_SHARE * rest - back_darts * widest
    front_bears = front_darts * BEARABLE_FRONT_DART - (1.0 - BACK_DART_SHARE) * rest
    return max(min(over, MOST_SPARED, 2.0 * front_bears), 0.0)


def _left_for_darts(measures: HalfMeasures, take_in: float) -> float:
    """What the darts of front and back take up together where each panel takes in so much at the side, mm."""
    return (measures.hip - measures.waist) / 2.0 - 2.0 * take_in


def dart_lengths(length: float, count: int) -> tuple[float, ...]:
    """The lengths of ``count`` darts, the one at the center the longest."""
    return tuple(length * SECOND_DART**index for index in range(count))


def panel_widths(measures: HalfMeasures) -> tuple[float, float]:
    """Width of the front and back panel at the hip, mm."""
    half = measures.hip / 2.0
    front = measures.front_hip / 2.0 if measures.front_hip is not None else half / 2.0 - BACK_WIDER
    return front, half - front


def dart_demand(measures: HalfMeasures, counts: tuple[int, int] | None = None) -> tuple[float, float]:
    """How much the front and the back would take up in so many darts, mm (None: before a count is chosen, as
    much as there is)."""
    take_in = _side_share(measures, *(counts or USUAL_DARTS))
    rest = _left_for_darts(measures, take_in)
    if measures.front_waist is not None:
        front = panel_widths(measures)[0] - take_in - measures.front_waist / 2.0
        return front, rest - front
    spared = _spared_behind(measures, take_in, *counts) if counts else 0.0
    return (1.0 - BACK_DART_SHARE) * rest + spared / 2.0, BACK_DART_SHARE * rest - spared


def _with_darts(measures: HalfMeasures, lengths: DartLengths, take_in: float) -> Half | None:
    """Close the waist by the darts; None when no panel has a dart that can do it."""
    front_width, back_width = panel_widths(measures)
    half_waist = measures.waist / 2.0
    front_waist = front_width - take_in - _front_intake(measures, lengths)
    front_plan = _plan(measures, front_width, take_in, lengths.front)
    back_plan = _plan(measures, back_width, take_in, lengths.back)
    front_height, back_height = measures.front_height, measures.back_height
    front = _closed_to(front_plan, front_waist, front_height)
    if front is None:
        front = _open(front_plan, front_height)
    rise = _back_rise(measures, front)
    back = _closed_to(back_plan, half_waist - front.length, back_height, measures.back_drop, rise)
    if back is None:
        back = _open(back_plan, back_height, measures.back_drop, rise)
        front_again = _closed_to(front_plan, half_waist - back.length, front_height)
        if front_again is None:
            return None
        front = front_again
    lowered = _lowered(measures, back, rise)
    return Half(front, back, take_in, measures.hip, measures.lean_at_hip(take_in), lowered)


def _back_rise(measures: HalfMeasures, front: Panel) -> float | None:
    """The rise of the back before its center is lowered, mm: the front's, so that the two centers lie at one
    height. A skirt without ``side_widest`` is of a version that did not look at it."""
    if measures.side_widest is None:
        return None
    return min(USUAL_RISE, max(LEAST_RISE, front.rise))


def _lowered(measures: HalfMeasures, back: Panel, rise: float | None = None) -> float:
    """By how much the center back is lowered, mm: less than asked where the waist would bend both ways."""
    usual = WaistHeight(back.side.end.y, measures.back_height, rise=rise)
    return usual(back.closed.end, back.turn) - back.height


def _front_intake(measures: HalfMeasures, lengths: DartLengths) -> float:
    """What the front takes up in darts, mm: a single dart no more than its limit, where the back has darts
    for the rest. Measured front arcs know better."""
    counts = (len(lengths.front), len(lengths.back))
    demand, most = dart_demand(measures, counts)[0], measures.front_dart_widest
    if most is None or measures.front_waist is not None or len(lengths.front) != 1 or not lengths.back:
        return demand
    return max(min(demand, most), demand - MOST_TO_BACK)


def _by_side_seam(measures: HalfMeasures, lengths: DartLengths, take_in: float) -> Half:
    """Close the waist by the side seam alone, every dart empty; raise the hip where that is not enough."""

    def drawn(take: float, hip: float) -> Half:
        now = replace(measures, hip=hip)
        front_width, back_width = panel_widths(now)
        front = _open(_plan(now, front_width, take, lengths.front), now.front_height)
        back = _open(_plan(now, back_width, take, lengths.back), now.back_height, now.back_drop)
        return Half(front, back, take, hip, now.lean_at_hip(take), _lowered(now, back))

    def excess(half: Half) -> float:
        return half.front.length + half.back.length - measures.waist / 2.0

    try:
        take = solve_rising(
            lambda t: excess(drawn(t, measures.hip)),
            take_in,
            4.0,
            LEAST_SIDE_TAKE_IN,
            MOST_SIDE_TAKE_IN,
        )
        return drawn(take, measures.hip)
    except GeometryError:
        pass
    try:
        hip = solve_rising(
            lambda h: excess(drawn(LEAST_SIDE_TAKE_IN, h)),
            measures.waist,
            10.0,
            measures.hip,
            1.5 * measures.waist,
        )
    except GeometryError as error:
        raise DraftRefused("skirt-waist-unreachable", waist=measures.waist, hip=measures.hip) from error
    return drawn(LEAST_SIDE_TAKE_IN, hip)


def _plan(measures: HalfMeasures, width: float, take_in: float, lengths: tuple[float, ...]) -> PanelPlan:
    count = len(lengths)
    places = DART_PLACES.get(count, ())
    darts = tuple(DartPlan(place, length, 1.0 / count) for place, length in zip(places, lengths, strict=True))
    lean = measures.lean_at_hip(take_in)
    side = side_curve(width, take_in, measures.hip_depth, lean, measures.lean_factor)
    return PanelPlan(side, darts, SQUARE_SLACK)


def _open(plan: PanelPlan, height: float | None, drop: float = 0.0, rise: float | None = None) -> Panel:
    at_center = WaistHeight(plan.side.end.y, height, drop, rise)
    return PanelDrafter(plan, at_center, plan.side.end.x).panel(0.0)


def _closed_to(
    plan: PanelPlan, waist: float, height: float | None, drop: float = 0.0, rise: float | None = None
) -> Panel | None:
    """The panel whose sewn waist is ``waist``; None when that would need a dart below zero, or has none."""
    if not plan.darts:
        return None
    drafter = PanelDrafter(plan, WaistHeight(plan.side.end.y, height, drop, rise), waist)
    most = len(plan.darts) * 1.2 * min(dart.length for dart in plan.darts)
    if (panel := _at_once(drafter, plan, waist, most)) is not None:
        return panel
    flat = drafter.sewn(0.0)
    if flat < waist:
        return None
    try:
        intake = solve_rising(lambda k: drafter.sewn(k) - waist, flat - waist, 3.0, 0.0, most)
    except GeometryError as error:
        raise DraftRefused(
            "skirt-darts-too-wide", wanted=waist, width=plan.side.start.x, most=most
        ) from error
    return drafter.panel(intake)


def _at_once(drafter: PanelDrafter, plan: PanelPlan, waist: float, most: float) -> Panel | None:
    """The panel with its intake (at most ``most``, mm) and dart points sought together; may fail."""
    search = Together(len(plan.darts) + 1, CLOSED_EXACTNESS, CLOSING_ROUNDS)
    try:
        found = drafter.closed_to(waist, search, drafter.start_of(max(plan.side.end.x - waist, 0.0)))
    except GeometryError:
        return None
    return found[0] if found is not None and found[1][0] <= most else None
