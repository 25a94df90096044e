"""The measure sheet on paper, judged from outside: pypdfium2 reads the words and where they stand."""

import itertools
import re
from dataclasses import dataclass, field
from pathlib import Path as FilePath
from typing import Any

import pypdfium2
import pytest

from notchbook.body import Circumstances, Measure, MeasureEntry, MeasureSet, PopulationName, measure_table
from notchbook.errors import InputError, OutputError
from notchbook.geometry import Path, Point, Transform
from notchbook.output.measure_sheet import SheetPaper, measure_sheet_pdf, write_measure_sheet
from notchbook.output.measure_sheet_page import GAP, draw_row, how_lines
from notchbook.output.measure_sheet_rows import ALIKE, SheetRow, paired_keys, sheet_rows
from notchbook.output.pen import LineStyle, Text
from notchbook.units import LengthStyle

Rect = tuple[float, float, float, float]
PAPERS: list[tuple[SheetPaper, float, float]] = [("a4", 210.0, 297.0), ("letter", 215.9, 279.4)]
SHEETS: list[tuple[PopulationName, SheetPaper]] = [
    (population, paper) for population in ("women", "men") for paper in ("a4", "letter")
]
POINTS = 72 / 25.4


def client() -> MeasureSet:
    """An invented client."""
    return MeasureSet(
        "K-17 (invented)",
        {
            "bust_girth": Measure.of_readings([940, 946]),
            "hip_girth": Measure(1003),
            "hip_depth@left": Measure(198),
            "hip_depth@right": Measure(203),
            "shoulder_length": Measure(124),
            "shoulder_slope": Measure(23.5),
            "inside_leg": Measure(771, "estimated", 25),
            "weight": Measure(62.5),
        },
        waist_level="lower",
        waist_drop=20,
        circumstances=Circumstances("2031-03-12", "M. Tailor (invented)", "soft bra", 15),
    )


def asked_of(population: PopulationName) -> list[MeasureEntry]:
    return [entry for entry in measure_table().values() if entry.is_asked("body", population)]


def pages_of(data: bytes) -> list[pypdfium2.PdfPage]:
    return list(pypdfium2.PdfDocument(data))


def words_of(data: bytes) -> str:
    return "\n".join(page.get_textpage().get_text_range() for page in pages_of(data))


def letters_of(page: pypdfium2.PdfPage) -> list[tuple[str, Rect]]:
    """Every letter that can be seen with its box, points."""
    text = page.get_textpage()
    found = []
    for index in range(text.count_chars()):
        letter = text.get_text_range(index, 1)
        if letter.strip():
            found.append((letter, text.get_charbox(index)))
    return found


def overlapping(letters: list[tuple[str, Rect]]) -> list[tuple[str, str]]:
    """Letters that lie on each other by more than a kern; those far apart in height are not compared."""
    ordered = sorted(letters, key=lambda one: one[1][1])
    found = []
    for place, (letter, one) in enumerate(ordered):
        for other_letter, other in itertools.islice(ordered, place + 1, None):
            if other[1] >= one[3]:
                break
            across = min(one[2], other[2]) - max(one[0], other[0])
            up = min(one[3], other[3]) - max(one[1], other[1])
            if across > 0.6 and up > 0.6:
                found.append((letter, other_letter))
    return found


@dataclass
class Recorded:
    """A pen that remembers."""

    lines: list[Path] = field(default_factory=list)
    words: list[str] = field(default_factory=list)

    def stroke(self, path: Path, style: LineStyle, name: str = "") -> None:
        self.lines.append(path)

    def fill(self, path: Path, gray: float) -> None:
        raise AssertionError

    def write(self, text: Text) -> None:
        self.words.append(text.words)

    def begin_group(self, name: str, motion: Transform) -> None:
        raise AssertionError

    def end_group(self) -> None:
        raise AssertionError


@pytest.mark.parametrize(("paper", "width", "height"), PAPERS)
def test_two_pages_of_the_paper_asked_for(paper: SheetPaper, width: float, height: float) -> None:
    pages = pages_of(measure_sheet_pdf(paper=paper))
    assert len(pages) == 2
    for page in pages:
        assert page.get_size() == pytest.approx((width * POINTS, height * POINTS), abs=0.1)


@pytest.mark.parametrize(("population", "paper"), SHEETS)
def test_every_measure_stands_on_it_in_order(population: PopulationName, paper: SheetPaper) -> None:
    words = " ".join(words_of(measure_sheet_pdf(None, population, paper)).split())
    rest = words
    for entry in asked_of(population):
        label = entry.label_for(population)
        _, found, rest = rest.partition(label)
        assert found, label
    assert ("Under-bust" in words) == (population == "women")
    for name in (
        "name or code",
        "date",
        "measured by",
        "undergarment",
        "heel",
        "unit",
        "waist",
        "page 2 of 2",
    ):
        assert name in words


@pytest.mark.parametrize(("population", "paper"), SHEETS)
def test_every_tape_has_its_number_beside_the_figure(population: PopulationName, paper: SheetPaper) -> None:
    page = pages_of(measure_sheet_pdf(None, population, paper))[0]
    numbers = set(re.findall(r"\d+", page.get_textpage().get_text_range()))
    assert {str(entry.number) for entry in asked_of(population) if entry.key != "weight"} <= numbers


@pytest.mark.parametrize(("population", "paper"), SHEETS)
@pytest.mark.parametrize("measures", [None, client()], ids=["blank", "filled"])
def test_no_words_lie_on_each_other_or_leave_the_page(
    population: PopulationName, paper: SheetPaper, measures: MeasureSet | None
) -> None:
    for page in pages_of(measure_sheet_pdf(measures, population, paper, LengthStyle("in"))):
        letters = letters_of(page)
        assert len(letters) > 300
        assert overlapping(letters) == []
        width, height = page.get_size()
        for letter, (left, low, right, high) in letters:
            assert 25 < left <= right < width - 25, letter
            assert 25 < low <= high < height - 25, letter


def test_words_that_lie_on_each_other_would_be_found() -> None:
    letters = letters_of(pages_of(measure_sheet_pdf())[0])
    letter, (left, low, right, high) = next(one for one in letters if one[0] == "M")
    shifted = (letter, (left + 1, low + 1, right + 1, high + 1))
    assert overlapping([*letters, shifted])


def test_the_short_way_is_never_cut_off() -> None:
    for _, page_width, _ in PAPERS:
        column = (page_width - 24.0 - GAP) / 2
        for row in sheet_rows(None, LengthStyle()):
            assert len(how_lines(row, column)) <= 2, row.name
    long = SheetRow("long", 1, "Long", "so and so " * 40, sheet_rows(None, LengthStyle())[0].boxes)
    assert len(how_lines(long, 88.0)) > 2


def test_boxes_are_large_enough_to_write_in() -> None:
    """8 mm high and 15 mm wide: common practice for handwriting, no source."""
    for row in sheet_rows(None, LengthStyle()):
        pen = Recorded()
        draw_row(pen, row, 0.0, 0.0, 88.0)
        boxes = [line.bounds() for line in pen.lines if line.is_closed]
        assert len(boxes) == sum(len(line) for line in row.boxes)
        for box in boxes:
            assert box.height >= 8.0
            assert box.width >= 15.0
        for one, other in itertools.combinations(boxes, 2):
            assert one.max_x <= other.min_x + 1e-9 or one.min_y >= other.max_y - 1e-9


def test_boxes_follow_sides_and_readings() -> None:
    captions = {
        row.name: [[box.caption for box in line] for line in row.boxes]
        for row in sheet_rows(None, LengthStyle())
    }
    assert captions["Height"] == [[""]]
    assert captions["Bust girth"] == [["", "again"]]
    assert captions["Hip depth"] == [["left", "right"]]
    assert captions["Front waist length"] == [["left", "right"], ["left, again", "right, again"]]
    assert captions["Shoulder slope"] == [
        ["left, degrees", "right, degrees"],
        ["left, again", "right, again"],
    ]
    assert captions["Weight"] == [["kg"]]
    assert captions["Sitting rise"] == captions["Standing rise"] == [[""]]
    for entry in measure_table().values():
        boxes = captions[entry.label]
        assert (len(boxes) * len(boxes[0]) > 1) == (entry.twice or entry.key in paired_keys())
    assert not {"bust_girth", "across_back", "front_hip_arc", "height"} & paired_keys()


def test_values_stand_as_they_were_taken() -> None:
    texts = {
        row.name: [[box.value for box in line] for line in row.boxes]
        for row in sheet_rows(client(), LengthStyle("cm", ","))
    }
    assert texts["Bust girth"] == [["94,0", "94,6"]]
    assert texts["Hip girth"] == [["100,3", ""]]
    assert texts["Hip depth"] == [["19,8", "20,3"]]
    assert texts["Shoulder length"] == [["12,4", ALIKE]]
    assert texts["Shoulder slope"] == [["23.5", ALIKE], ["", ""]]
    assert texts["Inside leg"] == [["77,1 est.", ALIKE]]
    assert texts["Weight"] == [["62.5"]]
    assert texts["Waist girth"] == [["", ""]]


def test_readings_beyond_the_boxes_are_not_left_out() -> None:
    measures = MeasureSet(
        "K-17 (invented)",
        {
            "waist_girth": Measure.of_readings([740, 746, 752]),
            "wrist_girth@left": Measure.of_readings([150, 154]),
        },
    )
    texts = {
        row.name: [[box.value for box in line] for line in row.boxes]
        for row in sheet_rows(measures, LengthStyle())
    }
    assert texts["Waist girth"] == [["74.0", "74.6 · 75.2"]]
    assert texts["Wrist girth"] == [["15.0 · 15.4", ""]]


def test_the_head_says_how_it_was_taken() -> None:
    words = words_of(measure_sheet_pdf(client()))
    for said in (
        "K-17 (invented)",
        "2031-03-12",
        "M. Tailor (invented)",
        "soft bra",
        "1.5 cm",
        "lower by 2.0 cm",
    ):
        assert said in words, said
    blank = words_of(measure_sheet_pdf())
    assert "lower by 2.0" not in blank
    assert "none" not in blank.split("page 1")[0].split("Height")[0]


def test_what_nobody_said_stays_blank() -> None:
    """A set is of the natural waist and without a heel also when nobody said so."""
    taken = MeasureSet("K-17 (invented)", {"height": Measure(1700)})
    filled, blank = (words_of(measure_sheet_pdf(one)) for one in (taken, None))
    for word in ("none", "natural"):
        assert filled.count(word) == blank.count(word), word


@pytest.mark.parametrize(("population", "paper"), SHEETS)
def test_a_short_sheet_is_one_page_of_what_is_asked(population: PopulationName, paper: SheetPaper) -> None:
    keys = ("waist_girth", "hip_girth", "hip_depth", "front_hip_arc", "outside_leg", "sitting_rise")
    (page,) = pages_of(measure_sheet_pdf(None, population, paper, None, keys))
    words = page.get_textpage().get_text_range()
    names = {row.name for row in sheet_rows(None, LengthStyle(), population, keys)}
    assert len(names) == len(keys)
    assert all(name in words for name in names)
    # Beside the numbers of the measures and tapes there is nothing but "page 1 of 1".
    assert set(re.findall(r"\d+", words)) == {"1", *(str(measure_table()[key].number) for key in keys)}
    assert overlapping(letters_of(page)) == []


def test_a_sheet_too_long_for_one_page_has_two() -> None:
    keys = tuple(measure_table())[:40]
    assert len(pages_of(measure_sheet_pdf(None, keys=keys))) == 2


def test_a_sheet_of_a_form_asks_for_its_trunk_alone() -> None:
    form = MeasureSet("Form (invented)", {"hip_girth": Measure(980), "inside_leg": Measure(700)}, kind="form")
    keys = {row.key for row in sheet_rows(form, LengthStyle(), "women")}
    # A form with legs was measured there: what was taken stands.
    assert {"hip_girth", "hip_depth", "inside_leg"} <= keys
    assert not keys & {"height", "head_girth", "wrist_girth", "outside_leg"}


def test_long_names_are_made_to_fit() -> None:
    long = MeasureSet("Anna-Katharina von und zu " * 4, {"height": Measure(1700)})
    for page in pages_of(measure_sheet_pdf(long)):
        assert overlapping(letters_of(page)) == []
        assert max(box[2] for _, box in letters_of(page)) < page.get_size()[0] - 25


def test_the_same_sheet_gives_the_same_bytes() -> None:
    assert measure_sheet_pdf(client()) == measure_sheet_pdf(client())
    assert measure_sheet_pdf(client()) != measure_sheet_pdf()


def test_what_is_refused_leaves_no_file(tmp_path: FilePath) -> None:
    paper: Any = "a0"
    with pytest.raises(InputError) as refusal:
        write_measure_sheet(tmp_path / "sheet.pdf", None, "women", paper)
    assert refusal.value.code == "paper-unknown"
    population: Any = "children"
    with pytest.raises(InputError) as other:
        write_measure_sheet(tmp_path / "sheet.pdf", None, population)
    assert other.value.code == "figure-unknown"
    with pytest.raises(OutputError):
        write_measure_sheet(tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_values_are_written_inside_their_boxes() -> None:
    pen = Recorded()
    row = next(row for row in sheet_rows(client(), LengthStyle()) if row.name == "Bust girth")
    draw_row(pen, row, 0.0, 0.0, 88.0)
    assert pen.words[0] == "6"
    assert pen.words[-3:] == ["94.0", "again", "94.6"]
    assert Point(0.0, 0.0) not in [line.start for line in pen.lines]
