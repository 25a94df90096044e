"""Cuffs, plackets and shaped sleeves at the edges of what they look at, measured beside their own numbers."""

from typing import Any

import pytest

from notchbook.geometry import Path, Point
from notchbook.pattern import Pattern, sewn_length
from notchbook.pattern.sewn import place_distance
from notchbook.recipe import Replay
from notchbook.style.sleeves.found import sleeve_found
from notchbook.style.sleeves.slashes import cap_places
from support.sleeve_bodies import woman
from support.sleeve_styles import BELL, BISHOP, CUFF, PLACKET, PUFF, SLEEVE, Step, plain, raglan, sleeve_style


def cuffed(*steps: Step, **parameters: Any) -> Replay:
    return sleeve_style([BISHOP, *(steps or (PLACKET,)), ("cuff", "cuff", parameters)])


def buttons(pattern: Pattern) -> list[float]:
    """How far below the sleeve the buttons of a straight cuff lie, the highest first."""
    piece = pattern.pieces["cuff.cuff"]
    top = piece.bounds.max_y
    return [top - mark.position.y for mark in piece.marks if mark.kind == "button"]


@pytest.mark.parametrize(("number", "places"), [(1, [30.0]), (2, [20.0, 40.0]), (3, [15.0, 30.0, 45.0])])
def test_the_buttons_of_a_cuff_share_its_depth_evenly(number: int, places: list[float]) -> None:
    """Of a cuff 6 cm deep; one button lies half way (common practice, no source)."""
    assert buttons(cuffed(depth="6 cm", buttons=number).pattern) == pytest.approx(places, abs=1e-6)


@pytest.mark.parametrize(("off", "is_told"), [(-1.0, False), (1.0, True)])
def test_a_slit_opens_a_cuff_by_twice_its_length(off: float, is_told: bool) -> None:
    """The hand goes through a ring of the closed cuff and both edges of the slit, with 2 cm to spare."""
    slit: Step = ("sleeve_placket", "placket", {"length": "3 cm"})
    closed = sewn_length(cuffed(slit).pattern, f"{SLEEVE}/hem")
    hand = closed + 2.0 * 30.0 - 20.0 + off
    done = sleeve_style([BISHOP, slit, CUFF], woman(hand_girth=hand))
    assert ("cuff-under-hand" in [note.code for note in done.notes]) is is_told


def test_a_cuff_is_notched_where_the_seam_of_its_sleeve_comes_to_lie() -> None:
    """The cuff begins at the slit and goes round the front: the seam comes after the part before it."""
    pattern = cuffed().pattern
    before = sewn_length(pattern, f"{SLEEVE}/hem/far")
    notch = pattern.notches["cuff.cuff/seam_notch"]
    assert notch.place.from_point == "cuff.cuff/cuff_edge_start"
    assert place_distance(pattern, notch.place) == pytest.approx(before, abs=1e-6)


@pytest.mark.parametrize("width", [20.0, 25.0, 30.0])
def test_the_point_of_a_tower_is_a_right_angle_in_the_middle_of_its_outer_half(width: float) -> None:
    """A square point, folded from both sides (common practice, no source)."""
    tower: Step = ("sleeve_placket", "placket", {"kind": "tower", "tower_width": f"{width} mm"})
    pattern = sleeve_style([BISHOP, tower]).pattern
    points = {name.split("/")[1]: place for name, place in pattern.pieces["placket.tower"].points.items()}
    tip, one, other = (points[f"tower_{word}"] for word in ("point", "inner", "outer"))
    assert (one - tip).dot(other - tip) == pytest.approx(0.0, abs=1e-6)
    assert one.distance_to(tip) == pytest.approx(other.distance_to(tip), abs=1e-6)
    assert abs(one.x - other.x) == pytest.approx(width, abs=1e-6)


SPREAD: list[tuple[Step, str]] = [
    (PUFF, "short"),
    (("puff_sleeve", "full", {"opens": "hem", "fullness": "full"}), "short"),
    (BELL, "three_quarter"),
    (("bell_sleeve", "full", {"flare": "30 cm", "slashes": 2}), "short"),
]


@pytest.mark.parametrize(("step", "length"), SPREAD)
def test_a_spread_sleeve_is_as_long_at_the_middle_of_its_hem_as_before(step: Step, length: str) -> None:
    """The strip in the middle stays where it was; the line over the others is led through its old middle."""
    levels = []
    for steps in ([], [step]):
        piece = sleeve_style(steps, length=length).pattern.pieces[SLEEVE]
        middle = piece.points[f"{SLEEVE}/hem_middle"]
        down = Path.line(middle + Point(0.0, 400.0), middle - Point(0.0, 400.0))
        (met,) = piece.edge(f"{SLEEVE}/hem").path.intersections(down)
        levels.append(down.point_at(met.at_other).y)
    assert levels[1] == pytest.approx(levels[0], abs=0.1)


def test_slashes_share_the_cap_between_notch_and_crown_evenly() -> None:
    """Four on each half stand in the middle of a quarter each: 1/8, 3/8, 5/8 and 7/8 from the crown."""
    sleeve = sleeve_found(plain().pattern, "sleeve")
    places = cap_places(sleeve, 4)
    along = [sleeve.line.nearest(one.place.position).distance_along for one in places]
    shares = [(sleeve.crown - at) / (sleeve.crown - sleeve.notches[0]) for at in along[:4]]
    assert shares == pytest.approx([0.875, 0.625, 0.375, 0.125], abs=1e-4)
    behind = [(at - sleeve.crown) / (sleeve.notches[1] - sleeve.crown) for at in along[4:]]
    assert behind == pytest.approx([0.125, 0.375, 0.625, 0.875], abs=1e-4)


def test_a_raglan_line_is_notched_once_in_front_and_twice_behind() -> None:
    """So that front and back of a sleeve are told apart (common practice)."""
    notches = raglan().pattern.notches
    for which, kind in (("front", "single"), ("back", "double")):
        for owner in (f"raglan.{which}", f"raglan.{which}_sleeve"):
            assert notches[f"{owner}/raglan_line/raglan_notch"].kind == kind


def test_the_shoulder_of_a_raglan_lies_as_far_above_its_cap_as_asked() -> None:
    """Laid 15 mm higher, the neck of the sleeve comes up with it."""
    heights = []
    for above in ("10 mm", "25 mm"):
        step: Step = ("raglan_sleeve", "raglan", {"above": above})
        done = sleeve_style([step], top={"back_shoulder": "ease"}, fabric="shirting")
        heights.append(done.pattern.pieces["raglan.front_sleeve"].points["bodice.front/shoulder_point"].y)
    assert heights[1] - heights[0] == pytest.approx(15.0, abs=2.5)
