"""The one root of a cubic, checked against numpy."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.blocks.legs.one_root import one_root

NUMBERS = st.floats(-100.0, 100.0)


@given(st.floats(0.1, 100.0), NUMBERS, NUMBERS, st.booleans())
def test_it_is_one_of_those_that_numpy_finds(size: float, first: float, second: float, rises: bool) -> None:
    constant = -size if rises else size
    third = -constant - first - second - constant / 2.0
    found = one_root(constant, first, second, third)
    roots = np.roots([third, second, first, constant])
    assert 0.0 <= found <= 1.0
    value = constant + found * (first + found * (second + found * third))
    assert value == pytest.approx(0.0, abs=1e-9)
    if abs(third) > 1.0:
        assert min(abs(root - found) for root in roots) < 1e-4
