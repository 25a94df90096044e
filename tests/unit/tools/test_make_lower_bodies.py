"""The bodies of the survey with what trousers, skirts and stretch blocks read."""

import pytest

from make_lower_bodies import (
    LOWER_KEYS,
    LOWER_MODES,
    PARTS_OF_CROTCH,
    STRETCH_KEYS,
    LowerMode,
    lower_body,
    stretch_body,
)
from make_upper_bodies import FOUR_KEYS
from survey_rows import rows

ROW = rows("women")[7]


@pytest.mark.parametrize("mode", LOWER_MODES)
def test_every_key_is_there_and_says_whether_it_was_taken(mode: LowerMode) -> None:
    made = lower_body(ROW, "natural", mode, "women").measures
    assert set(LOWER_KEYS) <= set(made.measure_keys())
    estimated = {key for key in made.measure_keys() if made.get(key).status == "estimated"}
    assert estimated == (set(LOWER_KEYS) - set(FOUR_KEYS) if mode == "estimated" else set())
    assert all(made.has(key) == (mode == "split") for key in PARTS_OF_CROTCH)
    assert made.rise_method == "standing"
    assert not made.has("sitting_rise"), "nobody took it"


def test_what_was_taken_follows_the_columns_of_the_survey() -> None:
    """Standing rise = waist height less crotch height; the natural waist lies higher by the drop of the
    navel, so that rise and depths grow by it and the crotch by twice as much."""
    navel, natural = (lower_body(ROW, level, "split", "women").measures for level in ("navel", "natural"))
    drop = (ROW["tenthribheight"] + ROW["iliocristaleheight"]) / 2.0 - ROW["waistheightomphalion"]
    assert navel.value("standing_rise") == ROW["waistheightomphalion"] - ROW["crotchheight"]
    assert navel.value("crotch_length") == ROW["crotchlengthomphalion"]
    assert navel.value("inside_leg") == natural.value("inside_leg") == ROW["crotchheight"]
    for key, times in (("standing_rise", 1), ("hip_depth", 1), ("outside_leg", 1), ("crotch_length", 2)):
        grown = natural.value(key) - navel.value(key)
        assert grown == pytest.approx(times * drop, abs=0.11), key
    parts = sum(natural.value(key) for key in PARTS_OF_CROTCH)
    assert parts == pytest.approx(natural.value("crotch_length"), abs=0.2)


def test_stretch_bodies_hold_what_the_upper_blocks_read_too() -> None:
    women = stretch_body(ROW, "natural", "measured", "women").measures
    assert set(STRETCH_KEYS) <= set(women.measure_keys())
    men = stretch_body(rows("men")[3], "natural", "measured", "men").measures
    assert men.value("across_back") - men.value("across_chest") == pytest.approx(10.0)
