"""Closures: everything that must come out is measured, and what is off by a fifth of a millimeter is seen."""

import json
from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.checks import Closure, Subject, closures, closures_data, closures_from_data
from notchbook.errors import InputError
from notchbook.geometry import Point, Transform
from notchbook.pattern import Pattern
from support.bent import point_moved
from support.faults_inner_darts import side_leg_shorter_above_the_waist
from support.faults_seams import PROMISES
from support.faults_shapes import SCYE_DEPTH, cap_notch_too_high_by_12_tenths
from support.hand_skirt import hand_skirt
from support.hand_upper import FRONT_SEAM, INNER_DART, hand_upper

UPPER = hand_upper()


def named(found: tuple[Closure, ...]) -> dict[tuple[str, str], Closure]:
    by_name: dict[tuple[str, str], Closure] = {(one.name, one.kind): one for one in found}
    assert len(by_name) == len(found), "two closures of one name and kind"
    return by_name


def off(subject: Subject) -> set[str]:
    return {one.name for one in closures(subject) if not one.agrees}


def test_the_hand_made_shapes_close() -> None:
    assert off(Subject(UPPER, None, (SCYE_DEPTH,))) == set()
    assert off(Subject(hand_skirt(), None, PROMISES)) == set()


def test_every_seam_dart_angle_promise_and_shape_is_there() -> None:
    found = named(closures(Subject(UPPER, None, (SCYE_DEPTH,))))
    lengths = {name for name, kind in found if kind == "length"}
    assert set(UPPER.seams) | {SCYE_DEPTH.name, f"{INNER_DART}: above", f"{INNER_DART}: below"} <= lengths
    assert f"{FRONT_SEAM}: start to balance_notch" in lengths
    assert f"{FRONT_SEAM}: balance_notch to ease_notch" not in lengths, "there the ease lies"
    angles = {name for name, kind in found if kind == "angle"}
    assert {f"top/shoulder: {end}" for end in ("start", "end")} <= angles
    assert {f"top/side_seam: {end}" for end in ("start", "end")} <= angles
    assert {f"top.back/center_back: {end}" for end in ("start", "end")} <= angles
    shapes = {name for name, kind in found if kind == "shape"}
    assert "sleeve.sleeve/cap_front: laid on the armhole" in shapes
    assert "top.front/armhole: height of its hollow" in shapes


def test_the_angles_across_side_seams_have_three_degrees_and_the_others_one() -> None:
    found = named(closures(Subject(UPPER)))
    assert found["top/side_seam: start", "angle"].within == 3.0
    assert found["top/shoulder: start", "angle"].within == 1.0


MOVED: list[tuple[str, float, float, str]] = [
    ("top.front/hem_side", 0.0, -0.2, "top/side_seam"),
    ("top.front/hem_side", 0.0, 0.2, "top/side_seam"),
    ("top.back/underarm", 0.0, 0.2, "top/scye_depth"),
    ("top.back/nape", 0.0, -0.2, "top/scye_depth"),
    ("sleeve.sleeve/hem_back", 0.0, -0.2, "sleeve/sleeve_seam"),
    ("sleeve.sleeve/cap_top", -0.4, 0.0, "sleeve/front_armhole"),
    ("top.back/shoulder_point", 0.3, -0.1, "top/shoulder"),
]


@pytest.mark.parametrize(("point", "dx", "dy", "name"), MOVED)
def test_a_point_moved_by_fifths_of_a_millimeter_is_seen(point: str, dx: float, dy: float, name: str) -> None:
    assert name in off(Subject(point_moved(UPPER, point, dx, dy), None, (SCYE_DEPTH,)))


@given(st.floats(-5.0, 5.0))
@settings(max_examples=25, deadline=None)
def test_a_length_is_off_by_what_it_was_changed(amount: float) -> None:
    longer = point_moved(UPPER, "top.front/hem_side", 0.0, -amount)
    closure = named(closures(Subject(longer)))["top/side_seam", "length"]
    assert closure.misfit == pytest.approx(-amount, abs=1e-6)
    assert closure.agrees == (abs(amount) <= 0.1)


@given(st.floats(-10.0, 10.0))
@settings(max_examples=25, deadline=None)
def test_an_angle_is_off_by_what_it_was_turned(degrees: float) -> None:
    """The hem of the front leans: its angle with the straight side seam turns by as much."""
    center = UPPER.pieces["top.front"].points["top.front/hem_center"]
    side = UPPER.pieces["top.front"].points["top.front/hem_side"]
    turned = side.rotated(degrees, center)
    leaning = point_moved(
        UPPER, "top.front/hem_side", 0.0, (turned - center).y / (turned - center).x * side.x
    )
    closure = named(closures(Subject(leaning)))["top/side_seam: end", "angle"]
    assert abs(closure.misfit) == pytest.approx(abs(degrees), abs=1e-6)


def test_a_notch_and_a_leg_that_are_off_are_seen() -> None:
    made: list[tuple[Callable[[Pattern], object], str]] = [
        (cap_notch_too_high_by_12_tenths, f"{FRONT_SEAM}: start to balance_notch"),
        (side_leg_shorter_above_the_waist, f"{INNER_DART}: above"),
    ]
    for make, name in made:
        pattern = make(UPPER)
        assert isinstance(pattern, Pattern)
        assert name in off(Subject(pattern))


@given(st.floats(-180.0, 180.0), st.booleans())
@settings(max_examples=15, deadline=None)
def test_lengths_angles_and_shapes_stay_when_pieces_are_moved(degrees: float, turned_over: bool) -> None:
    motion = Transform.rotation(degrees, Point(30.0, -20.0))
    if turned_over:
        motion = motion.then(Transform.reflection(Point(0, 0), Point(0, 1)))
    moved = UPPER.with_pieces(*(piece.transformed(motion) for piece in UPPER.pieces.values()))
    before, after = named(closures(Subject(UPPER))), named(closures(Subject(moved)))
    ends = {"start": "end", "end": "start"}
    for (name, kind), closure in before.items():
        head, _, last = name.rpartition(": ")
        swapped = turned_over and kind == "angle" and "center" in name
        other = after[f"{head}: {ends[last]}" if swapped else name, kind]
        assert other.measured == pytest.approx(closure.measured, abs=0.02)


def test_closures_come_back_from_json() -> None:
    found = closures(Subject(UPPER, None, (SCYE_DEPTH,)))
    again = closures_from_data(json.loads(json.dumps(closures_data(found))))
    assert [one.name for one in again] == [one.name for one in found]
    assert closures_data(again) == closures_data(found)


def test_what_was_promised_of_a_point_that_is_gone_is_left_to_the_checks() -> None:
    gone = replace(SCYE_DEPTH, chains=(("top.back/nape", "top.front/nowhere"),))
    assert SCYE_DEPTH.name not in {one.name for one in closures(Subject(UPPER, None, (gone,)))}


GOOD = {
    "name": "a",
    "kind": "length",
    "where": ["b"],
    "measured": 1.0,
    "wanted": 1,
    "within": 0.1,
    "unit": "mm",
}


@pytest.mark.parametrize(
    "change",
    [
        {"kind": "girth"},
        {"unit": "in"},
        {"where": "b"},
        {"where": [3]},
        {"name": None},
        {"measured": "1"},
        {"measured": float("nan")},
        {"within": True},
    ],
)
def test_damaged_closures_are_refused(change: dict[str, object]) -> None:
    assert closures_from_data([GOOD])[0].agrees
    for data in ([{**GOOD, **change}], {"a": GOOD}, [{k: v for k, v in GOOD.items() if k not in change}]):
        with pytest.raises(InputError) as refused:
            closures_from_data(data)
        assert refused.value.code == "closures-damaged"
        assert refused.value.text()
