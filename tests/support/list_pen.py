"""A pen that keeps what is drawn, and the room that words take, for the tests of papers."""

import shapely

from notchbook.geometry import Path, Point, Transform
from notchbook.output.pen import MM_PER_POINT, LineStyle, Text
from notchbook.output.typeset import CAP_HEIGHT, text_width


class ListPen:
    """Keeps what is drawn, for the tests."""

    def __init__(self) -> None:
        self.texts: list[Text] = []
        self.strokes: list[tuple[Path, LineStyle]] = []

    def stroke(self, path: Path, style: LineStyle, name: str = "") -> None:
        self.strokes.append((path, style))

    def fill(self, path: Path, gray: float) -> None:
        pass

    def write(self, text: Text) -> None:
        self.texts.append(text)

    def begin_group(self, name: str, motion: Transform) -> None:
        pass

    def end_group(self) -> None:
        pass


def text_box(text: Text) -> shapely.Polygon:
    width = text_width(text.words, text.size, text.bold)
    height = text.size * MM_PER_POINT * CAP_HEIGHT
    shift = {"left": 0.0, "center": -0.5, "right": -1.0}[text.align] * width
    corners = [(shift, 0.0), (shift + width, 0.0), (shift + width, height), (shift, height)]
    placed = [text.position + Point(x, y).rotated(text.degrees) for x, y in corners]
    return shapely.Polygon([(p.x, p.y) for p in placed])
