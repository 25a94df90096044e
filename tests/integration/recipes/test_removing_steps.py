"""Taking a step out makes exactly its dependants lost, and heals where these are taken out too.

Who depends on whom is told by the ledger of names alone (tests/support/dependants.py), not by running again.
"""

from functools import cache
from pathlib import Path
from random import Random

import pytest

from notchbook.recipe import Replay, StepRecord, recipe_from_json, replay
from random_recipes.bodies import base_body, some_group
from random_recipes.trials import garment_of
from random_recipes.writing import written
from support.dependants import dependants, lost_without, wanted_without
from upper_sheets import bodies

FOLDER = Path(__file__).parents[1] / "four_styles"

STYLES = ("darted_shell", "princess_dress", "yoke_skirt_with_pleats", "bias_slip")

SEEDS = (2, 8, 9, 13)
"""Recipes at random: a bodice under its sleeve taken away, bands and facings hung on what goes."""

BY_HAND: tuple[tuple[str, str, set[str]], ...] = (
    ("yoke_skirt_with_pleats", "cut_style_line-1", {"pleats-1"}),
    ("princess_dress", "princess_seam-2", set()),
    ("princess_dress", "change_neckline-1", set()),
    ("darted_shell", "transfer_dart-1", {"shorten_dart-1"}),
)
"""Read from the four styles by hand: pleats in the edge below the yoke; an armhole is named whole, and so its
facing outlives the panels; nothing hangs on a neckline that only moved; a dart moved is then shortened."""


@cache
def style(name: str) -> Replay:
    recipe = recipe_from_json((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    known = {label: made for label, _, made in bodies()}
    return replay(recipe, known["medium-92"])


@cache
def at_random(seed: int) -> Replay:
    chance = Random(seed)
    base = base_body(chance, some_group(chance))
    made = written(garment_of(seed), base, chance)
    assert made is not None
    return made.run


def records(run: Replay) -> tuple[StepRecord, ...]:
    return tuple(state.record for state in run.states)


def require_exact(run: Replay) -> None:
    assert run.suspended is None
    for record in records(run):
        lost, refused = lost_without(run, record.id)
        assert set(lost) == wanted_without(run, record.id, refused), record.id


@pytest.mark.parametrize("name", STYLES)
def test_exactly_the_dependants_of_a_step_are_lost_in_a_style(name: str) -> None:
    require_exact(style(name))


@pytest.mark.parametrize("seed", SEEDS)
def test_exactly_the_dependants_of_a_step_are_lost_at_random(seed: int) -> None:
    require_exact(at_random(seed))


@pytest.mark.parametrize(("name", "removed", "lost"), BY_HAND)
def test_the_dependants_are_those_that_a_hand_would_name(name: str, removed: str, lost: set[str]) -> None:
    run = style(name)
    assert set(dependants(run, removed)) == lost
    assert set(lost_without(run, removed)[0]) == lost


def test_a_name_that_hangs_on_nothing_is_seen() -> None:
    """The judge itself can fail: a step that is said to hang on another, and does not, is told."""
    run = style("bias_slip")
    lost, refused = lost_without(run, records(run)[-1].id)
    assert (lost, refused) == ((), ())
    assert set(dependants(run, records(run)[0].id)) == {record.id for record in records(run)[1:]}
