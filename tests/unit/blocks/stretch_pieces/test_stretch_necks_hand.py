"""The necks of the stretch blocks as a hand draws them: nearly square to the shoulder, no hook, no point.

What is asked is a patternmaker's review of the drafts, put into figures here (own judgment, no source).
"""

from functools import cache
from typing import Any

import numpy as np
import pytest

from notchbook.geometry import Path, Point, curve_between
from support.stretch_bodies import BODIES, stretch_run, whole
from support.stretch_shapes import between, end_heading, points, start_heading

NEARLY_SQUARE = 8.0
"""Degrees by which a neck may stand off the square on its shoulder seam."""

LEAST_RADIUS = 0.38
"""Quickest bend of a neck over its half width. A hook has 0.25, a pointed scoop in front 0.35."""

NECKS: dict[str, tuple[str, dict[str, Any]]] = {
    "t_shirt": ("stretch_torso", {}),
    "base": ("stretch_torso", {"neck": "base", "back": "base"}),
    "swimsuit": ("bodysuit", {}),
}


@cache
def neck(kind: str, body: str, which: str) -> tuple[Path, Path]:
    """The neck and the shoulder of a panel as drawn, both outward from the center."""
    block, parameters = NECKS[kind]
    piece = stretch_run(block, whole(body), **parameters).pattern.pieces[f"{block}.{which}"]
    neck_line, shoulder = (outward(piece.edge(f"{piece.name}/{word}").path) for word in ("neck", "shoulder"))
    return neck_line, shoulder


def outward(path: Path) -> Path:
    return path if abs(path.start.x) < abs(path.end.x) else path.reversed()


def quickest(path: Path) -> float:
    """The radius of the quickest bend, mm, each over 10 mm."""
    rows = points(path, 300)
    steps = np.diff(rows, axis=0)
    steps = steps[np.hypot(*steps.T) > 1e-9]
    along = np.cumsum(np.hypot(*steps.T))
    heading = np.unwrap(np.arctan2(steps[:, 1], steps[:, 0]))
    places = np.arange(along[0], along[-1] - 10.0, 1.0)
    turns = np.interp(places + 10.0, along, heading) - np.interp(places, along, heading)
    return float(10.0 / np.abs(turns).max())


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("kind", NECKS)
def test_both_necks_stand_nearly_square_on_the_shoulder(kind: str, body: str) -> None:
    for which in ("front", "back"):
        drawn, shoulder = neck(kind, body, which)
        corner = 180.0 - abs(between(end_heading(drawn), start_heading(shoulder)))
        assert corner == pytest.approx(90.0, abs=NEARLY_SQUARE), which


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("kind", NECKS)
def test_no_neck_ends_in_a_hook_or_is_pointed_at_the_center(kind: str, body: str) -> None:
    for which in ("front", "back"):
        drawn, _ = neck(kind, body, which)
        assert quickest(drawn) > LEAST_RADIUS * abs(drawn.end.x - drawn.start.x), which


@pytest.mark.parametrize("wide", ["crew", "scoop", "deep"])
def test_a_high_back_is_as_deep_as_an_opened_neck_asks(wide: str) -> None:
    """Of a wider neck the back is lowered too: about a quarter of its half width (common practice)."""
    piece = stretch_run("stretch_torso", neck=wide, back="high").pattern.pieces["stretch_torso.back"]
    drawn = outward(piece.edge("stretch_torso.back/neck").path)
    assert 0.23 < (drawn.end.y - drawn.start.y) / abs(drawn.end.x - drawn.start.x) < 0.34


def test_a_back_at_the_base_is_not_left_flat_under_straps() -> None:
    piece = stretch_run("bodysuit", back="base").pattern.pieces["bodysuit.back"]
    drawn = outward(piece.edge("bodysuit.back/neck").path)
    assert drawn.end.y - drawn.start.y > 12.0
    assert quickest(drawn) > 10.0, "over a centimeter"


def test_hook_and_point_are_seen() -> None:
    hook = Path.of(curve_between(Point(0.0, 0.0), 0.0, Point(91.0, 19.0), 46.0))
    assert quickest(hook) < LEAST_RADIUS * 91.0
    pointed = Path.of(curve_between(Point(0.0, 0.0), 0.0, Point(77.0, 98.0), 68.0))
    assert quickest(pointed) < LEAST_RADIUS * 77.0
