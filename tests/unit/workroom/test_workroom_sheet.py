"""What the sheet draws, judged from outside: svgpathtools measures the path data, shapely the places."""

from typing import Any

import pytest
from fastapi.testclient import TestClient
from shapely import get_parts
from shapely.geometry import LineString, Point, Polygon
from svgpathtools import parse_path


@pytest.fixture
def drawn(page: TestClient, style: int) -> dict[str, Any]:
    return dict(page.get(f"/api/styles/{style}").json())


def outline(piece: dict[str, Any]) -> Polygon:
    path = parse_path(piece["outline"])
    places = [path.point(i / 2000) for i in range(2000)]
    return Polygon([(place.real, place.imag) for place in places])


def test_path_data_is_as_long_as_it_says(drawn: dict[str, Any]) -> None:
    for piece in drawn["pieces"]:
        for edge in piece["edges"]:
            assert parse_path(edge["path"]).length(error=1e-8) == pytest.approx(edge["length"], abs=0.01)


def test_the_outline_is_closed_and_runs_counter_clockwise(drawn: dict[str, Any]) -> None:
    for piece in drawn["pieces"]:
        path = parse_path(piece["outline"])
        assert abs(path.start - path.end) < 1e-6
        assert outline(piece).exterior.is_ccw


def test_grain_and_title_lie_inside_the_piece(drawn: dict[str, Any]) -> None:
    for piece in drawn["pieces"]:
        inside = outline(piece)
        low, high = (Point(piece[end]["x"], piece[end]["y"]) for end in ("grain_low", "grain_high"))
        assert inside.contains(LineString([low, high])), piece["name"]
        title = piece["title_at"]
        assert inside.contains(Point(title["x"], title["y"])), piece["name"]


def test_the_grain_line_runs_along_the_grain(drawn: dict[str, Any]) -> None:
    by_name = {piece["name"]: piece for piece in drawn["pieces"]}
    front = by_name["skirt.front"]
    assert front["grain_low"]["x"] == pytest.approx(front["grain_high"]["x"])


def test_the_grain_line_stands_clear_of_darts(drawn: dict[str, Any]) -> None:
    """Drawn out over the whole piece it would meet no dart: it crosses the outline twice."""
    back = next(piece for piece in drawn["pieces"] if piece["name"] == "skirt.back")
    x = back["grain_low"]["x"]
    through = LineString([(x, back["low"]["y"] - 1.0), (x, back["high"]["y"] + 1.0)])
    assert len(get_parts(outline(back).exterior.intersection(through))) == 2
    tips = [p["place"]["x"] for p in back["points"] if p["said"].endswith("point)")]
    assert tips and all(abs(tip - x) > 10.0 for tip in tips)


def test_outward_points_outward(drawn: dict[str, Any]) -> None:
    for piece in drawn["pieces"]:
        inside = outline(piece)
        for edge in piece["edges"]:
            middle, way = edge["middle"], edge["outward"]
            near = Point(middle["x"] + 0.5 * way["x"], middle["y"] + 0.5 * way["y"])
            assert not inside.contains(near), edge["name"]


def test_notches_stand_on_the_sew_line(drawn: dict[str, Any]) -> None:
    found = 0
    for piece in drawn["pieces"]:
        for notch in piece["notches"]:
            place = Point(notch["place"]["x"], notch["place"]["y"])
            assert outline(piece).exterior.distance(place) < 0.5
            found += 1
    assert found >= 4


def test_both_sides_of_a_seam_are_named(drawn: dict[str, Any]) -> None:
    side = next(seam for seam in drawn["seams"] if seam["name"] == "skirt/side_seam")
    assert side["first"] == ["skirt.front/side_seam"]
    assert side["second"] == ["skirt.back/side_seam"]
    assert side["first_text"] == side["second_text"]


def test_the_strip_adds_up(drawn: dict[str, Any]) -> None:
    for girth in drawn["eases"]:
        assert girth["body"] + girth["ease"] == pytest.approx(girth["pattern"], abs=0.1)
    fields = [girth["ease_field"] for girth in drawn["eases"]]
    assert {field["step"] for field in fields if field is not None} == {"skirt-1"}
    assert {field["parameter"] for field in fields if field is not None} == {"waist_ease", "hip_ease"}


def test_findings_carry_reasons_and_numbers_in_the_readers_unit(page: TestClient, style: int) -> None:
    parameters = {"hems": ["skirt.front/hem"], "amount": "8 mm"}
    edit = {"do": "add-step", "operation": "change_length", "parameters": parameters}
    told = page.post(f"/api/styles/{style}/preview/report?unit=in", json=edit).json()
    wrong = [note for note in told["notes"] if note["severity"] == "stop"]
    assert wrong, "a hem that is longer on one side alone must be found"
    assert any('"' in note["numbers"] for note in wrong)
    assert all(note["why"] for note in wrong)
    assert told["proven"]["checks"] > 0
