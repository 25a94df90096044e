"""The outside judge of bodice and sleeve sees what is planted: 0.2 mm, and angles a little over the limit.

Else the closures of the survey could not fail. Faults are planted into the plain data of the pattern.
"""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from notchbook.app.drafting import draft
from support.bodice_judge import ANGLE, LAY_GAP, NOTCH, SIDE_ANGLE, Closure, closures, laid_out, misses
from support.upper_patterns import (
    data_of,
    drafted,
    longer,
    turned,
    wanted_of,
    with_fault,
    with_mark,
    with_place,
)
from upper_sheets import SETTINGS

FAULT = 0.2
"""mm."""

Data = dict[str, Any]
Planted = tuple[str, Callable[[Data], Data], str]


def edge(name: str, change: Callable[[list[list[Any]]], None]) -> Callable[[Data], Data]:
    return lambda data: with_fault(data, name, change)


def lengths() -> list[Planted]:
    """(what is grown, how, the closure that must fail)"""
    grown = {
        "bodice.back/neck": "neck_base_girth",
        "bodice.front/neck": "neck_base_girth",
        "bodice.front/shoulder": "shoulder_length",
        "bodice.back/shoulder/side": "shoulder pair",
        "bodice.back/side_seam": "side_seam pair",
        "bodice.front/side_seam/below": "side_seam pair",
        "bodice.back/bust_line": "bust_girth",
        "bodice.front/bust_line/side": "bust_girth",
        "bodice.front/waist/center": "waist_girth",
        "bodice.back/waist/middle": "waist_girth",
        "bodice.back/center_back": "back_waist_length",
        "bodice.front/center_front": "center_front_length",
        "bodice.back/across_back_line": "across_back",
        "bodice.front/across_chest_line": "across_chest",
        "bodice.front/bust_dart/upper_leg": "bodice.front/bust_dart legs",
        "bodice.back/shoulder_dart/side_leg": "bodice.back/shoulder_dart legs",
        "bodice.front/armhole": "front cap ease",
        "bodice.back/armhole": "back cap ease",
        "sleeve.sleeve/cap_front": "front cap ease",
        "sleeve.sleeve/cap_back": "back cap ease",
        "sleeve.sleeve/front_seam": "sleeve seam pair",
        "sleeve.sleeve/hem": "sleeve hem",
        "sleeve.sleeve/biceps_line": "biceps",
    }
    return [(name, edge(name, longer(FAULT)), closure) for name, closure in grown.items()]


def angles() -> list[Planted]:
    little, side = ANGLE + 0.5, SIDE_ANGLE + 0.5
    found = {
        ("bodice.back/neck", "across side_neck_point"): little,
        ("bodice.front/shoulder", "across shoulder_point"): little,
        ("bodice.back/armhole", "across underarm"): side,
        ("bodice.back/waist/side", "across waist_side"): side,
        ("bodice.back/neck", "back neck square"): little,
        ("bodice.front/waist/center", "front waist square"): little,
        ("bodice.back/waist/middle", "back waist across a dart"): little,
        ("bodice.front/side_seam/below", "front side_seam across a dart"): little,
    }
    return [(name, edge(name, turned(by)), closure) for (name, closure), by in found.items()]


def notches_and_marks() -> list[Planted]:
    def moved_notch(name: str) -> Callable[[Data], Data]:
        return lambda data: with_place(data, name, NOTCH + FAULT)

    point, crown = "bodice.front/bust_point", "sleeve.sleeve/crown"
    return [
        (point, lambda data: with_mark(data, point, FAULT), "neck_to_bust_point"),
        (crown, lambda data: with_mark(data, crown, FAULT), "sleeve length"),
        *(
            (name, moved_notch(name), f"{which} balance_notch from the underarm")
            for which in ("front", "back")
            for name in (f"bodice.{which}/balance_notch", f"sleeve.sleeve/cap_{which}/balance_notch")
        ),
    ]


PLANTED = [*lengths(), *angles(), *notches_and_marks()]


def failed(data: Data) -> set[str]:
    return {one.name for one in closures(data, wanted_of(drafted())) if not one.holds}


def test_nothing_is_found_where_nothing_is_planted() -> None:
    assert misses(data_of(drafted()), wanted_of(drafted())) == []


PLACES = ("side", "underarm", "shoulder", "armhole", "french", "center_front", "waist")


@pytest.mark.parametrize("settings", [{"bodice.bust_dart": place} for place in PLACES], ids=str)
def test_every_place_of_the_bust_dart_closes(settings: dict[str, str]) -> None:
    run = draft("sleeve", drafted().measures, SETTINGS | settings)
    assert misses(data_of(run), wanted_of(run)) == []


@pytest.mark.parametrize("fabric", ["knit", "shirting", "light_woven", "tailored_jacket"])
def test_every_cap_ease_closes(fabric: str) -> None:
    run = draft("sleeve", drafted().measures, {"fabric": fabric})
    assert misses(data_of(run), wanted_of(run)) == []


@pytest.mark.parametrize("planted", PLANTED, ids=lambda one: f"{one[0]}: {one[2]}")
def test_a_planted_fault_is_seen(planted: Planted) -> None:
    _, change, closure = planted
    assert closure in failed(change(data_of(drafted())))


@pytest.mark.parametrize("which", ["front", "back"])
def test_a_cap_that_stands_off_the_armhole_is_seen(which: str) -> None:
    """The lower cap turned about the underarm: at 60 mm it stands off by more than the review allows."""
    degrees = 2.0 * LAY_GAP[which]
    for sign in (1.0, -1.0):
        about = _end_at_underarm(which)
        change = edge(f"sleeve.sleeve/cap_{which}", turned(sign * degrees, about))
        assert f"{which} cap laid in" in failed(change(data_of(drafted())))


def _end_at_underarm(which: str) -> int:
    edges = {e["name"]: e for piece in data_of(drafted())["pieces"] for e in piece["outline"]}
    return 0 if "underarm" in edges[f"sleeve.sleeve/cap_{which}"]["start"] else -1


def test_an_outline_that_crosses_itself_is_seen() -> None:
    data = data_of(drafted())
    crossing = edge("bodice.back/side_seam", turned(40.0))(data)
    assert any("crosses itself" in miss for miss in misses(crossing, wanted_of(drafted())))


def test_what_is_not_a_number_does_not_hold() -> None:
    assert not Closure("nothing", float("nan"), 0.0, 1.0).holds


def test_an_armhole_that_leans_back_over_the_body_is_not_laid_turned_about() -> None:
    x = np.concatenate([np.linspace(0.0, 40.0, 40), np.linspace(40.0, -180.0, 200)])
    armhole = np.column_stack([x, np.linspace(0.0, 160.0, x.size)])
    side = np.array([[0.0, 0.0], [0.0, -30.0]])
    laid = laid_out(armhole, side, armhole[0])
    assert laid[20, 0] == pytest.approx(armhole[20, 0])
    assert laid_out(armhole * [-1.0, 1.0], side, armhole[0])[20, 0] == pytest.approx(armhole[20, 0])
