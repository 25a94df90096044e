"""Style lines on random bodies and at random places: true seams and plain outlines, or a refusal in words."""

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from make_bodies import Group
from notchbook.body import MeasureSet
from notchbook.errors import InputError, catalogue
from notchbook.geometry import assert_paths_close
from notchbook.pattern import require_one, sewn_length, walk_seam
from notchbook.recipe import Replay
from support.style_lines import (
    BACK_PRINCESS,
    EMPIRE,
    FRONT,
    SKIRT_BACK,
    SKIRT_FRONT,
    bodice_with,
    hip_yoke,
    judge,
    place,
    princess,
    skirt_with,
)
from support.yoke_skirt import FORM_A, body
from upper_random import keys_of, plausible_body

WOMEN: Group = "women"
DEVIATIONS = st.lists(st.floats(-2.0, 2.0), min_size=len(keys_of(WOMEN)), max_size=len(keys_of(WOMEN)))
SHARES = st.floats(0.25, 0.75)


def sound(done: Replay) -> bool:
    """Whether the run came through with true seams and plain outlines; a stop must be in words."""
    if done.suspended is not None:
        error = done.suspended.error
        assert error.code in catalogue()
        assert error.text()
        return False
    pattern = done.pattern
    for seam in pattern.seams.values():
        assert abs(walk_seam(pattern, seam).misfit) <= 0.5, seam.name
    shapes = judge(pattern)
    for name in pattern.pieces:
        assert shapes.polygon(name).is_valid, name
    return True


def drafted(measures: MeasureSet) -> bool:
    """Whether the block itself can be drafted for this body."""
    try:
        return bodice_with(measures=measures).suspended is None
    except InputError:
        return False


@settings(max_examples=12, deadline=None)
@given(DEVIATIONS, SHARES, st.sampled_from(["armhole", "shoulder"]))
@example([0.0] * len(keys_of(WOMEN)), 0.5, "armhole")
def test_a_princess_seam_on_any_woman(drawn: list[float], share: float, edge: str) -> None:
    measures = plausible_body(drawn, WOMEN)
    if not drafted(measures):
        return
    corner = "shoulder_point" if edge == "armhole" else "side_neck_point"
    told = princess(place(f"{FRONT}/{edge}", f"{FRONT}/{corner}", share))
    done = bodice_with(
        ("princess_seam", "princess", told), ("princess_seam", "back", BACK_PRINCESS), measures=measures
    )
    if not sound(done):
        return
    pattern, plain = done.pattern, bodice_with(measures=measures).pattern
    walk = walk_seam(pattern, pattern.seams["princess/front_style_line"])
    assert walk.second - walk.first == pytest.approx(4.0, abs=0.3)
    for kept in ("neck", "side_seam", "waist", "shoulder", "armhole"):
        wanted = sewn_length(plain, f"{FRONT}/{kept}")
        assert sewn_length(pattern, f"{FRONT}/{kept}") == pytest.approx(wanted, abs=0.25), kept


@settings(max_examples=8, deadline=None)
@given(DEVIATIONS)
def test_a_seam_under_the_bust_on_any_woman(drawn: list[float]) -> None:
    measures = plausible_body(drawn, WOMEN)
    if drafted(measures):
        sound(bodice_with(("cut_style_line", "empire", EMPIRE), measures=measures))


SKIRTS = st.builds(
    lambda hip, drop, depth: body(hip - drop, hip, depth),
    st.floats(840.0, 1300.0),
    st.floats(140.0, 300.0),
    st.floats(175.0, 240.0),
)


@settings(max_examples=15, deadline=None)
@given(SKIRTS, st.integers(60, 180), st.integers(60, 180), st.sampled_from(["none", "stays"]))
def test_a_hip_yoke_on_any_body(measures: MeasureSet, side: int, center: int, rest: str) -> None:
    told = hip_yoke(rest, f"{side} mm", f"{center} mm")
    done = skirt_with(("cut_style_line", "yoke", told), measures=measures)
    if not sound(done):
        return
    plain = skirt_with(measures=measures).pattern
    for panel in (SKIRT_FRONT, SKIRT_BACK):
        wanted = sewn_length(plain, f"{panel}/waist")
        assert sewn_length(done.pattern, f"{panel}/waist") == pytest.approx(wanted, abs=0.1)


OFFS = st.lists(st.integers(-25, 25), min_size=0, max_size=2)


@settings(max_examples=25, deadline=None)
@given(st.integers(150, 400), st.integers(-60, 60), OFFS)
def test_cut_and_joined_again_is_the_same_piece(side: int, slope: int, offs: list[int]) -> None:
    line = {
        "start": place(f"{SKIRT_FRONT}/side_seam", f"{SKIRT_FRONT}/waist_side", f"{side} mm"),
        "end": place(f"{SKIRT_FRONT}/center_front", f"{SKIRT_FRONT}/waist_center", f"{side + slope} mm"),
        "through": [
            {"along": (index + 1) / (len(offs) + 1), "off": f"{off} mm"} for index, off in enumerate(offs)
        ],
    }
    join = {"first_edge": "cut.front_below/style_line", "second_edge": "cut.front_above/style_line"}
    done = skirt_with(
        ("cut_style_line", "cut", {"lines": [line]}), ("join_pieces", "again", join), measures=FORM_A
    )
    if not sound(done):
        return
    plain = skirt_with(measures=FORM_A).pattern
    for edge in plain.pieces[SKIRT_FRONT].outline:
        again = done.pattern.edges[require_one(done.pattern, edge.name)]
        assert_paths_close(again.path, edge.path, 1e-6)
    areas = [
        piece.sew_line.area() for piece in (done.pattern.pieces["again.joined"], plain.pieces[SKIRT_FRONT])
    ]
    assert areas[0] == pytest.approx(areas[1], abs=1e-6)
