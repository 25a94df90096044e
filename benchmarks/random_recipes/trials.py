"""One recipe at random, written on one body and replayed on others: what came of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from random import Random
from typing import Any, Final

from notchbook.body import MeasureSet, set_to_data
from notchbook.recipe import Recipe, Replay, recipe_to_data, replay
from random_recipes.bodies import base_body, some_group, surveyed
from random_recipes.judging import untold
from random_recipes.shrinking import shrunk
from random_recipes.writing import GARMENTS, Asked, last_words, written

OTHERS: Final = 3
"""Bodies on which a recipe is replayed after it was written."""


@dataclass(frozen=True)
class Fault:
    """What may never come of a recipe: a traceback, or an outline that crosses itself untold. The recipe, as
    short as it can be, and the measures are kept as data, so that it can be run again."""

    seed: int
    told: str
    recipe: Mapping[str, Any]
    measures: Mapping[str, Any]


@dataclass(frozen=True)
class Outcome:
    """What came of one recipe: its garment, its steps, what was tried, where its replays ended (step and
    code; empty at the end of the recipe), and faults."""

    seed: int
    garment: str
    steps: int = 0
    asked: tuple[Asked, ...] = ()
    ends: tuple[str, ...] = ()
    faults: tuple[Fault, ...] = ()


def garment_of(seed: int) -> str:
    """Each garment in turn."""
    return list(GARMENTS)[seed % len(GARMENTS)]


def outcome(seed: int, others: int = OTHERS) -> Outcome:
    """Write a recipe and replay it on other bodies; the same for the same seed."""
    chance, garment = Random(seed), garment_of(seed)
    group = some_group(chance)
    base = base_body(chance, group)
    done = written(garment, base, chance)
    if done is None:
        return Outcome(seed, garment)
    faults = [_fault(seed, done.words, done.broken, base)] if done.broken else []
    faults += _untold(seed, done.run)
    ends = []
    for _ in range(others):
        body = surveyed(chance, group)
        try:
            run = replay(done.recipe, body)
            faults += _untold(seed, run)
        except Exception as error:
            faults.append(_fault(seed, last_words(error), done.recipe, body))
            ends.append("broke")
            continue
        ends.append(_end(run))
    return Outcome(seed, garment, len(done.recipe.steps), done.asked, tuple(ends), tuple(faults))


def _end(run: Replay) -> str:
    """Where a run stopped: the operation and the code of the refusal."""
    if run.suspended is None:
        return ""
    return f"{run.recipe.step(run.suspended.step).operation}: {run.suspended.error.code}"


def _untold(seed: int, run: Replay) -> list[Fault]:
    pieces = untold(run)
    return [_fault(seed, f"crosses itself untold: {pieces[0]}", run.recipe, run.measures)] if pieces else []


def _fault(seed: int, told: str, recipe: Recipe, measures: MeasureSet) -> Fault:
    return Fault(seed, told, recipe_to_data(shrunk(recipe, measures)), set_to_data(measures))
