"""Recipes and bodies for the tests of blocks and steps. Forms are invented, women surveyed."""

import csv
from pathlib import Path
from typing import Any

from notchbook.body import MeasureSet
from notchbook.pattern import Pattern
from notchbook.recipe import Recipe, Replay, add_step, replay

FORM_A = MeasureSet.from_mm("Form A", {"waist_girth": 680.0, "hip_girth": 940.0, "hip_depth": 206.0})
"""The base measures of the tests: an invented dress form."""

SURVEY = Path(__file__).parents[1] / "reference" / "skirt" / "survey_women.csv"

FRONT, BACK = "skirt.front", "skirt.back"
YOKE_DEPTH = "4/5 hip_depth"


def body(waist: float, hip: float, hip_depth: float, **more: float) -> MeasureSet:
    """A body of these girths, mm."""
    values = {"waist_girth": waist, "hip_girth": hip, "hip_depth": hip_depth, **more}
    return MeasureSet.from_mm("Body", values)


def survey_women() -> list[MeasureSet]:
    """Fifty surveyed women; see SOURCES.md beside the file."""
    with SURVEY.open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    return [
        MeasureSet.from_mm(row["id"], {key: float(text) for key, text in row.items() if key != "id"})
        for row in rows
    ]


def place(edge: str, from_point: str, distance: str, **more: Any) -> dict[str, Any]:
    """The parameters of a place."""
    return {"edge": edge, "from_point": from_point, "distance": distance, **more}


def yoke_line(piece: str, center: str, depth: str = YOKE_DEPTH) -> dict[str, Any]:
    """A level line from the side to the center of a skirt panel."""
    return {
        "start": place(f"{piece}/side_seam", f"{piece}/waist_side", depth),
        "end": place(f"{piece}/{center}", f"{piece}/waist_center", depth),
    }


def with_steps(recipe: Recipe, *steps: tuple[str, str, dict[str, Any]], base: MeasureSet = FORM_A) -> Recipe:
    """The recipe with (operation, slug, parameters) added one after the other."""
    for operation, slug, parameters in steps:
        recipe = add_step(recipe, operation, parameters, base=base, slug=slug)
    return recipe


def auto_skirt(base: MeasureSet = FORM_A, **parameters: Any) -> Recipe:
    """The block alone, what is not said left to it."""
    return add_step(Recipe("Straight skirt"), "skirt", parameters, base=base)


def skirt_recipe(base: MeasureSet = FORM_A, **parameters: Any) -> Recipe:
    """The block alone with one dart in front, by whose name the steps below call it."""
    return auto_skirt(base, **{"front_darts": 1, **parameters})


FLARE = (
    "dart_to_flare",
    "flare",
    {"intake": f"{FRONT}/waist_dart", "hem": f"{FRONT}/hem", "still": f"{FRONT}/center_front"},
)
YOKE = (
    "cut_style_line",
    "yoke",
    {"lines": [yoke_line(FRONT, "center_front"), yoke_line(BACK, "center_back")]},
)
WHOLE_BACK = (
    "join_pieces",
    "whole_back",
    {
        "first_edge": "yoke.back_below/style_line",
        "second_edge": "yoke.back_above/style_line",
        "word": "back",
        "title": "Back",
    },
)
LONGER = ("change_length", "longer", {"hems": [f"{FRONT}/hem", f"{BACK}/hem"], "amount": "5 cm"})
VENT = ("vent", "vent", {"edge": f"{BACK}/center_back", "hem_end": f"{BACK}/hem_center"})
ZIP = ("zip_opening", "zip", {"edge": f"{BACK}/center_back", "from_point": f"{BACK}/waist_center"})
WAISTBAND = (
    "waistband",
    "waistband",
    {
        "edges": [
            {"edge": f"{BACK}/waist", "starts_at": f"{BACK}/waist_center"},
            {"edge": f"{FRONT}/waist", "starts_at": f"{FRONT}/waist_side"},
        ]
    },
)
FACING = (
    "waist_facing",
    "waist_facing",
    {
        "edges": [
            {"edge": f"{FRONT}/waist", "center": f"{FRONT}/waist_center"},
            {"edge": f"{BACK}/waist", "center": f"{BACK}/waist_center"},
        ]
    },
)


def yoke_recipe(base: MeasureSet = FORM_A) -> Recipe:
    """A flared skirt with a front yoke: every kind of step, the back cut and joined again."""
    recipe = add_step(Recipe("Yoke skirt"), "skirt", {"front_darts": 1}, base=base)
    steps = (FLARE, YOKE, WHOLE_BACK, LONGER, VENT, ZIP, WAISTBAND, FACING)
    return with_steps(recipe, *steps, base=base)


def run(recipe: Recipe, measures: MeasureSet = FORM_A) -> Replay:
    """The recipe on a body; the test fails when it stops."""
    done = replay(recipe, measures)
    assert done.suspended is None, f"{done.suspended.step}: {done.suspended.error}"
    return done


def drafted(measures: MeasureSet = FORM_A, **parameters: Any) -> Pattern:
    """The straight skirt block on a body, its own base."""
    return run(auto_skirt(measures, **parameters), measures).pattern


def stopped(recipe: Recipe, measures: MeasureSet = FORM_A) -> str:
    """The code with which the recipe stops; empty when it does not."""
    done = replay(recipe, measures)
    return "" if done.suspended is None else done.suspended.error.code
