"""Every size of the published tables and every body at the edges, closed by another code.

Sources of the sizes: tests/reference/bodice/SOURCES.md; of what the tables lack: tests/reference/trousers.
"""

from functools import cache

import pytest

from lower_judged import JUDGES
from lower_tables import lower_extremes, lower_tables
from make_lower_bodies import STRETCH_KEYS
from notchbook.body import MeasureSet
from notchbook.errors import DraftRefused
from survey_lower import LINE, drafted

BEYOND = ("beyond", "rise 50")
"""Words in the names of bodies that may be refused: no draft has such a crotch."""


@cache
def sizes() -> dict[str, MeasureSet]:
    return {body.name: body.measures for body in lower_tables(STRETCH_KEYS)}


@cache
def edges() -> dict[str, MeasureSet]:
    return {body.name: body.measures for body in lower_extremes()}


def not_closed(line: str, measures: MeasureSet) -> tuple[str, ...]:
    run, _ = drafted(LINE[line], measures)
    return JUDGES[LINE[line].block](run).open


@pytest.mark.parametrize("name", sizes())
def test_the_trousers_of_a_size_close(name: str) -> None:
    assert not_closed("trousers", sizes()[name]) == ()


@pytest.mark.parametrize("line", ["skirt", "circle skirt, half", "gored skirt"])
def test_the_skirts_of_every_other_size_close(line: str) -> None:
    chosen = list(sizes().items())[1::2]
    assert {name: found for name, measures in chosen if (found := not_closed(line, measures))} == {}


@pytest.mark.parametrize("line", ["stretch_torso 50/50", "bodysuit 50/50", "leggings 50/50"])
def test_the_stretch_blocks_of_every_other_size_close(line: str) -> None:
    chosen = list(sizes().items())[::2]
    assert {name: found for name, measures in chosen if (found := not_closed(line, measures))} == {}


@pytest.mark.parametrize("name", edges())
def test_the_trousers_of_a_body_at_the_edge_close_or_are_refused_in_words(name: str) -> None:
    try:
        found = not_closed("trousers", edges()[name])
    except DraftRefused as refused:
        assert refused.text()
        assert any(word in name for word in BEYOND), refused.code
        return
    assert found == ()


@pytest.mark.parametrize("name", edges())
def test_the_skirts_of_a_body_at_the_edge_close(name: str) -> None:
    for line in ("skirt", "circle skirt, half", "gored skirt"):
        assert not_closed(line, edges()[name]) == (), line
