"""Every style of the lower and stretch blocks on the invented bodies, closed by another code.

The girths are held against measure and ease as written, not against what the draft promises.
"""

from functools import cache
from typing import Any

import pytest

from lower_judged import JUDGES
from lower_sheets import CLOTH, lower_bodies
from notchbook.app.drafting import draft
from notchbook.body import MeasureSet

BODIES = dict(lower_bodies())

TROUSERS: list[dict[str, Any]] = [
    {"silhouette": "straight"},
    {"silhouette": "wide"},
    {"silhouette": "shorts"},
    {"silhouette": "culottes"},
    {"waist_drop": "30 mm"},
    {"waist_drop": "60 mm"},
    {"front_shape": "flat"},
    {"inseam_stretch": 0.0},
    {"inseam_stretch": 10.0},
    {"crotch_limits": "wide"},
    {"length": "calf"},
    {"length": "knee"},
]

SKIRTS: list[tuple[str, dict[str, Any]]] = [
    ("skirt", {"flare": 6.0}),
    ("skirt", {"hem_girth": "5/4 hip"}),
    ("circle_skirt", {"fullness": "full", "panels": "four"}),
    ("circle_skirt", {"fullness": "three_quarter", "panels": "two"}),
    ("circle_skirt", {"fullness": "quarter"}),
    ("gored_skirt", {"gores": 4}),
    ("gored_skirt", {"gores": 8, "hem_girth": "2 hip"}),
    ("gored_skirt", {"gores": 12}),
]

STRETCH: list[tuple[str, dict[str, Any]]] = [
    ("stretch_torso", {"sleeve": "none"}),
    ("stretch_torso", {"sleeve": "long"}),
    ("stretch_torso", {"sleeve": "three_quarter", "neck": "scoop"}),
    ("stretch_torso", {"length": "hip"}),
    ("stretch_torso", {"fit": "fitted", "sleeve": "long"}),
    ("bodysuit", {"leg": "high"}),
    ("bodysuit", {"leg": "low"}),
    ("bodysuit", {"use": "dance", "sleeve": "long", "neck": "crew", "back": "high"}),
    ("leggings", {"side_seam": True}),
]


@cache
def body(name: str) -> MeasureSet:
    return BODIES[name]


def not_closed(block: str, name: str, settings: dict[str, Any]) -> tuple[str, ...]:
    return JUDGES[block](draft(block, body(name), settings)).open


def ids(one: tuple[str, dict[str, Any]]) -> str:
    return f"{one[0]} {' '.join(map(str, one[1].values()))}"


@pytest.mark.parametrize("settings", TROUSERS, ids=lambda one: " ".join(map(str, one.values())))
@pytest.mark.parametrize("name", ["medium-92", "plus-128", "man-100"])
def test_trousers_of_every_style_close(settings: dict[str, Any], name: str) -> None:
    assert not_closed("trousers", name, settings) == ()


@pytest.mark.parametrize("style", SKIRTS, ids=ids)
@pytest.mark.parametrize("name", ["small-80", "plus-128", "child-116"])
def test_skirts_of_every_style_close(style: tuple[str, dict[str, Any]], name: str) -> None:
    assert not_closed(style[0], name, style[1]) == ()


@pytest.mark.parametrize("style", STRETCH, ids=ids)
@pytest.mark.parametrize("name", ["medium-92", "plus-128", "man-100", "child-116"])
def test_stretch_blocks_of_every_style_close(style: tuple[str, dict[str, Any]], name: str) -> None:
    assert not_closed(style[0], name, CLOTH | style[1]) == ()
