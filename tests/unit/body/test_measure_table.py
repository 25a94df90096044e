"""The table of measures."""

import re

import pytest

from notchbook.body import (
    landmark_table,
    level_table,
    measure_entry,
    measure_table,
    notation_names,
    split_key,
)
from notchbook.errors import InputError
from notchbook.units import parse_amount

# These take values from near zero up, so their usual range cannot show a slip of unit.
FROM_ZERO = {"belly_depth", "forward_shoulder"}


def test_every_entry_is_whole_and_its_ranges_are_in_order() -> None:
    table = measure_table()
    assert len(table) == 54
    for key, entry in table.items():
        assert re.fullmatch(r"[a-z]+(_[a-z]+)*", key)
        assert entry.key == key
        assert entry.label[0].isupper()
        assert entry.definition.endswith(".")
        assert entry.usual_from
        assert entry.usual_grade
        low, high = entry.possible
        assert 0 <= low <= entry.usual[0] < entry.usual[1] <= high


def test_every_entry_says_where_and_how() -> None:
    for entry in measure_table().values():
        assert entry.level in level_table(), entry.key
        assert set(entry.landmarks) <= set(landmark_table()), entry.key
        sentences = re.findall(r"[^.]+\.", entry.how)
        assert "".join(sentences) == entry.how, entry.key
        assert 1 <= len(sentences) <= 3, entry.key
        assert len(entry.how) <= 240, entry.key


def test_every_level_and_landmark_is_used_and_explained() -> None:
    entries = measure_table().values()
    assert {entry.level for entry in entries} == set(level_table())
    assert {name for entry in entries for name in entry.landmarks} == set(landmark_table())
    for words in (*level_table().values(), *(mark.definition for mark in landmark_table().values())):
        assert words[0].isupper()
        assert words.endswith(".")


def test_numbers_follow_the_order_in_which_a_body_is_measured() -> None:
    """Common practice, no source: girths from the top down, back, front, shoulder, arm, leg, last sitting."""
    table = measure_table()
    assert [entry.number for entry in table.values()] == list(range(1, 55))
    assert next(iter(table)) == "height"
    for keys in (
        ("neck_girth", "bust_girth", "waist_girth", "hip_girth", "back_waist_length"),
        ("back_waist_length", "front_waist_length", "shoulder_length", "arm_length", "outside_leg"),
        ("thigh_girth", "knee_girth", "calf_girth", "ankle_girth", "crotch_length", "sitting_rise"),
        # Read in passing: the tape is held at the same end.
        ("neck_to_bust_point", "front_waist_length"),
        ("elbow_length", "arm_length"),
    ):
        numbers = [table[key].number for key in keys]
        assert numbers == sorted(numbers), keys
    assert table["front_waist_length"].number == table["neck_to_bust_point"].number + 1
    assert table["arm_length"].number == table["elbow_length"].number + 1


def test_how_far_two_readings_may_lie_apart() -> None:
    """Common practice, no source: 1 cm in a girth of the trunk, 0.5 cm in a length."""
    table = measure_table()
    assert {table[key].repeat for key in ("bust_girth", "waist_girth", "hip_girth")} == {10.0}
    assert {table[key].repeat for key in ("shoulder_length", "back_waist_length", "hip_depth")} == {5.0}
    for entry in table.values():
        assert 0 < entry.repeat <= (10 if entry.is_length else 3), entry.key
        # A tolerance as wide as what people differ by would let every slip pass.
        assert entry.repeat < (entry.usual[1] - entry.usual[0]) / 6, entry.key


def test_what_statistics_cannot_check_is_read_twice() -> None:
    """Bust, waist, hip and crotch length: a slip of 5 cm there shows in 1 to 7 % of bodies (own survey)."""
    twice = {entry.key for entry in measure_table().values() if entry.twice}
    assert {"bust_girth", "waist_girth", "hip_girth", "crotch_length", "shoulder_slope"} <= twice
    assert len(twice) <= 10
    assert not {"wrist_girth", "ankle_girth", "shoulder_length", "knee_depth"} & twice


def test_a_unit_slip_of_a_usual_value_never_stays_usual() -> None:
    """Inches read as centimeters, or the other way round, always leave the usual range."""
    for key, entry in measure_table().items():
        if entry.is_length and key not in FROM_ZERO:
            assert entry.usual[1] / entry.usual[0] < 2.54, key


def test_clauses_look_like_clauses_and_stand_once() -> None:
    clauses = [entry.iso for entry in measure_table().values() if entry.iso]
    assert len(set(clauses)) == len(clauses) >= 15
    assert all(re.fullmatch(r"5\.\d\.\d{1,2}", clause) for clause in clauses)
    assert all(entry.iso for entry in measure_table().values() if entry.iso_doubtful)


def test_the_short_names_of_the_notation() -> None:
    names = notation_names()
    assert names["bust"] == "bust_girth"
    assert names["waist"] == "waist_girth"
    assert names["hip"] == "hip_girth"
    assert names["hip_depth"] == "hip_depth"
    assert "shoulder_slope" not in names
    assert "weight" not in names
    assert len(set(names.values())) == len(names)
    for name in names:
        assert parse_amount(f"1/4 {name} + 1 cm", "cm", names).measures == (names[name],)


def test_no_short_name_is_a_word_of_the_notation() -> None:
    assert not set(notation_names()) & {"mm", "cm", "in", "inch", "inches", "x", "ft"}


def test_units_by_kind() -> None:
    assert measure_entry("hip_girth").unit == "mm"
    assert measure_entry("shoulder_slope").unit == "deg"
    assert measure_entry("weight").unit == "kg"


def test_keys_with_sides() -> None:
    assert split_key("hip_depth") == ("hip_depth", "both")
    assert split_key("hip_depth@left") == ("hip_depth", "left")
    for text, code in (
        ("hipdepth", "measure-unknown"),
        ("hip_depth@lef", "measure-side-unknown"),
        ("hip_depth@both", "measure-side-unknown"),
        ("hip_depth@left@left", "measure-side-unknown"),
        ("height@left", "measure-not-sided"),
        ("", "measure-unknown"),
    ):
        with pytest.raises(InputError) as refusal:
            split_key(text)
        assert refusal.value.code == code
    with pytest.raises(InputError, match=r"Did you mean hip_depth\?"):
        split_key("hipdepth")


def test_a_lower_waist_moves_the_usual_range_of_what_begins_there() -> None:
    hip_depth = measure_entry("hip_depth")
    assert hip_depth.usual_at(40.0) == (hip_depth.usual[0] - 40, hip_depth.usual[1] - 40)
    assert measure_entry("hip_girth").usual_at(40.0) == measure_entry("hip_girth").usual


def test_men_are_asked_in_mens_words() -> None:
    """Chest and seat are the trade's words on a man (common practice, no source)."""
    table = measure_table()
    assert table["bust_girth"].label_for("men") == "Chest girth"
    assert table["hip_girth"].label_for("men") == "Seat girth"
    assert {table["bust_girth"].label_for(None), table["bust_girth"].label_for("women")} == {"Bust girth"}
    assert table["waist_girth"].label_for("men") == "Waist girth"
    assert not table["under_bust_girth"].is_asked("body", "men")
    assert table["under_bust_girth"].is_asked("body", None)


def test_a_form_has_no_legs_arms_and_head() -> None:
    """A dress form ends at the crotch (common practice, no source)."""
    asked = {key for key, entry in measure_table().items() if entry.is_asked("form", "women")}
    assert {"bust_girth", "hip_depth", "shoulder_slope", "neck_girth", "across_back"} <= asked
    assert not asked & {"height", "head_girth", "wrist_girth", "ankle_girth", "outside_leg", "weight"}
    assert all(entry.is_asked("chart", "women") for entry in measure_table().values())
