"""After each kind of step every length that a draft promised, every seam and every dart is judged anew.

A step may change what it is meant to change, and nothing else: what each is meant to change was written down
here by hand, from what the step is for (common practice, no source), not from what came out.
"""

from collections.abc import Mapping
from functools import cache
from typing import Any

import pytest

from notchbook.app.drafting import trial_recipe
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import MeasureSet, set_from_data
from notchbook.checks import Closure, Subject, closures
from notchbook.pattern.names import last_word
from notchbook.recipe import Replay, add_step, replay
from step_pictures import rows
from upper_sheets import bodies

MEANT = {
    "change_length": {"back_waist_length", "center_front_length", "front_waist_length"},
    "reshape_edge": {"hip_girth"},
    "change_neckline": {
        "neck_base_girth",
        "shoulder_length",
        "back_waist_length",
        "center_front_length",
        "front_waist_length",
        "neck_to_bust_point",
        "scye_depth",
        "across_chest",
        "upper_bust_girth",
    },
    "change_armhole": {"shoulder_length", "scye_depth", "across_back", "across_chest", "upper_bust_girth"},
    "curve_hem": {"skirt_length"},
    "slash_and_spread": {"hip_girth"},
    "pleats": {"hip_girth"},
    "dart_to_flare": {"hip_girth"},
    "gather_edge": {"upper_arm_girth", "elbow_girth", "arm_length"},
    "cowl": {"bust_girth", "across_chest", "center_front_length", "bust_point_width"},
    "transfer_dart": {"across_chest", "upper_bust_girth"},
    "convert_dart": {"front_waist_length"},
    "raglan_sleeve": {"front_waist_length"},
    "kimono_sleeve": {"scye_depth"},
    "true_junction": {"neck_base_girth", "shoulder_length", "front_waist_length", "center_front_length"},
}
"""By step, what it may make longer or shorter. A neckline or armhole that was cut lower carries the points
off which lengths are measured; a dart that opens at another edge crosses other levels, and sewn to a point
short of the bust point it takes less of them."""

ROUNDED: Mapping[str, Mapping[str, float]] = {
    "change_length": {"bust_girth": 1.0},
    "princess_seam": {"bust_girth": 6.0, "upper_bust_girth": 4.0, "across_chest": 1.0},
}
"""What comes of drawing a line fair across a cut, mm of a whole girth at most: the side seam over a slash,
the panels of a princess seam round over the bust."""

CORNERS: Mapping[str, Mapping[str, float]] = {
    "gores": {"front_gore_seam_1: end": 2.0},
}
"""The hem of gores turns a little at their seams: degrees at most."""

TRACED = {
    "facing",
    "all_in_one_facing",
    "lining",
    "interfacing",
    "interlining",
    "patch_pocket",
    "pocket_bag",
    "slant_pocket",
    "welt_pocket",
    "belt_loops",
    "button_loops",
    "button_stand",
    "contoured_waistband",
    "elastic_casing",
    "fly",
    "hem_slit",
    "strap",
    "zip_opening",
    "binding",
    "flat_collar",
    "hood",
    "roll_collar",
    "shirt_collar",
    "stand_collar",
}
"""Pieces beside the shell: what they leave alone on one body they leave alone on all."""

BASE = "pictures"
BODIES = (BASE, "small-80", "large-116")


@cache
def measures(name: str) -> MeasureSet:
    """The invented body of the pictures, or one of the sheets."""
    if name == BASE:
        return set_from_data(BODY_OF_PICTURES)
    return {known: made for known, _, made in bodies()}[name]


@cache
def drafted(block: str, name: str, settings: tuple[tuple[str, Any], ...] = ()) -> Replay:
    """The block alone on a body, drafted once for all its rows."""
    return replay(trial_recipe(block, measures(name), dict(settings)), measures(name))


def before_and_after(row: dict[str, Any], name: str) -> tuple[Replay, Replay] | None:
    """A row of the step pictures, before and after its step; None where the body refuses its numbers."""
    body = measures(name)
    steps = [*row.get("before", ()), row]
    runs = [drafted(row["block"], name, tuple(sorted(row.get("settings", {}).items())))]
    for step in steps:
        recipe = add_step(
            runs[-1].recipe, step["operation"], step["parameters"], base=body, slug=step.get("slug", "")
        )
        runs.append(replay(recipe, body, runs[-1]))
        if runs[-1].suspended is not None:
            return None
    return runs[-2], runs[-1]


def judged(run: Replay) -> dict[tuple[str, str], Closure]:
    """Every closure of a run, as if it were a block: nothing is left out because a style may change it."""
    found = closures(Subject(run.pattern, None, run.expectations))
    return {(one.name, one.kind): one for one in found}


def newly_off(before: Replay, after: Replay) -> dict[str, float]:
    """What agreed before the step, or is new, and does not agree after it: by how much, mm or degrees."""
    known = judged(before)
    return {
        last_word(name): one.misfit
        for (name, kind), one in judged(after).items()
        if not one.agrees and ((name, kind) not in known or known[name, kind].agrees)
    }


def unmeant(operation: str, off: Mapping[str, float]) -> dict[str, float]:
    """What a step changed that it is not meant to change."""
    allowed = {**ROUNDED.get(operation, {}), **CORNERS.get(operation, {})}
    return {
        word: by
        for word, by in off.items()
        if word not in MEANT.get(operation, ()) and abs(by) > allowed.get(word, 0.0)
    }


@pytest.mark.parametrize("name", BODIES)
def test_a_step_changes_what_it_is_meant_to_change_and_nothing_else(name: str) -> None:
    ran, wrong = 0, {}
    chosen = [row for row in rows() if name == BASE or row["operation"] not in TRACED]
    for row in chosen:
        if (runs := before_and_after(row, name)) is None:
            assert name != BASE, row["operation"]
            continue
        ran += 1
        if found := unmeant(row["operation"], newly_off(*runs)):
            wrong[row["operation"]] = found
    assert wrong == {}
    assert ran >= len(chosen) * 3 // 4


def test_every_step_that_may_change_a_length_does() -> None:
    """A list of what is meant that nothing comes of would hide a fault."""
    for row in rows():
        meant = MEANT.get(row["operation"], set())
        if meant:
            runs = before_and_after(row, BASE)
            assert runs is not None
            assert meant & newly_off(*runs).keys(), row["operation"]


def test_a_girth_that_a_step_lost_is_told() -> None:
    run = drafted("skirt", BASE)
    moved = next(one for one in run.expectations if one.name == "skirt/hip_girth")
    assert unmeant("unfold", {"hip_girth": 0.2}) == {"hip_girth": 0.2}
    assert unmeant("princess_seam", {"bust_girth": -7.0}) == {"bust_girth": -7.0}
    assert judged(run)[moved.name, "length"].agrees
