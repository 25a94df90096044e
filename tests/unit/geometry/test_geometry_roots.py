"""Roots of polynomials between 0 and 1."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.geometry.roots import unit_roots, value_at


def product(roots: list[float]) -> list[float]:
    """The coefficients of the polynomial with these roots, constant term first."""
    return [float(c) for c in reversed(np.poly(roots))] if roots else [1.0]


def test_values() -> None:
    assert value_at((1.0, 2.0, 3.0), 2.0) == 17.0
    assert value_at((), 2.0) == 0.0


@given(st.lists(st.integers(1, 49), min_size=1, max_size=5, unique=True))
def test_single_roots_are_found(places: list[int]) -> None:
    roots = [place / 50.0 for place in sorted(places)]
    assert unit_roots(product([*roots, -0.7, 2.3])) == pytest.approx(roots, abs=1e-9)


def test_ends_count() -> None:
    assert unit_roots(product([0.0, 1.0])) == [0.0, 1.0]


def test_double_roots_are_touches() -> None:
    double = product([0.5, 0.5])
    assert unit_roots(double, touch=1e-9) == pytest.approx([0.5])
    lifted = [double[0] + 1e-3, *double[1:]]
    assert unit_roots(lifted) == []
    assert unit_roots(lifted, touch=2e-3) == pytest.approx([0.5])


@pytest.mark.parametrize("coefficients", [(), (0.0,), (3.0,), (0.0, 0.0, 0.0), (1.0, 0.0)])
def test_constants_have_no_roots(coefficients: tuple[float, ...]) -> None:
    assert unit_roots(coefficients) == []


@given(st.lists(st.integers(-50, 50), min_size=2, max_size=6))
def test_no_root_is_missed_that_numpy_finds(coefficients: list[int]) -> None:
    theirs = np.roots(coefficients[::-1])
    inside = sorted(float(one.real) for one in theirs if one.imag == 0.0 and 1e-6 < one.real < 1.0 - 1e-6)
    ours = [t for t in unit_roots([float(c) for c in coefficients]) if 1e-6 < t < 1.0 - 1e-6]
    alone = all(sum(abs(one - other) < 1e-3 for other in theirs) == 1 for one in inside)
    assert not alone or ours == pytest.approx(inside, abs=1e-9)


def test_an_end_counts_once_beside_a_root_within() -> None:
    assert unit_roots(product([0.0, 0.25])) == pytest.approx([0.0, 0.25])
    assert unit_roots(product([0.25, 1.0])) == pytest.approx([0.25, 1.0])
