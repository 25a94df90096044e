"""The circle skirt against printed tables; sources in ``skirt/SOURCES.md``. Rounded as there."""

import csv
from pathlib import Path
from typing import Final

import pytest

from notchbook.app.drafting import draft
from notchbook.body import MeasureSet
from notchbook.pattern import pattern_to_data
from support.round_skirt_judge import RingWanted, RoundJudge, circle_closures, circle_through

TABLE: Final = Path(__file__).parent / "skirt" / "circle_skirts.csv"
MM: Final = {"cm": 10.0, "in": 25.4}
FULLNESS: Final = {1.0: "full", 0.75: "three_quarter", 0.5: "half", 0.25: "quarter"}

Row = dict[str, str]


def rows() -> list[Row]:
    with TABLE.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def wanted(row: Row) -> RingWanted:
    mm = MM[row["unit"]]
    return RingWanted(mm * float(row["waist"]), float(row["share"]), mm * float(row["length"]))


def drafted(row: Row, panels: str = "three") -> dict[str, object]:
    """The block for the row, without ease, as plain data."""
    ring = wanted(row)
    measures = MeasureSet.from_mm("Body of the table", {"waist_girth": ring.waist}, "chart")
    settings = {"fullness": FULLNESS[ring.share], "waist_ease": "0 mm", "length": f"{ring.length} mm"}
    return pattern_to_data(draft("circle_skirt", measures, settings | {"panels": panels}).pattern)


IDS: Final = [f"{row['unit']} {row['share']}" for row in rows()]


@pytest.mark.parametrize("row", rows(), ids=IDS)
def test_radius_hem_and_area_are_those_of_the_table(row: Row) -> None:
    judge, mm = RoundJudge(drafted(row)), MM[row["unit"]]
    inner, _ = circle_through(judge.edges["circle_skirt.front/waist"])
    outer, _ = circle_through(judge.edges["circle_skirt.front/hem"])
    assert inner / mm == pytest.approx(float(row["radius"]), abs=0.6e-3)
    assert judge.whole("hem") / mm == pytest.approx(float(row["hem"]), abs=0.6e-2)
    if row["outer"]:
        assert outer / mm == pytest.approx(float(row["outer"]), abs=0.6e-3)
        assert judge.area() / mm**2 == pytest.approx(float(row["area"]), abs=0.25)


@pytest.mark.parametrize("row", rows(), ids=IDS)
def test_our_closed_forms_are_those_of_the_table(row: Row) -> None:
    """So that the survey may judge by them."""
    ring, mm = wanted(row), MM[row["unit"]]
    assert ring.radius / mm == pytest.approx(float(row["radius"]), abs=0.6e-3)
    assert ring.hem / mm == pytest.approx(float(row["hem"]), abs=0.6e-2)
    if row["area"]:
        assert ring.area / mm**2 == pytest.approx(float(row["area"]), abs=0.06)


@pytest.mark.parametrize("panels", ["two", "three", "four"])
@pytest.mark.parametrize("row", rows(), ids=IDS)
def test_everything_agrees_in_any_number_of_panels(row: Row, panels: str) -> None:
    found = circle_closures(drafted(row, panels), wanted(row))
    assert [one.name for one in found if not one.holds] == []


def test_another_share_is_not_the_table_s() -> None:
    first, other = rows()[0], rows()[1]
    names = {one.name for one in circle_closures(drafted(first), wanted(other)) if not one.holds}
    assert {"hem", "area", "circle_skirt.front waist radius"} <= names
