"""The size that goes over the girth which no seam can be let out for."""

from dataclasses import replace

import pytest

from notchbook.body import MeasureSet
from notchbook.body.charts import Garment, goes_over_words, nearest_size, set_cell
from notchbook.units import LengthStyle
from support.charts import even_chart

CM = LengthStyle("cm")


def hips(waist: float, hip: float, bust: float = 880.0) -> MeasureSet:
    """An invented body; the even chart has bust 80 + 4, waist 64 + 4 and hip 90 + 3.5 cm a size."""
    return MeasureSet.from_mm("Body", {"bust_girth": bust, "waist_girth": waist, "hip_girth": hip})


def words(measures: MeasureSet, garment: Garment = "skirt") -> str:
    return goes_over_words(nearest_size(measures, even_chart(), garment), CM)


def test_a_skirt_goes_over_the_hip_and_the_waist_is_taken_in() -> None:
    """Waist of 36, hip of 42 (104 cm): patterns of skirts and trousers are taken by the hip, since a waist is
    taken in and a hip not let out (common practice, no source)."""
    found = nearest_size(hips(680.0, 1040.0), even_chart(), "skirt")
    assert found.size == "38"
    assert found.goes_over is not None
    assert (found.goes_over.key, found.goes_over.size, found.goes_over.off) == ("hip_girth", "42", 70.0)
    assert goes_over_words(found, CM) == (
        "goes over the hip: size 42 (nearest by all is 38, 7.0 cm too small at the hip)"
    )


@pytest.mark.parametrize(
    ("garment", "key"),
    [("top", "bust_girth"), ("dress", "bust_girth"), ("skirt", "hip_girth"), ("trousers", "hip_girth")],
)
def test_each_garment_has_the_girth_that_it_must_go_over(garment: Garment, key: str) -> None:
    found = nearest_size(hips(720.0, 970.0), even_chart(), garment)
    assert found.goes_over is not None
    assert (found.goes_over.key, found.goes_over.size, found.goes_over.off) == (key, "38", 0.0)


def test_the_nearest_may_go_over_too_or_be_larger_than_needed() -> None:
    assert words(hips(720.0, 970.0)) == "goes over the hip: size 38, the nearest too"
    assert words(hips(800.0, 935.0)) == (
        "goes over the hip: size 36 (nearest by all is 40, 7.0 cm larger at the hip)"
    )


@pytest.mark.parametrize(("hip", "size"), [(970.0, "38"), (975.0, "38"), (975.5, "40")])
def test_half_of_what_two_readings_differ_by_is_no_size(hip: float, size: str) -> None:
    """Two readings of a hip differ by 1 cm (common practice)."""
    found = nearest_size(hips(720.0, hip), even_chart(), "skirt")
    assert found.goes_over is not None
    assert found.goes_over.size == size


def test_beyond_the_chart_no_size_goes_over() -> None:
    found = nearest_size(hips(880.0, 1150.0), even_chart(), "trousers")
    assert found.goes_over is not None
    assert (found.goes_over.size, found.goes_over.last, found.goes_over.short_by) == ("", "46", 40.0)
    assert goes_over_words(found, CM) == "goes over the hip: no size; the last, 46, is 4.0 cm too small"


def test_without_the_girth_it_is_said_to_be_unknown() -> None:
    found = nearest_size(MeasureSet.from_mm("Waist", {"waist_girth": 720.0}), even_chart(), "skirt")
    assert found.goes_over is None
    assert goes_over_words(found, CM) == "goes over the hip: not known, the hip girth is missing"


def test_an_empty_cell_is_passed_over() -> None:
    chart = set_cell(even_chart(), "38", "hip_girth", None)
    found = nearest_size(hips(720.0, 970.0), chart, "skirt")
    assert found.goes_over is not None
    assert (found.size, found.goes_over.size, found.goes_over.off) == ("38", "40", None)
    assert goes_over_words(found, CM) == "goes over the hip: size 40 (nearest by all is 38)"


def test_inches_are_fractions() -> None:
    """70 mm are 2 3/4 in. (2.756)."""
    found = nearest_size(hips(680.0, 1040.0), even_chart(), "skirt")
    assert '2 3/4" too small' in goes_over_words(found, LengthStyle("in"))


def test_a_set_of_other_people_than_the_charts_is_told() -> None:
    women = replace(hips(720.0, 970.0), population="women")
    codes = {
        people: [
            remark.code for remark in nearest_size(women, replace(even_chart(), population=people)).remarks
        ]
        for people in ("women", "men", None)
    }
    assert codes == {"women": [], "men": ["compare-populations"], None: []}


def test_remarks_name_the_chart_and_no_size_of_it() -> None:
    low = replace(hips(720.0, 970.0), waist_level="lower", waist_drop=30.0)
    (remark,) = nearest_size(low, even_chart(), "top").remarks
    assert "Body and Even are tied at different waists" in remark.problem.text()
