"""The least that serves: it serves, and lies as near to what fails as so many halvings tell."""

from hypothesis import given
from hypothesis import strategies as st

from notchbook.blocks._least import nearest_serving

ROUNDS = 6


@given(st.floats(0.0, 1.0), st.booleans())
def test_what_is_found_serves_and_lies_within_a_part_of_the_limit(limit: float, rising: bool) -> None:
    def trial(amount: float) -> float | None:
        return amount if (amount >= limit) is rising else None

    fails, serves = (0.0, 1.0) if rising else (1.0, 0.0)
    found = nearest_serving(trial, fails, serves, ROUNDS)
    part = 1.0 / 2**ROUNDS
    if found is None:
        assert abs(serves - limit) <= part
    else:
        assert trial(found) is not None
        assert abs(found - limit) <= part


def test_nothing_is_found_where_nothing_serves() -> None:
    asked: list[float] = []
    assert nearest_serving(asked.append, 0.0, 1.0, 3) is None
    assert asked == [0.5, 0.75, 0.875]
