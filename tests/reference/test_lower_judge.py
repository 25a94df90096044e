"""The outside judge of trousers sees what is planted: 0.2 mm, and angles a little over the limit.

Else the closures of the survey could not fail. Faults are planted into the plain data of the pattern.
"""

from collections.abc import Callable
from copy import deepcopy
from typing import Any

import numpy as np
import pytest

from support.bodice_judge import ANGLE, SIDE_ANGLE
from support.lower_judge import (
    CORNER_DEPTH,
    FRONT_DARTS,
    LowerJudge,
    leg_figures,
    lower_misses,
    shape_faults,
    sharpest,
    trousers_closures,
)
from support.lower_patterns import lower_data, lower_wanted
from support.upper_patterns import longer, turned, with_fault

Data = dict[str, Any]
Change = Callable[[list[list[Any]]], None]
FAULT = 0.2
"""mm."""


def planted(edge: str, change: Change) -> Data:
    return with_fault(lower_data("trousers"), f"trousers.{edge}", change)


def failed(data: Data, wanted: dict[str, float] | None = None) -> set[str]:
    asked = lower_wanted("trousers") if wanted is None else wanted
    return {one.name for one in trousers_closures(LowerJudge(data), asked) if not one.holds}


def test_nothing_is_found_where_nothing_is_planted() -> None:
    assert lower_misses(lower_data("trousers"), lower_wanted("trousers")) == []


EDGES: list[tuple[str, Change, str]] = [
    ("front/crotch_seam", longer(FAULT), "crotch_length"),
    ("back/crotch_seam", longer(FAULT), "crotch_length"),
    ("front/side_seam", longer(FAULT), "side_seam pair"),
    ("back/side_seam", longer(FAULT), "side_seam pair"),
    ("front/side_seam", longer(FAULT), "outside_leg"),
    ("front/inseam", longer(FAULT), "inseam pair"),
    ("back/inseam", longer(FAULT), "inseam pair"),
    ("front/hip_line", longer(FAULT), "hip_girth"),
    ("back/hip_line", longer(FAULT), "hip_girth"),
    ("front/crotch_seam", turned(ANGLE + 0.5), "across crotch_point"),
    ("back/inseam", turned(ANGLE + 0.5), "across crotch_point"),
    ("back/side_seam", turned(SIDE_ANGLE + 0.5, -1), "across waist_side"),
    ("front/hem", turned(SIDE_ANGLE + 0.5), "across hem_side"),
    ("front/hem", turned(SIDE_ANGLE + 0.5), "across hem_inseam"),
    ("front/crotch_seam", turned(ANGLE + 0.5, -1), "front waist square"),
    ("front/crease_line", turned(0.5), "front crease on the grain"),
    ("back/hem", longer(4.0 * FAULT), "back crease in the middle of the hem"),
    ("back/inseam", turned(70.0), "back in one piece"),
]


@pytest.mark.parametrize(("edge", "change", "closure"), EDGES, ids=[f"{e}: {c}" for e, _, c in EDGES])
def test_a_planted_fault_is_seen(edge: str, change: Change, closure: str) -> None:
    assert closure in failed(planted(edge, change))


def test_faults_at_the_waist_and_its_darts_are_seen() -> None:
    data = lower_data("trousers")
    judge = LowerJudge(data)
    waists = [name for piece in judge.names.values() for name in judge.named(piece, "waist")]
    assert len(waists) > 2, "a body without darts proves nothing"
    for name in waists:
        assert "waist_girth" in failed(with_fault(data, name, longer(FAULT)))
    for which, piece in judge.names.items():
        for dart, first, _ in judge.darts(piece):
            assert f"{dart} legs" in failed(with_fault(data, first, longer(FAULT)))
        turned_waist = with_fault(data, judge.named(piece, "waist")[0], turned(ANGLE + 0.5))
        assert f"{which} waist across a dart" in failed(turned_waist)


@pytest.mark.parametrize(
    "key", ["waist_girth", "hip_girth", "crotch_length", "outside_leg", "knee_girth", "hem_girth"]
)
def test_a_length_that_is_not_as_asked_is_seen(key: str) -> None:
    wanted = lower_wanted("trousers")
    assert key in failed(lower_data("trousers"), wanted | {key: wanted[key] + FAULT})


def test_a_leg_too_close_at_the_thigh_is_seen_at_both_levels() -> None:
    judge = LowerJudge(lower_data("trousers"))
    # 5 cm lower the body's thigh too is smaller, by 15 mm.
    widths = [judge.below_fork(0.0), judge.below_fork(50.0) + 15.0]
    for width, name in zip(widths, ("thigh at least", "thigh 50 below at least"), strict=True):
        assert name in failed(lower_data("trousers"), {"thigh_girth": width + FAULT})
        assert name not in failed(lower_data("trousers"), {"thigh_girth": width - FAULT})


def test_a_diagonal_and_a_tight_corner_are_seen() -> None:
    usual = LowerJudge(lower_data("trousers")).front.corner_depth
    assert CORNER_DEPTH["front"][0] <= usual <= CORNER_DEPTH["front"][1]
    straight = planted("front/crotch_seam", straightened)
    assert LowerJudge(straight).front.corner_depth > usual + 10.0
    assert any("front corner depth" in fault for fault in shape_faults(LowerJudge(straight), CORNER_DEPTH))


def straightened(rows: list[list[Any]]) -> None:
    """Every curve of a path drawn straight."""
    for index, row in enumerate(rows):
        if row[0] == "C":
            rows[index] = ["L", *row[-2:]]


def test_a_wave_a_corner_and_a_short_back_are_seen() -> None:
    def waved(rows: list[list[Any]]) -> None:
        start, end = np.array(rows[0][-2:]), np.array(rows[-1][-2:])
        side = np.array([-(end - start)[1], (end - start)[0]]) * 0.1
        first, second = start + (end - start) / 3.0 + side, start + 2.0 * (end - start) / 3.0 - side
        rows[1:] = [["C", *first, *second, *end]]

    wave = shape_faults(LowerJudge(planted("front/crotch_seam", waved)), None)
    assert any("crotch bends both ways" in fault for fault in wave)
    corner = shape_faults(LowerJudge(planted("back/inseam", straightened_in_two)), None)
    assert any("inseam has a corner" in fault for fault in corner)
    longer_front = shape_faults(LowerJudge(planted("front/crotch_seam", longer(250.0))), None)
    assert "the back crotch is not longer" in longer_front


def straightened_in_two(rows: list[list[Any]]) -> None:
    """A path as two straight lines over a place beside its middle."""
    start, end = np.array(rows[0][-2:]), np.array(rows[-1][-2:])
    side = np.array([-(end - start)[1], (end - start)[0]]) * 0.05
    rows[1:] = [["L", *((start + end) / 2.0 + side)], ["L", *end]]


def test_a_front_with_too_much_dart_is_seen() -> None:
    """The front's dart made wider at its mouth."""
    data = deepcopy(lower_data("trousers"))
    judge = LowerJudge(data)
    _, first, _ = judge.darts("trousers.front")[0]

    def wider(rows: list[list[Any]]) -> None:
        rows[0][-2] += 25.0 * np.sign(rows[0][-2] - judge.edges[judge.darts("trousers.front")[0][2]][-1][0])

    faults = shape_faults(LowerJudge(with_fault(data, first, wider)), None)
    assert any(fault.startswith("front darts together") for fault in faults)
    assert any(fault.startswith("front has the larger dart") for fault in faults)
    assert leg_figures(judge)["front darts together"] <= FRONT_DARTS + 0.1


def test_a_smooth_curve_has_no_corner() -> None:
    t = np.linspace(0.0, 1.5, 400)
    arc = np.column_stack([np.cos(t), np.sin(t)]) * 40.0
    assert sharpest(arc) < ANGLE
    assert sharpest(np.array([[0.0, 0.0], [1.0, 0.0], [2.0, 0.1]])) > ANGLE
