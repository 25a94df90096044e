"""Several amounts brought to agreement together, each of which mostly moves its own error.

Broyden's method (C. G. Broyden, "A class of methods for solving nonlinear simultaneous equations",
Mathematics of Computation 19, 1965): it begins by moving each amount by its error and learns how they depend
on each other.
"""

from collections.abc import Callable, Sequence

Vector = tuple[float, ...]

_ASTRAY = 1e5
"""mm, a hundred meters: an amount so far away is sought in vain."""


class Together:
    """Seeks the amounts at which every error is 0. What it learned serves its next search."""

    def __init__(self, count: int, exact: float, rounds: int) -> None:
        self._count, self._exact, self._rounds = count, exact, rounds
        self._forget()

    def _forget(self) -> None:
        self._learned = [
            [1.0 if row == column else 0.0 for column in range(self._count)] for row in range(self._count)
        ]

    def settle(self, errors: Callable[[Vector], Vector], start: Vector) -> Vector | None:
        """The amounts, sought from ``start``; None when they do not settle.

        ``errors`` tells by how much each amount is still to be moved, roughly.
        """
        amounts, found = start, errors(start)
        for number in range(self._rounds):
            if max(map(abs, found)) < self._exact:
                return amounts
            if number == self._rounds // 2:
                self._forget()
            step = self._times(found)
            amounts = tuple(a + s for a, s in zip(amounts, step, strict=True))
            if not all(abs(amount) < _ASTRAY for amount in amounts):
                break
            now = errors(amounts)
            self._learn(step, tuple(f - n for f, n in zip(found, now, strict=True)))
            found = now
        self._forget()
        return None

    def _times(self, vector: Vector) -> Vector:
        return tuple(sum(k * v for k, v in zip(row, vector, strict=True)) for row in self._learned)

    def _learn(self, step: Vector, gained: Vector) -> None:
        """What the step of the amounts did to the errors."""
        reached = self._times(gained)
        back = _from_left(step, self._learned)
        size = sum(s * r for s, r in zip(step, reached, strict=True))
        if abs(size) < 1e-3 * sum(s * s for s in step):
            return
        for row, (s, r) in zip(self._learned, zip(step, reached, strict=True), strict=True):
            share = (s - r) / size
            for column, b in enumerate(back):
                row[column] += share * b


def _from_left(vector: Vector, rows: Sequence[Sequence[float]]) -> Vector:
    return tuple(
        sum(v * row[column] for v, row in zip(vector, rows, strict=True)) for column in range(len(vector))
    )
