"""The crotch seam brought to its length: the levers pulled together, and as far as they go to the wanted
parts.

The total always counts; the parts give way where they would pull the levers farther than is usual.
"""

from dataclasses import replace

from notchbook.blocks.legs.closing import closed
from notchbook.blocks.legs.drawing import Belly, Drafters, Drawn, draw
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.hip_in_use import usual_slant
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.pull import Range, crotch_ranges, least_depth, pulled
from notchbook.errors import DraftRefused, GeometryError

_CLOSE = 1e-6
"""mm by which a part of the crotch seam may miss what was given."""

_EXACT = 1e-7
_ROUGHLY = 2.0
"""mm of the crotch seam."""

_ROUNDS = 10
_HALVINGS = 6
"""After which the extension given from back to front is known to a sixtieth of its range."""

_OTHER_STARTS = (4.0, 8.0, -4.0)
"""Steps at which the search begins anew where a leg can not be drawn on the way from its first start."""

_SHRINKING = (1.0, 0.8, 0.6, 0.4, 0.2, 0.0, -0.2, -0.4, -0.6, -0.8)
"""Shares of the most steps at which a leg is tried in turn, where it cannot be drawn farther out."""


class CrotchFit:
    """Draws one body's trousers at any stand of the crotch's levers, and finds the wanted one."""

    def __init__(self, given: TrousersGiven, belly: Belly) -> None:
        self._given = given = _hip_above_crotch(given)
        self._belly = belly
        self._drafters = Drafters(given)
        self._slope = proportion("steps.usual_slope")
        self._gave_way = False
        self._last: tuple[tuple[float, float, Belly], Drawn] | None = None
        self.ranges = crotch_ranges(given, usual_slant(given))

    @property
    def hip_depth(self) -> float:
        """From the top edge down to the hip level in use, mm."""
        return self._given.hip_depth

    def at(self, steps: float, shift: float = 0.0, belly: Belly | None = None) -> Drawn:
        """The leg after so many steps, ``shift`` mm of extension given from back to front; with another room
        for a belly where one is given."""
        asked = (steps, shift, belly or self._belly)
        if self._last is None or self._last[0] != asked:
            pull = pulled(self.ranges, self._given.hip, steps, shift)
            self._last = asked, draw(self._given, self._drafters, asked[2], pull)
        return self._last[1]

    def fitted(self, start: float = 0.0, shift: float = 0.0) -> Drawn:
        """The leg whose crotch seam has the wanted length, sought from ``start``.

        DraftRefused ``trousers-crotch-short`` and ``trousers-crotch-long`` where the levers do not reach it:
        with the least and most that they reach, how far off that is (mm), and the rise that would agree;
        ``trousers-crotch-unsettled`` where it lies within their reach and is not found.
        """
        first: DraftRefused | None = None
        for begin in (start, *_OTHER_STARTS):
            try:
                return self._sought(begin, shift)
            except GeometryError as error:
                raise self._refusal() from error
            except DraftRefused as refused:
                first = first or refused
        least, most = self.attainable()
        if first is not None and least <= self._given.crotch <= most:
            raise first
        raise self._refusal()

    def roughly(self) -> Drawn:
        """The leg whose crotch seam comes near the wanted length, enough to see its darts; where that is not
        had, the leg with no lever pulled. Refused where that cannot be drawn."""
        try:
            return self._sought(0.0, 0.0, _ROUGHLY)
        except (DraftRefused, GeometryError):
            return self.at(0.0)

    def _sought(self, start: float, shift: float, exact: float = _EXACT) -> Drawn:
        most = proportion("steps.most")
        steps = closed(
            lambda step: self.at(step, shift).crotch - self._given.crotch,
            start,
            self._slope,
            -most,
            most,
            2.0,
            exact,
        )
        return self.at(steps, shift)

    def split(self) -> Drawn:
        """The same, its parts as near to the given ones as the extensions allow; the total always counts."""
        drawn, wanted = self.fitted(), self._wanted_front
        self._gave_way = False
        if wanted is None:
            return drawn
        slope, last = 1.0, (0.0, drawn.front.crotch)
        most_steps = max(self._steps_for_parts, abs(drawn.pulled.steps))
        for _ in range(_ROUNDS):
            miss = wanted - drawn.front.crotch
            if abs(miss) < _CLOSE:
                break
            shift = self._shift_range.at(drawn.pulled.shift + miss / slope)
            nearer = None if shift == drawn.pulled.shift else self._found(drawn.pulled.steps, shift)
            if nearer is None or abs(nearer.pulled.steps) > most_steps:
                self._gave_way = True
                break
            if not self._keeps_shape(drawn, nearer):
                self._gave_way = True
                return self._nearest_in_shape(drawn, shift)
            drawn = nearer
            slope = max(0.2, (drawn.front.crotch - last[1]) / (shift - last[0]))
            last = (shift, drawn.front.crotch)
        return drawn

    def split_miss(self, drawn: Drawn) -> float:
        """By how much the front of a leg from ``split`` is longer than given, mm.

        0 unless a lever stands in the way: at its limit, beyond the steps that are bearable for the sake of
        the parts, where a curve would lose its shape, or where no leg can be drawn.
        """
        wanted = self._wanted_front
        return 0.0 if wanted is None or not self._gave_way else drawn.front.crotch - wanted

    @property
    def _wanted_front(self) -> float | None:
        """The front's part of the whole seam, mm; None where the parts are not known."""
        front, back = self._given.front_crotch, self._given.back_crotch
        return None if front is None or back is None else front * self._given.crotch / (front + back)

    @property
    def _shift_range(self) -> Range:
        hip = self._given.hip
        return Range(proportion("shift.least") * hip, 0.0, proportion("shift.most") * hip)

    def _keeps_shape(self, before: Drawn, after: Drawn) -> bool:
        """Whether no crotch curve of the leg nears a straight ramp for the sake of the parts."""
        if self._given.crotch_parts == "as_far" or self._given.is_split_fixed:
            return True
        least = (
            min(proportion(f"curve.end_{name}"), panel.curve.end_hollow)
            for name, panel in (("front", before.front), ("back", before.back))
        )
        ends = (after.front.curve.end_hollow, after.back.curve.end_hollow)
        return all(end >= fair for end, fair in zip(ends, least, strict=True))

    def _nearest_in_shape(self, drawn: Drawn, shift: float) -> Drawn:
        """The leg on the way from the drawn one to this shift that keeps its shape and lies nearest to it."""
        best, low, high = drawn, drawn.pulled.shift, shift
        for _ in range(_HALVINGS):
            middle = (low + high) / 2.0
            found = self._found(best.pulled.steps, middle)
            if found is not None and self._keeps_shape(drawn, found):
                best, low = found, middle
            else:
                high = middle
        return best

    @property
    def _steps_for_parts(self) -> float:
        return proportion("steps.most" if self._given.is_split_fixed else "steps.for_parts")

    def _found(self, start: float, shift: float) -> Drawn | None:
        """The leg at this shift; None where it cannot be had."""
        try:
            return self.fitted(start, shift)
        except DraftRefused:
            return None

    def attainable(self) -> tuple[float, float]:
        """The least and the most that the whole crotch seam can be, mm."""
        return self._extreme(-1.0), self._extreme(1.0)

    def _extreme(self, way: float) -> float:
        """The crotch seam at the farthest stand this way that can be drawn; DraftRefused where none can."""
        refusals = []
        for share in _SHRINKING:
            try:
                return self.at(way * share * proportion("steps.most")).crotch
            except DraftRefused as refused:
                refusals.append(refused)
        raise refusals[-1]

    def _refusal(self) -> DraftRefused:
        """Too long, too short, or within reach and not found."""
        least, most = self.attainable()
        wanted, given = self._given.crotch, self._given
        if least <= wanted <= most:
            return DraftRefused(
                "trousers-crotch-unsettled",
                wanted=wanted,
                least=least,
                most=most,
                hip=given.hip,
                rise=given.rise,
            )
        nearest = most if wanted > most else least
        off = wanted - nearest
        return DraftRefused(
            "trousers-crotch-long" if off > 0.0 else "trousers-crotch-short",
            wanted=wanted,
            least=least,
            most=most,
            off=abs(off),
            agrees=nearest,
            hip=given.hip,
            rise=given.rise,
            rise_agrees=given.rise + off / 2.0,
        )


def _hip_above_crotch(given: TrousersGiven) -> TrousersGiven:
    """The same with its hip level so far above the crotch level that a crotch can be drawn: the fullest of a
    low seat may lie at the crotch. DraftRefused ``trousers-hip-below-crotch``."""
    room = given.rise + least_depth(given) - proportion("hip.least_height")
    if given.hip_depth <= room:
        return given
    if given.hip_depth - room > proportion("hip_level.most_raised"):
        raise DraftRefused(
            "trousers-hip-below-crotch",
            hip_depth=given.hip_depth,
            rise=given.rise,
            depth_ease=given.depth_ease,
        )
    return replace(given, hip_depth=room)
