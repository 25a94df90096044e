"""The bodice to the hip: waist, hip and seams judged from the plain data by other code."""

from typing import Any

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notchbook.body import MeasureSet
from notchbook.pattern import pattern_from_data, pattern_to_data
from support.bodice_bodies import CHILD, FULL_BUST, MAN, WOMAN, bodice_run, body
from support.bodice_judge import BODICE, UpperJudge
from support.skirt_judge import length

PLACES = ("side", "underarm", "shoulder", "armhole", "french")


def judged(measures: MeasureSet, **parameters: Any) -> tuple[UpperJudge, dict[str, float]]:
    done = bodice_run(measures, length="hip", **parameters)
    return UpperJudge(pattern_to_data(done.pattern)), {p.measure: p.wanted for p in done.expectations}


def off(judge: UpperJudge, wanted: dict[str, float]) -> dict[str, float]:
    """By how much each closure of the lower part misses, mm or degrees."""
    found = {}
    for key, word in (("waist_girth", "waist_line"), ("hip_girth", "hip_line"), ("bust_girth", "bust_line")):
        lines = [name for piece in BODICE.values() for name in judge.lines_named(piece, word)]
        found[key] = 2.0 * judge.length(*lines) - wanted[key]
    found["side seams"] = judge.sewn("front", "side_seam") - judge.sewn("back", "side_seam")
    for which, piece in BODICE.items():
        found[f"{which} hem at the center"] = judge.corner(piece, "hem_center") - 90.0
        found[f"{which} hem at the side"] = judge.corner(piece, "hem_side") - 90.0
        for dart in judge.pieces[piece].get("inner_darts", []):
            center, side = (judge.lines[dart[leg]] for leg in ("center_leg", "side_leg"))
            found[dart["name"]] = length(center) - length(side)
    return found


def misses(judge: UpperJudge, wanted: dict[str, float]) -> list[str]:
    return [f"{name} {miss:+.3f}" for name, miss in off(judge, wanted).items() if abs(miss) > 0.1]


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("values", [WOMAN, FULL_BUST], ids=["ordinary", "full"])
def test_closes_to_the_hip(values: dict[str, float], place: str) -> None:
    judge, wanted = judged(body(values), bust_dart=place)
    assert misses(judge, wanted) == []
    assert all(judge.polygon(piece).is_valid for piece in judge.pieces)


@pytest.mark.parametrize(
    "measures",
    [body(MAN, "men"), body(CHILD, None), body(waist_girth=960.0), body(hip_girth=860.0)],
    ids=["man", "child", "waist larger than bust", "hip smaller than bust"],
)
def test_closes_on_other_figures(measures: MeasureSet) -> None:
    judge, wanted = judged(measures)
    assert misses(judge, wanted) == []
    assert all(judge.polygon(piece).is_valid for piece in judge.pieces)


@given(hip=st.floats(880.0, 1150.0), waist=st.floats(640.0, 900.0), depth=st.floats(160.0, 240.0))
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_closes_on_plausible_hips(hip: float, waist: float, depth: float) -> None:
    judge, wanted = judged(body(hip_girth=hip, waist_girth=waist, hip_depth=depth))
    assert wanted["hip_girth"] == pytest.approx(hip + 60.0)
    assert misses(judge, wanted) == []


def test_the_side_seam_has_no_corner_at_the_waist() -> None:
    judge, _ = judged(body())
    for which in BODICE:
        run = judge.run(BODICE[which], "side_seam")[0]
        # Every 2 mm: over 2 degrees there would be a corner, for the curve turns by 17 degrees over 50 mm.
        steps = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(run, axis=0), axis=1))])
        even = np.arange(0.0, steps[-1], 2.0)
        points = np.column_stack([np.interp(even, steps, run[:, axis]) for axis in (0, 1)])
        ways = np.unwrap(np.arctan2(*np.diff(points, axis=0).T[::-1]))
        assert float(np.degrees(np.abs(np.diff(ways)).max())) < 2.0


@pytest.mark.parametrize(
    "measures",
    [body(), body(MAN, "men"), body(hip_girth=1150.0), body(waist_girth=960.0), body(hip_depth=160.0)],
    ids=["woman", "man", "full hip", "large waist", "short hip depth"],
)
def test_hip_depth_is_the_way_down_the_side_from_the_waist(measures: MeasureSet) -> None:
    judge, _ = judged(measures, bust_dart="shoulder")
    for which in BODICE:
        notch = judge.notch_from_underarm(
            "waist_notch", f"{BODICE[which]}/side_seam", judge.run(BODICE[which], "side_seam")[0]
        )
        below = judge.sewn(which, "side_seam") - notch
        assert below == pytest.approx(measures.value("hip_depth"), abs=0.05)


def test_goes_through_its_data_unchanged() -> None:
    pattern = bodice_run(body(), length="hip").pattern
    assert pattern_from_data(pattern_to_data(pattern)) == pattern


def test_a_planted_fault_in_the_hip_line_is_seen() -> None:
    judge, wanted = judged(body())
    judge.lines["bodice.front/hip_line"][-1] += np.array([0.2, 0.0])
    assert misses(judge, wanted) != []
