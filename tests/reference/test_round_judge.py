"""The outside judge of circle and gored skirts sees what is planted: 0.2 mm, angles a little over the limit.

Else the closures of the survey could not fail.
"""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from lower_judged import SHARES
from support.bodice_judge import ANGLE
from support.lower_patterns import lower_data, lower_wanted
from support.round_skirt_judge import (
    ROUND,
    RingWanted,
    circle_closures,
    circle_through,
    gore_closures,
    gore_faults,
)
from support.upper_patterns import longer, turned, with_fault

Data = dict[str, Any]
FAULT = 0.2
"""mm."""


def circle_failed(data: Data) -> set[str]:
    wanted = lower_wanted("circle-skirt")
    ring = RingWanted(wanted["waist_girth"], SHARES["half"], wanted["skirt_length"])
    return {one.name for one in circle_closures(data, ring) if not one.holds}


def gore_failed(data: Data) -> set[str]:
    return {one.name for one in gore_closures(data, lower_wanted("gored-skirt")) if not one.holds}


def test_nothing_is_found_where_nothing_is_planted() -> None:
    assert circle_failed(lower_data("circle-skirt")) == set()
    assert gore_failed(lower_data("gored-skirt")) == set()
    assert gore_faults(lower_data("gored-skirt")) == []


CIRCLE = [
    ("circle_skirt.front/waist", longer(FAULT), "waist"),
    ("circle_skirt.front/waist", longer(FAULT), "circle_skirt.front waist radius"),
    ("circle_skirt.back/hem", longer(FAULT), "hem"),
    ("circle_skirt.back/hem", longer(1.0), "area"),
    ("circle_skirt.front/side_seam", longer(FAULT), "circle_skirt/side_seam pair"),
    ("circle_skirt.front/side_seam", turned(ANGLE + 0.5), "circle_skirt.front/waist_side square"),
    ("circle_skirt.back/hem", turned(ANGLE + 0.5), "circle_skirt.back/hem_side square"),
    ("circle_skirt.back/hem", turned(120.0), "circle_skirt.back in one piece"),
]


@pytest.mark.parametrize(("edge", "change", "closure"), CIRCLE, ids=[one[2] for one in CIRCLE])
def test_a_fault_in_a_circle_is_seen(edge: str, change: Callable[[Any], None], closure: str) -> None:
    assert closure in circle_failed(with_fault(lower_data("circle-skirt"), edge, change))


GORES = [
    ("gored_skirt.center_front/waist", longer(FAULT), "waist"),
    ("gored_skirt.side_back/hem", longer(FAULT), "hem"),
    ("gored_skirt.side_front/hip_line", longer(FAULT), "hip"),
    ("gored_skirt.side_front/side_seam", longer(FAULT), "gored_skirt/side_seam pair"),
    ("gored_skirt.center_front/hem", turned(ANGLE + 0.5), "gored_skirt.center_front/hem_back square"),
    ("gored_skirt.center_back/waist", turned(ANGLE + 0.5), "gored_skirt.center_back/waist_front square"),
    ("gored_skirt.side_front/side_seam", turned(60.0), "gored_skirt.side_front in one piece"),
]


@pytest.mark.parametrize(("edge", "change", "closure"), GORES, ids=[one[2] for one in GORES])
def test_a_fault_in_a_gore_is_seen(edge: str, change: Callable[[Any], None], closure: str) -> None:
    assert closure in gore_failed(with_fault(lower_data("gored-skirt"), edge, change))


def test_an_oval_is_no_circle_and_a_waver_is_seen() -> None:
    t = np.linspace(0.0, 1.5, 400)
    radius, off = circle_through(np.column_stack([200.0 * np.cos(t), 200.0 * np.sin(t)]))
    assert radius == pytest.approx(200.0, abs=1e-6)
    assert off < 1e-6
    assert circle_through(np.column_stack([200.0 * np.cos(t), 201.0 * np.sin(t)]))[1] > ROUND

    def waver(rows: list[list[Any]]) -> None:
        start, end = np.array(rows[0][-2:]), np.array(rows[-1][-2:])
        side = np.array([-(end - start)[1], (end - start)[0]]) * 0.02
        first, second = start + (end - start) / 3.0 + side, start + 2.0 * (end - start) / 3.0 - side
        rows[1:] = [["C", *first, *second, *end]]

    wavering = with_fault(lower_data("gored-skirt"), "gored_skirt.side_front/side_seam", waver)
    assert any("bends both ways" in fault for fault in gore_faults(wavering))
