"""A pattern that rests on estimates says so on every paper; one of measures has not a word of it."""

from collections.abc import Callable
from dataclasses import replace

import pypdfium2
import pytest

from notchbook.output import PaperInfo
from notchbook.output.card_pdf import card_pdf
from notchbook.output.label_lines import label_lines
from notchbook.output.paper_info import PaperEstimate
from notchbook.output.pdf_sheet import sheet_pdf
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.output.picture import picture_pdf
from notchbook.output.svg import svg_of
from support.papers import INFO, skirt_pieces

LIST = ("hip depth 20.3 ± 1.8 cm", "outside leg, left 106.1 ± 3.7 cm")
GUESSED = replace(
    INFO,
    estimates=(PaperEstimate("hip depth", LIST[0]), PaperEstimate("outside leg, left", LIST[1])),
)
SIGN = "hip depth and outside leg, left est."
PAPERS: dict[str, Callable[[PaperInfo], bytes]] = {
    "tiles": lambda info: tiled_pdf(skirt_pieces(), info)[0],
    "sheet": lambda info: sheet_pdf(skirt_pieces(), info)[0],
    "card": lambda info: card_pdf(skirt_pieces(), info)[0],
    "picture": lambda info: picture_pdf(skirt_pieces(), info),
}


def pages_of(data: bytes) -> list[str]:
    """The words of each page, in one line."""
    document = pypdfium2.PdfDocument(data)
    said = [" ".join(page.get_textpage().get_text_range().split()) for page in document]
    document.close()
    return said


@pytest.mark.parametrize("paper", PAPERS)
def test_every_page_carries_the_sign(paper: str) -> None:
    pages = pages_of(PAPERS[paper](GUESSED))
    assert all(SIGN in page.replace("\N{NO-BREAK SPACE}", " ") for page in pages), paper


@pytest.mark.parametrize("paper", ["tiles", "sheet", "card"])
def test_the_first_page_lists_what_was_not_measured(paper: str) -> None:
    first = pages_of(PAPERS[paper](GUESSED))[0]
    plain = first.replace("\N{NO-BREAK SPACE}", " ")
    for words in LIST:
        assert words in plain, paper
    assert "not measured" in plain


@pytest.mark.parametrize("paper", PAPERS)
def test_a_pattern_of_measures_says_nothing_of_estimates(paper: str) -> None:
    said = " ".join(pages_of(PAPERS[paper](INFO)))
    assert "est." not in said
    assert "not measured" not in said


def test_each_label_has_the_sign_and_never_loses_it() -> None:
    for piece in skirt_pieces():
        lines = label_lines(piece, GUESSED)
        (sign,) = [line for line in lines if line.words == SIGN]
        assert sign.spare == 0
        assert [line for line in lines if line is not sign] == list(label_lines(piece, INFO))


def test_the_drawing_has_the_sign_in_each_label() -> None:
    drawn = svg_of(skirt_pieces(), GUESSED)
    assert drawn.count(f">{SIGN}<") == len(skirt_pieces())
    assert "est.<" not in svg_of(skirt_pieces(), INFO)


def test_the_notes_of_the_card_stay_beside_the_estimates() -> None:
    assert GUESSED.all_notes == (GUESSED.estimate_note, *INFO.notes)
    assert INFO.all_notes == INFO.notes


def test_one_or_two_are_named_and_more_are_counted() -> None:
    one, two = GUESSED.estimates
    assert replace(INFO, estimates=(one,)).estimate_sign == "hip depth est."
    assert GUESSED.estimate_sign == SIGN
    assert replace(INFO, estimates=(one, two, one)).estimate_sign == "3 measures est."
    assert INFO.estimate_sign == ""


def test_many_estimates_still_fit_the_papers() -> None:
    many = tuple(f"measure number {index} 20.3 ± 1.8 cm" for index in range(14))
    info = replace(INFO, estimates=tuple(PaperEstimate(text[:17], text) for text in many))
    for paper in ("tiles", "card"):
        assert many[-1] in pages_of(PAPERS[paper](info))[0]
