"""Recipes at random that once broke the program, made as short as they can be: they run, or stop in words.

Each file in tests/integration/kept_recipes holds the recipe, the body, and what was told when it broke. They
were found and kept by `benchmarks/survey_recipes.py --keep FOLDER`.
"""

import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from notchbook.app.examining import examine
from notchbook.body import set_from_data
from notchbook.errors import catalogue
from notchbook.pattern.names import is_name
from notchbook.recipe import Replay, recipe_from_data, replay
from random_recipes.judging import untold

FOLDER = Path(__file__).parents[1] / "kept_recipes"

KEPT = sorted(path.stem for path in FOLDER.glob("*.json"))

REFUSED = {
    "seam_square_to_the_grain_tapered": "taper-too-much",
    "side_widened_below_a_yoke": "run-across-pieces",
}
"""Those that cannot be done, and how that is said; the others run to their end."""


@cache
def kept(name: str) -> tuple[str, Replay]:
    data: dict[str, Any] = json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    return data["told"], replay(recipe_from_data(data["recipe"]), set_from_data(data["measures"]))


@pytest.mark.parametrize("name", KEPT)
def test_it_runs_or_is_refused_in_words(name: str) -> None:
    told, run = kept(name)
    assert told
    stopped = "" if run.suspended is None else run.suspended.error.code
    assert stopped == REFUSED.get(name, "")
    assert stopped == "" or stopped in catalogue()


@pytest.mark.parametrize("name", KEPT)
def test_no_outline_crosses_untold_and_every_check_can_be_made(name: str) -> None:
    _, run = kept(name)
    assert untold(run) == ()
    assert examine(run, cut=False).broken == ()
    assert [one for one in run.pattern.index if not is_name(one)] == []


def test_the_folds_of_pleats_are_on_the_lines_as_they_are_called_now() -> None:
    for name in ("waist_faced_above_a_line_through_pleats", "waist_faced_below_pleats_cut_by_a_dart"):
        _, run = kept(name)
        folds = [
            (piece, fold) for piece in run.pattern.pieces.values() for fold in piece.intakes if fold.is_folded
        ]
        assert folds
        for piece, fold in folds:
            mouth = piece.edge(fold.first_leg).path.start
            assert piece.line(fold.first_line).path.start.distance_to(mouth) < 0.01
