"""Slips of digits, units and lines: what a typed value may have been."""

from dataclasses import replace

import pytest
from scipy import constants

from notchbook.body import Measure, MeasureSet, measure_entry
from notchbook.body.doubts.doubt import Repair
from notchbook.body.doubts.slips.likely_enough import likely_enough
from notchbook.body.doubts.slips.single import single_slips
from notchbook.body.doubts.slips.slip_table import slip_table
from notchbook.body.doubts.slips.typed_number import swapped_digits, typed_number, wrong_digits
from notchbook.body.doubts.slips.waist_taken import NAVEL_DROP, waist_taken
from notchbook.body.doubts.slips.whole_set import other_unit
from notchbook.body.files.weight import KG_PER_POUND
from notchbook.units import Unit


def meant(key: str, value: float, unit: Unit, slip: str) -> set[float]:
    found = single_slips(measure_entry(key), value, unit)
    return {round(one.value, 2) for one in found if one.slip == slip}


def test_the_priors_make_one() -> None:
    assert sum(kind.prior for kind in slip_table().values()) == pytest.approx(1.0)


def test_the_digits_are_those_of_the_unit_in_which_the_value_was_typed() -> None:
    hip = measure_entry("hip_girth")
    assert typed_number(hip, 953, "cm").digits == "95.3"
    assert typed_number(hip, 953, "mm").digits == "953"
    assert typed_number(hip, 37.5 * 25.4, "in").digits == "37.5"
    fraction = typed_number(hip, 37.375 * 25.4, "in")
    assert (fraction.digits, fraction.rest) == ("37", 0.375)
    assert fraction.value_of("73") == pytest.approx(73.375 * 25.4)
    assert typed_number(measure_entry("weight"), 64.5, "cm").digits == "64.5"


def test_neighboring_digits_are_swapped_and_no_number_begins_with_zero() -> None:
    assert set(swapped_digits("93.5")) == {"39.5", "95.3"}
    assert set(swapped_digits("105")) == {"150"}
    assert set(swapped_digits("33")) == set()


def test_every_digit_may_be_another() -> None:
    found = set(wrong_digits("93.5"))
    assert len(found) == 8 + 9 + 9
    assert {"83.5", "90.5", "93.0"} <= found and "03.5" not in found


def test_single_slips_by_kind() -> None:
    assert {395.0, 953.0} <= meant("hip_girth", 935, "cm", "swapped-digits")
    assert round(935 * 2.54, 2) in meant("hip_girth", 935, "cm", "other-unit")
    assert {9350.0, 93.5} == meant("hip_girth", 935, "cm", "decimal-sign")
    assert {835.0, 1035.0} == meant("hip_girth", 935, "cm", "tape-by-ten")
    assert {835.0, 1035.0} == meant("hip_girth", 935, "mm", "tape-by-ten")
    assert {681.0, 1189.0} == meant("hip_girth", 935, "in", "tape-by-ten")
    assert meant("hip_girth", 490, "cm", "half") == {980.0}
    assert meant("across_back", 180, "cm", "half") == {360.0}
    assert meant("back_waist_length", 200, "cm", "half") == set()
    assert meant("weight", 140, "cm", "pounds") == {round(140 * KG_PER_POUND, 2)}
    assert meant("shoulder_slope", 42, "cm", "swapped-digits") == {24.0}
    assert meant("shoulder_slope", 42, "cm", "other-unit") == set()


def test_the_pound_is_the_pound() -> None:
    # Outside: the pound of scipy.constants.
    assert pytest.approx(constants.pound) == KG_PER_POUND


def test_the_prior_of_a_kind_is_shared_among_its_candidates() -> None:
    found = single_slips(measure_entry("hip_girth"), 935, "cm")
    for name in ("swapped-digits", "wrong-digit", "tape-by-ten"):
        shares = sum(one.prior for one in found if one.slip == name)
        assert shares == pytest.approx(slip_table()[name].prior)


def test_odd_values_have_slips_too_or_none() -> None:
    for value in (0.0, 1e-9, 0.1, 12345.678, 99999.0):
        for unit in ("mm", "cm", "in"):
            assert all(one.value > 0 for one in single_slips(measure_entry("hip_girth"), value, unit))


def offer(share: float, value: float = 1.0) -> Repair:
    return Repair("wrong-digit", "?", (("hip_girth", value),), share)


def test_several_are_offered_only_when_about_as_likely_and_none_rather_than_a_wild_one() -> None:
    assert likely_enough([]) == ()
    assert [one.share for one in likely_enough([offer(0.2), offer(0.7)])] == [0.7]
    assert [one.share for one in likely_enough([offer(0.3), offer(0.4)])] == [0.4, 0.3]
    assert likely_enough([offer(0.3)]) == ()
    assert likely_enough([offer(0.2)] * 4) == ()


BODY = {"height": 1680.0, "bust_girth": 920.0, "waist_girth": 740.0, "hip_girth": 980.0, "wrist_girth": 155.0}


@pytest.mark.parametrize(
    ("unit", "factor"), [("cm", 2.54), ("cm", 10.0), ("cm", 0.1), ("cm", 1 / 2.54), ("in", 2.54)]
)
def test_a_whole_set_in_another_unit_is_named_for_the_set(unit: Unit, factor: float) -> None:
    wrong = MeasureSet.from_mm("A", {key: value / factor for key, value in BODY.items()})
    if unit == "in":
        wrong = MeasureSet.from_mm("A", {key: value * factor for key, value in BODY.items()})
        factor = 1 / factor
    found = other_unit(wrong, unit)
    assert found is not None
    assert dict(found.values) == pytest.approx(BODY)


def test_no_set_of_a_body_and_no_single_slip_is_taken_for_another_unit() -> None:
    good = MeasureSet.from_mm("A", BODY)
    assert other_unit(good, "cm") is None
    assert other_unit(good.with_value("hip_girth", 980 / 2.54), "cm") is None
    child = MeasureSet.from_mm("A", {"height": 1160, "bust_girth": 600, "waist_girth": 540, "hip_girth": 620})
    assert other_unit(child, "cm") is None
    assert other_unit(MeasureSet.from_mm("A", {"height": 66.1, "waist_girth": 29.1}), "cm") is None
    guessed = {key: Measure(value / 2.54, "estimated", 10) for key, value in BODY.items()}
    assert other_unit(MeasureSet("A", guessed), "cm") is None


def test_the_other_waist_depends_on_the_waist_that_the_set_names() -> None:
    bare = MeasureSet.from_mm("A", BODY)
    natural = waist_taken(bare, "women")
    assert natural is not None and (natural.size, natural.spread) == NAVEL_DROP["women"] == (46.0, 17.0)
    assert natural.directions["back_waist_length"] == 1 and natural.directions["crotch_length"] == -2
    lower = waist_taken(replace(bare, waist_level="lower", waist_drop=30), "women")
    assert lower is not None and (lower.size, lower.spread) == (-30.0, 0.0)
    navel = waist_taken(replace(bare, waist_level="navel"), "men")
    assert navel is not None and (navel.size, navel.spread) == (-35.0, 19.0)
    assert waist_taken(replace(bare, waist_level="navel", taken_as="survey"), "women") is None
