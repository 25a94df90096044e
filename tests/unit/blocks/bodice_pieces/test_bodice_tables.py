"""The tables of the bodice: cups, eases, substitutes; each row with source and grade."""

import tomllib
from collections.abc import Iterator
from importlib.resources import files
from typing import Any, get_args

import pytest

from notchbook.blocks.bodice_pieces.cups import point_distance
from notchbook.blocks.bodice_pieces.eases import (
    EASES,
    LAYER_WORDS,
    Layer,
    Silhouette,
    Wearer,
    ease_row,
    layer_row,
    usual_eases,
)
from notchbook.blocks.bodice_pieces.parameters import BodiceParameters
from notchbook.recipe.usual_ease import Grade

TABLES = ("cups", "eases", "layers", "substitutes")
OVER = get_args(Layer)
ON_THE_BODY = tuple(one for one in get_args(Silhouette) if one not in OVER)


def rows(thing: Any, path: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every row of a table: what has a value."""
    if isinstance(thing, dict) and "value" in thing:
        yield path, thing
    elif isinstance(thing, dict):
        for key, inner in thing.items():
            yield from rows(inner, f"{path}.{key}")
    elif isinstance(thing, list):
        for index, inner in enumerate(thing):
            yield from rows(inner, f"{path}.{index}")


@pytest.mark.parametrize("name", TABLES)
def test_every_row_has_a_source_and_a_known_grade(name: str) -> None:
    text = (files("notchbook.blocks.bodice_pieces") / f"{name}.toml").read_text(encoding="utf-8")
    found = list(rows(tomllib.loads(text)))
    assert found
    for path, row in found:
        assert row["source"].strip(), path
        assert row["grade"] in get_args(Grade), path


# Source: a patternmaker's review: 13 to 25 mm short on small cups, 40 to 60 on full ones.
@pytest.mark.parametrize(
    ("difference", "low", "high"),
    [(90.0, 13.0, 25.0), (130.0, 13.0, 25.0), (170.0, 13.0, 25.0), (210.0, 40.0, 60.0), (300.0, 40.0, 60.0)],
)
def test_the_point_stays_short_by_the_cup(difference: float, low: float, high: float) -> None:
    found = point_distance(900.0, 900.0 - difference, 890.0)
    assert low <= found.short_by <= high
    assert (found.told_from, found.difference) == ("under_bust", difference)


def test_the_fuller_the_cup_the_shorter_the_dart() -> None:
    for told in ("under", "upper"):
        read = [
            point_distance(1000.0, 1000.0 - d if told == "under" else None, 1000.0 - d).short_by
            for d in range(0, 320, 5)
        ]
        assert read == sorted(read)
        assert (read[0], read[-1]) == (13.0, 60.0)


def test_between_rows_the_table_is_read_in_proportion() -> None:
    assert point_distance(900.0, 760.0, None).short_by == pytest.approx((16.0 + 20.0) / 2.0)
    assert point_distance(900.0, None, 850.0).short_by == pytest.approx((16.0 + 25.0) / 2.0)


def test_an_unknown_cup_takes_the_usual_inch_and_says_so() -> None:
    # Source: dart ends 1 in (2.5 cm) from the bust point (trade handbooks).
    found = point_distance(900.0, None, None)
    assert (found.short_by, found.told_from) == (25.0, "unknown")


@pytest.mark.parametrize("scale", [ON_THE_BODY, OVER], ids=["on the body", "over others"])
def test_every_silhouette_has_every_ease_for_every_wearer(scale: tuple[Silhouette, ...]) -> None:
    for wearer in get_args(Wearer):
        for of in EASES:
            read = [ease_row(wearer, silhouette, of) for silhouette in scale]
            assert [row.value for row in read] == sorted(row.value for row in read), (wearer, of)
            assert all(row.least <= row.value <= row.most for row in read), (wearer, of)


def test_each_layer_has_more_at_shoulder_and_neck_than_the_one_beneath() -> None:
    for wearer in get_args(Wearer):
        for of in LAYER_WORDS:
            read = [layer_row(wearer, silhouette, of) for silhouette in ("fitted", *OVER)]
            values = [row.value for row in read]
            assert values == sorted(set(values)), (wearer, of)
            assert all(row.least <= row.value <= row.most for row in read), (wearer, of)


def test_a_childs_jacket_has_no_pads() -> None:
    """Common practice, no source: cloth alone, about 3 mm; a pad is 6 mm or more."""
    assert layer_row("children", "coat", "shoulder_raised").value < 6.0
    assert layer_row("women", "jacket", "shoulder_raised").value >= 6.0


# Source: published ease table for basic blocks: bust 1 1/2 to 2 in, waist 3/4 to 1 in, hip 2 to 2 3/4 in.
@pytest.mark.parametrize(
    ("of", "low", "high"), [("bust", 38.1, 50.8), ("waist", 19.05, 25.4), ("hip", 50.0, 69.85)]
)
def test_close_is_within_the_published_basic_block(of: str, low: float, high: float) -> None:
    assert low <= ease_row("women", "close", of).value <= high


# Source: silhouette chart of home patterns (from memory): bust, semi 4 1/8 to 5 in, loose 5 1/8 to 8 in.
@pytest.mark.parametrize(
    ("silhouette", "low", "high"), [("semi_fitted", 102.0, 127.5), ("loose", 129.5, 203.5)]
)
def test_wider_silhouettes_lie_within_the_chart(silhouette: Silhouette, low: float, high: float) -> None:
    assert low <= ease_row("women", silhouette, "bust").value <= high


def test_the_stated_eases_are_those_that_parameters_override() -> None:
    stated = usual_eases()
    assert {one.parameter for one in stated} <= set(BodiceParameters.model_fields)
    (one,) = [e for e in stated if (e.wearer, e.silhouette, e.of) == ("women", "fitted", "bust")]
    assert (one.drafted, one.parameter) == (60.0, "bust_ease")
