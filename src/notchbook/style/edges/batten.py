"""A batten laid along an edge: held at points beside it, it bends evenly between them."""

from bisect import bisect_right
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Batten:
    """How far from the edge it lies at each distance: a cubic between the places, bending without a jump.

    ``places`` (mm along the edge, rising, the two ends among them), ``amounts`` (mm) and ``slopes`` there.
    """

    places: tuple[float, ...]
    amounts: tuple[float, ...]
    slopes: tuple[float, ...]

    def at(self, distance: float) -> tuple[float, float]:
        """The amount at a distance, and how fast it changes there."""
        last = len(self.places) - 2
        index = min(max(bisect_right(self.places, distance) - 1, 0), last)
        width = self.places[index + 1] - self.places[index]
        way = min(max((distance - self.places[index]) / width, 0.0), 1.0)
        rest = 1.0 - way
        first, second = self.amounts[index], self.amounts[index + 1]
        leaving, arriving = self.slopes[index] * width, self.slopes[index + 1] * width
        amount = first * rest * rest * (1.0 + 2.0 * way) + second * way * way * (3.0 - 2.0 * way)
        amount += leaving * way * rest * rest - arriving * way * way * rest
        slope = 6.0 * way * rest * (second - first)
        slope += leaving * rest * (1.0 - 3.0 * way) + arriving * way * (3.0 * way - 2.0)
        return amount, slope / width


def batten(places: tuple[float, ...], amounts: tuple[float, ...], end_slopes: tuple[float, float]) -> Batten:
    """The batten through the amounts, with its slopes at both ends given: a clamped cubic spline.

    The slopes between follow from curvature that does not jump: a system of one row for each inner place,
    solved from the first to the last and back.
    """
    count = len(places)
    widths = [places[index + 1] - places[index] for index in range(count - 1)]
    rises = [(amounts[index + 1] - amounts[index]) / widths[index] for index in range(count - 1)]
    slopes = [end_slopes[0], *([0.0] * (count - 2)), end_slopes[1]]
    shares, sums = [0.0] * count, [slopes[0], *([0.0] * (count - 1))]
    for index in range(1, count - 1):
        before, after = widths[index - 1], widths[index]
        goal = 3.0 * (after * rises[index - 1] + before * rises[index])
        pivot = 2.0 * (before + after) - after * shares[index - 1]
        shares[index] = before / pivot
        sums[index] = (goal - after * sums[index - 1]) / pivot
    for index in range(count - 2, 0, -1):
        slopes[index] = sums[index] - shares[index] * slopes[index + 1]
    return Batten(places, amounts, tuple(slopes))
