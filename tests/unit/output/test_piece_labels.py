"""What stands on a piece: the label's words, their size, and that nothing stands on them."""

from dataclasses import replace

import pytest
import shapely

from notchbook.finish import CutPiece, Quantity, finish, production_table
from notchbook.output import PaperInfo
from notchbook.output.draw_label import draw_label, fitted
from notchbook.output.draw_piece import draw_piece
from notchbook.output.label_lines import allowance_words, label_lines
from notchbook.output.pen import MM_PER_POINT
from notchbook.output.typeset import text_width
from notchbook.units import LengthStyle
from support.cut_shapes import cut_one, polygon, square
from support.hand_skirt import hand_skirt
from support.list_pen import ListPen, text_box
from support.papers import INFO, skirt_pieces


def drawn(piece: CutPiece, info: PaperInfo = INFO) -> ListPen:
    pen = ListPen()
    draw_piece(pen, piece, info)
    return pen


SUPPLIED = [
    *skirt_pieces(),
    *finish(hand_skirt(), production_table().with_changes({"supply": "fold"})),
    cut_one(square(80.0)),
]


@pytest.mark.parametrize("piece", SUPPLIED)
def test_no_words_stand_on_a_line_or_on_each_other(piece: CutPiece) -> None:
    pen = drawn(piece)
    lines = [shapely.LineString([(p.x, p.y) for p in path.flattened(0.05)]) for path, _ in pen.strokes]
    boxes = [text_box(text) for text in pen.texts]
    inside = polygon(piece.cut_line)
    for index, box in enumerate(boxes):
        assert inside.contains(box)
        assert not any(line.intersects(box) for line in lines), pen.texts[index].words
        assert not any(box.intersects(other) for other in boxes[index + 1 :])


def test_lines_can_be_told_apart_without_color() -> None:
    piece = finish(hand_skirt(), production_table().with_changes({"supply": "fold"}))[0]
    looks = {(style.dash, style.weight) for _, style in drawn(piece).strokes}
    dashes = {dash for dash, _ in looks}
    assert len(dashes) >= 4
    # Cut line 0.7 to 1.0 pt solid, sew line dashed 0.5 pt (common practice).
    cut = next(style for path, style in drawn(piece).strokes if path is piece.cut_line)
    assert 0.7 <= cut.weight <= 1.0
    assert not cut.dash
    assert all(style.gray == 0.0 for _, style in drawn(piece).strokes)


def test_the_label_says_what_hung_patterns_say() -> None:
    words = [line.words for line in label_lines(skirt_pieces()[1], INFO)]
    text = " | ".join(words).replace("\N{NO-BREAK SPACE}", " ")
    for part in (
        "S-104 Straight skirt",
        "Skirt back  2 of 2",
        "size 38",
        "self, wool crepe, 150 cm: cut 1 pair",
        "rev. C · 12 March 2031",
    ):
        assert part in text


def test_odd_allowances_are_named() -> None:
    plain = replace(INFO, lengths=LengthStyle("mm"))
    said = allowance_words(skirt_pieces()[1], plain).replace("\N{NO-BREAK SPACE}", " ")
    assert said == "seam allowance 12.0 mm, center back 19.0 mm, hem 51.0 mm" or said == (
        "seam allowance 19.0 mm, side 12.0 mm, waist 12.0 mm, hem 51.0 mm"
    )
    assert allowance_words(cut_one(square(), 0.0), plain) == "no seam allowance"


@pytest.mark.parametrize(("length", "height"), [(170, 70), (100, 24), (36, 60), (26, 12), (24, 8)])
def test_labels_fit_their_box(length: float, height: float) -> None:
    piece = skirt_pieces()[1]
    lines, share = fitted(label_lines(piece, INFO), length, height)
    assert max(text_width(line.words, line.size * share, line.bold) for line in lines) <= length + 1e-6
    assert sum(line.size * share * MM_PER_POINT for line in lines) <= height
    said = " ".join(line.words for line in lines)
    assert "cut" in said
    assert "back" in said


def test_large_pieces_are_readable_at_arm_s_length() -> None:
    # 24 pt and more for the name: about 6 mm high, read at 70 cm with ease (common practice).
    for piece in skirt_pieces():
        pen = ListPen()
        draw_label(pen, piece, INFO)
        name = next(text for text in pen.texts if piece.title in text.words)
        assert name.size >= 24.0


def test_a_low_label_joins_lines_and_stays_readable() -> None:
    # The room in a waistband: 120 by 24 mm. Under 6 points nobody reads a paper (common practice).
    lines = label_lines(skirt_pieces()[1], INFO)
    found, share = fitted(lines, 120.0, 24.0)
    assert min(line.size for line in found) * share >= 6.0
    said = " ".join(line.words for line in found)
    for line in lines:
        assert all(word in said for word in line.words.split(" "))
    assert len(found) < len(lines)
    assert fitted(lines, 170.0, 70.0)[0] == lines


def test_every_material_has_its_own_line() -> None:
    front = skirt_pieces()[0]
    fused = replace(front, quantities=(*front.quantities, Quantity("fusible", "cut 1, whole", 1)))
    words = [line.words for line in label_lines(fused, INFO)]
    assert "fusible: cut 1, whole" in [line.replace("\N{NO-BREAK SPACE}", " ") for line in words]


@pytest.mark.parametrize(
    ("size", "words"), [("38", "size 38"), ("XL", "size XL"), ("Form A", "Form A"), ("", "")]
)
def test_bodies_are_named_and_sizes_called_sizes(size: str, words: str) -> None:
    assert replace(INFO, size=size).size_words == words


def test_a_marked_notch_is_drawn_but_not_slit() -> None:
    piece = skirt_pieces()[1]
    notch = replace(piece.notches[0], depth=0.0)
    marked = drawn(replace(piece, notches=(notch,)))
    dashes = [style.dash for path, style in marked.strokes if path.start == notch.cut_positions[0]]
    assert dashes
    assert all(dashes)
