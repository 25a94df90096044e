"""Measure sets survive being written and read, and no file breaks the readers."""

import tempfile
from pathlib import Path

from hypothesis import example, given
from hypothesis import strategies as st

from notchbook.body import (
    Measure,
    MeasureSet,
    Status,
    check_consistent,
    measure_table,
    read_bodies,
    read_measures,
    set_from_data,
    set_to_data,
)
from notchbook.body.files.write_measures import csv_text, json_text
from notchbook.errors import InputError

TABLE = measure_table()
WORDS = st.text(st.characters(exclude_categories=["Cc", "Cs"]), max_size=30)
STATUSED: st.SearchStrategy[tuple[Status, float | None]] = st.one_of(
    st.sampled_from([("measured", None), ("chart", None)]),
    st.floats(0.1, 50).map(lambda error: ("estimated", error)),
)


@st.composite
def measure_sets(draw: st.DrawFn) -> MeasureSet:
    """Sets of possible values, some of them per side; they need not agree with each other."""
    values: dict[str, Measure] = {}
    for key in draw(st.lists(st.sampled_from(sorted(TABLE)), unique=True, max_size=8)):
        sides = ["", "@left", "@right"] if TABLE[key].sided else [""]
        for side in draw(st.lists(st.sampled_from(sides), unique=True, min_size=1)):
            low, high = TABLE[key].possible
            status, error = draw(STATUSED)
            value = draw(st.floats(low, high).map(lambda number: round(number, 9)))
            values[key + side] = Measure(value, status, error and round(error, 9), note=draw(WORDS))
    drop = draw(st.sampled_from([0.0, 12.5, 40.0]))
    return MeasureSet(
        "Form " + draw(WORDS),
        values,
        waist_level="lower" if drop else "natural",
        waist_drop=drop,
        note=draw(WORDS),
    )


@given(measure_sets())
def test_data_reads_back_equal(measures: MeasureSet) -> None:
    assert set_from_data(set_to_data(measures)) == measures


@given(measure_sets())
def test_files_read_back_equal_or_are_refused_for_a_contradiction(measures: MeasureSet) -> None:
    stops = [doubt for doubt in check_consistent(measures) if doubt.level == "stop"]
    for ending, text in (("json", json_text(measures)), ("csv", csv_text(measures))):
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / f"body.{ending}"
            path.write_text(text, encoding="utf-8", newline="")
            try:
                assert read_measures(path) == measures
                assert not stops
            except InputError as refusal:
                assert refusal.code in {doubt.code for doubt in stops}


@given(measure_sets(), st.sampled_from(["left", "right"]))
def test_a_side_is_its_own_or_the_plain_value(measures: MeasureSet, side: str) -> None:
    for key in measures.measure_keys():
        expected = measures.values.get(f"{key}@{side}", measures.values.get(key))
        assert measures.find(key, "left" if side == "left" else "right") == expected


HEADER_WORDS = ["measure", "value", "unit", "id", "hip_girth", "@left", "98", "cm", "in", "1e999", "NaN", "½"]
SIGNS = [",", ";", "\t", "\n", "\r", '"', "{", "}", "[", "]", ":", "\0", "\ufeff", " ", "-", "\\"]
JSON_WORDS = ['"name":', '"measures":', '"unit":', '"hip_girth":']
PIECES = st.sampled_from(HEADER_WORDS + SIGNS + JSON_WORDS)
FILES = st.one_of(
    st.binary(max_size=200),
    st.lists(PIECES, max_size=40).map(lambda pieces: "".join(pieces).encode("utf-8")),
    st.lists(PIECES, max_size=20).map(
        lambda pieces: ("measure,value,unit\n" + "".join(pieces)).encode("utf-8")
    ),
    st.lists(PIECES, max_size=20).map(
        lambda pieces: ("id,unit,hip_girth\n" + "".join(pieces)).encode("utf-8")
    ),
)


@given(FILES, st.sampled_from(["json", "csv"]))
@example(b"\xef\xbb\xbf", "csv")
@example(b",", "csv")
@example(b"measure,value\n\x1c", "csv")
def test_no_file_brings_out_anything_but_measures_or_a_refusal(data: bytes, ending: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / f"body.{ending}"
        path.write_bytes(data)
        try:
            read_measures(path)
        except InputError as refusal:
            assert "body." in refusal.text()
        try:
            for row in read_bodies(path):
                assert (row.measures is None) != (row.error is None)
        except InputError as refusal:
            assert refusal.text()
