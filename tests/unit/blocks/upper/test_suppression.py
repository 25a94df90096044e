"""How the difference between bust and waist is shared, and how many darts it asks for."""

from dataclasses import replace

import pytest

from notchbook.blocks.upper import dart_counts, draft_bodice
from notchbook.blocks.upper.suppression import suppression
from support.upper_given import MAN, WOMAN


@pytest.mark.parametrize(
    ("waist", "counts"),
    [(1000.0, (0, 0)), (960.0, (0, 0)), (900.0, (1, 1)), (850.0, (1, 1)), (790.0, (1, 2)), (640.0, (2, 2))],
)
def test_counts(waist: float, counts: tuple[int, int]) -> None:
    """A single waist dart is 40 to 50 mm at most, else two (common practice)."""
    assert dart_counts(replace(WOMAN, waist=waist)) == counts


def test_a_fallen_waist_asks_for_none() -> None:
    assert dart_counts(MAN) == (0, 0)
    assert suppression(MAN).whole is None


@pytest.mark.parametrize("counts", [(0, 0), (1, 0), (0, 1), (1, 2), (2, 2)])
@pytest.mark.parametrize("waist", [1020.0, 980.0, 860.0, 760.0])
def test_shares_add_up(counts: tuple[int, int], waist: float) -> None:
    given = replace(WOMAN, waist=waist, front_darts=counts[0], back_darts=counts[1])
    shares = suppression(given)
    assert shares.whole == pytest.approx((given.bust - waist) / 2.0)
    assert 2.0 * shares.side + shares.front + shares.back == pytest.approx(shares.whole)
    assert shares.front >= 0.0
    assert shares.back >= 0.0


def test_published_suppression() -> None:
    """T3 (a published draft for bust 83, waist 64, from memory): half bust + 6 less half waist + 3 cm is
    12.5 cm, shared 35 : 18 between back and front dart places: more behind than in front."""
    shares = suppression(replace(WOMAN, bust=950.0, waist=700.0))
    assert shares.whole == pytest.approx(125.0)
    assert shares.back > shares.front


def test_counts_that_were_settled_stay_on_every_body() -> None:
    """The same darts, empty where there is nothing left to take in, so that no name is lost."""
    half = draft_bodice(replace(WOMAN, waist=1000.0, front_darts=2, back_darts=2))
    darts = (*half.front.waist_darts, *half.back.waist_darts)
    assert len(darts) == 4
    assert all(dart.first.distance_to(dart.second) == 0.0 for dart in darts)


def test_back_darts_end_below_the_bust_line() -> None:
    half = draft_bodice(WOMAN)
    side = half.back.side
    assert all(dart.point.y < half.back.underarm.y for dart in half.back.waist_darts)
    assert side.start.y == half.back.underarm.y
