"""A jacket of an invented body: block, sleeve, stand, lapel and lining, as a studio would put it together."""

from functools import cache
from typing import Any

from notchbook.app.drafting import draft_recipe
from notchbook.body import MeasureSet
from notchbook.recipe import Recipe, Replay, add_step, replay
from upper_sheets import bodies

BODICE = {"bust_dart": "side", "length": "hip", "contour": "none", "back_shoulder": "ease"}
CENTER = [{"center": "bodice.front/center_front", "top": "bodice.front/neck_pit"}]
STAND = {"centers": CENTER, "facing": "none", "width": "25 mm", "number": 3, "first": "20 cm"}
LAPEL_NECK = [
    {"edge": "stand.front/lap_top", "starts_at": "stand.front/lap_top_outer"},
    {"edge": "bodice.front/neck", "starts_at": "bodice.front/neck_pit"},
    {"edge": "bodice.back/neck", "starts_at": "bodice.back/side_neck_point"},
]
TWO_PIECES = ("tailored.top_sleeve", "tailored.under_sleeve")


def jacket_recipe(measures: MeasureSet, silhouette: str, sleeve: str, lapel: str) -> Recipe:
    """The outer pieces; ``sleeve`` of one or two pieces, ``lapel`` the step that makes it."""
    recipe = draft_recipe("bodice", measures, {**BODICE, "silhouette": silhouette})
    cloth = {"fabric": "tailored_jacket", "upper_arm_ease": "70 mm"}
    recipe = add_step(recipe, "sleeve", cloth, base=measures)
    if sleeve == "two":
        recipe = add_step(recipe, "two_piece_sleeve", {}, base=measures, slug="tailored")
    recipe = add_step(recipe, "button_stand", STAND, base=measures, slug="stand")
    asked = {"neck": LAPEL_NECK, "edge": "stand.front/lap", "breaks": "17 cm"}
    return add_step(recipe, lapel, asked, base=measures, slug="collar")


def lining_asked(sleeve: str = "two", **more: Any) -> dict[str, Any]:
    """The parameters of its lining."""
    sleeves = TWO_PIECES if sleeve == "two" else ("sleeve.sleeve",)
    armholes = [
        {"edge": f"bodice.{side}/armhole", "underarm": f"bodice.{side}/underarm"}
        for side in ("front", "back")
    ]
    return {
        "pieces": ["bodice.front", "bodice.back", *sleeves],
        "facings": ["collar.facing/edge"],
        "centers": ["bodice.back/center_back"],
        "armholes": armholes,
        "caught": ["bodice.back/neck"],
        "hems": ["bodice.front/hem", "bodice.back/hem", "sleeve.sleeve/hem"],
        **more,
    }


def measures_of(name: str) -> MeasureSet:
    """An invented body."""
    return next(made for known, _, made in bodies() if known == name)


@cache
def lined_jacket(
    name: str = "medium-92", silhouette: str = "jacket", sleeve: str = "two", lapel: str = "notched_lapel"
) -> Replay:
    """The jacket with its lining."""
    return lined(measures_of(name), silhouette, sleeve, lapel)


def lined(
    measures: MeasureSet,
    silhouette: str = "jacket",
    sleeve: str = "two",
    lapel: str = "notched_lapel",
    **more: Any,
) -> Replay:
    """The same for any body and with other parameters of the lining; it may be suspended."""
    recipe = jacket_recipe(measures, silhouette, sleeve, lapel)
    return replay(add_step(recipe, "lining", lining_asked(sleeve, **more), base=measures), measures)
