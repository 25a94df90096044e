"""The outside judge of the stretch blocks sees what is planted: 0.2 mm, and angles a little over the limit.

Else the closures of the survey could not fail.
"""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from support.bodice_judge import ANGLE, SIDE_ANGLE
from support.lower_patterns import lower_data, lower_wanted
from support.stretch_judge import (
    SEAT_COVER,
    StretchJudge,
    leg_beyond_chord,
    leggings_closures,
    leggings_faults,
    torso_closures,
    torso_faults,
)
from support.upper_patterns import longer, turned, with_fault

Data = dict[str, Any]
Change = Callable[[list[list[Any]]], None]
FAULT = 0.2
"""mm."""

SLUGS = {"stretch-torso": "stretch_torso", "bodysuit": "bodysuit", "leggings": "leggings"}


def failed(kind: str, data: Data) -> set[str]:
    judge = StretchJudge(data, SLUGS[kind])
    closures = leggings_closures if kind == "leggings" else torso_closures
    return {one.name for one in closures(judge, lower_wanted(kind)) if not one.holds}


def faults(kind: str, data: Data) -> str:
    judge = StretchJudge(data, SLUGS[kind])
    return "; ".join(leggings_faults(judge) if kind == "leggings" else torso_faults(judge))


@pytest.mark.parametrize("kind", SLUGS)
def test_nothing_is_found_where_nothing_is_planted(kind: str) -> None:
    assert failed(kind, lower_data(kind)) == set()
    assert faults(kind, lower_data(kind)) == ""


PLANTED: list[tuple[str, str, Change, str]] = [
    ("stretch-torso", "front/armhole", longer(FAULT), "front cap without ease"),
    ("stretch-torso", "back/armhole", longer(FAULT), "back cap without ease"),
    ("stretch-torso", "sleeve/cap_back", longer(FAULT), "back cap without ease"),
    ("stretch-torso", "front/side_seam", longer(FAULT), "stretch_torso/side_seam pair"),
    ("stretch-torso", "back/shoulder", longer(FAULT), "stretch_torso/shoulder pair"),
    ("stretch-torso", "sleeve/front_seam", longer(FAULT), "stretch_torso/sleeve_seam pair"),
    ("stretch-torso", "front/shoulder", longer(FAULT), "shoulder_length"),
    ("stretch-torso", "sleeve/hem", longer(FAULT), "sleeve hem"),
    ("stretch-torso", "front/neck", turned(ANGLE + 0.5), "front neck square"),
    ("stretch-torso", "front/shoulder", turned(ANGLE + 0.5), "across shoulder_point"),
    ("stretch-torso", "back/armhole", turned(SIDE_ANGLE + 0.5), "across underarm"),
    ("stretch-torso", "front/hem", turned(SIDE_ANGLE + 0.5), "across hem_side"),
    ("stretch-torso", "sleeve/cap_front", turned(ANGLE + 0.5), "crown without a point"),
    ("stretch-torso", "front/side_seam", turned(60.0), "stretch_torso.front in one piece"),
    ("bodysuit", "front/crotch", longer(FAULT), "crotch join"),
    ("bodysuit", "lining/crotch", longer(FAULT), "lining at the crotch join"),
    ("bodysuit", "back/leg_opening", longer(FAULT), "leg opening"),
    ("bodysuit", "back/leg_opening", turned(SIDE_ANGLE + 0.5), "across leg_side"),
    ("bodysuit", "front/leg_opening", turned(ANGLE + 0.5), "across crotch_side"),
    ("bodysuit", "lining/leg_opening", longer(20.0), "lining lies on the front"),
    ("leggings", "leg/waist", longer(FAULT), "waist_girth"),
    ("leggings", "leg/hem", longer(FAULT), "ankle_girth"),
    ("leggings", "leg/front_crotch_seam", longer(FAULT), "crotch_length"),
    ("leggings", "leg/back_inseam", longer(FAULT), "leggings/inseam pair"),
    ("leggings", "leg/back_crotch_seam", turned(ANGLE + 0.5), "across crotch_point"),
    ("leggings", "leg/back_inseam", turned(60.0), "leggings.leg in one piece"),
]


@pytest.mark.parametrize(
    ("kind", "edge", "change", "closure"), PLANTED, ids=[f"{one[0]} {one[3]}" for one in PLANTED]
)
def test_a_planted_fault_is_seen(kind: str, edge: str, change: Change, closure: str) -> None:
    assert closure in failed(kind, with_fault(lower_data(kind), f"{SLUGS[kind]}.{edge}", change))


MOVED = [
    ("stretch-torso", "bust_girth", "bust_girth"),
    ("stretch-torso", "hip_girth", "hip_girth"),
    ("stretch-torso", "scye_depth", "scye_depth"),
    ("stretch-torso", "back_waist_length", "back_waist_length"),
    ("stretch-torso", "upper_arm_girth", "biceps"),
    ("bodysuit", "waist_girth", "waist_girth"),
    ("stretch-torso", "across_back", "across_back"),
    ("bodysuit", "crotch_length", "crotch_length"),
    ("leggings", "hip_girth", "hip_girth"),
    ("leggings", "thigh_girth", "thigh_girth"),
    ("leggings", "knee_girth", "knee_girth"),
    ("leggings", "calf_girth", "calf_girth"),
]


@pytest.mark.parametrize(("kind", "key", "closure"), MOVED, ids=[f"{one[0]} {one[1]}" for one in MOVED])
def test_a_width_that_is_not_as_asked_is_seen(kind: str, key: str, closure: str) -> None:
    """The same pattern held against 0.2 mm more."""
    wanted = lower_wanted(kind) | {key: lower_wanted(kind)[key] + FAULT}
    judge = StretchJudge(lower_data(kind), SLUGS[kind])
    closures = leggings_closures if kind == "leggings" else torso_closures
    assert closure in {one.name for one in closures(judge, wanted) if not one.holds}


def bulged(share: float) -> Change:
    """One cubic between the ends that leaves their straight line by this share of it."""

    def change(rows: list[list[Any]]) -> None:
        start, end = np.array(rows[0][-2:]), np.array(rows[-1][-2:])
        side = np.array([-(end - start)[1], (end - start)[0]]) * share * 4.0 / 3.0
        first, second = start + (end - start) / 3.0 + side, start + 2.0 * (end - start) / 3.0 + side
        rows[1:] = [["C", *first, *second, *end]]

    return change


def test_a_leg_that_bares_the_seat_and_one_that_bags_are_seen() -> None:
    """Both ways: far beyond the chord, and scooped like a front."""
    for share in (0.2, -0.2):
        data = with_fault(lower_data("bodysuit"), "bodysuit.back/leg_opening", bulged(share))
        judge = StretchJudge(data, "bodysuit")
        assert not SEAT_COVER[0] <= leg_beyond_chord(judge, "back").max() <= SEAT_COVER[1]
        assert "back leg below its chord" in faults("bodysuit", data)


def test_a_front_leg_that_covers_more_than_its_chord_is_seen() -> None:
    words = [
        faults("bodysuit", with_fault(lower_data("bodysuit"), "bodysuit.front/leg_opening", bulged(share)))
        for share in (0.1, -0.1)
    ]
    assert sum("front leg below its chord" in word for word in words) == 1


def test_a_pouch_and_a_corner_are_seen() -> None:
    pouch = [
        faults(
            "stretch-torso", with_fault(lower_data("stretch-torso"), "stretch_torso.back/armhole", bulged(s))
        )
        for s in (0.5, -0.5)
    ]
    assert any("armhole is a pouch" in word for word in pouch)

    def corner(rows: list[list[Any]]) -> None:
        start, end = np.array(rows[0][-2:]), np.array(rows[-1][-2:])
        side = np.array([-(end - start)[1], (end - start)[0]]) * 0.1
        rows[1:] = [["L", *((start + end) / 2.0 + side)], ["L", *end]]

    with_corner = with_fault(lower_data("leggings"), "leggings.leg/back_inseam", corner)
    assert "has a corner" in faults("leggings", with_corner)
