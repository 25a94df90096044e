"""The limit `stop` goes by how many values a record has: the worst of many lies farther off by chance."""

from statistics import NormalDist

import pytest

from notchbook.body import POPULATIONS, PopulationName
from notchbook.body.population import population


@pytest.mark.parametrize("name", POPULATIONS)
def test_more_values_have_a_higher_limit_and_the_22_have_the_one_of_the_population(
    name: PopulationName,
) -> None:
    people = population(name)
    limits = [people.stop_for(count) for count in range(2, 40)]
    assert limits == sorted(limits) and limits[0] < limits[-1]
    assert people.stop_for(22) == people.stop
    assert people.stop_for(1) == people.stop_for(4) and people.stop_for(60) == people.stop_for(30)
    assert people.stop_for(10) == pytest.approx((people.stop_for(8) + people.stop_for(12)) / 2.0)


@pytest.mark.parametrize("name", POPULATIONS)
@pytest.mark.parametrize("count", [4, 8, 12, 22, 30])
def test_the_limits_are_not_below_those_of_normal_values(name: PopulationName, count: int) -> None:
    """Outside: of so many independent normal values the worst reaches this in one case of a hundred.

    Values that go together reach it less often, bodies that are not quite normal more often: so near it.
    """
    normal = NormalDist().inv_cdf((1.0 + 0.99 ** (1.0 / count)) / 2.0)
    assert -0.1 < population(name).stop_for(count) - normal < 0.45
