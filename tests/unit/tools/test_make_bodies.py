"""The files of bodies that are made from the survey are read as what they are."""

from pathlib import Path

import pytest

from make_bodies import bodies, write_as_taken
from notchbook.body import BodyRow, read_bodies
from notchbook.body.population import population
from survey_rows import rows, survey_set


@pytest.fixture(scope="module")
def read(tmp_path_factory: pytest.TempPathFactory) -> list[BodyRow]:
    """The file as taken, read back; made once, for it is long."""
    path: Path = tmp_path_factory.mktemp("bodies") / "bodies-as-taken.csv"
    assert write_as_taken(path) == len(rows("women")) + len(rows("men"))
    return list(read_bodies(path))


def test_the_file_as_taken_says_what_it_is_and_is_judged_so(read: list[BodyRow]) -> None:
    assert not [row for row in read if row.error]
    first = read[0].measures
    assert first is not None
    assert (first.population, first.taken_as, first.waist_level) == ("women", "survey", "navel")
    assert dict(first.values) == dict(survey_set(rows("women")[0], "women").values)
    last = read[-1].measures
    assert last is not None
    assert last.population == "men"
    sets = [row.measures for row in read[:300] if row.measures]
    people = population("women")
    worst = [max(abs(score.z) for score in record) for record in people.scores_of_many(sets)]
    assert sum(z >= people.stop for z in worst) <= 9, "3 in 100 would be many"


def test_the_drop_is_written_where_the_navel_is_below(read: list[BodyRow]) -> None:
    natural = {body.id: body for body in bodies("natural")}
    navel = {body.id: body for body in bodies("navel")}
    for row in read:
        assert row.measures is not None
        meant = natural[row.id].hip_depth - navel[row.id].hip_depth
        assert row.measures.waist_drop == pytest.approx(max(meant, 0.0), abs=0.051)
