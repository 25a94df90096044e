"""Words on the pieces of the styles of the rack: none outside the cut line, none on a drill hole or on each
other (facts of the trade: what stands outside is cut off, and what covers a mark hides it)."""

from functools import cache

import pytest
from shapely import LineString, Polygon
from shapely import Point as Spot

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack
from notchbook.finish import CutPiece, finish, production_table
from notchbook.geometry import Point
from notchbook.output.draw_piece import draw_piece
from notchbook.output.free_place import DRILL_RING
from notchbook.output.label_tag import tagged
from notchbook.output.pen import Text
from notchbook.output.small_piece import draw_small
from notchbook.recipe import replay
from support.cut_shapes import polygon
from support.list_pen import ListPen, text_box
from support.papers import INFO

RECIPES = {style.stem: style.recipe for style in rack()}
STYLES = ("tailored_trousers", "work_shirt", "bias_slip", "tailored_jacket")


@cache
def _pieces(style: str) -> tuple[CutPiece, ...]:
    run = replay(RECIPES[style], dict(lower_bodies())["medium-92"])
    return tuple(tagged(piece, INFO) for piece in finish(run.pattern, production_table()))


@cache
def _words(style: str) -> list[tuple[CutPiece, list[tuple[Text, Polygon]]]]:
    found = []
    for piece in _pieces(style):
        pen = ListPen()
        draw_piece(pen, piece, INFO)
        tag = None if piece.tag is None else Polygon([(c.x, c.y) for c in piece.tag.corners]).buffer(3.0)
        boxes = [(text, text_box(text)) for text in pen.texts]
        found.append((piece, [one for one in boxes if tag is None or not tag.contains(one[1])]))
    return found


@pytest.mark.parametrize("style", STYLES)
def test_no_words_leave_the_piece(style: str) -> None:
    outside = [
        (piece.title, text.words)
        for piece, boxes in _words(style)
        for text, box in boxes
        if not polygon(piece.cut_line).contains(box)
    ]
    assert outside == []


@pytest.mark.parametrize("style", STYLES)
def test_no_words_hide_a_drill_hole(style: str) -> None:
    assert sum(len(piece.drills) for piece in _pieces("work_shirt")) > 4
    hidden = [
        (piece.title, text.words)
        for piece, boxes in _words(style)
        for hole in piece.drills
        for text, box in boxes
        if Spot(hole.position.x, hole.position.y).buffer(DRILL_RING).intersects(box)
    ]
    assert hidden == []


@pytest.mark.parametrize("style", STYLES)
def test_no_words_stand_on_each_other(style: str) -> None:
    doubled = [
        (piece.title, text.words, other.words)
        for piece, boxes in _words(style)
        for index, (text, box) in enumerate(boxes)
        for other, beside in boxes[index + 1 :]
        if box.intersects(beside)
    ]
    assert doubled == []


def test_a_strip_on_the_bias_has_its_name_inside_and_its_grain_bare() -> None:
    """A binding is cut by its grain: nothing may hide it; what is cut out must still say what it is."""
    strips = [(piece, boxes) for piece, boxes in _words("bias_slip") if "binding" in piece.title]
    assert len(strips) == 2
    for piece, boxes in strips:
        start, end = piece.grain.start, piece.grain.end
        grain = LineString([(start.x, start.y), (end.x, end.y)])
        named = [box for text, box in boxes if text.words == f"{piece.number} {piece.title}"]
        assert len(named) == 1
        assert polygon(piece.cut_line).contains(named[0])
        assert not any(text.bold and box.intersects(grain) for text, box in boxes)


def test_lines_of_one_kind_are_named_once_without_a_number() -> None:
    binding = next(boxes for piece, boxes in _words("bias_slip") if "binding" in piece.title)
    assert [text.words for text, _ in binding if "fold line" in text.words] == ["fold line"]


def test_the_small_picture_of_a_small_piece_is_no_speck() -> None:
    strip = min(_pieces("work_shirt"), key=lambda piece: piece.bounds.height * piece.bounds.width)
    pen = ListPen()
    draw_small(pen, strip, Point(0.0, 0.0), 0.02)
    box = pen.strokes[0][0].bounds()
    assert max(box.width, box.height) == pytest.approx(9.0, abs=0.1)
    assert box.width / box.height == pytest.approx(strip.bounds.width / strip.bounds.height, rel=0.01)
