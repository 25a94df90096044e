"""Pictures of pattern steps: each row of the table runs and shows what changed."""

from collections import Counter
from xml.etree import ElementTree as ET

import pytest

import step_drawing
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
    for piece in shown.after.pieces.values():
        grain = step_drawing.grain_line(piece)
        assert all(piece.sew_line.contains(grain.point_at(grain.length * share)) for share in (0.0, 0.5, 1.0))
    root = ET.fromstring(step_pictures.svg(shown))
    words = [text.text for text in root.iter(f"{SVG}text")]
    assert words == ["Before", "After"]
    assert root.findtext(f"{SVG}title") == row["title"]
    assert len(list(root.iter(f"{SVG}path"))) > 8


def test_a_path_is_written_y_down_to_a_tenth() -> None:
    path = Path.line(Point(0.0, 10.0), Point(3.14159, -2.0))
    assert step_drawing.path_data(path) == "M0.0 -10.0L3.1 2.0"


def test_a_step_without_a_row_has_no_picture() -> None:
    assert step_pictures.picture_row("no_such_step") is None


def drawn(operation: str) -> ET.Element:
    row = step_pictures.picture_row(operation)
    assert row is not None
    return ET.fromstring(step_pictures.svg(step_pictures.shown(row)))


def classes(root: ET.Element) -> Counter[str]:
    return Counter(path.get("class", "") for path in root.iter(f"{SVG}path"))


@pytest.mark.parametrize(
    ("operation", "marks"),
    [
        ("gather_edge", "gathers"),
        ("pleats", "placement"),
        ("pleats", "pressed"),
        ("fold_dart", "pressed"),
        ("bias_grain", "grain"),
        ("unfold", "on_fold"),
    ],
)
def test_the_picture_shows_what_the_step_is_about(operation: str, marks: str) -> None:
    assert classes(drawn(operation))[marks] > 0


def test_nothing_is_drawn_below_or_beside_the_picture() -> None:
    """Two heads, the rows and their gaps fill the height; long rows are broken."""
    root = drawn("tiers")
    _, _, wide, high = map(float, root.get("viewBox", "").split())
    assert wide < 1400.0
    tops = [float(group.get("transform", "").split()[-1].rstrip(")")) for group in root.iter(f"{SVG}g")]
    assert max(tops) < high
