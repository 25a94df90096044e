"""Every size of the published tables and every body at the edges: drafted, and closed by another code.

Sources of the sizes: tests/reference/bodice/SOURCES.md.
"""

from functools import cache

import pytest

from notchbook.app.curing import draft_taking
from notchbook.app.drafting import draft
from notchbook.body import MeasureSet
from notchbook.errors import DraftRefused
from notchbook.pattern import pattern_to_data
from support.bodice_judge import misses
from support.upper_patterns import wanted_of
from survey_bodice import CURES
from upper_sheets import SETTINGS
from upper_tables import extreme_bodies, table_bodies


@cache
def sizes() -> dict[str, MeasureSet]:
    return {body.name: body.measures for body in table_bodies()}


@cache
def edges() -> dict[str, MeasureSet]:
    return {body.name: body.measures for body in extreme_bodies()}


@pytest.mark.parametrize("name", sizes())
def test_a_size_is_drafted_with_its_sleeve_and_everything_agrees(name: str) -> None:
    run, _ = draft_taking("sleeve", sizes()[name], SETTINGS, CURES)
    assert misses(pattern_to_data(run.pattern), wanted_of(run)) == []


@pytest.mark.parametrize("name", edges())
def test_the_bodice_of_a_body_at_the_edge_is_drafted_and_everything_agrees(name: str) -> None:
    run = draft("bodice", edges()[name])
    assert misses(pattern_to_data(run.pattern), wanted_of(run)) == []


@pytest.mark.parametrize("name", edges())
def test_the_sleeve_of_a_body_at_the_edge_agrees_or_is_refused_for_the_arm(name: str) -> None:
    try:
        run, _ = draft_taking("sleeve", edges()[name], SETTINGS, CURES)
    except DraftRefused as refused:
        assert refused.code.startswith("sleeve-arm"), refused.code
        return
    assert misses(pattern_to_data(run.pattern), wanted_of(run)) == []


def test_the_sizes_are_those_of_the_tables() -> None:
    """EN 13402-3 has 12 classes for women (a statistics package quotes it), ASTM D5585-11e1 12 sizes, the
    Central European table of men 11 from 44 to 64 (read on its page)."""
    counts: dict[str, int] = {}
    for body in table_bodies():
        counts[body.table] = counts.get(body.table, 0) + 1
    assert counts["EN 13402-3 women"] == 12
    assert counts["Misses' straight"] == counts["Misses' curvy"] == 12
    assert counts["german_men"] == 11
    assert len(sizes()) == sum(counts.values())
    busts = [sizes()[f"EN 13402-3 women {cm}"].value("bust_girth") for cm in (76, 100, 104, 128)]
    assert busts == [760.0, 1000.0, 1040.0, 1280.0]
