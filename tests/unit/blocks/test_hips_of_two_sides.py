"""Blocks that reach the hip on bodies with two sides: the halves meet, and no side ends above its hip."""

from typing import Any

import pytest

from notchbook.app.examining import subject_of
from notchbook.body import MeasureSet
from notchbook.checks import closures
from notchbook.pattern import Piece
from support.bodice_bodies import FULL_BUST, MAN, body
from support.joined_blocks import drafted

BLOCKS: dict[str, tuple[str, dict[str, Any]]] = {
    "bodice to the hip": ("bodice", {"length": "hip"}),
    "torso": ("torso", {}),
    "torso to the knee": ("torso", {"length": "knee"}),
    "dress": ("dress", {}),
    "dress in one": ("dress", {"waist_seam": "none"}),
}
ON_THE_LEFT: dict[str, dict[str, float]] = {
    "hip depth": {"hip_depth": 215.0},
    "slope": {"shoulder_slope": 29.0},
    "bust point": {"neck_to_bust_point": 275.0},
    "bust point farther out": {"bust_point_width": 205.0},
    "all": {"hip_depth": 190.0, "front_waist_length": 448.0, "scye_depth": 200.0, "shoulder_slope": 20.0},
}


def two_sided(measures: MeasureSet, left: dict[str, float]) -> MeasureSet:
    for key, value in left.items():
        measures = measures.with_value(key, value, "left")
    return measures


def hips(piece: Piece) -> dict[str, float]:
    """The height of the hip line of each side."""
    return {
        side: piece.line(f"{piece.name}/hip_line@{side}").path.start.y
        for side in ("left", "right")
        if f"{piece.name}/hip_line@{side}" in {line.name for line in piece.lines}
    }


@pytest.mark.parametrize("left", ON_THE_LEFT.values(), ids=ON_THE_LEFT.keys())
@pytest.mark.parametrize(("block", "parameters"), BLOCKS.values(), ids=BLOCKS.keys())
def test_the_two_sides_meet(block: str, parameters: dict[str, Any], left: dict[str, float]) -> None:
    done = drafted(block, two_sided(body(), left), **parameters)
    whole = [piece for piece in done.pattern.pieces.values() if piece.cut == "single"]
    assert whole  # a piece on which the sides agree stays on the fold
    assert all(any(edge.name.endswith("@left") for edge in piece.outline) for piece in whole)
    assert [one.name for one in closures(subject_of(done)) if not one.agrees] == []


@pytest.mark.parametrize("population", ["women", "men"])
@pytest.mark.parametrize("deeper", ["left", "right"])
def test_a_hem_at_the_hip_lies_at_the_lower_one(deeper: Any, population: Any) -> None:
    values = FULL_BUST if population == "women" else MAN
    uneven = body(values, population).with_value("hip_depth", 214.0, deeper)
    for which in ("front", "back"):
        piece = drafted("torso", uneven).pattern.pieces[f"torso.{which}"]
        levels = hips(piece)
        other = "right" if deeper == "left" else "left"
        assert levels[other] - levels[deeper] == pytest.approx(14.0, abs=1.0)  # 14 along the curve
        assert piece.points[f"{piece.name}/hem_center"].y == pytest.approx(levels[deeper], abs=0.01)
        for side in ("left", "right"):
            assert piece.points[f"{piece.name}/hem_side@{side}"].y == pytest.approx(levels[deeper], abs=0.01)


def test_a_body_of_one_side_ends_at_its_hip() -> None:
    piece = drafted("torso", body()).pattern.pieces["torso.front"]
    level = piece.line("torso.front/hip_line").path.start.y
    assert piece.points["torso.front/hem_center"].y == pytest.approx(level, abs=1e-9)
