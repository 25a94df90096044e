"""Foreign texts taken apart: delimiters, headers, titles, notes, layouts, JSON. All lists are invented."""

import csv
import io

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from notchbook.body.importing import ForeignTable, read_table
from notchbook.body.importing.body_rows import unique_names
from notchbook.body.importing.cell_text import clean_cell, looks_like_value
from notchbook.body.importing.split_text import find_delimiter, split_text
from notchbook.errors import InputError


def refused(text: str) -> str:
    with pytest.raises(InputError) as refusal:
        read_table(text)
    assert refusal.value.text() and refusal.value.next_step()
    return refusal.value.code


def names(table: ForeignTable) -> list[str]:
    return [line.name for line in table.lines]


@pytest.mark.parametrize("sign", ["\t", ";", "|", ",", ":"])
def test_the_delimiter_is_found(sign: str) -> None:
    text = f"Bust{sign}94\nWaist{sign}74\n"
    assert find_delimiter(text) == sign
    assert [body.cells for body in read_table(text).bodies] == [("94", "74")]


def test_a_decimal_comma_does_not_separate() -> None:
    table = read_table("Name;Bust;Waist\nAnna;94,5;74,5\nBea;90,25;70\n")
    assert table.delimiter == ";"
    assert table.bodies[0].cells == ("Anna", "94,5", "74,5")


CELLS = st.text(st.characters(exclude_categories=["Cc", "Cs", "Zs", "Cf"]), min_size=1, max_size=8)


@given(st.lists(st.lists(CELLS, min_size=2, max_size=4), min_size=1, max_size=4), st.sampled_from(";,\t|"))
@example([['37 1/2"', 'say "x"'], ["a;b", "c,d"]], ";")
def test_what_the_standard_library_writes_is_read_back(rows: list[list[str]], sign: str) -> None:
    """Outside judge: csv.writer of Python's standard library (RFC 4180 quotes)."""
    stream = io.StringIO()
    csv.writer(stream, delimiter=sign, lineterminator="\n").writerows(rows)
    wanted = []
    for row in rows:
        cells = [clean_cell(cell) for cell in row]
        while cells and not cells[-1]:
            cells.pop()
        wanted.append(tuple(cells))
    assert [row.cells for row in split_text(stream.getvalue(), sign)] == [row for row in wanted if row]


def test_quotes_hold_line_ends_and_inch_signs_are_kept() -> None:
    table = read_table('Name,Bust,Waist,Note\n"Anna\nMaria",37 1/2",29,"a, b"\nBea,"38""",30,\n')
    assert table.bodies[0].cells == ("Anna Maria", '37 1/2"', "29", "a, b")
    assert table.bodies[1].cells == ("Bea", '38"', "30", "")
    assert [body.number for body in table.bodies] == [2, 4]


def test_quotes_that_do_not_close_are_refused_with_their_line() -> None:
    with pytest.raises(InputError) as refusal:
        read_table('Name,Bust,Waist\nAnna,94,74\n"Bea,90,70\n')
    assert refusal.value.code == "measures-csv-quotes"
    assert "line 3" in refusal.value.text()


def test_titles_units_below_totals_and_notes_are_set_aside() -> None:
    table = read_table(
        "Clients of spring (invented),,\n\nName,Bust,Waist\n,cm,cm\nAnna,94,74\nName,Bust,Waist\n"
        "Bea,90,70\nAverage,92,72\nAll were taken over a slip\n"
    )
    assert table.header_line == 3
    assert [line.unit_words for line in table.lines] == ["", "cm", "cm"]
    assert [body.cells[0] for body in table.bodies] == ["Anna", "Bea"]
    why = {aside.number: aside.why for aside in table.set_aside}
    assert why == {
        1: "above the header",
        4: "the units of the columns",
        6: "the header again",
        8: "a total or a note",
        9: "a line of words",
    }


def test_a_client_called_like_a_word_of_the_trade_is_no_total() -> None:
    table = read_table("Name,Bust,Waist\nMax,94,74\nAnna,90,70\n")
    assert [body.cells[0] for body in table.bodies] == ["Max", "Anna"]


def test_headers_that_repeat_or_lack_words_get_names_of_their_own() -> None:
    table = read_table("Name,,Bust,Hip,hip,,\nAnna,7,94,98,90,,\n")
    assert names(table) == ["Name", "column 2", "Bust", "Hip", "hip (2)"]


def test_many_lines_of_one_name_are_counted_not_searched() -> None:
    """Found by the fuzzer: each of thousands of equal names was compared with all before it."""
    assert unique_names(["Bust"] * 30_000)[-1] == "Bust (30000)"
    assert unique_names(["Hip (2)", "Hip", "Hip", "hip"]) == ("Hip (2)", "Hip", "Hip (3)", "hip (4)")


def test_a_row_with_more_cells_than_the_header_is_marked() -> None:
    table = read_table("Name,Bust,Waist\nAnna,94,5,74,5\nBea,90,70\n")
    assert [body.cells_found for body in table.bodies] == [5, 0]


def test_measures_as_rows_and_sizes_as_columns() -> None:
    table = read_table("Our chart\nSize\tS\tM\tL\nGirths\nBust\t84\t92\t100\nWaist\t66\t74\t82\nsource: us\n")
    assert (table.layout, table.place, table.header_line) == ("sizes_across", "row", 2)
    assert names(table) == ["Bust", "Waist"]
    assert [(body.name, body.cells) for body in table.bodies] == [
        ("S", ("84", "66")),
        ("M", ("92", "74")),
        ("L", ("100", "82")),
    ]
    assert {aside.number for aside in table.set_aside} == {1, 3, 6}


def test_one_size_or_one_measure_is_enough() -> None:
    assert read_table("Size,8,10\nBust,80,84\n").layout == "sizes_across"
    assert read_table("Name,Bust\nAnna,94\n").layout == "body_a_row"
    assert read_table("Bust,94\n").layout == "measure_a_row"


def test_one_measure_a_row_with_number_unit_and_note() -> None:
    table = read_table(
        "No,Measurement,Value,Unit,Remarks,Description\n1,Bust,94,cm,over a bra,round\n2,Waist,29,in,,\n"
    )
    assert table.layout == "measure_a_row"
    assert [(line.name, line.unit_words, line.fields) for line in table.lines] == [
        ("Bust", "cm", (("note", "over a bra"),)),
        ("Waist", "in", ()),
    ]
    assert [body.cells for body in table.bodies] == [("94", "29")]


def test_the_layout_can_be_said() -> None:
    text = "Size,Bust\nWaist,74\n"
    assert read_table(text, "body_a_row").layout == "body_a_row"
    assert read_table(text, "measure_a_row").layout == "measure_a_row"
    with pytest.raises(InputError) as refusal:
        read_table(text, "own_sets")
    assert refusal.value.code == "measure-choice"


def test_words_that_nobody_knows_still_make_a_header_over_numbers() -> None:
    table = read_table("qqq,www,eee\n1,2,3\n4,5,6\n")
    assert (names(table), len(table.bodies)) == (["qqq", "www", "eee"], 2)


def test_json_lists_of_flat_objects() -> None:
    table = read_table('{"clients": [{"Bust (cm)": 94.5, "who": "Anna"}, {"who": "Bea", "Bust (cm)": null}]}')
    assert (table.layout, table.delimiter) == ("body_a_row", "json")
    assert names(table) == ["Bust (cm)", "who"]
    assert [body.cells for body in table.bodies] == [("94.5", "Anna"), ("", "Bea")]


def test_json_sets_of_our_own_stay_whole() -> None:
    one = '{"name": "A", "unit": "cm", "measures": {"bust_girth": 94}}'
    assert len(read_table(one).own_sets) == 1
    assert len(read_table(f"[{one}, {one}]").own_sets) == 2


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "import-empty"),
        ("\ufeff \r\n\t", "import-empty"),
        (",,,\n,,", "import-empty"),
        ("Name,Bust,Waist\n", "import-empty"),
        ("Bust", "import-empty"),
        ("-,-\n", "import-empty"),
        ("Bust\0", "import-binary"),
        ("1,2,3\n4,5,6\n", "import-nothing-found"),
        ("one two three\n", "import-nothing-found"),
        ("[]", "import-empty"),
        ("{}", "field-not-text"),
        ("[1, 2]", "measures-shape"),
        ('[{"Bust": [1]}]', "field-not-text"),
        ('[{"Bust": true}]', "field-not-text"),
        ('[{"Bust": NaN}]', "number-not-finite"),
        ('[{"Bust": 1, "Bust": 2}]', "measure-duplicate"),
        ('[{"Bust": 1}', "measures-json-broken"),
        ("[" * 100_000, "measures-json-endless"),
        (",".join(["Bust"] * 1001) + "\n" + ",".join(["1"] * 1001), "import-too-large"),
        ("Bust,Waist\n" + "1,2\n" * 50_001, "import-too-large"),
    ],
)
def test_what_is_no_table_is_refused_in_words(text: str, code: str) -> None:
    if text == "{}":
        # An object without a value is one body without a measure.
        assert read_table(text).lines == ()
    else:
        assert refused(text) == code


def test_line_ends_and_marks_of_other_systems() -> None:
    plain = "Name,Bust,Waist\nAnna,94,74\n"
    for text in ("\ufeff" + plain, plain.replace("\n", "\r\n"), plain.replace("\n", "\r")):
        assert read_table(text) == read_table(plain)


@pytest.mark.parametrize("cell", ["-", "–", "—", "n/a", "N/A", " ? ", "\u200b"])
def test_what_counts_as_empty(cell: str) -> None:
    assert clean_cell(cell) == ""


def test_what_looks_like_a_value() -> None:
    assert all(map(looks_like_value, ["94", "-3", "½", ".5", "37 1/2", "94,5 cm"]))
    assert not any(map(looks_like_value, ["", "Bust", "S", "c. 94"]))
