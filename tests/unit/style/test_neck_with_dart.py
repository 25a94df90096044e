"""A neck that a contour dart divides is one neck by its old name: redrawn whole, the dart opens from it.

That a neckline over a dart is drawn with the dart closed is common practice, no source; numpy measures the
stored outlines.
"""

from functools import cache
from typing import Any

import numpy as np
import pytest

from notchbook.pattern import Pattern, sewn_length
from notchbook.recipe import Replay, add_step, replay
from support.bodice_bodies import FULL_BUST, bodice_recipe, body
from support.style_lines import BACK, FRONT, code, good, judge

FULL = body(FULL_BUST, knee_depth=590.0)
RECIPE = bodice_recipe(FULL, contour="dart")
DART = f"{FRONT}/contour_dart"


@cache
def redrawn(shape: str, depth: str, width: str = "2 cm") -> Replay:
    necks: list[dict[str, Any]] = [
        {"edge": f"{FRONT}/neck", "center": f"{FRONT}/neck_pit", "shape": shape, "depth": depth},
        {"edge": f"{BACK}/neck", "center": f"{BACK}/nape", "shape": "round", "depth": "5 mm"},
    ]
    told = {"necks": necks, "width": width}
    return replay(add_step(RECIPE, "change_neckline", told, base=FULL, slug="neckline"), FULL)


def legs(pattern: Pattern) -> list[np.ndarray[Any, np.dtype[np.float64]]]:
    edges = judge(pattern).edges
    return [edges[f"{DART}/{side}_leg"] for side in ("center", "side")]


@pytest.mark.parametrize(("shape", "depth"), [("round", "3 cm"), ("v", "8 cm"), ("round", "-5 mm")])
def test_the_dart_keeps_its_angle_its_point_and_even_legs(shape: str, depth: str) -> None:
    before, after = legs(good(replay(RECIPE, FULL))), legs(good(redrawn(shape, depth)))

    def seen(found: list[Any]) -> tuple[Any, float, list[float]]:
        outer = [found[0][0], found[1][-1]]
        point = found[0][-1]
        rays = [end - point for end in outer]
        lengths = [float(np.linalg.norm(ray)) for ray in rays]
        return point, float(np.degrees(np.arccos(rays[0] @ rays[1] / np.prod(lengths)))), lengths

    (old_point, old_angle, _), (point, angle, lengths) = seen(before), seen(after)
    assert point == pytest.approx(old_point, abs=1e-6)
    assert angle == pytest.approx(old_angle, abs=1e-6)
    assert lengths[0] == pytest.approx(lengths[1], abs=1e-6)


def test_a_v_is_straight_across_the_closed_dart() -> None:
    """The side part turned back about the dart's point goes on in the center part."""
    pattern = good(redrawn("v", "8 cm"))
    center, side = (judge(pattern).edges[f"{FRONT}/neck/{part}"] for part in ("center", "side"))
    first, second = legs(pattern)
    point = first[-1]
    a, b = first[0] - point, second[-1] - point
    turn = np.arctan2(a[1], a[0]) - np.arctan2(b[1], b[0])
    spin = np.array([[np.cos(turn), -np.sin(turn)], [np.sin(turn), np.cos(turn)]])
    laid = (side - point) @ spin.T + point
    along = [line[-1] - line[0] for line in (center, laid[:2])]
    cross = along[0][0] * along[1][1] - along[0][1] * along[1][0]
    assert abs(cross) / np.prod([np.linalg.norm(one) for one in along]) == pytest.approx(0.0, abs=1e-3)


def test_the_shoulder_loses_the_width_and_the_neck_keeps_its_names() -> None:
    before, after = good(replay(RECIPE, FULL)), good(redrawn("round", "3 cm"))
    lost = sewn_length(before, f"{FRONT}/shoulder") - sewn_length(after, f"{FRONT}/shoulder")
    assert lost == pytest.approx(20.0, abs=0.01)
    assert after.groups[f"{FRONT}/neck"].members == before.groups[f"{FRONT}/neck"].members


def test_a_neckline_past_the_point_and_a_square_one_are_refused_in_words() -> None:
    front = {"edge": f"{FRONT}/neck", "center": f"{FRONT}/neck_pit", "shape": "round", "depth": "26 cm"}
    wide = add_step(RECIPE, "change_neckline", {"necks": [front], "width": "11 cm"}, base=FULL)
    assert code(replay(wide, FULL)) == "neckline-past-dart"
    assert code(redrawn("square", "3 cm")) == "neckline-square-dart"


def test_a_dart_moves_into_the_neck_by_the_name_of_the_whole() -> None:
    at = {"edge": f"{FRONT}/neck", "from_point": f"{FRONT}/neck_pit", "distance": "2 cm"}
    told = {"darts": [f"{FRONT}/bust_dart"], "places": [{"at": at}]}
    pattern = good(replay(add_step(RECIPE, "transfer_dart", told, base=FULL, slug="moved"), FULL))
    assert "moved.front/bust_dart" in pattern.intakes
    assert DART in pattern.intakes


def test_a_cowl_whose_slash_meets_a_dart_says_what_to_do() -> None:
    told = {
        "neck": f"{FRONT}/neck",
        "neck_center": f"{FRONT}/neck_pit",
        "center": f"{FRONT}/center_front",
        "spread": "8 cm",
        "across": f"{FRONT}/waist",
        "across_center": f"{FRONT}/waist_center",
    }
    assert code(replay(add_step(RECIPE, "cowl", told, base=FULL), FULL)) == "cowl-slash-meets-dart"
