"""The cap: exact lengths, one crown, the lower part on the armhole, and what cannot be drawn."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st

from notchbook.blocks.set_in.draft import draft_sleeve
from notchbook.blocks.set_in.figures import figure, figure_table
from notchbook.blocks.set_in.given import ArmholeGiven, SleeveGiven
from notchbook.blocks.set_in.room import lower_armhole_by, lowered
from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.errors import DraftRefused
from notchbook.geometry import Path, Point, Transform, inflections
from support.armholes import armhole, changes_of_side, dense, laid_gap, length_of, sleeve

LAY_LIMITS = {"front": 3.0, "back": 4.0}
"""mm over the first 60 of the cap. Source: patternmaker's review (common practice)."""

CODES = {
    "sleeve-arm-too-full",
    "sleeve-arm-beyond-armhole",
    "sleeve-arm-too-thin",
    "sleeve-armhole-uneven",
    "sleeve-cap-not-reached",
    "sleeve-too-short",
}


def closures(given: SleeveGiven, half: SleeveHalf) -> dict[str, float]:
    """How far each promised length is off, mm, measured on dense polylines."""
    share = given.front_ease_share
    widths = dense(half.cap_front)[0, 0] - dense(half.cap_back)[0, 0]
    return {
        "front": length_of(dense(half.cap_front))
        - length_of(dense(given.armhole.front))
        - share * given.cap_ease,
        "back": length_of(dense(half.cap_back))
        - length_of(dense(given.armhole.back))
        - (1 - share) * given.cap_ease,
        "biceps": float(widths) - given.biceps if given.keep == "biceps" else 0.0,
        "top": float(np.hypot(*(dense(half.cap_front)[-1] - dense(half.cap_back)[-1]))),
        "seams": half.front_seam.length - sum(part.length for part in half.back_seam) + given.back_ease
        if not given.elbow_dart
        else 0.0,
    }


def gaps(given: SleeveGiven, half: SleeveHalf) -> dict[str, float]:
    return {
        "front": laid_gap(half.cap_front, half.front_seam, given.armhole.front, 1.0),
        "back": laid_gap(half.cap_back, half.back_seam[0], given.armhole.back, -1.0),
    }


@pytest.mark.parametrize("biceps", [280.0, 300.0, 325.0])
@pytest.mark.parametrize("ease", [0.0, 12.0, 30.0])
def test_both_sides_of_the_cap_are_as_long_as_their_armhole_with_its_ease(biceps: float, ease: float) -> None:
    given = sleeve(biceps=biceps, cap_ease=ease)
    half = draft_sleeve(given)
    assert max(map(abs, closures(given, half).values())) < 1e-3
    assert half.cap_front.length == pytest.approx(given.armhole.front.length + 0.45 * ease, abs=1e-6)
    assert half.cap_back.length == pytest.approx(given.armhole.back.length + 0.55 * ease, abs=1e-6)


def test_a_fault_of_a_fifth_of_a_millimeter_is_seen() -> None:
    given = sleeve()
    half = draft_sleeve(given)
    off = closures(replace(given, cap_ease=given.cap_ease + 0.4), half)
    assert off["front"] == pytest.approx(-0.18, abs=0.01)
    assert abs(closures(replace(given, biceps=given.biceps + 0.2), half)["biceps"]) > 0.19
    shifted = replace(
        half, cap_front=half.cap_front.with_end(half.cap_back.point_at(half.cap_back.length - 0.2))
    )
    assert closures(given, shifted)["top"] > 0.19


@pytest.mark.parametrize("biceps", [285.0, 310.0, 330.0, 340.0])
def test_the_lower_cap_lies_on_the_armhole(biceps: float) -> None:
    given = sleeve(biceps=biceps)
    half = draft_sleeve(given)
    seen = gaps(given, half)
    assert seen["front"] <= LAY_LIMITS["front"]
    assert seen["back"] <= LAY_LIMITS["back"]
    assert (half.front_gap, half.back_gap) == pytest.approx((seen["front"], seen["back"]), abs=0.15)
    assert (half.front_notch, half.back_notch) == (given.armhole.front_notch, given.armhole.back_notch)


def test_another_cap_does_not_lie_on_the_armhole() -> None:
    """What the judge says of a cap that was drafted into another armhole."""
    given = sleeve()
    other = draft_sleeve(sleeve(armhole(wider=25.0), biceps=350.0))
    assert max(gaps(given, other).values()) > LAY_LIMITS["back"]


@pytest.mark.parametrize("biceps", [285.0, 310.0, 330.0, 345.0])
def test_the_cap_has_its_shape(biceps: float) -> None:
    half = draft_sleeve(sleeve(biceps=biceps))
    for cap in (half.cap_front, half.cap_back):
        assert changes_of_side(dense(cap, 0.5)) == 1
        assert len(inflections(cap)) == 1
        assert not cap.corners(0.05)
    crown = half.cap_back.nearest(half.crown)
    assert crown.gap < 1e-6
    assert abs(half.cap_back.tangent_at(crown.distance_along).y) < 1e-6
    assert max(dense(half.cap_back)[:, 1].max(), dense(half.cap_front)[:, 1].max()) <= half.cap_height + 1e-6
    assert hollow(half.cap_front) > hollow(half.cap_back)


def hollow(cap: Path) -> float:
    """How deep the cap dips below the straight way from underarm to shoulder seam, as a share of that way."""
    points = dense(cap)
    chord = points[-1] - points[0]
    size = np.hypot(*chord)
    offsets = points - points[0]
    sags = (offsets[:, 0] * chord[1] - offsets[:, 1] * chord[0]) / size
    inside = sags if points[0, 0] < 0.0 else -sags
    return float(inside.max() / size)


def test_the_front_takes_the_smaller_part_of_the_width() -> None:
    """46 to 48 percent is usual (drafting background, computed); without a crown behind the seam it is 43."""
    for biceps in (300.0, 330.0, 345.0):
        half = draft_sleeve(sleeve(biceps=biceps))
        assert 0.455 <= half.cap_front.start.x / half.biceps <= 0.49


def test_a_higher_cap_is_narrower_and_the_kept_height_is_met() -> None:
    wide = draft_sleeve(sleeve(keep="cap_height", cap_height=118.0))
    narrow = draft_sleeve(sleeve(keep="cap_height", cap_height=140.0))
    assert (wide.cap_height, narrow.cap_height) == pytest.approx((118.0, 140.0), abs=1e-6)
    assert wide.biceps > narrow.biceps + 20.0
    again = draft_sleeve(sleeve(biceps=narrow.biceps))
    assert again.cap_height == pytest.approx(140.0, abs=1e-4)


def test_ten_millimeters_of_ease_lift_the_cap_by_seven_or_eight() -> None:
    """Source: computed in the drafting background from the plain S-shaped cap; ours lies on the armhole."""
    heights = [draft_sleeve(sleeve(cap_ease=ease)).cap_height for ease in (10.0, 20.0)]
    assert 5.0 < heights[1] - heights[0] < 10.0


def test_the_pitch_is_where_the_crown_lies_as_an_angle_of_the_armhole() -> None:
    given = sleeve(pitch=6.0)
    half = draft_sleeve(given)
    behind = half.cap_back.length - half.cap_back.nearest(half.crown).distance_along
    assert 360.0 * behind / given.armhole.girth == pytest.approx(6.0, abs=1e-4)
    before = draft_sleeve(sleeve(pitch=-4.0))
    ahead = before.cap_front.length - before.cap_front.nearest(before.crown).distance_along
    assert 360.0 * ahead / given.armhole.girth == pytest.approx(4.0, abs=1e-4)
    assert max(map(abs, closures(given, half).values())) < 1e-3
    assert draft_sleeve(sleeve(pitch=0.0)).pitch == 0.0


def test_an_arm_too_full_is_refused_with_what_cures_it() -> None:
    given = sleeve(biceps=375.0)
    with pytest.raises(DraftRefused) as refused:
        draft_sleeve(given)
    assert refused.value.code == "sleeve-arm-too-full"
    lower_by = refused.value.facts["lower_by"]
    assert isinstance(lower_by, float)
    cured = replace(given, armhole=lowered(given.armhole, lower_by))
    half = draft_sleeve(cured)
    low = figure("cap.low_share")
    assert low <= half.cap_height / cured.armhole.girth <= low + 0.01
    less = replace(given, armhole=lowered(given.armhole, lower_by * 0.8))
    assert draft_sleeve(less).cap_height / less.armhole.girth < low
    narrower = refused.value.facts["narrower_by"]
    assert isinstance(narrower, float)
    shirt = draft_sleeve(replace(given, biceps=given.biceps - narrower - 0.01))
    assert shirt.cap_height / given.armhole.girth == pytest.approx(figure("cap.least_share"), abs=1e-3)


def test_an_arm_beyond_every_lowering_is_not_told_to_lower() -> None:
    with pytest.raises(DraftRefused) as refused:
        draft_sleeve(sleeve(biceps=500.0))
    assert refused.value.code == "sleeve-arm-beyond-armhole"
    assert "lower_by" not in refused.value.facts


def test_a_quarter_of_the_armhole_is_the_least_and_a_low_cap_is_seen() -> None:
    """A quarter of the armhole is a shirt's cap height (from memory)."""
    given = sleeve(biceps=358.0)
    half = draft_sleeve(given)
    share = next(lever for lever in half.levers if lever.name == "cap_height_share")
    assert 0.25 <= share.pulled < share.least == pytest.approx(0.26)
    with_less = replace(given, cap_ease=5.0, biceps=335.0)
    low = next(lever for lever in draft_sleeve(with_less).levers if lever.name == "cap_height_share")
    assert low.least == pytest.approx(0.25)


def test_a_sleeve_too_narrow_for_its_armhole_is_drawn_a_little_wider() -> None:
    narrowest = next(
        half.biceps
        for biceps in range(240, 120, -5)
        if (half := draft_sleeve(sleeve(biceps=float(biceps)))).biceps > biceps + 1.0
    )
    given = sleeve(biceps=narrowest - 20.0)
    half = draft_sleeve(given)
    assert half.biceps == pytest.approx(narrowest, abs=10.0)  # the lean of the seams has its part in it
    assert next(lever for lever in half.levers if lever.name == "biceps_widened").at_limit
    assert abs(closures(given, half)["front"]) < 1e-3
    with pytest.raises(DraftRefused) as refused:
        draft_sleeve(sleeve(biceps=narrowest - 45.0))
    assert refused.value.code == "sleeve-arm-too-thin"


def test_the_crown_lies_behind_the_shoulder_seam_even_where_both_armholes_are_alike() -> None:
    """At least 3 degrees: the arm hangs forward (common practice, no source)."""
    front = armhole().front
    alike = ArmholeGiven(front, mirrored(front), front.segments[0].length, front.segments[0].length)
    assert draft_sleeve(sleeve(alike, biceps=310.0)).pitch == pytest.approx(3.0)
    assert draft_sleeve(sleeve(alike, biceps=310.0, pitch=0.0)).pitch == 0.0


def test_a_full_arm_in_a_narrow_armhole_makes_a_box_and_a_lowered_one_does_not() -> None:
    """.55 to .62 of the width at half the height is liked (a patternmaker's judgment), .72 a box."""
    narrow = sleeve(armhole(wider=-14.0, higher=10.0), biceps=330.0)
    half = draft_sleeve(narrow)
    box = next(lever for lever in half.levers if lever.name == "half_height_width")
    assert box.pulled > box.most
    points = np.vstack([dense(half.cap_front), dense(half.cap_back)])
    near = points[np.abs(points[:, 1] - half.cap_height / 2.0) < 0.3]
    assert (near[:, 0].max() - near[:, 0].min()) / half.biceps == pytest.approx(box.pulled, abs=5e-3)
    usual = next(lever for lever in draft_sleeve(sleeve()).levers if lever.name == "half_height_width")
    assert 0.5 < usual.pulled < 0.68


def mirrored(path: Path) -> Path:
    return path.transformed(Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0)))


def test_a_fuller_arm_asks_for_a_lower_armhole() -> None:
    amounts = [lower_armhole_by(sleeve(biceps=biceps)) or 0.0 for biceps in (365.0, 375.0, 390.0)]
    assert amounts == sorted(amounts)
    assert 0.0 < amounts[0] < amounts[2] < 60.0
    assert lower_armhole_by(sleeve(biceps=500.0)) is None


def test_lowering_draws_the_armhole_out_below_the_notches_alone() -> None:
    hole = armhole()
    deeper = lowered(hole, 15.0)
    assert deeper.front.end.y == pytest.approx(hole.front.end.y + 15.0)
    assert deeper.front.length - deeper.front_notch == pytest.approx(hole.front.length - hole.front_notch)
    assert not deeper.back.corners(1.0)


def test_what_cannot_be_drawn_is_refused_in_words() -> None:
    for given, code in (
        (sleeve(biceps=110.0), "sleeve-arm-too-thin"),
        (sleeve(keep="cap_height", cap_height=220.0), "sleeve-cap-not-reached"),
        (sleeve(length=110.0), "sleeve-too-short"),
    ):
        with pytest.raises(DraftRefused) as refused:
            draft_sleeve(given)
        assert refused.value.code == code
        assert str(refused.value)


@settings(max_examples=40)
@drawn(
    wider=st.floats(-22.0, 45.0),
    higher=st.floats(-55.0, 55.0),
    share=st.floats(0.62, 1.0),
    ease=st.floats(0.0, 40.0),
    length=st.floats(150.0, 700.0),
    back_ease=st.floats(0.0, 20.0),
)
def test_any_armhole_gets_a_cap_that_closes_or_a_refusal(
    wider: float, higher: float, share: float, ease: float, length: float, back_ease: float
) -> None:
    hole = armhole(wider, higher)
    given = sleeve(hole, biceps=share * hole.girth, cap_ease=ease, length=length, back_ease=back_ease)
    try:
        half = draft_sleeve(given)
    except DraftRefused as refused:
        assert refused.code in CODES
        return
    off = closures(given, half)
    if half.elbow_down is None:
        off["seams"] -= back_ease  # no elbow on so short a sleeve
    seen, levers = gaps(given, half), {lever.name: lever for lever in half.levers}
    if levers["biceps_widened"].at_limit:
        assert 0.0 < off.pop("biceps") <= 30.0
    assert max(map(abs, off.values())) < 5e-3, off
    for cap in (half.cap_front, half.cap_back):
        assert changes_of_side(dense(cap, 0.5)) == 1
    for which, gap in seen.items():
        flagged = levers[f"{which}_lay_gap"]
        assert gap <= LAY_LIMITS[which] + 0.1 or flagged.at_limit


def test_t4_the_triangle_of_a_handbook_draft() -> None:
    """T4: armholes 205 and 215, cap 140: half widths 149.75 + 176.14 = 325.9 (handbook draft, from memory).

    The triangle draws the slants as long as the armhole, the back 10 more, and curves over them; ours has
    exact curves, so only the order of size can agree: within 25 mm.
    """
    front, back = armhole(higher=4.0).front, armhole(higher=2.0).back
    hole = ArmholeGiven(front, back, front.segments[0].length, back.segments[0].length)
    assert (front.length, back.length) == pytest.approx((205.0, 215.0), abs=2.0)
    half = draft_sleeve(sleeve(hole, keep="cap_height", cap_height=140.0, cap_ease=25.0))
    assert half.biceps == pytest.approx(325.9, abs=25.0)


def test_every_figure_names_its_source() -> None:
    grades = {"standard", "handbook", "memory", "common practice", "own judgment"}
    for name, row in figure_table().items():
        assert row.source, name
        assert row.grade in grades, name
        assert row.unit in {"mm", "deg", ""}, name
