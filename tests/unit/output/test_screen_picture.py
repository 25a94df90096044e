"""The picture for the screen: its size, its shape, and names that can be read on it."""

import io
from pathlib import Path as FilePath

import pypdfium2
import pytest
from PIL import Image

from notchbook.errors import OutputError
from notchbook.finish import CutPiece, finish, production_table
from notchbook.output.picture import picture_pdf
from notchbook.output.png import rendered, write_png
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
