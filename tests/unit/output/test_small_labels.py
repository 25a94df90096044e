"""Labels of small pieces: nothing on them is too small to read; what has no room stands beside the piece."""

from dataclasses import replace
from functools import cache

import pytest
from shapely import LineString

from notchbook.finish import CutPiece, LabelBox
from notchbook.geometry import Point
from notchbook.output.draw_label import label_words
from notchbook.output.draw_piece import draw_piece
from notchbook.output.label_tag import tagged, with_tags
from notchbook.output.layout import lay_out
from support.cut_shapes import cut_one, polygon, polygon_piece
from support.list_pen import ListPen, text_box
from support.papers import INFO

NAME, REST = 6.5, 5.5
"""Points. Under 6 points print is read with effort (common practice)."""

SIZES = [(538.0, 20.0), (126.0, 18.0), (40.0, 30.0), (90.0, 30.0), (24.0, 24.0)]
"""mm, invented strips: belt loops, the underlap of a placket, a tab, a facing, a patch."""


@cache
def strip(length: float, width: float) -> CutPiece:
    """A strip along the grain, as belt loops are."""
    return cut_one(polygon_piece([(0, 0), (width, 0), (width, length), (0, length)]))


def _drawn(piece: CutPiece) -> ListPen:
    pen = ListPen()
    draw_piece(pen, piece, INFO)
    return pen


@pytest.mark.parametrize("size", SIZES)
def test_nothing_on_a_small_piece_is_too_small_to_read(size: tuple[float, float]) -> None:
    texts = _drawn(strip(*size)).texts
    assert min(text.size for text in texts) >= REST - 1e-6
    assert min(text.size for text in texts if text.bold) >= NAME - 1e-6
    said = " ".join(text.words for text in texts).replace("\N{NO-BREAK SPACE}", " ")
    assert strip(*size).title in said
    assert "cut 1" in said


def test_a_label_in_the_least_room_says_number_and_name_there_and_the_rest_beside() -> None:
    piece = strip(126.0, 18.0)
    box = LabelBox(piece.bounds.center, 34.0, 6.0, 90.0, True)
    named = replace(piece, label=box, title="Tab", number=7)
    told = label_words(named, INFO)
    assert [line.words for line in told.inside] == ["7 Tab"]
    assert any("cut" in line.words for line in told.beside)
    assert (
        label_words(replace(named, label=replace(box, length=4.0, height=4.0)), INFO).inside[0].words == "7"
    )
    assert label_words(replace(named, label=replace(box, length=1.0, height=1.0)), INFO).inside == ()


def test_a_box_that_is_not_clear_says_nothing_there() -> None:
    """The lines of the piece, its grain among them, would be hidden."""
    piece = strip(126.0, 18.0)
    hidden = replace(piece, label=replace(piece.label, length=80.0, height=40.0, is_clear=False))
    told = label_words(hidden, INFO)
    assert told.inside == ()
    assert piece.title in " ".join(line.words for line in told.beside)


def test_words_beside_a_piece_lie_outside_it_and_a_line_leads_from_them_into_it() -> None:
    piece = tagged(strip(126.0, 18.0), INFO)
    assert piece.tag is not None
    cloth = polygon(piece.cut_line)
    pen = _drawn(piece)
    beside = [text for text in pen.texts if not cloth.contains(text_box(text))]
    assert len(beside) >= 3
    assert all(not cloth.intersects(text_box(text)) for text in beside)
    leading = [
        path
        for path, _ in pen.strokes
        if cloth.boundary.crosses(LineString([(path.start.x, path.start.y), (path.end.x, path.end.y)]))
    ]
    assert len(leading) == 1


def test_room_for_the_words_beside_is_set_aside_on_the_sheet() -> None:
    pieces = [replace(strip(126.0, 18.0), number=number) for number in (1, 2)]
    placements = lay_out(with_tags(pieces, INFO)).placements
    drawn = []
    for placement in placements:
        pen = _drawn(placement.piece)
        boxes = [text_box(text) for text in pen.texts]
        assert placement.piece.tag is not None
        for box in boxes:
            for x, y in box.exterior.coords:
                place = placement.motion.apply(Point(x, y))
                assert placement.box.min_x - 1.0 <= place.x <= placement.box.max_x + 1.0
                assert placement.box.min_y - 1.0 <= place.y <= placement.box.max_y + 1.0
        drawn.append(placement.box)
    apart = drawn[0].max_x < drawn[1].min_x or drawn[0].max_y < drawn[1].min_y
    assert apart or drawn[1].max_x < drawn[0].min_x or drawn[1].max_y < drawn[0].min_y


def test_a_piece_with_room_has_no_words_beside_it() -> None:
    piece = cut_one(polygon_piece([(0, 0), (200, 0), (200, 300), (0, 300)]))
    assert tagged(piece, INFO) is piece
    assert label_words(piece, INFO).beside == ()
