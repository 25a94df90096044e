"""The bodies of the survey with what bodice and sleeve read: measured, estimated, scattered."""

import csv
from pathlib import Path

import numpy as np
import pytest

import make_upper_bodies
from make_upper_bodies import CHEST_LESS_THAN_BACK, FOUR_KEYS, MODES, UPPER_KEYS, taken_set, upper_body
from notchbook.body import read_bodies
from survey_rows import rows

ROW = rows("women")[7]


def lengths(mode: make_upper_bodies.Mode, count: int = 200) -> dict[str, np.ndarray]:
    """Values of the first rows, at the natural waist."""
    made = [upper_body(row, "natural", mode, "women").measures for row in rows("women")[:count]]
    keys = ("front_waist_length", "back_waist_length", "center_front_length")
    return {key: np.array([one.value(key) for one in made]) for key in keys}


@pytest.mark.parametrize("mode", MODES)
def test_every_key_is_there_for_a_woman(mode: make_upper_bodies.Mode) -> None:
    made = upper_body(ROW, "natural", mode, "women").measures
    assert set(UPPER_KEYS) <= set(made.measure_keys())
    estimated = {key for key in UPPER_KEYS if made.get(key).status == "estimated"}
    if mode == "estimated":
        assert estimated == set(UPPER_KEYS) - set(FOUR_KEYS)
    else:
        assert ("across_chest" in estimated) == (mode == "measured")
        assert "back_waist_length" not in estimated


def test_what_was_taken_follows_the_columns_of_the_survey() -> None:
    """Bust = chestcircumference, across back = interscyeii - 35, scye = nape - armpit + 45 (definitions);
    at the natural waist the back is shorter by the drop of the navel."""
    navel, natural = (taken_set("w", ROW, level, "women") for level in ("navel", "natural"))
    drop = (ROW["tenthribheight"] + ROW["iliocristaleheight"]) / 2.0 - ROW["waistheightomphalion"]
    assert navel.value("bust_girth") == ROW["chestcircumference"]
    assert navel.value("across_back") == ROW["interscyeii"] - 35.0
    assert navel.value("scye_depth") == ROW["cervicaleheight"] - ROW["axillaheight"] + 45.0
    assert navel.value("back_waist_length") == ROW["waistbacklength"]
    assert natural.value("back_waist_length") == pytest.approx(ROW["waistbacklength"] - drop, abs=0.05)
    assert navel.value("waist_girth") - natural.value("waist_girth") == 20.0


def test_scattered_lengths_differ_as_bodies_do() -> None:
    """A published sample of 600 women: front less back waist length 39 (5 to 95 %: 14 to 65), front waist
    length less center front 88 (74 to 103); estimates alone hardly differ at all."""
    scattered, estimated = lengths("scatter"), lengths("estimated")
    front_back = scattered["front_waist_length"] - scattered["back_waist_length"]
    assert front_back.mean() == pytest.approx(39.0, abs=4.0)
    assert np.percentile(front_back, [5, 95]) == pytest.approx([14.0, 65.0], abs=8.0)
    front_center = scattered["front_waist_length"] - scattered["center_front_length"]
    assert front_center.mean() == pytest.approx(88.0, abs=3.0)
    assert np.percentile(front_center, [5, 95]) == pytest.approx([74.0, 103.0], abs=5.0)
    assert (estimated["front_waist_length"] - estimated["back_waist_length"]).std() < front_back.std() / 1.5


def test_the_scatter_of_a_body_is_always_the_same_and_that_of_another_is_not() -> None:
    first, again = (upper_body(ROW, "natural", "scatter", "women").measures for _ in range(2))
    assert first.values == again.values
    other = upper_body(rows("women")[8], "natural", "scatter", "women").measures
    plain = [upper_body(row, "natural", "measured", "women").measures for row in rows("women")[7:9]]
    shifts = [
        made.value("shoulder_slope") - base.value("shoulder_slope")
        for made, base in zip((first, other), plain, strict=True)
    ]
    assert shifts[0] != pytest.approx(shifts[1], abs=0.01)


@pytest.mark.parametrize("mode", ["measured", "estimated"])
def test_the_chest_of_a_man_follows_his_back(mode: make_upper_bodies.Mode) -> None:
    made = upper_body(rows("men")[3], "navel", mode, "men").measures
    assert made.value("across_chest") == made.value("across_back") - CHEST_LESS_THAN_BACK
    assert made.find("front_waist_length") is None


def test_the_file_is_read_as_what_it_is(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(make_upper_bodies, "rows", lambda group: rows(group)[:3])
    path = tmp_path / "upper.csv"
    assert make_upper_bodies.write("navel", "measured", path) == 6
    read = list(read_bodies(path))
    assert [row.error for row in read] == [None] * 6
    body = read[0].measures
    assert body is not None
    assert (body.waist_level, body.population) == ("navel", "women")
    with path.open(encoding="utf-8", newline="") as stream:
        assert next(csv.reader(stream))[5:] == list(UPPER_KEYS)
