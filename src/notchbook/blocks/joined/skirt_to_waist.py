"""A skirt to the waist of a bodice, in numbers: each panel as wide as its own panel above, dart under dart.

The bodice says how long the sewn waist of each panel is and where its darts stand on it. The skirt takes
both over exactly; what is left free is how the rest of hip less waist is shared between sides and darts.
"""

from dataclasses import dataclass, replace
from itertools import accumulate

from notchbook.blocks._closed_waist import DartPlan, Panel, PanelDrafter, PanelPlan, side_curve
from notchbook.blocks._shared_centers import SharedCenters, shared_centers
from notchbook.blocks.skirts.halves import (
    BACK_WIDER,
    LEAST_SIDE_TAKE_IN,
    MOST_SIDE_TAKE_IN,
    SECOND_DART,
    SIDE_SHARE,
    Half,
)
from notchbook.blocks.skirts.waist_height import WaistHeight
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Cubic, Transform
from notchbook.geometry.solve import solve_rising

FRONT_LENGTH, BACK_LENGTH = 9 / 20, 2 / 3
"""Length of the dart nearest to the center as a share of the hip depth: as the skirt's own."""

SHORTEST_DART = 78.0
"""mm; as the skirt's own."""

SIDE_SLACK = 0.5
"""Degrees by which each panel may stay short of square at the side: half the skirt's, so that the side runs
on within a degree across the waist seam. Own judgment."""

FRONT_DART_SHARE = (0.3, 0.45)
"""Least and most share of the dart intake that goes to the front, where both panels have darts; within
it the hip keeps the split of the skirt block. Own judgment: the skirt's own share is 0.36."""

WIDEST_DART = 38.0
"""mm that a front dart takes up where the back can take the rest. Own judgment, below the skirt's limit."""

WIDEST_SIDE = 90.0
"""mm that a panel may take in at the side where it has no darts, before the draft is refused. Own judgment;
beyond the skirt's limit it is a finding."""

_ROUNDS = 40
_EXACT = 1e-6
"""mm by which a part of the waist may still miss its length."""


@dataclass(frozen=True, slots=True)
class SkirtGiven:
    """One side of the skirt, mm. ``hip`` is the whole girth with its ease. ``front`` and ``back`` are the
    lengths of the parts of the bodice's waist from the center outward, a dart between each and the next.
    The heights fix the waist over the hip line at the centers."""

    hip: float
    hip_depth: float
    front: tuple[float, ...]
    back: tuple[float, ...]
    front_height: float | None = None
    back_height: float | None = None


def draft_skirt(given: SkirtGiven) -> Half:
    """Both panels, their waists as the bodice's. ``hip`` of the half is larger than given where the waist
    asks for it.

    DraftRefused: ``dress-skirt-unreachable``, ``skirt-darts-too-wide``, ``skirt-side-short``.
    """
    rest = (given.hip / 2.0) - sum(given.front) - sum(given.back)
    has_darts = len(given.front) > 1 or len(given.back) > 1
    if has_darts and rest > 0.0:
        drawn = _with_darts(given, min(SIDE_SHARE * rest / 2.0, MOST_SIDE_TAKE_IN))
        if drawn is not None:
            return drawn
    return _by_side_seam(given)


class _PanelOf:
    """Draws one panel: ``parts`` are those of its waist, ``side`` the side curve with its hip at x = 0."""

    def __init__(self, parts: tuple[float, ...], side: Cubic, length: float, height: float | None) -> None:
        self._waist = sum(parts)
        self._stops = tuple(accumulate(parts))[:-1]
        self._side = side
        count = len(self._stops)
        self._legs = tuple(max(length, SHORTEST_DART) * SECOND_DART**index for index in range(count))
        self._height = height

    @property
    def has_darts(self) -> bool:
        return bool(self._stops)

    def width_without_darts(self) -> float:
        """How wide the panel is at the hip when its waist comes out with empty darts."""
        take_in = -self._side.end.x

        def over(width: float) -> float:
            return self._drafter(width, self._usual_places()).sewn(0.0) - self._waist

        return solve_rising(over, self._waist + take_in, 4.0, 0.3 * self._waist, 3.0 * self._waist)

    def drawn(self, width: float, *, is_open: bool = False) -> Panel:
        """The panel with its waist exact and its darts where they are wanted; empty darts if ``is_open``.

        DraftRefused ``skirt-darts-too-wide`` where no darts of this length can do it.
        """
        try:
            panel = self._settled(width, is_open=is_open)
        except GeometryError:
            panel = None
        if panel is None:
            most = self._most()
            raise DraftRefused("skirt-darts-too-wide", wanted=self._waist, width=width, most=most)
        return panel

    def _settled(self, width: float, *, is_open: bool) -> Panel | None:
        """Put intake and places right in turn until both hold; None where they do not settle."""
        places = self._usual_places()
        drafter = self._drafter(width, places)
        intake = 0.0
        for _ in range(_ROUNDS):
            *stops, sewn = drafter.stops(intake)
            misses = [wanted - stop for wanted, stop in zip(self._stops, stops, strict=True)]
            over = 0.0 if is_open else sewn - self._waist
            if max(map(abs, (*misses, over))) < _EXACT:
                return drafter.panel(intake)
            intake = min(max(intake + over, 0.0), self._most())
            places = tuple(place + miss / self._waist for place, miss in zip(places, misses, strict=True))
            drafter = drafter.with_places(places)
        return None

    def _most(self) -> float:
        """The most that all darts of the panel may take up, mm."""
        return 1.2 * sum(self._legs)

    def _usual_places(self) -> tuple[float, ...]:
        return tuple(stop / self._waist for stop in self._stops)

    def _drafter(self, width: float, places: tuple[float, ...]) -> PanelDrafter:
        side = self._side.transformed(Transform.translation(width, 0.0))
        darts = tuple(
            DartPlan(place, leg, 1.0 / len(places)) for place, leg in zip(places, self._legs, strict=True)
        )
        height = WaistHeight(side.end.y, self._height)
        return PanelDrafter(PanelPlan(side, darts, SIDE_SLACK), height, self._waist)


def _panels(given: SkirtGiven, take_in: float) -> tuple[_PanelOf, _PanelOf]:
    side = side_curve(0.0, take_in, given.hip_depth)
    return (
        _PanelOf(given.front, side, FRONT_LENGTH * given.hip_depth, given.front_height),
        _PanelOf(given.back, side, BACK_LENGTH * given.hip_depth, given.back_height),
    )


def _with_darts(given: SkirtGiven, take_in: float) -> Half | None:
    """Close the waist by the darts; None where there is nothing left for them to take up."""
    front, back = _panels(given, take_in)
    front_least, back_least = front.width_without_darts(), back.width_without_darts()
    darts = given.hip / 2.0 - front_least - back_least
    if darts < 0.0:
        return None
    least, most = _front_shares(len(given.front) - 1, len(given.back) - 1, darts)
    share = (given.hip / 4.0 - BACK_WIDER - front_least) / darts if darts else 0.0
    front_width = front_least + darts * min(max(share, least), most)
    return Half(
        front.drawn(front_width, is_open=not front.has_darts),
        back.drawn(given.hip / 2.0 - front_width, is_open=not back.has_darts),
        take_in,
        given.hip,
    )


def _front_shares(front_count: int, back_count: int, darts: float) -> tuple[float, float]:
    """Least and most share of the whole intake (mm) for so many darts in the front."""
    if front_count == 0:
        return 0.0, 0.0
    if back_count == 0:
        return 1.0, 1.0
    least, most = FRONT_DART_SHARE
    bearable = front_count * WIDEST_DART / darts if darts else most
    return least, max(least, min(most, bearable))


def _by_side_seam(given: SkirtGiven) -> Half:
    """Every dart empty, the rest taken in at the side; the hip raised where it would lean out too far."""

    def widths(take_in: float) -> tuple[float, float]:
        front, back = _panels(given, take_in)
        return front.width_without_darts(), back.width_without_darts()

    hip = given.hip / 2.0
    take_in = LEAST_SIDE_TAKE_IN
    if sum(widths(take_in)) < hip:
        try:
            take_in = solve_rising(
                lambda taken: sum(widths(taken)) - hip, 10.0, 4.0, LEAST_SIDE_TAKE_IN, WIDEST_SIDE
            )
        except GeometryError as error:
            waist = 2.0 * (sum(given.front) + sum(given.back))
            raise DraftRefused("dress-skirt-unreachable", waist=waist, hip=given.hip) from error
    front, back = _panels(given, take_in)
    front_width, back_width = widths(take_in)
    return Half(
        front.drawn(front_width, is_open=True),
        back.drawn(back_width, is_open=True),
        take_in,
        2.0 * (front_width + back_width),
    )


def draft_with_shared_centers(given: SkirtGiven, other: SkirtGiven) -> tuple[Half, SharedCenters]:
    """This side with its waist at the centers where both sides can have it."""
    centers = shared_centers(draft_skirt(given), draft_skirt(other))
    shared = replace(given, front_height=centers.front_height, back_height=centers.back_height)
    return draft_skirt(shared), centers
