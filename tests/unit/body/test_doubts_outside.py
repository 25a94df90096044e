"""Bodies that the population does not hold: one sentence, and no slip where the values agree."""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import chi2

from notchbook.body import LookedOver, MeasureSet, look_over
from notchbook.body.doubts.together import together
from notchbook.body.population import population
from notchbook.body.population.far_outside import farthest
from notchbook.units import LengthStyle
from support.charts import published

CM = LengthStyle("cm")


def woman(**values: float) -> MeasureSet:
    """An invented woman, cm."""
    return replace(MeasureSet.from_mm("A", {key: 10 * cm for key, cm in values.items()}), population="women")


def codes(looked: LookedOver) -> list[str]:
    return [doubt.code for doubt in looked.doubts]


LARGE = [
    woman(height=163, bust_girth=135, waist_girth=122, hip_girth=140),
    woman(height=170, bust_girth=140, waist_girth=130, hip_girth=145),
    woman(height=165, bust_girth=132, waist_girth=120, hip_girth=136, thigh_girth=76),
    woman(
        height=163, bust_girth=135, waist_girth=122, hip_girth=140, thigh_girth=80, upper_arm_girth=46,
        wrist_girth=18.5, calf_girth=48, back_waist_length=43, arm_length=58,
    ),
]  # fmt: skip


@pytest.mark.parametrize("measures", LARGE)
def test_a_large_client_is_told_so_once_and_no_slip_is_offered(measures: MeasureSet) -> None:
    looked = look_over(measures, CM)
    assert codes(looked) == ["held-outside"]
    assert looked.level == "check"
    assert "larger than the population holds; the values agree" in looked.doubts[0].problem.text()
    assert looked.doubts[0].repairs == ()


@pytest.mark.parametrize(
    ("key", "slip"), [("hip_girth", -360), ("wrist_girth", 110), ("upper_arm_girth", -250)]
)
def test_a_slip_of_a_large_client_is_one_value_against_the_rest(key: str, slip: float) -> None:
    large = LARGE[3]
    looked = look_over(large.with_value(key, large.value(key) + slip), CM)
    assert [one.key for one in looked.suspects()] == [key]
    assert "held-outside" in codes(looked)
    assert any("other values agree" in doubt.problem.text() for doubt in looked.doubts)


@pytest.mark.parametrize("key", ["height", "bust_girth", "waist_girth", "hip_girth"])
@pytest.mark.parametrize("factor", [2.54, 1 / 2.54])
def test_one_slip_of_an_ordinary_body_is_never_called_a_body_outside(key: str, factor: float) -> None:
    usual = woman(height=168, bust_girth=92, waist_girth=74, hip_girth=98, arm_length=58, thigh_girth=57.5)
    looked = look_over(usual.with_value(key, usual.value(key) * factor), CM)
    assert looked.level == "stop"
    assert [one.key for one in looked.suspects()] == [key]
    assert "held-outside" not in codes(looked)


def test_a_very_tall_body_is_taller() -> None:
    tall = woman(height=195, bust_girth=100, waist_girth=80, hip_girth=108, inside_leg=93, arm_length=68)
    looked = look_over(tall, CM)
    assert codes(looked) == ["held-outside"]
    assert "taller than" in looked.doubts[0].problem.text()


@pytest.mark.parametrize("count", [1, 4, 12, 30])
def test_far_outside_is_one_of_ten_thousand(count: int) -> None:
    # Outside: the quantile of chi-square in scipy; the short formula is 3.5 % large for a single value.
    assert farthest(count) == pytest.approx(chi2.ppf(0.9999, count) ** 0.5, rel=0.04)


def drawn(count: int) -> Iterator[MeasureSet]:
    """Bodies drawn from the population itself."""
    keys = ("height", "bust_girth", "waist_girth", "hip_girth", "arm_length", "wrist_girth", "inside_leg")
    common = together(population("women"), MeasureSet.from_mm("A", dict.fromkeys(keys, 500.0)))
    for row in np.random.default_rng(8).multivariate_normal(common.mean, common.covariance, count):
        yield replace(MeasureSet.from_mm("A", dict(zip(keys, row, strict=True))), population="women")


def test_bodies_of_the_population_are_not_outside_of_it() -> None:
    assert not [one for one in drawn(300) if "held-outside" in codes(look_over(one, CM))]


@pytest.mark.parametrize("name", ["astm_straight", "astm_curvy", "german_women"])
def test_no_size_of_a_published_table_is_stopped_and_none_gets_a_slip_offered(name: str) -> None:
    """Outside: the tables of tests/reference/charts (README.md there), as if each size were a client."""
    girths = ("bust_girth", "waist_girth", "hip_girth")
    for size in published(name).sizes:
        values = {key: size.value(key) for key in girths if size.has(key)}
        client = replace(MeasureSet.from_mm("A", {"height": 1680.0, **values}), population="women")
        looked = look_over(client, CM)
        assert looked.level != "stop", size.label_size
        assert not [doubt for doubt in looked.doubts if doubt.repairs], size.label_size


def test_a_child_is_held_against_nobody_and_no_digit_is_offered() -> None:
    for child in (
        woman(height=116, bust_girth=60, waist_girth=54, hip_girth=62),
        woman(height=128, bust_girth=66, waist_girth=58, hip_girth=70, arm_length=42, back_waist_length=30),
    ):
        looked = look_over(child, CM)
        assert looked.doubts == () and looked.population is None
        assert looked.not_held is not None and looked.not_held.code == "held-no-child"
    # What holds for every body holds for a child.
    wrong = woman(height=116, bust_girth=60, waist_girth=54, hip_girth=62, outside_leg=130)
    assert codes(look_over(wrong, CM)) == ["measures-disagree"]


def test_a_height_with_a_slip_makes_no_child() -> None:
    slipped = woman(height=116, bust_girth=92, waist_girth=74, hip_girth=98)
    looked = look_over(slipped, CM)
    assert looked.not_held is None and looked.level == "stop"
    assert looked.suspects()[0].key == "height"


HALF = {"bust_girth": 44.0, "waist_girth": 34.0, "hip_girth": 47.0, "back_waist_length": 20.5}


def test_a_form_of_half_the_size_is_none_in_inches() -> None:
    form = replace(woman(**HALF), kind="form")
    looked = look_over(form, CM)
    assert looked.doubts == ()
    assert looked.not_held is not None and looked.not_held.code == "held-half-scale"
    assert codes(look_over(woman(**HALF), CM)) == ["set-in-other-unit"]


def test_a_form_is_shaped_otherwise_and_nothing_of_people_stops_it() -> None:
    values = {"bust_girth": 88.0, "waist_girth": 66.0, "hip_girth": 92.0, "back_waist_length": 42.0}
    more = {"neck_base_girth": 50.0, "across_back": 36.0}
    client = woman(**values, **more)
    assert look_over(client, CM).level == "stop"
    for kind, words in (("form", "Forms are shaped otherwise"), ("chart", "Size charts are made otherwise")):
        looked = look_over(replace(client, kind=kind), CM)  # type: ignore[arg-type]  # a word of the loop
        assert looked.level == "check"
        assert [words in caution.text() for caution in looked.cautions] == [True]
    assert look_over(client, CM).cautions == ()
