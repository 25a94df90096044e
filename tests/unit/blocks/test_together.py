"""Amounts that are brought to agreement together, checked against scipy's root finder."""

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import root

from notchbook.blocks._together import Together, Vector


def coupled(amounts: Vector) -> Vector:
    """Two amounts that each move the other's error a little, and not in proportion."""
    one, two = amounts
    return (10.0 - one - 0.3 * two - 0.01 * one * two, 4.0 - two + 0.4 * one)


def _as_scipy_asks(amounts: NDArray[np.float64]) -> Vector:
    return coupled((float(amounts[0]), float(amounts[1])))


def test_settles_where_another_solver_does() -> None:
    found = Together(2, 1e-10, 40).settle(coupled, (0.0, 0.0))
    expected = root(_as_scipy_asks, (0.0, 0.0)).x
    assert found is not None
    assert max(abs(a - float(b)) for a, b in zip(found, expected, strict=True)) < 1e-7


def test_what_it_learned_makes_the_next_search_shorter() -> None:
    counts = [0]

    def counted(amounts: Vector) -> Vector:
        counts[-1] += 1
        return coupled(amounts)

    search = Together(2, 1e-10, 40)
    first = search.settle(counted, (0.0, 0.0))
    assert first is not None
    counts.append(0)
    assert search.settle(counted, (first[0] + 0.01, first[1])) is not None
    assert counts[1] < counts[0]


def test_what_has_no_solution_settles_nowhere() -> None:
    assert Together(1, 1e-10, 20).settle(lambda amounts: (1.0 + amounts[0] ** 2,), (0.0,)) is None
