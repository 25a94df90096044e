"""The legend of the first sheet: what the pieces carry, and nothing that they do not."""

from dataclasses import replace

import pypdfium2

from notchbook.finish import CutPiece, FoldLines
from notchbook.geometry import Path, Point
from notchbook.output.draw_legend import legend_items
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.pattern import InternalLine, Mark
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
