"""The cap in its armhole as the page draws it, measured again from the drawn paths by other means."""

from typing import Any

import numpy as np
import pytest
import shapely
import svgpathtools
from fastapi.testclient import TestClient

from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.app.studio import Studio
from notchbook.body import set_from_data

LAY = {True: 3.0, False: 4.0}
"""mm by which the lower cap may leave the armhole, front and back (the sleeve's own promise)."""

LOWER = 60.0


@pytest.fixture
def style(page: TestClient, studio: Studio) -> dict[str, Any]:
    body = studio.new_body(set_from_data(BODY_OF_PICTURES)).id
    asked = {"name": "", "block": "sleeve", "body": body, "parameters": {"fabric": "light_woven"}}
    return dict(page.post("/api/styles", json=asked).json())


def points(path: str) -> list[tuple[float, float]]:
    return [(p.real, p.imag) for p in (s.start for s in svgpathtools.parse_path(path))]


def length(path: str) -> float:
    return float(svgpathtools.parse_path(path).length())


def eases(style: dict[str, Any]) -> dict[str, float]:
    return {seam["name"]: seam["ease"] for seam in style["seams"]}


def test_both_halves_begin_at_the_underarm_and_go_to_their_side(style: dict[str, Any]) -> None:
    halves = style["caps_in_armholes"]
    assert {half["front"] for half in halves} == {True, False}
    for half in halves:
        for path in (half["armhole"], half["cap"]):
            along = np.array(points(path))
            assert along[0] == pytest.approx((0.0, 0.0), abs=0.01)
            assert np.sign(along[-1, 0]) == (1.0 if half["front"] else -1.0)
            assert along[-1, 1] > 100.0


def test_each_half_of_the_cap_is_as_much_longer_as_the_seam_declares(style: dict[str, Any]) -> None:
    for half in style["caps_in_armholes"]:
        declared = eases(style)[f"sleeve/{'front' if half['front'] else 'back'}_armhole"]
        assert length(half["cap"]) - length(half["armhole"]) == pytest.approx(declared, abs=0.3)


def test_the_lower_cap_lies_on_the_armhole(style: dict[str, Any]) -> None:
    for half in style["caps_in_armholes"]:
        hole = shapely.LineString(points(half["armhole"]))
        cap = shapely.LineString(points(half["cap"]))
        gaps = [hole.distance(cap.interpolate(float(place))) for place in np.arange(0.0, LOWER)]
        assert max(gaps) < LAY[half["front"]]
        assert hole.distance(cap.interpolate(cap.length)) > 20.0, "above, the two part"


def test_notches_stand_on_both_lines(style: dict[str, Any]) -> None:
    for half in style["caps_in_armholes"]:
        assert "balance notch" in {notch["label"] for notch in half["notches"]}
        for line, key in (("armhole", "on_armhole"), ("cap", "on_cap")):
            drawn = shapely.LineString(points(half[line]))
            for notch in half["notches"]:
                assert drawn.distance(shapely.Point(notch[key]["x"], notch[key]["y"])) < 0.2


def test_a_style_without_a_sleeve_has_none(page: TestClient, studio: Studio) -> None:
    style = studio.list_styles()[0].id
    assert page.get(f"/api/styles/{style}").json()["caps_in_armholes"] == []
