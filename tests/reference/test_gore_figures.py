"""Gored skirts at limits whose figures are plane geometry: a tube is a rectangle, a cone a circle's sector.

Own derivation: each of n equal gores of a cone with waist W, hem M and slant L is a sector of radius
r = W L / (M - W) and angle (M - W) / (n L); its area is (W + M) L / (2 n). Where the hip lies on the cone
nothing else is left to choose.
"""

from math import degrees
from typing import Any

import numpy as np
import pytest

from notchbook.app.drafting import draft
from notchbook.body import MeasureSet
from notchbook.pattern import pattern_to_data
from support.round_skirt_judge import RoundJudge, circle_through, gore_closures, gore_faults

WAIST, LENGTH, DEPTH = 700.0, 600.0, 200.0


def gored(hip: float, hem: float, gores: int, **settings: Any) -> dict[str, Any]:
    """Without ease, so that the figures are the body's."""
    keys = {"waist_girth": WAIST, "hip_girth": hip, "hip_depth": DEPTH}
    eases = {"waist_ease": "0 mm", "hip_ease": "0 mm", "length": f"{LENGTH} mm", "hem_girth": f"{hem} mm"}
    run = draft("gored_skirt", MeasureSet.from_mm("A cone", keys), eases | {"gores": gores} | settings)
    return pattern_to_data(run.pattern)


def on_a_cone(hem: float) -> float:
    """The girth at the hip's depth of a cone from waist to hem."""
    return WAIST + (hem - WAIST) * DEPTH / LENGTH


@pytest.mark.parametrize("gores", [4, 6, 8])
@pytest.mark.parametrize("hem", [1100.0, 1500.0, 2200.0])
def test_a_cone_in_gores_is_the_sector_of_a_circle(hem: float, gores: int) -> None:
    judge = RoundJudge(gored(on_a_cone(hem), hem, gores))
    radius = WAIST * LENGTH / (hem - WAIST)
    assert judge.area() == pytest.approx((WAIST + hem) * LENGTH / 2.0, rel=1e-4)
    for piece in judge.pieces:
        fitted, off = circle_through(np.concatenate([judge.edges[n] for n in judge.named(piece, "waist")]))
        assert fitted == pytest.approx(radius, rel=2e-3)
        assert off < 0.02
        gore = judge.polygon(piece)
        share = 0.5 if piece.rpartition(".")[2].startswith("center") else 1.0  # drawn to the center
        assert gore.area == pytest.approx(share * (WAIST + hem) * LENGTH / (2.0 * gores), rel=1e-3)


def test_a_tube_in_gores_is_a_rectangle() -> None:
    judge = RoundJudge(gored(WAIST, WAIST, 6))
    assert judge.area() == pytest.approx(WAIST * LENGTH, rel=1e-9)
    for piece in judge.pieces:
        assert judge.polygon(piece).minimum_rotated_rectangle.area == pytest.approx(judge.polygon(piece).area)


@pytest.mark.parametrize("gores", range(4, 13))
def test_any_number_of_gores_has_the_same_girths(gores: int) -> None:
    data = gored(960.0, 1700.0, gores)
    wanted = {"waist_girth": WAIST, "hip_girth": 960.0, "hem_girth": 1700.0}
    assert [one.name for one in gore_closures(data, wanted) if not one.holds] == []
    assert gore_faults(data) == []


def test_the_waist_of_each_gore_turns_by_its_share_of_the_cone() -> None:
    """All waists of a cone together turn by (M - W) / L; that of each gore by its share."""
    turns = []
    for gores in (4, 8):
        judge = RoundJudge(gored(on_a_cone(1500.0), 1500.0, gores))
        piece = next(name for name in judge.pieces if judge.pieces[name]["cut"] != "fold")
        waist = np.concatenate([judge.edges[name] for name in judge.named(piece, "waist")])
        first, last = waist[1] - waist[0], waist[-1] - waist[-2]
        turns.append(np.degrees(np.arccos(first @ last / np.linalg.norm(first) / np.linalg.norm(last))))
    cone = degrees((1500.0 - WAIST) / LENGTH)
    assert turns == pytest.approx([cone / 4.0, cone / 8.0], rel=0.02)


def test_a_wider_hip_is_no_cone() -> None:
    """Else the test above could not fail."""
    judge = RoundJudge(gored(on_a_cone(1500.0) + 40.0, 1500.0, 6))
    assert judge.area() > (WAIST + 1500.0) * LENGTH / 2.0 * (1.0 + 1e-3)
