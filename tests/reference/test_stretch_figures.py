"""Stretch tests, classes of cloth, reductions beside printed figures; sources in ``stretch/SOURCES.md``."""

import csv
from pathlib import Path
from typing import Final, get_args

import pytest

from notchbook.blocks.stretch_fabric.classes import stretch_classes
from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.blocks.stretch_fabric.reductions import Use, reduced
from notchbook.units import parse_stretch

FOLDER: Final = Path(__file__).parent / "stretch"
Row = dict[str, str]


def rows(name: str) -> list[Row]:
    with (FOLDER / name).open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


@pytest.mark.parametrize("row", rows("tests.csv"), ids=lambda row: f"{row['rest']} to {row['stretched']}")
def test_a_printed_stretch_test_is_read_as_printed(row: Row) -> None:
    read = parse_stretch(f"{row['rest']} {row['unit']} to {row['stretched']} {row['unit']}")
    assert 100.0 * read.stretch == pytest.approx(float(row["percent"]), abs=1e-9)


@pytest.mark.parametrize("row", rows("classes.csv"), ids=lambda row: row["class"])
def test_a_class_of_cloth_stretches_as_the_textbook_says(row: Row) -> None:
    read = parse_stretch(f"{row['rest_in']} in to {row['stretched_in']} in").stretch
    assert 100.0 * read == pytest.approx(float(row["percent"]), abs=1e-9)
    assert stretch_classes()[row["class"]].stretch == pytest.approx(read, abs=0.006)


def test_the_classes_of_the_textbook_are_all_there_and_rise() -> None:
    assert list(stretch_classes()) == [row["class"] for row in rows("classes.csv")]
    shares = [one.stretch for one in stretch_classes().values()]
    assert shares == sorted(shares)


USES: Final = get_args(Use)
CLOTHS: Final = (Cloth(0.25, 0.25, None), Cloth(0.5, 0.5, None), Cloth(1.0, 0.6, None), Cloth(1.0, 1.0, None))


@pytest.mark.parametrize("row", rows("reductions.csv"), ids=lambda row: f"{row['use']} {row['direction']}")
def test_no_cloth_reduces_beyond_what_the_trade_takes(row: Row) -> None:
    place = {"width": "hip", "length": "trunk"}[row["direction"]]
    most = float(row["most_percent"])
    use = next(one for one in USES if one == row["use"])
    taken = [100.0 * (1.0 - reduced(1000.0, use, place, cloth).wished / 1000.0) for cloth in CLOTHS]
    assert max(taken) <= most + 1e-9
    assert max(taken) >= float(row["least_percent"])
    assert taken == sorted(taken)


@pytest.mark.parametrize("use", USES)
def test_a_pattern_stretches_to_a_tenth_more_than_the_body(use: Use) -> None:
    """Common practice of the trade, reckoned here anew."""
    for stretch in (0.0, 0.1, 0.18, 0.25, 0.5, 1.0, 1.5):
        for place in ("bust", "waist", "hip", "thigh", "calf"):
            found = reduced(600.0, use, place, Cloth(stretch, stretch, None))
            assert found.pattern * (1.0 + stretch) >= 1.1 * 600.0 - 1e-6, (stretch, place)


def test_a_t_shirt_is_looser_than_the_body_by_what_the_trade_gives() -> None:
    """2 to 6 cm, common practice."""
    found = reduced(900.0, "t_shirt", "bust", CLOTHS[0])
    assert 20.0 <= found.ease <= 60.0
