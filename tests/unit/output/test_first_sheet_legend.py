"""The legend of the first sheet: what the pieces carry, and nothing that they do not."""

import math
from dataclasses import replace
from typing import get_args

import pypdfium2

from notchbook.finish import CutPiece, FoldLine, FoldLines
from notchbook.geometry import Path, Point
from notchbook.output.draw_legend import draw_legend, legend_height, legend_items
from notchbook.output.draw_squares import SQUARE_INCH
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.output.tiling import FORMATS
from notchbook.output.typeset import text_width
from notchbook.pattern import InternalLine, LineKind, Mark, MarkKind
from support.list_pen import ListPen
from support.papers import INFO, skirt_pieces


def words(*pieces: CutPiece) -> list[str]:
    return [item.words for item in legend_items(pieces)]


def test_each_kind_of_line_on_the_pieces_is_explained() -> None:
    front, back = skirt_pieces()
    said = words(front, back)
    assert said[:4] == ["cut", "sew", "dart, stitch", "dart, fold"]
    assert {"level", "center", "grain", "notch", "drill hole or awl"} <= set(said)
    assert len(said) == len(set(said))


def test_what_is_not_on_the_pieces_is_not_explained() -> None:
    front, _ = skirt_pieces()
    bare = replace(front, darts=(), lines=(), drills=(), marks=(), notches=(), fold=None)
    assert words(bare) == ["cut", "sew", "grain"]
    assert "point to mark" in words(replace(bare, marks=(Mark("skirt.front/bust_point", bare.label.center),)))


def test_a_double_notch_is_told_from_a_single_one() -> None:
    front, _ = skirt_pieces()
    single = replace(front, notches=tuple(n for n in front.notches if len(n.cut_positions) == 1))
    assert single.notches
    assert "notch of the back" not in words(single)
    first = single.notches[0]
    double = replace(first, cut_positions=(*first.cut_positions, *first.cut_positions))
    assert "notch of the back" in words(replace(single, notches=(double,)))


def test_it_stands_on_the_first_sheet() -> None:
    pieces = skirt_pieces()
    data, _ = tiled_pdf(pieces, INFO, "both")
    document = pypdfium2.PdfDocument(data)
    said = document[0].get_textpage().get_text_range()
    document.close()
    assert all(item.words in said for item in legend_items(pieces))
    assert "Page map" in said


def test_a_fold_and_where_it_lies_are_told_from_a_level() -> None:
    front, _ = skirt_pieces()
    up = Path.line(Point(0.0, 0.0), Point(0.0, 100.0))
    lines = (
        InternalLine("x.front/fold_line", up, "fold_line"),
        InternalLine("x.front/lies", up, "placement"),
    )
    laid = FoldLines("x.front/pleat", up, (), "x.front/lies")
    plain = replace(front, lines=(InternalLine("x.front/crease_line", up, "placement"),))
    assert {"fold", "fold lies here", "lay the fold"}.isdisjoint(words(plain))
    pleated = words(replace(front, lines=lines, folds=(laid,)))
    assert {"fold", "fold lies here", "lay the fold"} <= set(pleated)
    assert "level" not in pleated


def test_no_words_reach_into_the_next_column_and_no_sample_into_the_next_row() -> None:
    """On the narrowest paper; every sample and its words beside each other, all that a legend can say."""
    every = legend_items(_with_everything())
    assert {"stitched here", "notch of the back", "drill hole or awl", "place on fold"} <= {
        one.words for one in every
    }
    width = min(paper.frame_width for paper in FORMATS.values()) - SQUARE_INCH - 8.0
    pen = ListPen()
    draw_legend(pen, every, Point(0.0, 0.0), width)
    assert len({round(text.position.x, 3) for text in pen.texts}) == 2
    for text in pen.texts:
        end = text.position.x + text_width(text.words, text.size)
        assert end <= (width / 2.0 if text.position.x < width / 2.0 else width), text.words
    row = legend_height(every) / math.ceil(len(every) / 2)
    for path, _ in pen.strokes:
        box = path.bounds()
        assert math.floor(-box.max_y / row) == math.floor(-box.min_y / row), "within the row of its words"


def _with_everything() -> tuple[CutPiece, ...]:
    front, back = skirt_pieces()
    up = Path.line(Point(0.0, 0.0), Point(0.0, 100.0))
    kinds: tuple[LineKind, ...] = get_args(LineKind)
    lines = tuple(InternalLine(f"x.front/line_{number}", up, kind) for number, kind in enumerate(kinds))
    marked: tuple[MarkKind, ...] = get_args(MarkKind)
    marks = tuple(Mark(f"x.front/mark_{number}", up.start, kind) for number, kind in enumerate(marked))
    folds = (FoldLines("x.front/pleat", up, (), lines[0].name),)
    folded = replace(back, fold=FoldLine("x.back/center_back", up, on_fold=True))
    return replace(front, lines=(*front.lines, *lines), marks=marks, folds=folds), folded
