"""The shape of a style line: through given points, even, straight; its notches; what it may not do."""

from typing import Any

import numpy as np
import pytest

from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.pattern import Pattern, pattern_to_data, walk_seam
from notchbook.recipe import Replay, replay
from support.skirt_judge import Points, polyline
from support.style_lines import SKIRT_BACK, SKIRT_FRONT, SMALL, WOMAN, code, good, judge, place, skirt_with
from support.yoke_skirt import FORM_A

LINE = {
    "start": place(f"{SKIRT_FRONT}/side_seam", f"{SKIRT_FRONT}/waist_side", "26 cm"),
    "end": place(f"{SKIRT_FRONT}/center_front", f"{SKIRT_FRONT}/waist_center", "26 cm"),
}
"""A line across the front below the dart."""


def cut(notches: str = "balance", **line: Any) -> Replay:
    told = {"lines": [{**LINE, **line}], "notches": notches}
    return skirt_with(("cut_style_line", "cut", told), measures=FORM_A)


def drawn(pattern: Pattern) -> Points:
    """The edge below the cut, from the side to the center."""
    data = pattern_to_data(pattern)
    outline = next(piece["outline"] for piece in data["pieces"] if piece["name"] == "cut.front_below")
    line = polyline(next(edge["path"] for edge in outline if edge["name"].endswith("style_line")))
    return line if line[0][0] < line[-1][0] else line[::-1]


@pytest.mark.parametrize("off", ["30 mm", "-30 mm"])
def test_the_line_runs_through_its_points_told_from_the_straight_way(off: str) -> None:
    """A third and two thirds along, so far beside: where plane geometry puts them, by numpy."""
    points = [{"along": 1 / 3, "off": off}, {"along": 2 / 3, "off": off}]
    line = drawn(good(cut(through=points)))
    start, end = line[0], line[-1]
    along = (end - start) / np.linalg.norm(end - start)
    left = np.array([-along[1], along[0]])
    for share in (1 / 3, 2 / 3):
        wanted = start + (end - start) * share + left * float(off.split()[0])
        assert np.linalg.norm(line - wanted, axis=1).min() < 0.3


def test_through_points_the_line_still_meets_the_edges_square() -> None:
    pattern = good(cut(through=[{"along": 0.5, "off": "-20 mm"}]))
    for piece in ("cut.front_above", "cut.front_below"):
        for corner in ("side_seam_end", "center_front_end"):
            assert judge(pattern).corner(piece, corner) == pytest.approx(90.0, abs=0.5)


def test_a_straight_line_is_straight_and_may_have_corners_where_it_is_told() -> None:
    line = drawn(good(cut(shape="straight")))
    assert len(line) == 2
    vee = drawn(good(cut(shape="straight", through=[{"along": 0.5, "off": "-30 mm"}])))
    assert len(vee) == 3


SIDE = {"edge": f"{SKIRT_FRONT}/side_seam", "from_point": f"{SKIRT_FRONT}/waist_side"}
SQUARED: dict[str, Any] = {"shape": "square", "start": LINE["end"], "end": SIDE}
"""A line straight across from the center, to wherever it meets the side."""


@pytest.mark.parametrize("measures", [FORM_A, WOMAN, SMALL], ids=["form", "woman", "small"])
def test_a_line_squared_across_is_straight_and_square_to_the_center_on_every_body(
    measures: MeasureSet,
) -> None:
    """Common practice, no source: a yoke is squared across from the center to the side or the armhole."""
    pattern = good(skirt_with(("cut_style_line", "cut", {"lines": [SQUARED]}), measures=measures))
    line = drawn(pattern)
    assert len(line) == 2
    assert line[0][1] == pytest.approx(line[1][1], abs=1e-9)  # the center of a skirt is upright
    assert judge(pattern).corner("cut.front_above", "center_front_end") == pytest.approx(90.0, abs=1e-6)


def test_a_squared_line_may_be_turned_and_is_straight_still() -> None:
    line = drawn(good(cut(**SQUARED, start_angle=8.0)))
    assert len(line) == 2
    across, up = line[1] - line[0]
    assert abs(np.degrees(np.arctan2(up, across))) == pytest.approx(8.0, abs=1e-6)


@pytest.mark.parametrize(
    "more",
    [
        {"end": {**SIDE, "distance": "26 cm"}},
        {"end": {**SIDE, "fraction": 0.4}},
        {"end": {**SIDE, "distance": "2 cm", "notch": "skirt.front/hip_notch"}},
        {"end_angle": 5.0},
        {"through": [{"along": 0.5, "off": "-20 mm"}]},
        {"darts": [{"intake": f"{SKIRT_FRONT}/waist_dart"}]},
    ],
    ids=["a distance", "a share", "a notch", "an angle there", "a point between", "a dart"],
)
def test_a_squared_line_takes_nothing_that_it_cannot_keep_to(more: dict[str, Any]) -> None:
    assert code(cut(**{**SQUARED, **more})) == "line-squared-and-told"


@pytest.mark.parametrize(
    ("end", "refused"),
    [
        ({"edge": f"{SKIRT_FRONT}/hem", "from_point": f"{SKIRT_FRONT}/hem_center"}, "style-line-elsewhere"),
        (
            {"edge": f"{SKIRT_BACK}/side_seam", "from_point": f"{SKIRT_BACK}/waist_side"},
            "line-between-pieces",
        ),
    ],
)
def test_a_squared_line_that_does_not_meet_the_edge_is_refused(end: dict[str, str], refused: str) -> None:
    assert code(cut(**{**SQUARED, "end": end})) == refused


def test_an_even_line_is_square_where_it_keeps_its_grain_and_bends_one_way() -> None:
    done = cut(shape="even", start=place(f"{SKIRT_FRONT}/side_seam", f"{SKIRT_FRONT}/waist_side", "22 cm"))
    pattern = good(done)
    assert judge(pattern).corner("cut.front_below", "center_front_end") == pytest.approx(90.0, abs=0.2)
    assert judge(pattern).corner("cut.front_below", "side_seam_end") != pytest.approx(90.0, abs=2.0)
    assert not {"edge-wavers", "edge-bumpy"} & {finding.code for finding in examine(done, cut=False).findings}


def test_notches_stand_above_and_below_where_the_curve_is_deepest() -> None:
    pattern = good(cut("apex", through=[{"along": 0.4, "off": "-25 mm"}]))
    walk = walk_seam(pattern, pattern.seams["cut/front_style_line"])
    first, second = walk.stations
    assert {first.notch, second.notch} == {"above_apex_notch", "below_apex_notch"}
    assert (second.first or 0.0) - (first.first or 0.0) == pytest.approx(100.0, abs=0.5)
    line = drawn(pattern)
    chord = line[-1] - line[0]
    beside = np.abs((line - line[0]) @ np.array([-chord[1], chord[0]]))
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
    deepest = along[beside.argmax()]
    middle = ((first.first or 0.0) + (second.first or 0.0)) / 2.0
    assert min(abs(middle - deepest), abs(walk.first - middle - deepest)) < 3.0
    assert walk_seam(good(cut("none")), good(cut("none")).seams["cut/front_style_line"]).stations == ()


def test_the_back_has_double_notches_also_when_it_is_cut_alone() -> None:
    line = {
        "start": place(f"{SKIRT_BACK}/side_seam", f"{SKIRT_BACK}/waist_side", "26 cm"),
        "end": place(f"{SKIRT_BACK}/center_back", f"{SKIRT_BACK}/waist_center", "26 cm"),
    }
    pattern = good(skirt_with(("cut_style_line", "cut", {"lines": [line]}), measures=FORM_A))
    assert {n.kind for n in pattern.notches.values() if n.purpose == "balance"} == {"double"}


def test_the_curve_goes_with_the_body() -> None:
    """The points keep their shares of the way on a wider body."""
    wide = FORM_A.with_value("hip_girth", 1080.0).with_value("waist_girth", 820.0)
    told = {"lines": [{**LINE, "through": [{"along": 0.5, "off": "1/20 hip"}]}]}
    for measures in (FORM_A, wide):
        line = drawn(good(skirt_with(("cut_style_line", "cut", told), measures=measures)))
        start, end = line[0], line[-1]
        chord = end - start
        deep = np.abs((line - start) @ np.array([-chord[1], chord[0]])).max() / np.linalg.norm(chord)
        assert deep == pytest.approx(measures.value("hip_girth") / 20.0, rel=0.05)


def test_a_line_that_leaves_the_piece_or_crosses_itself_is_lost() -> None:
    below_hem = [{"along": 0.5, "off": "-50 cm"}]
    assert code(cut(shape="straight", through=below_hem)) == "style-line-crosses"
    knot = [
        {"along": 0.7, "off": "30 mm"},
        {"along": 0.3, "off": "30 mm"},
        {"along": 0.3, "off": "-30 mm"},
        {"along": 0.7, "off": "60 mm"},
    ]
    assert code(cut(shape="straight", through=knot)) == "style-line-crosses"


def test_a_curve_that_would_turn_back_is_refused() -> None:
    back = [{"along": 0.9, "off": "0 mm"}, {"along": 0.1, "off": "1 mm"}]
    assert code(cut(through=back)) in {"style-line-turns-back", "style-line-crosses"}


def test_a_line_that_ends_on_another_edge_on_this_body_is_lost() -> None:
    """The place lies beyond the dart: which part of the waist is cut is written down, never a result."""
    told = {
        "lines": [
            {
                "start": place(
                    f"{SKIRT_FRONT}/waist",
                    f"{SKIRT_FRONT}/waist_center",
                    "84 mm",
                    part=f"{SKIRT_FRONT}/waist/center",
                ),
                "end": place(f"{SKIRT_FRONT}/hem", f"{SKIRT_FRONT}/hem_center", "90 mm"),
            }
        ]
    }
    narrow = FORM_A.with_value("waist_girth", 600.0)
    done = skirt_with(("cut_style_line", "cut", told), measures=FORM_A)
    good(done)
    assert code(replay(done.recipe, narrow)) == "style-line-elsewhere"
