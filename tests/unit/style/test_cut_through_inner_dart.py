"""A style line across double-ended darts: each becomes two darts that open from the seam and agree with it.

Outside: numpy and shapely measure the stored data. That a waist seam divides the darts of a sheath, one above
and one below, and that their legs and the panels of the seam agree, is common practice, no source.
"""

from functools import cache

import numpy as np
import pytest

from notchbook.app.drafting import draft_recipe
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.pattern import sewn_length, walk_seam
from notchbook.recipe import Replay, add_step, replay
from support.style_lines import good, judge

BODY = MeasureSet.from_mm(
    "hand",
    {
        "bust_girth": 920.0,
        "waist_girth": 740.0,
        "hip_girth": 980.0,
        "hip_depth": 200.0,
        "back_waist_length": 410.0,
        "front_waist_length": 446.0,
        "center_front_length": 362.0,
        "neck_base_girth": 370.0,
        "shoulder_length": 124.0,
        "scye_depth": 205.0,
        "across_back": 345.0,
        "across_chest": 325.0,
        "neck_to_bust_point": 268.0,
        "bust_point_width": 182.0,
    },
    population="women",
)
"""Invented for the test."""


RECIPE = draft_recipe("bodice", BODY, {"length": "hip"})
DARTS = {"front": ("waist_dart",), "back": ("waist_dart_center", "waist_dart_side")}
ROLES = {"front": ("center", "side"), "back": ("center", "middle", "side")}


@cache
def cut_at(down: str, shape: str = "straight") -> Replay:
    """The hip-long bodice cut across, so far above the hem at the side and at the center."""
    lines = [
        {
            "start": {
                "edge": f"bodice.{word}/side_seam",
                "from_point": f"bodice.{word}/hem_side",
                "distance": down,
                **({"part": "bodice.front/side_seam/below"} if word == "front" else {}),
            },
            "end": {
                "edge": f"bodice.{word}/center_{word}",
                "from_point": f"bodice.{word}/hem_center",
                "distance": down,
            },
            "shape": shape,
        }
        for word in ("front", "back")
    ]
    told = {"lines": lines, "first_role": "below", "second_role": "above"}
    return replay(add_step(RECIPE, "cut_style_line", told, base=BODY, slug="waist"), BODY)


@pytest.mark.parametrize("down", ["20 cm", "16 cm"])
def test_each_dart_becomes_two_that_open_from_the_seam(down: str) -> None:
    pattern = good(cut_at(down))
    for word, darts in DARTS.items():
        for role in ("above", "below"):
            piece = pattern.pieces[f"waist.{word}_{role}"]
            assert not piece.inner_darts
            names = {f"bodice.{word}/{dart}/{role}" for dart in darts}
            assert names <= {one.name for one in piece.intakes}
            assert {one.mouth for one in piece.intakes if one.name in names} == {f"{piece.name}/style_line"}
        for dart in darts:
            assert pattern.groups[f"bodice.{word}/{dart}"].members == tuple(
                f"bodice.{word}/{dart}/{role}" for role in ("above", "below")
            )


@pytest.mark.parametrize("down", ["20 cm", "16 cm"])
def test_the_legs_agree_and_the_seam_agrees_panel_by_panel(down: str) -> None:
    pattern = good(cut_at(down))
    seen = judge(pattern)
    for word, darts in DARTS.items():
        for role in ("above", "below"):
            for dart in darts:
                legs = [f"bodice.{word}/{dart}/{side}_leg/{role}" for side in ("center", "side")]
                assert seen.length(legs[0]) == pytest.approx(seen.length(legs[1]), abs=0.1), legs
        for panel in ROLES[word]:
            above, below = (
                seen.length(f"waist.{word}_{role}/style_line/{panel}") for role in ("above", "below")
            )
            assert above == pytest.approx(below, abs=0.15), (word, panel)
        assert walk_seam(pattern, pattern.seams[f"waist/{word}_style_line"]).misfit == pytest.approx(
            0.0, abs=0.25
        )


def test_the_waist_measures_what_it_measured_across_the_uncut_piece() -> None:
    """The width at the widest place of the darts less what they take up, by numpy on the uncut draft."""
    plain, cut = replay(RECIPE, BODY).pattern, good(cut_at("20 cm"))
    for word, darts in DARTS.items():
        piece = plain.pieces[f"bodice.{word}"]
        side = plain.edges[f"bodice.{word}/hem"].path
        xs = [abs(point.x) for point in (side.start, side.end)]
        width = max(xs) - min(xs)
        taken = 0.0
        for dart in darts:
            legs = [piece.line(f"bodice.{word}/{dart}/{role}_leg").path for role in ("center", "side")]
            taken += float(np.ptp([leg.segments[0].end.x for leg in legs]))
        across = sewn_length(cut, f"waist.{word}_below/style_line")
        assert taken > 20.0
        assert across < width - taken + 1.0, "the side seam is hollow at the waist"
        assert across == pytest.approx(sewn_length(cut, f"waist.{word}_above/style_line"), abs=0.25)


def test_no_cloth_is_gained_or_lost_but_for_the_smooth_mouths() -> None:
    plain, cut = judge(replay(RECIPE, BODY).pattern), judge(good(cut_at("16 cm")))
    for word, darts in DARTS.items():
        whole = plain.polygon(f"bodice.{word}").area
        parts = sum(cut.polygon(f"waist.{word}_{role}").area for role in ("above", "below"))
        piece = replay(RECIPE, BODY).pattern.pieces[f"bodice.{word}"]
        opened = 0.0
        for dart in darts:
            legs = [piece.line(f"bodice.{word}/{dart}/{role}_leg").path for role in ("center", "side")]
            height = legs[0].start.y - legs[0].end.y
            opened += height * float(np.ptp([leg.segments[0].end.x for leg in legs])) / 2.0
        assert parts == pytest.approx(whole - opened, abs=600.0), "6 square centimeters of truing"


def test_the_seam_is_fair_with_the_darts_closed_and_no_leg_is_a_fault() -> None:
    for down in ("20 cm", "16 cm"):
        codes = {finding.code for finding in examine(cut_at(down), cut=False).findings}
        assert not codes & {"dart-mouth-dip", "dart-mouth-peak", "edge-kinked", "seam-misfit"}


def test_a_line_that_meets_a_leg_twice_stops_the_recipe_in_words() -> None:
    line = {
        "start": {"edge": "bodice.back/side_seam", "from_point": "bodice.back/hem_side", "distance": "16 cm"},
        "end": {
            "edge": "bodice.back/center_back",
            "from_point": "bodice.back/hem_center",
            "distance": "16 cm",
        },
        "shape": "straight",
        "through": [{"along": 0.35, "off": "0 mm"}, {"along": 0.3, "off": "20 mm"}],
    }
    stopped = replay(add_step(RECIPE, "cut_style_line", {"lines": [line]}, base=BODY), BODY).suspended
    assert stopped is not None
    assert stopped.error.code == "style-line-crosses"
    assert "dart" in stopped.error.text()


def test_a_line_below_the_darts_leaves_them_whole() -> None:
    pieces = good(cut_at("2 cm")).pieces.values()
    assert sum(len(piece.inner_darts) for piece in pieces) == 3
