"""Recipes at random on bodies at random: they reach their end or stop in words, and nothing crosses untold.

The bodies are sizes of published tables and rows of data/survey/ansur (SOURCE.md); outlines are judged by
shapely. A few thousand runs of this are made by `make survey` (docs/survey/recipes.md).
"""

import json
from dataclasses import replace
from functools import cache
from random import Random

import pytest

from notchbook.errors import catalogue
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Piece
from notchbook.recipe import operation_sources, replay
from random_recipes import judging
from random_recipes.bodies import base_body, some_group
from random_recipes.trials import Outcome, garment_of, outcome
from random_recipes.writing import GARMENTS, MOST, PROPOSERS, written
from survey_recipes_page import page, summary

SEEDS = tuple(range(4 * len(GARMENTS), 6 * len(GARMENTS)))
"""Two recipes of each garment, each run on one other body too."""

LEAST_REACHED = 0.7
"""Share of runs that must reach the end of their recipe: the project's own goal."""


@cache
def outcomes() -> tuple[Outcome, ...]:
    return tuple(outcome(seed, others=1) for seed in SEEDS)


def test_every_step_that_is_no_block_can_be_proposed() -> None:
    blocks = {name for name, source in operation_sources().items() if ".blocks." in source}
    assert set(PROPOSERS) == {name for name in operation_sources() if name not in blocks} - OF_OTHERS


OF_OTHERS = {name for name, source in operation_sources().items() if not source.startswith("notchbook.")}
"""Steps of other packages, where some are installed."""


def test_nothing_breaks_and_no_outline_crosses_itself_untold() -> None:
    faults = [
        (fault.seed, fault.told, json.dumps(fault.recipe)) for one in outcomes() for fault in one.faults
    ]
    assert faults == []


def test_most_recipes_reach_their_end_on_another_body() -> None:
    ends = [end for one in outcomes() for end in one.ends]
    assert len(ends) == len(SEEDS)
    assert ends.count("") >= LEAST_REACHED * len(ends)


def test_what_stops_is_said_with_a_code() -> None:
    codes = {step.refused for one in outcomes() for step in one.asked if step.refused}
    codes |= {end.partition(": ")[2] for one in outcomes() for end in one.ends if end}
    assert codes <= set(catalogue())


def test_recipes_are_long_and_varied() -> None:
    """Else the above would show little: more than half of all kinds of steps ran, up to twelve together."""
    ran = {step.operation for one in outcomes() for step in one.asked if not step.refused}
    assert len(ran) > len(PROPOSERS) / 2
    assert max(one.steps for one in outcomes()) == MOST
    assert {one.garment for one in outcomes()} == set(GARMENTS)


def test_the_same_seed_writes_the_same_recipe() -> None:
    recipes = []
    for _ in range(2):
        chance = Random(SEEDS[0])
        made = written(garment_of(SEEDS[0]), base_body(chance, some_group(chance)), chance)
        assert made is not None
        recipes.append(made.recipe)
    assert recipes[0] == recipes[1]


def test_a_bow_tie_is_seen_to_cross() -> None:
    corners = [Point(0.0, 0.0), Point(100.0, 100.0), Point(100.0, 0.0), Point(0.0, 100.0)]
    bow = Piece("a.front", "Front", tuple(_edge(corners, index) for index in range(4)))
    square = replace(bow, outline=tuple(_edge([corners[i] for i in (0, 2, 1, 3)], i) for i in range(4)))
    chance = Random(SEEDS[0])
    made = written(garment_of(SEEDS[0]), base_body(chance, some_group(chance)), chance)
    assert made is not None
    pattern = made.run.pattern
    assert judging.crossing(pattern.with_pieces(bow)) == ("a.front",)
    assert judging.crossing(pattern.with_pieces(square)) == ()


def _edge(corners: list[Point], index: int) -> Edge:
    start, end = corners[index], corners[(index + 1) % 4]
    names = f"a.front/p{index}", f"a.front/p{(index + 1) % 4}"
    return Edge(f"a.front/e{index}", Path.line(start, end), *names)


def test_a_crossing_that_no_check_tells_is_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    chance = Random(SEEDS[0])
    made = written(garment_of(SEEDS[0]), base_body(chance, some_group(chance)), chance)
    assert made is not None
    run = replay(made.recipe, made.run.measures)
    assert judging.untold(run) == ()
    monkeypatch.setattr(judging, "crossing", lambda pattern: tuple(pattern.pieces)[:1])
    assert judging.untold(run) == tuple(run.pattern.pieces)[:1]


def test_the_page_tells_share_and_faults() -> None:
    text = page(summary(outcomes(), 1.0, 1))
    assert f"Of {len(SEEDS)} replays on another body" in text
    assert all(f"| {name} |" in text for name in (*PROPOSERS, *GARMENTS))
