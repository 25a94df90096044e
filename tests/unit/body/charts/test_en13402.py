"""Classes and letters of EN 13402-3."""

from itertools import pairwise
from typing import get_args

import pytest

from notchbook.body import PopulationName
from notchbook.body.charts import letter_code, letter_codes, size_class, size_classes

KEYS = ("bust_girth", "waist_girth", "hip_girth", "height")


@pytest.mark.parametrize(
    ("bust", "center", "letter"),
    [
        (1019.0, "100", "L"),
        (1020.0, "104", "L"),
        (1070.0, "110", "XL"),
        (899.0, "88", "S"),
        (900.0, "92", "M"),
    ],
)
def test_the_worked_lookups(bust: float, center: str, letter: str) -> None:
    """Bust in mm; a class holds its lower limit and not its upper one. Limits 74 to 102 by 4 and 107 to 131
    by 6 are quoted in the documentation of a published statistics package; letters are from memory."""
    found, code = size_class("women", "bust_girth", bust), letter_code("women", bust)
    assert found is not None
    assert code is not None
    assert (found.label, code.label) == (center, letter)


def test_men_by_chest() -> None:
    """Chest letters S 86 to 94, M to 102, L to 110, XL to 118, XXL to 129 as a garment table quotes them."""
    limits = {"S": (860, 940), "M": (940, 1020), "L": (1020, 1100), "XL": (1100, 1180), "XXL": (1180, 1290)}
    codes = {code.label: (code.low, code.high) for code in letter_codes("men")}
    assert {label: codes[label] for label in limits} == limits


@pytest.mark.parametrize("population", get_args(PopulationName))
@pytest.mark.parametrize("key", KEYS)
def test_classes_stand_without_gaps_round_their_centers(population: PopulationName, key: str) -> None:
    classes = size_classes(population, key)
    assert bool(classes) != (population == "men" and key == "hip_girth")
    for one, following in pairwise(classes):
        assert one.high == following.low
    for one in classes:
        assert one.low < one.center < one.high
        assert size_class(population, key, one.center) == one
        assert one.source
        assert one.grade


def test_letters_hold_whole_classes_of_women() -> None:
    """Each letter holds whole bust classes, two each from XS to XXL (common practice of labels)."""
    held: dict[str, list[str]] = {}
    for one in size_classes("women", "bust_girth"):
        low, high = letter_code("women", one.low), letter_code("women", one.high - 0.1)
        assert low is not None
        assert low == high
        held.setdefault(low.label, []).append(one.label)
    assert held["M"] == ["92", "96"]
    assert {len(classes) for classes in held.values()} == {2}


def test_beyond_the_table_there_is_no_class() -> None:
    assert size_class("women", "bust_girth", 739.9) is None
    assert size_class("women", "bust_girth", 1310.0) is None
    assert size_class("women", "inside_leg", 800.0) is None
    assert letter_code("women", 1430.0) is None
    assert letter_code("women", 659.9) is None
