"""The picture for the screen: its size, its shape, and names that can be read on it."""

import io
from dataclasses import replace
from pathlib import Path as FilePath

import pypdfium2
import pytest
from PIL import Image

from notchbook.errors import OutputError
from notchbook.finish import CutPiece, finish, production_table
from notchbook.output.picture import picture_pdf
from notchbook.output.piece_words import line_words
from notchbook.output.png import rendered, write_png
from notchbook.pattern import Mark
from notchbook.units import LengthStyle, Unit
from support.cut_shapes import cut_one, polygon_piece
from support.papers import INFO, skirt_pieces
from support.yoke_skirt import FORM_A, run, yoke_recipe


def yoked() -> tuple[CutPiece, ...]:
    return finish(run(yoke_recipe(), FORM_A).pattern, production_table())


@pytest.mark.parametrize("pieces", [skirt_pieces(), yoked()], ids=["two pieces", "six pieces"])
def test_a_picture_fits_a_screen(tmp_path: FilePath, pieces: tuple[CutPiece, ...]) -> None:
    path = write_png(pieces, INFO, tmp_path / "pieces.png")
    width, height = Image.open(path).size
    # Screens are wider than high; 1200 dots are shown without scrolling on most (common practice).
    assert width == pytest.approx(1200, abs=1)
    assert height <= 1200
    assert path.stat().st_size < 300_000


def test_every_piece_is_named_in_type_of_8_points_and_more() -> None:
    document = pypdfium2.PdfDocument(picture_pdf(yoked(), INFO))
    page = document[0].get_textpage()
    said = page.get_text_range()
    for piece in yoked():
        first = page.get_charbox(said.index(piece.title))
        # Capitals of the family are 0.668 of the type size; upright words lie on their side in the box.
        tall = max(first[3] - first[1], first[2] - first[0])
        assert tall >= 8.0 * 0.66, piece.title
    document.close()


def test_the_cut_line_is_dark_enough_to_be_seen() -> None:
    block = cut_one(polygon_piece([(0, 0), (600, 0), (600, 800), (0, 800)]), 0.0)
    picture = Image.open(io.BytesIO(rendered(picture_pdf((block,), INFO)))).convert("L")
    left = picture.crop((0, picture.height // 2, picture.width // 2, picture.height // 2 + 1))
    darkest, _ = left.getextrema()
    assert isinstance(darkest, (int, float))
    assert darkest < 80


def test_no_pieces_make_no_picture() -> None:
    with pytest.raises(OutputError) as refused:
        picture_pdf((), INFO)
    assert refused.value.code == "output-no-pieces"


def said_on(pieces: tuple[CutPiece, ...], unit: Unit = "cm") -> str:
    document = pypdfium2.PdfDocument(picture_pdf(pieces, replace(INFO, lengths=LengthStyle(unit))))
    said = str(document[0].get_textpage().get_text_range())
    document.close()
    return said


def test_levels_and_points_are_named_and_a_bar_gives_the_scale() -> None:
    marked = tuple(
        replace(piece, marks=(Mark(f"{piece.name}/bust_point", piece.label.center),)) for piece in yoked()
    )
    said = said_on(marked)
    levels = {line_words(line.name) for piece in marked for line in piece.lines}
    assert levels and all(words in said for words in levels)
    assert "bust point" in said and "10 cm" in said
    assert "bust point" not in said_on(yoked())
    assert "4 in" in said_on(marked, "in")


def test_the_bar_is_ten_centimeters_of_the_pieces() -> None:
    block = cut_one(polygon_piece([(0, 0), (600, 0), (600, 800), (0, 800)]), 0.0)
    picture = Image.open(io.BytesIO(rendered(picture_pdf((block,), INFO)))).convert("L")
    head = picture.crop((picture.width // 2, 0, picture.width, 100)).point(lambda shade: 255 * (shade < 128))
    row = max(range(head.height), key=lambda y: sum(head.crop((0, y, head.width, y + 1)).tobytes()))
    bar = head.crop((0, row, head.width, row + 1)).getbbox()
    whole = (
        picture.crop((0, 110, picture.width, picture.height))
        .point(lambda shade: 255 * (shade < 128))
        .getbbox()
    )
    assert bar is not None and whole is not None
    assert (bar[2] - bar[0]) / (whole[2] - whole[0]) == pytest.approx(100.0 / 600.0, rel=0.03)
