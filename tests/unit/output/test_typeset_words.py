"""Words on paper: fractions, letters of many languages, widths and breaks."""

import io
from importlib.resources import files

import pikepdf
import pypdfium2
import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from notchbook.geometry import Box, Point
from notchbook.output.fonts_on_paper import FALLBACK, FAMILY, FontFile, font_for, width_of
from notchbook.output.pdf_pen import PdfPaper
from notchbook.output.pen import Text
from notchbook.output.typeset import CAP_HEIGHT, fitting_size, shortened, text_width, typeset, wrapped
from support.papers import INFO

SAMPLE = "3/8, Ł ő Ж"


def page_with(words: str, size: float = 40.0) -> bytes:
    made = PdfPaper(INFO, "test")
    with made.page(150.0, 40.0, Box(0.0, 0.0, 150.0, 40.0)) as pen:
        pen.write(Text(words, Point(10.0, 12.0), size))
    return made.data()


def picture(words: str) -> bytes:
    document = pypdfium2.PdfDocument(page_with(words))
    drawn = document[0].render(scale=2.0, grayscale=True).to_pil().tobytes()
    document.close()
    return bytes(drawn)


def test_text_can_be_read_back_from_the_page() -> None:
    document = pypdfium2.PdfDocument(page_with(SAMPLE))
    said = document[0].get_textpage().get_text_range()
    document.close()
    for letter in ("Ł", "ő", "Ж", "3", "/", "8"):
        assert letter in said


@pytest.mark.parametrize("letter", [*"ŁőЖαßçñ№½⅜", "3/8"])
def test_letters_come_out_as_glyphs_not_boxes(letter: str) -> None:
    unknown = picture("\U0001f9f5")  # a spool of thread: neither font has it, it is written as "?"
    assert picture("?") == unknown
    drawn = picture(letter)
    assert drawn != unknown
    assert drawn != picture("")


def test_embedded_fonts_hold_outlines() -> None:
    pdf = pikepdf.open(io.BytesIO(page_with(SAMPLE)))
    embedded = 0
    for item in pdf.objects:
        if isinstance(item, pikepdf.Dictionary) and "/FontFile2" in item:
            glyphs = TTFont(io.BytesIO(item.FontFile2.read_bytes()))["glyf"]
            outlines = [name for name in glyphs.glyphOrder if glyphs[name].numberOfContours != 0]
            embedded += 1
            assert len(outlines) >= 2
    assert embedded == 2


@pytest.mark.parametrize("chosen", [*FAMILY.values(), *FALLBACK.values()])
def test_fonts_are_open_and_shipped_with_their_licence(chosen: FontFile) -> None:
    folder = files("notchbook.output") / "fonts"
    with (folder / chosen.file).open("rb") as stream:
        names = TTFont(stream)["name"]
        assert "Open Font License" in str(names.getDebugName(13))
    family = chosen.file.split("-")[0]
    assert "OPEN FONT LICENSE" in (folder / f"{family}-LICENSE.txt").read_text(encoding="utf-8").upper()


@pytest.mark.parametrize("chosen", [*FAMILY.values(), *FALLBACK.values()])
def test_figures_are_tabular(chosen: FontFile) -> None:
    assert len({round(width_of(figure, chosen), 6) for figure in "0123456789"}) == 1


def test_cap_height_is_that_of_the_font() -> None:
    with (files("notchbook.output") / "fonts" / FAMILY[False].file).open("rb") as stream:
        font = TTFont(stream)
        assert font["OS/2"].sCapHeight / font["head"].unitsPerEm == pytest.approx(CAP_HEIGHT)


def test_fallback_is_taken_only_for_what_the_family_lacks() -> None:
    assert font_for("Ł", bold=False) == FAMILY[False]
    assert font_for("Ж", bold=True) == FALLBACK[True]
    assert font_for("\U0001f9f5", bold=False) is None


@pytest.mark.parametrize(
    ("words", "parts"),
    [
        ("3/8", ["3", "/", "8"]),
        ("37 1/2", ["37", "1", "/", "2"]),
        ("37½", ["37", "1", "/", "2"]),
        ("⅝ in", ["5", "/", "8", " in"]),
        ("15/16 in", ["15", "/", "16", " in"]),
        ("12/3/2031", ["12/3/2031"]),
        ("page 3/12", ["page 3/12"]),
        ("1/7", ["1/7"]),
        ("and/or", ["and/or"]),
    ],
)
def test_fractions_of_the_ruler_and_nothing_else(words: str, parts: list[str]) -> None:
    assert [run.words for run in typeset(words).runs] == parts


def test_a_fraction_is_small_above_and_below() -> None:
    above, slash, below = typeset("3/8").runs
    assert above.scale == below.scale < slash.scale
    assert above.rise > below.rise == 0.0
    assert above.x < slash.x < below.x


def test_long_headings_shrink_before_they_are_cut() -> None:
    words = "Straight skirt with a long name"
    assert fitting_size(words, 24.0, 12.0, 1000.0) == 24.0
    size = fitting_size(words, 24.0, 12.0, 100.0)
    assert 12.0 < size < 24.0
    assert text_width(words, size) == pytest.approx(100.0)
    assert fitting_size(words * 9, 24.0, 12.0, 100.0) == 12.0


@given(st.text(max_size=60))
def test_any_text_can_be_written(words: str) -> None:
    line = typeset(words)
    assert line.width >= 0.0
    assert all(run.words for run in line.runs)
    assert len(page_with(words, 8.0)) > 500


@given(st.text(alphabet=st.characters(codec="utf-8", categories=("L", "N", "P", "Zs")), max_size=80))
def test_wrapped_lines_fit(words: str) -> None:
    for line in wrapped(words, 10.0, 30.0):
        assert text_width(line, 10.0) <= 30.0 or len(line) <= 2
    assert text_width(shortened(words, 10.0, 30.0), 10.0) <= 30.0 or len(words) <= 1
