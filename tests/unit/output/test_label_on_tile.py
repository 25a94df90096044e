"""Titles are not cut by the edges of sheets: read back from the PDF by another program's text boxes."""

from collections.abc import Iterator
from dataclasses import replace

import pypdfium2
import pytest

from notchbook.finish import CutPiece, finish, label_places, production_table
from notchbook.geometry import Point
from notchbook.output.label_on_tile import on_one_tile
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.output.tiling import Paper
from support.papers import INFO, skirt_pieces
from support.stretch_bodies import banded_run, stretch_run

MM = 72.0 / 25.4


def suit_pieces() -> tuple[CutPiece, ...]:
    return finish(stretch_run("bodysuit").pattern, production_table())


def band_pieces() -> tuple[CutPiece, ...]:
    neck = [
        ("stretch_torso.front/neck", "stretch_torso.front/neck_pit"),
        ("stretch_torso.back/neck", "stretch_torso.back/side_neck_point"),
    ]
    return finish(banded_run("stretch_torso", neck).pattern, production_table())


def whole_on(document: pypdfium2.PdfDocument, words: str) -> Iterator[int]:
    """The pages on which all of these words lie inside the printed frame."""
    for number in range(1, len(document)):
        page = document[number]
        width, height = page.get_size()
        frame = ((width - 190.0 * MM) / 2.0, (height - 254.0 * MM) / 2.0)
        text = page.get_textpage()
        found = text.search(words).get_next()
        if found is None:
            continue
        boxes = [text.get_charbox(index) for index in range(found[0], found[0] + found[1])]
        left, low = min(box[0] for box in boxes), min(box[1] for box in boxes)
        right, high = max(box[2] for box in boxes), max(box[3] for box in boxes)
        if left >= frame[0] and low >= frame[1] and right <= width - frame[0] and high <= height - frame[1]:
            yield number


@pytest.mark.parametrize("pieces", [suit_pieces(), skirt_pieces()], ids=["suit", "skirt"])
def test_each_title_is_whole_on_one_sheet(pieces: tuple[CutPiece, ...]) -> None:
    document = pypdfium2.PdfDocument(tiled_pdf(pieces, INFO)[0])
    for piece in pieces:
        count = f"{piece.number} of {piece.of}"
        assert list(whole_on(document, count)), piece.title
    document.close()


@pytest.mark.parametrize("paper", ["a4", "letter", "both"])
def test_a_title_on_one_sheet_stays_and_no_other_thing_moves(paper: Paper) -> None:
    tiling = tiled_pdf(suit_pieces(), INFO, paper)[1]
    for placement in tiling.sheet.placements:
        moved = on_one_tile(placement, tiling, INFO)
        assert replace(moved, label=placement.piece.label) == placement.piece
        assert on_one_tile(replace(placement, piece=moved), tiling, INFO) == moved


def test_a_piece_without_room_keeps_its_label() -> None:
    piece = suit_pieces()[0]
    far = [Point(9000.0, 9000.0), Point(9100.0, 9000.0), Point(9100.0, 9100.0), Point(9000.0, 9100.0)]
    assert list(label_places(piece, [far], (60.0, 20.0))) == []


def test_the_title_of_a_band_lies_beside_its_fold_line() -> None:
    """A strip of twice 20 mm cut across the grain: words along the grain would stand on the fold."""
    band = next(piece for piece in band_pieces() if piece.name == "stretch_band.band")
    assert band.label.is_clear
    middle = next(line for line in band.lines if "/fold_line" in line.name).path.start.y
    assert abs(band.label.center.y - middle) >= band.label.height / 2.0
    assert band.label.length > band.label.height
    assert abs((band.label.degrees - band.grain.degrees) % 180.0) == pytest.approx(90.0)
