"""A smooth curve through values that never turns back between them."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise


@dataclass(frozen=True, slots=True)
class RisingCurve:
    """Cubic pieces between places with a value and a slope at each; smooth, and as steep as the values ask.

    The slopes are those of F. N. Fritsch and J. Butland, "A method for constructing local monotone piecewise
    cubic interpolants", SIAM J. Sci. Stat. Comput. 5 (1984): where values rise the curve rises.
    """

    places: tuple[float, ...]
    values: tuple[float, ...]
    slopes: tuple[float, ...]

    @staticmethod
    def through(
        places: Sequence[float], values: Sequence[float], *, level: tuple[bool, bool]
    ) -> "RisingCurve":
        """The curve through values at rising places; ``level`` says whether it begins and whether it ends
        without a slope, else it goes on as steep as its first or last piece."""
        chords = [
            (after - before) / (right - left)
            for (left, right), (before, after) in zip(pairwise(places), pairwise(values), strict=True)
        ]
        widths = [right - left for left, right in pairwise(places)]
        inner = [
            _slope_between(chords[index], chords[index + 1], widths[index], widths[index + 1])
            for index in range(len(chords) - 1)
        ]
        first = 0.0 if level[0] else chords[0]
        last = 0.0 if level[1] else chords[-1]
        return RisingCurve(tuple(places), tuple(values), (first, *inner, last))

    def at(self, place: float) -> float:
        """The value at a place."""
        index, share, width = self._within(place)
        low, high = self.values[index], self.values[index + 1]
        start, end = self.slopes[index] * width, self.slopes[index + 1] * width
        rest = 1.0 - share
        return (
            low * (1.0 + 2.0 * share) * rest**2
            + start * share * rest**2
            + high * share**2 * (3.0 - 2.0 * share)
            - end * share**2 * rest
        )

    def slope(self, place: float) -> float:
        """The slope at a place."""
        index, share, width = self._within(place)
        rise = self.values[index + 1] - self.values[index]
        start, end = self.slopes[index] * width, self.slopes[index + 1] * width
        rest = 1.0 - share
        steep = 6.0 * rise * share * rest
        return (steep + start * rest * (1.0 - 3.0 * share) + end * share * (3.0 * share - 2.0)) / width

    def _within(self, place: float) -> tuple[int, float, float]:
        index = min(max(bisect_right(self.places, place) - 1, 0), len(self.places) - 2)
        width = self.places[index + 1] - self.places[index]
        return index, min(max((place - self.places[index]) / width, 0.0), 1.0), width


def _slope_between(before: float, after: float, width_before: float, width_after: float) -> float:
    """The slope where two pieces meet: nothing where the values turn back, else a mean of the two chords."""
    if before * after <= 0.0:
        return 0.0
    share = (width_before + 2.0 * width_after) / (3.0 * (width_before + width_after))
    return before * after / (share * after + (1.0 - share) * before)
