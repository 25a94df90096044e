"""Whatever is handed in: a preview or a clear refusal, never another exception, never a changed book."""

import tempfile
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.app.charts.importing import import_into, import_to_files, preview_file
from notchbook.app.studio import Studio
from notchbook.body import read_bodies, read_measures, read_value
from notchbook.body.charts import read_chart
from notchbook.body.files.raw_value import RawValue
from notchbook.body.importing import (
    Answers,
    Layout,
    Preview,
    gives_chart,
    preview,
    propose,
    read_line_answer,
    read_table,
)
from notchbook.body.importing.preview_data import preview_data
from notchbook.errors import InputError, NotchbookError
from support.book_dump import book_hash

HEADERS = [
    "Name", "Bust", "Bust (cm)", "Hip", "Waist (in)", "Height (m)", "unit", "id", "Measure", "Value", "Size",
    "bust_girth", "hip_depth@left", "hip_girth.error", "waist_girth.readings", "Unit", "Weight", "Slope (°)",
    "kind", "Date", "Heel height", "waist_drop", "Wiast", "Total", "First name", "#", "",
]  # fmt: skip
VALUES = [
    "94", "94,5", "37 1/2", '37½"', "94 cm", "-", "1,234", "0", "1e9", "NaN", "=1+1", "in", "cm", "S", "8",
    "½", "74 & 75", "estimated", "body", "lower", "2026-02-30", "9" * 40, "x" * 130, "\u0007", "\u202e",
    "5'6", "",
]  # fmt: skip
SIGNS = [
    ",",
    ";",
    "\t",
    "|",
    ":",
    "\n",
    "\r\n",
    '"',
    "{",
    "}",
    "[",
    "]",
    "\\",
    "\0",
    "\ufeff",
    " ",
    "\u2028",
    "\x1c",
]
JSON_WORDS = ['"name":', '"measures":', '"Bust (cm)":', "null", "true", "1e999", "NaN", '"94"', ","]

ROWS = st.lists(st.lists(st.sampled_from(HEADERS + VALUES), min_size=1, max_size=6), min_size=1, max_size=6)
TABLES = st.builds(
    lambda rows, sign: "\n".join(sign.join(row) for row in rows), ROWS, st.sampled_from(",;\t|:")
)
MESS = st.lists(st.sampled_from(HEADERS + VALUES + SIGNS + JSON_WORDS), max_size=30).map("".join)
TEXTS = st.one_of(TABLES, MESS, st.text(max_size=80))
ANSWERS = st.builds(
    Answers,
    unit=st.sampled_from([None, "cm", "in", "mm"]),
    skip=st.lists(st.sampled_from(HEADERS), max_size=1).map(tuple),
    skip_unknown=st.booleans(),
    kind=st.sampled_from([None, "form", "chart"]),
)
LAYOUTS: st.SearchStrategy[Layout | None] = st.sampled_from(
    [None, None, "body_a_row", "measure_a_row", "sizes_across"]
)


def shown(text: str, answers: Answers, layout: Layout | None) -> Preview | None:
    """The preview, or None when it is refused in words."""
    try:
        table = read_table(text, layout)
        found = preview(table, propose(table, answers), "list")
    except InputError as refusal:
        assert refusal.text() and refusal.next_step()
        return None
    assert len(found.rows) == len(table.bodies) + len(table.own_sets)
    assert found.good + found.refused + found.waiting + found.left_out == len(found.rows)
    assert not found.ready or not found.waiting, "no value is dropped from what is stored"
    for row in found.rows:
        assert row.good or row.refusals or row.doubts or row.state == "asked"
        assert (row.measures is not None) or not row.good
    assert preview_data(found)["good"] == found.good
    return found


@given(TEXTS, ANSWERS, LAYOUTS)
@settings(max_examples=400, deadline=None)
def test_any_text_gives_a_preview_or_a_refusal(text: str, answers: Answers, layout: Layout | None) -> None:
    found = shown(text, answers, layout)
    if found is not None and found.questions:
        with pytest.raises(InputError) as refusal:
            found.sets(only_good=True)
        assert refusal.value.code == "import-not-ready"


@given(st.text(max_size=60))
def test_any_answer_is_read_or_refused(text: str) -> None:
    try:
        assert read_line_answer(text).name
    except InputError as refusal:
        assert refusal.text()


@given(
    st.sampled_from(["bust_girth", "weight", "shoulder_slope", "hip_depth@left"]),
    st.text(max_size=30),
    st.text(max_size=10),
    st.text(max_size=10),
)
def test_any_cell_is_read_or_refused(key: str, value: str, unit: str, error: str) -> None:
    try:
        read_value(key, RawValue(value, unit, error=error), "cm")
    except InputError as refusal:
        assert refusal.text()


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Path, Studio]]:
    path = tmp_path_factory.mktemp("garbage") / "b.notchbook"
    studio = Studio.open(path)
    studio.first_time()
    yield path, studio
    studio.close()


BYTES = st.one_of(st.binary(max_size=120), TEXTS.map(lambda text: text.encode("utf-8", "surrogatepass")))


@given(BYTES, st.sampled_from([".csv", ".json", ".tsv", ".txt"]), st.booleans())
@settings(max_examples=250, deadline=None)
def test_any_file_is_stored_whole_or_the_book_is_as_it_was(
    book: tuple[Path, Studio], data: bytes, ending: str, only_good: bool
) -> None:
    path, studio = book
    before, count = book_hash(path), len(studio.list_bodies()) + len(studio.list_charts())
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / f"list{ending}"
        file.write_bytes(data)
        stored = 0
        try:
            stored = import_into(studio, preview_file(file, Answers("cm")), only_good=only_good).stored
        except NotchbookError as refusal:
            assert refusal.text()
        assert file.read_bytes() == data
        for read in (read_measures, lambda place: list(read_bodies(place))):
            with suppress(InputError):
                read(file)
    assert (len(studio.list_bodies()) + len(studio.list_charts()) > count) == (stored > 0)
    assert (book_hash(path) == before) == (stored == 0)


@given(TABLES)
@settings(max_examples=60, deadline=None)
def test_any_table_is_written_whole_or_not_at_all(text: str) -> None:
    found = shown(text, Answers("cm", skip_unknown=True), None)
    if found is None:
        return
    with tempfile.TemporaryDirectory() as folder:
        for place in ("bodies", "all.csv"):
            out = Path(folder) / place
            try:
                import_to_files(found, out, only_good=True)
            except InputError:
                assert not out.exists()
        if (Path(folder) / "all.csv").exists():
            if gives_chart(found):
                assert read_chart(Path(folder) / "all.csv").labels
            else:
                rows = list(read_bodies(Path(folder) / "all.csv"))
                assert [row.measures for row in rows] == list(found.sets(only_good=True))
