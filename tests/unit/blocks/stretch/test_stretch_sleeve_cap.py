"""The stretch sleeve: its cap is the armhole, half by half, and gives way to a full or a thin arm."""

from dataclasses import replace

import numpy as np
import pytest

from notchbook.blocks.stretch import StretchSleeve, StretchSleeveGiven, TorsoGiven, TorsoHalf, draft_torso
from notchbook.errors import DraftRefused
from support.stretch_shapes import (
    ANGLE,
    BODIES,
    TOLERANCE,
    WOMAN,
    between,
    end_heading,
    length,
    points,
    sleeve_area,
    start_heading,
)


def sleeve_of(half: TorsoHalf) -> StretchSleeve:
    assert half.sleeve is not None
    return half.sleeve


def lever(half: TorsoHalf, name: str) -> float:
    return next(one.pulled for one in half.levers if one.name == name)


def with_arm(given: TorsoGiven, **changes: float) -> TorsoGiven:
    assert given.sleeve is not None
    return replace(given, sleeve=replace(given.sleeve, **changes))


@pytest.mark.parametrize("name", BODIES)
def test_each_half_of_the_cap_is_as_long_as_its_half_of_the_armhole(name: str) -> None:
    half = draft_torso(BODIES[name])
    sleeve = sleeve_of(half)
    assert length(sleeve.cap_front) == pytest.approx(length(half.front.armhole), abs=TOLERANCE)
    assert length(sleeve.cap_back) == pytest.approx(length(half.back.armhole), abs=TOLERANCE)
    assert sleeve.cap_front.end == sleeve.cap_back.end, "one crown"


@pytest.mark.parametrize("name", BODIES)
def test_the_sleeve_is_as_wide_and_long_as_asked(name: str) -> None:
    given = BODIES[name]
    assert given.sleeve is not None
    half = draft_torso(given)
    sleeve = sleeve_of(half)
    wide = sleeve.cap_front.start.x - sleeve.cap_back.start.x
    assert wide == pytest.approx(given.sleeve.biceps + lever(half, "sleeve_wider"), abs=TOLERANCE)
    assert length(sleeve.hem) == pytest.approx(
        given.sleeve.hem + lever(half, "sleeve_hem_wider"), abs=TOLERANCE
    )
    from_neck = length(half.front.shoulder) + sleeve.crown.y - sleeve.hem.start.y
    asked = given.shoulder - given.neck_wider + given.sleeve.length
    assert from_neck == pytest.approx(asked + lever(half, "sleeve_longer"), abs=TOLERANCE)


@pytest.mark.parametrize(("bust", "drops"), [(1100.0, True), (660.0, False)])
def test_the_sleeve_ends_where_it_was_asked_to_whatever_the_shoulder_does(bust: float, drops: bool) -> None:
    """A shoulder that drops over the arm takes its drop from the sleeve (common practice)."""
    given = replace(WOMAN, bust=bust, waist=None)
    half = draft_torso(given)
    assert given.sleeve is not None
    farther_in = lever(half, "shoulder_narrowed")
    assert farther_in < -20.0 if drops else farther_in > 10.0
    drawn = sleeve_of(half).crown.y - sleeve_of(half).hem.start.y
    assert drawn == pytest.approx(given.sleeve.length + farther_in, abs=TOLERANCE)
    assert length(half.front.shoulder) + drawn == pytest.approx(
        given.shoulder + given.sleeve.length, abs=TOLERANCE
    )


@pytest.mark.parametrize("name", BODIES)
def test_the_sleeve_is_smooth_where_it_is_closed(name: str) -> None:
    sleeve = sleeve_of(draft_torso(BODIES[name]))
    assert length(sleeve.front_seam) == pytest.approx(length(sleeve.back_seam), abs=TOLERANCE)
    for cap, seam, sign in (
        (sleeve.cap_front, sleeve.front_seam, 1),
        (sleeve.cap_back, sleeve.back_seam, -1),
    ):
        assert sign * between(start_heading(cap), start_heading(seam)) == pytest.approx(90.0, abs=ANGLE)
        assert end_heading(seam) == pytest.approx(-90.0, abs=ANGLE)
    crown = between(end_heading(sleeve.cap_back), end_heading(sleeve.cap_front))
    assert abs(crown) == pytest.approx(180.0, abs=ANGLE), "level on both sides of the crown"
    assert sleeve_area(sleeve).is_valid


@pytest.mark.parametrize("name", BODIES)
def test_the_cap_is_neither_flat_nor_a_chimney(name: str) -> None:
    half = draft_torso(BODIES[name])
    share = sleeve_of(half).cap_height / (length(half.front.armhole) + length(half.back.armhole))
    assert 0.18 < share < 0.37, "a quarter for a shirt, a third for a close sleeve (from memory)"


@pytest.mark.parametrize("name", ["woman", "man", "plus", "child"])
def test_the_lower_cap_is_hollow_as_the_armhole(name: str) -> None:
    half = draft_torso(BODIES[name])
    sleeve = sleeve_of(half)
    pairs = ((half.front, sleeve.cap_front, 1), (half.back, sleeve.cap_back, -1))
    for panel, cap, sign in pairs:
        assert _height(cap, 40.0) == pytest.approx(_height(panel.armhole.reversed(), 40.0), abs=3.0), (
            "40 mm up from the underarm; 3 to 4 mm is a patternmaker's limit (from memory)"
        )
        assert sign * points(cap)[0, 0] > 0.0


def _height(path: object, along: float) -> float:
    """How far a curve has risen over its first direction after so many mm."""
    from notchbook.geometry import Path

    assert isinstance(path, Path)
    way = path.point_at(along) - path.start
    return abs(path.tangent_at(0.0, "after").cross(way))


@pytest.mark.parametrize("name", BODIES)
def test_no_cap_is_a_bell(name: str) -> None:
    sleeve = sleeve_of(draft_torso(BODIES[name]))
    both = points(sleeve.cap_front, 400), points(sleeve.cap_back, 400)
    wide = sum(abs(float(np.interp(sleeve.cap_height / 2.0, way[:, 1], way[:, 0]))) for way in both)
    assert wide > 0.47 * sleeve.biceps, "about half at half height (a patternmaker's review)"


def test_the_underarm_is_lowered_for_a_full_arm_and_no_more() -> None:
    usual, full = draft_torso(WOMAN), draft_torso(with_arm(WOMAN, biceps=365.0))
    assert lever(usual, "underarm_lowered") == 0.0
    lowered = lever(full, "underarm_lowered")
    assert lowered > 0.0
    assert full.front.underarm.y == pytest.approx(usual.front.underarm.y - lowered, abs=TOLERANCE)
    assert length(sleeve_of(full).cap_front) == pytest.approx(length(full.front.armhole), abs=TOLERANCE)
    assert lever(full, "cap_height") == pytest.approx(0.19, abs=0.012), "as flat as it may be"


def test_the_sleeve_is_widened_for_a_thin_arm() -> None:
    thin = draft_torso(with_arm(WOMAN, biceps=130.0, hem=120.0))
    assert lever(thin, "sleeve_wider") > 0.0
    assert lever(thin, "cap_height") == pytest.approx(0.36, abs=0.012), "as high as it may be"


def test_a_short_sleeve_gets_a_wider_hem_rather_than_a_corner() -> None:
    short = draft_torso(with_arm(WOMAN, hem=180.0, length=200.0))
    assert lever(short, "sleeve_hem_wider") > 10.0


def test_a_sleeve_that_would_end_in_its_cap_is_drafted_longer_and_told() -> None:
    half = draft_torso(with_arm(WOMAN, hem=255.0, length=130.0))
    sleeve = sleeve_of(half)
    assert lever(half, "sleeve_longer") == pytest.approx(sleeve.cap_height + 35.0 - 130.0, abs=TOLERANCE)
    assert sleeve_area(sleeve).is_valid


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"biceps": 520.0}, "stretch-arm-too-full"),
        ({"biceps": 90.0, "hem": 85.0}, "stretch-arm-too-thin"),
        ({"length": 50.0, "hem": 255.0}, "stretch-sleeve-short"),
    ],
)
def test_arms_that_do_not_belong_to_the_armhole_are_refused(changes: dict[str, float], code: str) -> None:
    with pytest.raises(DraftRefused) as caught:
        draft_torso(with_arm(WOMAN, **changes))
    assert caught.value.code == code
    assert caught.value.text()


def test_without_a_sleeve_nothing_is_lowered() -> None:
    half = draft_torso(replace(WOMAN, sleeve=None))
    assert half.sleeve is None
    assert "cap_height" not in {one.name for one in half.levers}


def test_a_planted_fault_of_the_cap_is_seen() -> None:
    half = draft_torso(WOMAN)
    shorter = half.front.armhole.split_at(half.front.armhole.length - 0.2)[0]
    assert length(sleeve_of(half).cap_front) != pytest.approx(length(shorter), abs=TOLERANCE)


def test_the_given_sleeve_is_plain_numbers() -> None:
    assert StretchSleeveGiven(1.0, 2.0, 3.0).hem == 2.0
