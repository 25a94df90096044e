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
from notchbook.blocks.legs.pull import crotch_ranges, least_depth, pulled
from notchbook.errors import DraftRefused, GeometryError

_CLOSE = 1e-6
"""mm by which a part of the crotch seam may miss what was given."""

_ROUNDS = 10
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
        with the least and most that they reach, how far off that is (mm), and the rise that would agree.
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

    def _sought(self, start: float, shift: float) -> Drawn:
        most = proportion("steps.most")
        steps = closed(
            lambda step: self.at(step, shift).crotch - self._given.crotch,
            start,
            self._slope,
            -most,
            most,
            2.0,
        )
        return self.at(steps, shift)

    def split(self) -> Drawn:
        """The same, its parts as near to the given ones as the extensions allow; the total always counts."""
        drawn = self.fitted()
        wanted = self._given.front_crotch
        if wanted is None or self._given.back_crotch is None:
            return drawn
        wanted *= self._given.crotch / (wanted + self._given.back_crotch)
        limits = [proportion(f"shift.{word}") * self._given.hip for word in ("least", "most")]
        slope, last = 1.0, (0.0, drawn.front.crotch)
        bearable = proportion("steps.most" if self._given.is_split_fixed else "steps.unusual")
        most_steps = max(bearable, abs(drawn.pulled.steps))
        for _ in range(_ROUNDS):
            miss = wanted - drawn.front.crotch
            shift = min(limits[1], max(limits[0], drawn.pulled.shift + miss / slope))
            if abs(miss) < _CLOSE or shift == drawn.pulled.shift:
                break
            try:
                nearer = self.fitted(drawn.pulled.steps, shift)
            except DraftRefused:
                break
            if abs(nearer.pulled.steps) > most_steps:
                break
            drawn = nearer
            slope = max(0.2, (drawn.front.crotch - last[1]) / (shift - last[0]))
            last = (shift, drawn.front.crotch)
        return drawn

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
        least, most = self.attainable()
        wanted = self._given.crotch
        is_long = wanted > most
        off = wanted - most if is_long else wanted - least
        return DraftRefused(
            "trousers-crotch-long" if is_long else "trousers-crotch-short",
            wanted=wanted,
            least=least,
            most=most,
            off=abs(off),
            agrees=most if is_long else least,
            hip=self._given.hip,
            rise=self._given.rise,
            rise_agrees=self._given.rise + off / 2.0,
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
