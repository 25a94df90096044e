"""The skirt closes: judged from the finished outline by other code, and every closure catches a fault."""

from typing import Any

import numpy as np
import pytest
from fontTools.misc.bezierTools import calcCubicArcLength
from svgpathtools import CubicBezier

from notchbook.body import MeasureSet
from notchbook.pattern import pattern_to_data
from support.skirt_judge import PANELS, Judge, closures, misses, moved_end, turns_both_ways
from support.yoke_skirt import FORM_A, auto_skirt, body, drafted, run, survey_women

WOMEN = survey_women()


def judged(measures: MeasureSet, data: dict[str, Any], waist_ease: float = 15.0) -> dict[str, float]:
    """The misses of a draft with the given ease at the waist; a raised hip ease is taken from the draft."""
    hip = measures.value("hip_girth") + 50.0
    drawn = 2.0 * Judge(data).length(*(f"{panel}/hip_line" for panel in PANELS))
    raised = drawn if measures.value("waist_girth") + waist_ease > hip else hip
    waist, depth = measures.value("waist_girth") + waist_ease, measures.value("hip_depth")
    return closures(data, waist, raised, depth)


@pytest.mark.parametrize("woman", WOMEN, ids=lambda woman: woman.name)
def test_a_surveyed_body_closes_and_has_no_fault_of_shape(woman: MeasureSet) -> None:
    data = pattern_to_data(drafted(woman))
    assert misses(judged(woman, data)) == []
    judge = Judge(data)
    for panel in PANELS:
        assert judge.polygon(panel).is_valid
        assert not turns_both_ways(judge.edges[f"{panel}/side_seam"])
        assert judge.polygon(panel).exterior.is_ccw


def test_the_side_seams_are_one_line_reflected() -> None:
    judge = Judge(pattern_to_data(drafted()))
    front, back = judge.edges["skirt.front/side_seam"], judge.edges["skirt.back/side_seam"]
    # Both hips and the frame differ, the curve does not: laid hip on hip, it is the same.
    reflected = front[::-1] * np.array([-1.0, 1.0])
    assert np.allclose(reflected - reflected[0], back - back[0], atol=1e-9)


def test_darts_closed_the_waist_runs_on_across_every_dart() -> None:
    judge = Judge(pattern_to_data(drafted()))
    for panel in PANELS:
        for name, _, _ in judge.darts(panel):
            word = name.removeprefix(f"{panel}/")
            mouths = [judge.corner(panel, f"{word}/{mouth}") for mouth in ("center_mouth", "side_mouth")]
            assert sum(mouths) == pytest.approx(180.0, abs=0.2)


def test_the_length_runs_at_the_center_back() -> None:
    judge = Judge(pattern_to_data(drafted(length="62 cm")))
    assert judge.length("skirt.back/center_back") == pytest.approx(620.0, abs=0.01)


PLANTED = [
    ("waist", "skirt.back/waist/center", -0.1, 0.0),
    ("hip", "skirt.back/hip_line", 0.1, 0.0),
    ("skirt.front/waist_dart_center legs", "skirt.front/waist_dart_center/center_leg", 0.0, 0.2),
    ("skirt.back/waist_dart_side legs", "skirt.back/waist_dart_side/side_leg", 0.0, -0.2),
    ("skirt.back hip depth", "skirt.back/side_seam", 0.0, 0.2),
]


@pytest.mark.parametrize(("closure", "edge", "dx", "dy"), PLANTED)
def test_a_fault_of_two_tenths_is_caught(closure: str, edge: str, dx: float, dy: float) -> None:
    good = pattern_to_data(drafted())
    assert misses(judged(FORM_A, good)) == []
    assert closure in misses(judged(FORM_A, moved_end(good, edge, dx, dy)))


def test_a_side_seam_longer_by_two_tenths_is_caught() -> None:
    good = pattern_to_data(drafted())
    bad = moved_end(good, "skirt.back/side_seam", 0.0, 0.2)
    assert {"side seams", "skirt.back hip depth"} <= set(misses(judged(FORM_A, bad)))


@pytest.mark.parametrize(("closure", "tilt"), [("skirt.back center square", 1.2), ("across the side", 3.5)])
def test_a_tilt_beyond_its_limit_is_caught(closure: str, tilt: float) -> None:
    data = pattern_to_data(drafted())
    edge = "skirt.back/center_back" if "center" in closure else "skirt.back/side_seam"
    back = next(piece for piece in data["pieces"] if piece["name"] == "skirt.back")
    rows = next(one for one in back["outline"] if one["name"] == edge)["path"]
    turned = np.radians(tilt)
    # The far part of the edge is turned about its end at the waist.
    pivot = np.array(rows[0][1:3] if "center" in closure else rows[-1][-2:])
    for row in rows:
        for at in range(1, len(row), 2):
            x, y = np.array(row[at : at + 2]) - pivot
            row[at] = pivot[0] + x * np.cos(turned) - y * np.sin(turned)
            row[at + 1] = pivot[1] + x * np.sin(turned) + y * np.cos(turned)
    assert closure in misses(judged(FORM_A, data))


def test_the_judge_agrees_with_two_libraries_that_know_no_clothes() -> None:
    # Outside: arc lengths by svgpathtools (adaptive quadrature) and fontTools (recursive halving).
    data = pattern_to_data(drafted())
    judge = Judge(data)
    curves = 0
    for piece in data["pieces"]:
        for edge in piece["outline"]:
            here = edge["path"][0][1:]
            total_svg = total_font = 0.0
            for row in edge["path"][1:]:
                points = [tuple(here), *(tuple(row[at : at + 2]) for at in range(1, len(row), 2))]
                if row[0] == "L":
                    step = float(np.hypot(*(np.array(points[1]) - np.array(points[0]))))
                    total_svg, total_font = total_svg + step, total_font + step
                else:
                    curves += 1
                    total_svg += CubicBezier(*(complex(*point) for point in points)).length()
                    total_font += calcCubicArcLength(*points, tolerance=0.0005)
                here = row[-2:]
            assert judge.length(edge["name"]) == pytest.approx(total_svg, abs=1e-3)
            assert judge.length(edge["name"]) == pytest.approx(total_font, abs=1e-2)
    assert curves > 5


def test_the_promises_of_the_draft_are_what_the_judge_measures() -> None:
    done = run(auto_skirt(hem_girth="125 cm"))
    judge = Judge(pattern_to_data(done.pattern))
    for promise in done.expectations:
        names = [
            member
            for name in promise.names
            for member in (done.pattern.groups[name].members if name in done.pattern.groups else (name,))
        ]
        ways = [judge.point(*one.split("/")) - judge.point(*two.split("/")) for one, two in promise.chains]
        found = judge.length(*names) + sum(float(np.linalg.norm(way)) for way in ways)
        assert found * promise.times == pytest.approx(promise.wanted, abs=0.1)
    assert [promise.name for promise in done.expectations] == [
        "skirt/waist_girth",
        "skirt/hip_girth",
        "skirt/skirt_length",
        "skirt/hem_girth",
    ]


def test_a_line_that_bends_back_is_seen() -> None:
    x = np.linspace(0.0, 6.0, 200)
    assert turns_both_ways(np.column_stack([x, np.sin(x)]))
    assert not turns_both_ways(np.column_stack([x, x**2]))


def test_the_outline_judge_sees_a_crossing() -> None:
    data = pattern_to_data(drafted())
    assert not Judge(moved_end(data, "skirt.back/hem", -800.0, 900.0)).polygon("skirt.back").is_valid


def test_measured_front_arcs_are_kept_in_the_front() -> None:
    measures = body(720.0, 980.0, 205.0, front_waist_arc=372.0, front_hip_arc=478.0)
    data = pattern_to_data(drafted(measures))
    judge = Judge(data)
    assert misses(judged(measures, data)) == []
    assert 2.0 * judge.length("skirt.front/hip_line") == pytest.approx(478.0 + 25.0, abs=0.1)
    front_waist = 2.0 * judge.length(*judge.named("skirt.front", "waist"))
    assert front_waist == pytest.approx(372.0 + 7.5, abs=0.1)


def test_measured_heights_set_the_waist_at_the_centers() -> None:
    heights = {"outside_leg": 1050.0, "front_waist_to_floor": 1042.0, "back_waist_to_floor": 1036.0}
    measures = body(720.0, 980.0, 205.0, **heights)
    data = pattern_to_data(drafted(measures))
    judge = Judge(data)
    assert misses(judged(measures, data)) == []
    # The hip line is level, so that the heights over it differ as the lengths to the floor do.
    assert judge.point("skirt.front", "waist_center")[1] == pytest.approx(205.0 - 8.0, abs=0.01)
    assert judge.point("skirt.back", "waist_center")[1] == pytest.approx(205.0 - 14.0, abs=0.01)
