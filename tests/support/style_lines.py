"""Recipes with yokes, seams under the bust and princess seams for the tests. Bodies are invented."""

from typing import Any

from notchbook.body import MeasureSet
from notchbook.pattern import Pattern, pattern_to_data
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.bodice_bodies import bodice_recipe, body
from support.skirt_judge import Judge
from support.yoke_skirt import skirt_recipe

FRONT, BACK = "bodice.front", "bodice.back"
SKIRT_FRONT, SKIRT_BACK = "skirt.front", "skirt.back"

WOMAN = body()
SMALL = body(
    bust_girth=800.0,
    waist_girth=630.0,
    front_waist_length=412.0,
    neck_to_bust_point=243.0,
    bust_point_width=168.0,
    center_front_length=338.0,
    across_back=325.0,
    across_chest=302.0,
    neck_base_girth=350.0,
)
"""A woman of bust 80; invented."""


def place(edge: str, from_point: str, amount: str | float, **more: Any) -> dict[str, Any]:
    """A place on an edge: a distance in words, or a share."""
    measure = "distance" if isinstance(amount, str) else "fraction"
    return {"edge": edge, "from_point": from_point, measure: amount, **more}


def princess(
    start: dict[str, Any] | None = None, bust_dart: str | None = f"{FRONT}/bust_dart", **more: Any
) -> dict[str, Any]:
    """The parameters of a princess seam on the front; from the middle of the armhole unless a place is
    given."""
    return {
        "center": f"{FRONT}/center_front",
        "start": [start or place(f"{FRONT}/armhole", f"{FRONT}/shoulder_point", 0.5)],
        "waist_dart": f"{FRONT}/waist_dart",
        "bust_point": f"{FRONT}/bust_point",
        "closed_dart": bust_dart,
        **more,
    }


FROM_SHOULDER = place(f"{FRONT}/shoulder", f"{FRONT}/side_neck_point", 0.5)

BACK_PRINCESS = {
    "center": f"{BACK}/center_back",
    "upper_dart": f"{BACK}/shoulder_dart",
    "waist_dart": f"{BACK}/waist_dart_center",
}


def hip_yoke(rest: str = "none", side: str = "11 cm", center: str = "13 cm") -> dict[str, Any]:
    """A yoke round the hip of the skirt, its darts closed into it."""
    darts = {
        SKIRT_FRONT: ("waist_dart",),
        SKIRT_BACK: ("waist_dart_center", "waist_dart_side"),
    }
    middles = {SKIRT_FRONT: "center_front", SKIRT_BACK: "center_back"}
    return {
        "lines": [
            {
                "start": place(f"{panel}/side_seam", f"{panel}/waist_side", side),
                "end": place(f"{panel}/{middles[panel]}", f"{panel}/waist_center", center),
                "darts": [{"intake": f"{panel}/{dart}", "rest": rest} for dart in darts[panel]],
            }
            for panel in (SKIRT_FRONT, SKIRT_BACK)
        ]
    }


EMPIRE = {
    "first_role": "below",
    "second_role": "above",
    "first_title": "midriff",
    "lines": [
        {
            "start": place(
                f"{FRONT}/side_seam", f"{FRONT}/waist_side", "7 cm", part=f"{FRONT}/side_seam/below"
            ),
            "end": place(f"{FRONT}/center_front", f"{FRONT}/waist_center", "8 cm"),
            "darts": [{"intake": f"{FRONT}/waist_dart", "rest": "stays"}],
        },
        {
            "start": place(f"{BACK}/side_seam", f"{BACK}/waist_side", "7 cm"),
            "end": place(f"{BACK}/center_back", f"{BACK}/waist_center", "7 cm"),
            "darts": [
                {"intake": f"{BACK}/waist_dart_center", "rest": "stays"},
                {"intake": f"{BACK}/waist_dart_side", "rest": "stays"},
            ],
        },
    ],
}
"""A seam under the bust, the waist darts closed below it."""


def bodice_with(
    *steps: tuple[str, str, dict[str, Any]], measures: MeasureSet = WOMAN, **block: Any
) -> Replay:
    """The bodice with one waist dart in front, and steps (operation, slug, parameters) after it."""
    recipe = bodice_recipe(measures, **{"front_darts": 1, "back_darts": 2, **block})
    return _run(recipe, steps, measures)


def skirt_with(*steps: tuple[str, str, dict[str, Any]], measures: MeasureSet, **block: Any) -> Replay:
    """The skirt with one dart in front and two behind, and steps after it."""
    recipe = skirt_recipe(measures, **{"front_darts": 1, "back_darts": 2, **block})
    return _run(recipe, steps, measures)


def _run(recipe: Recipe, steps: tuple[tuple[str, str, dict[str, Any]], ...], measures: MeasureSet) -> Replay:
    for operation, slug, parameters in steps:
        recipe = add_step(recipe, operation, parameters, base=measures, slug=slug)
    return replay(recipe, measures)


def good(done: Replay) -> Pattern:
    """The pattern of a run that did not stop."""
    assert done.suspended is None, f"{done.suspended.step}: {done.suspended.error.text()}"
    return done.pattern


def code(done: Replay) -> str:
    """The code with which a run stopped, its words looked at; empty when it did not."""
    if done.suspended is None:
        return ""
    assert done.suspended.error.text()
    return done.suspended.error.code


def judge(pattern: Pattern) -> Judge:
    """The outside judge of the pattern's stored data."""
    return Judge(pattern_to_data(pattern))
