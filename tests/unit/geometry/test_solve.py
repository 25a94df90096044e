"""The one-number search, judged by closed forms and by scipy's own root of the same function."""

import math

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from scipy.optimize import root_scalar

from notchbook.errors import GeometryError
from notchbook.geometry.solve import solve_rising


@example(wanted=-5e-324, start=0.015625, step=0.015625)
@given(st.floats(-50.0, 50.0), st.floats(-60.0, 60.0), st.floats(0.01, 20.0))
def test_a_straight_rise_is_solved_from_anywhere(wanted: float, start: float, step: float) -> None:
    found = solve_rising(lambda x: 3.0 * (x - wanted), start, step, -60.0, 60.0)
    assert found == pytest.approx(wanted, abs=1e-8)


def test_a_falling_function_agrees_with_another_method_of_scipy() -> None:
    def falling(x: float) -> float:
        return math.cos(x) - 0.3 * x

    other = root_scalar(falling, x0=1.0, x1=1.2, method="secant").root
    assert solve_rising(falling, 0.2, 0.1, 0.0, 3.0) == pytest.approx(other, abs=1e-8)


def test_it_never_asks_beyond_the_limits() -> None:
    asked: list[float] = []

    def noted(x: float) -> float:
        asked.append(x)
        return x - 9.0

    assert solve_rising(noted, 1.0, 5.0, 0.0, 10.0) == pytest.approx(9.0, abs=1e-8)
    assert min(asked) >= 0.0
    assert max(asked) <= 10.0


def test_no_place_is_asked_for_twice() -> None:
    asked: list[float] = []

    def noted(x: float) -> float:
        asked.append(x)
        return x**3 - 9.0

    assert solve_rising(noted, 0.0, 0.5, 0.0, 10.0) == pytest.approx(9.0 ** (1.0 / 3.0), abs=1e-8)
    assert len(asked) == len(set(asked))


def test_a_root_at_the_start_is_taken_as_it_is() -> None:
    assert solve_rising(lambda x: x - 2.0, 2.0, 1.0, 0.0, 4.0) == 2.0


def test_no_change_of_sign_is_a_refusal_with_both_ends() -> None:
    with pytest.raises(GeometryError) as refusal:
        solve_rising(lambda x: x + 1.0, 1.0, 1.0, 0.0, 4.0)
    assert refusal.value.code == "no-solution"
    assert refusal.value.facts["at_low"] == 1.0
    assert refusal.value.facts["at_high"] == 5.0
