"""Pictures of pattern steps: each row of the table runs and shows what changed."""

from xml.etree import ElementTree as ET

import pytest

import step_pictures
from notchbook.geometry import Path, Point
from notchbook.recipe import all_definitions

SVG = "{http://www.w3.org/2000/svg}"
OPERATIONS = [row["operation"] for row in step_pictures.rows()]


def test_each_row_shows_a_step_of_ours_once() -> None:
    known = {step.operation for step in all_definitions()}
    assert set(OPERATIONS) <= known
    assert len(OPERATIONS) == len(set(OPERATIONS))


@pytest.mark.parametrize("operation", OPERATIONS)
def test_the_picture_has_before_and_after_and_the_old_outline(operation: str) -> None:
    row = step_pictures.picture_row(operation)
    assert row is not None
    shown = step_pictures.shown(row)
    assert shown.before.pieces != shown.after.pieces, "a picture of nothing"
    root = ET.fromstring(step_pictures.svg(shown))
    words = [text.text for text in root.iter(f"{SVG}text")]
    assert words == ["Before", "After"]
    assert root.findtext(f"{SVG}title") == row["title"]
    assert len(list(root.iter(f"{SVG}path"))) > 8


def test_a_path_is_written_y_down_to_a_tenth() -> None:
    path = Path.line(Point(0.0, 10.0), Point(3.14159, -2.0))
    assert step_pictures.path_data(path) == "M0.0 -10.0L3.1 2.0"


def test_a_step_without_a_row_has_no_picture() -> None:
    assert step_pictures.picture_row("no_such_step") is None
