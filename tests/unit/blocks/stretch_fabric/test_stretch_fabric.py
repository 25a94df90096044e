"""Classes and reductions of stretch cloth, against the figures of the trade (tests/reference/stretch)."""

import csv
from pathlib import Path
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.blocks.stretch_fabric.classes import stretch_classes
from notchbook.blocks.stretch_fabric.cloth import Cloth, ClothParameters, cloth_of
from notchbook.blocks.stretch_fabric.reductions import Use, reduced, reduction_rows, share_rows
from notchbook.blocks.stretch_fabric.usual_eases import usual_eases_of
from notchbook.errors import InputError
from notchbook.units import parse_stretch

REFERENCE = Path(__file__).resolve().parents[3] / "reference" / "stretch"
GIRTHS = tuple(place for place, row in share_rows().items() if row.direction == "width")
USES: tuple[Use, ...] = get_args(Use)


def reference(name: str) -> list[dict[str, str]]:
    with (REFERENCE / name).open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize("row", reference("classes.csv"), ids=lambda row: row["class"])
def test_the_classes_are_those_of_the_textbook(row: dict[str, str]) -> None:
    tested = parse_stretch(f"{row['rest_in']} in to {row['stretched_in']} in").stretch
    # The textbook rounds 17.5 to 18 percent.
    assert stretch_classes()[row["class"]].stretch == pytest.approx(tested, abs=0.006)


@pytest.mark.parametrize(
    "row", reference("reductions.csv"), ids=lambda row: f"{row['use']} {row['direction']}"
)
def test_the_usual_reductions_are_those_of_the_trade(row: dict[str, str]) -> None:
    found = reduction_rows()[row["use"], "width" if row["direction"] == "width" else "length"]
    assert 100.0 * found.least == pytest.approx(float(row["least_percent"]))
    assert 100.0 * found.most == pytest.approx(float(row["most_percent"]))
    # The stretchiest cloth takes the most of it, and none takes more.
    assert found.at(4.0) == pytest.approx(found.most)


@pytest.mark.parametrize(("stretch", "share"), [(0.25, 0.05), (0.50, 0.10), (1.00, 0.20)])
def test_swimwear_takes_a_fifth_of_the_stretch(stretch: float, share: float) -> None:
    """25 % gives 5, 50 % 10 and 100 % 20 (the rule of an earlier trial draft on surveyed bodies)."""
    found = reduced(1000.0, "swimsuit", "hip", Cloth(stretch, stretch, None))
    assert found.pattern == pytest.approx(1000.0 * (1.0 - share))


def test_a_t_shirt_has_two_to_six_centimeters_whatever_the_cloth() -> None:
    for stretch in (0.18, 0.5, 1.0):
        found = reduced(920.0, "t_shirt", "bust", Cloth(stretch, None, None))
        assert 20.0 <= found.ease <= 60.0


@given(
    use=st.sampled_from(USES),
    place=st.sampled_from(GIRTHS),
    across=st.floats(0.0, 4.0),
    body=st.floats(100.0, 2000.0),
)
def test_every_girth_still_stretches_a_tenth_over_the_body(
    use: Use, place: str, across: float, body: float
) -> None:
    """Pattern x (1 + s) >= 1.1 body: common practice."""
    found = reduced(body, use, place, Cloth(across, None, None))
    assert found.pattern * (1.0 + across) >= 1.1 * body - 1e-6
    assert found.is_held_back == (found.pattern > found.wished)


@given(use=st.sampled_from(USES), place=st.sampled_from(tuple(share_rows())), less=st.floats(0.0, 2.0))
def test_more_stretch_never_makes_a_wider_or_longer_pattern(use: Use, place: str, less: float) -> None:
    firm, giving = (reduced(900.0, use, place, Cloth(s, s, None)) for s in (less, less + 0.2))
    assert giving.pattern <= firm.pattern + 1e-9


def test_lengths_are_not_reduced_where_the_stretch_along_was_not_tested() -> None:
    assert reduced(400.0, "swimsuit", "trunk", Cloth(1.0, None, None)).pattern == 400.0
    assert reduced(400.0, "swimsuit", "trunk", Cloth(1.0, 1.0, None)).pattern == pytest.approx(360.0)


def test_the_fabric_is_asked_for_with_the_classes_and_what_to_type() -> None:
    with pytest.raises(InputError) as asked:
        cloth_of(ClothParameters())
    assert asked.value.code == "stretch-not-tested"
    assert asked.value.facts["setting"] == "across"
    choices = asked.value.facts["choices"]
    assert choices == ("18 %", "25 %", "50 %", "100 %")
    assert all(parse_stretch(choice).stretch > 0.0 for choice in choices)
    assert "10 cm to 14 cm" in asked.value.next_step()
    with pytest.raises(InputError) as along:
        cloth_of(ClothParameters(across="50 %"), needs_along=True)
    assert along.value.facts["setting"] == "along"


def test_the_recovery_is_the_worse_of_both_tests_unless_it_is_said() -> None:
    tested = {"across": "10 cm to 14 cm back to 10.2 cm", "along": "10 cm to 12 cm back to 10.4 cm"}
    assert cloth_of(ClothParameters(**tested)).recovery == pytest.approx(0.8)
    assert cloth_of(ClothParameters(**tested, recovery="97 %")).recovery == pytest.approx(0.97)
    assert cloth_of(ClothParameters(across="40 %")).recovery is None


@pytest.mark.parametrize("use", USES)
def test_the_stated_reductions_are_the_drafted_ones(use: Use) -> None:
    rows = usual_eases_of(use)
    assert rows
    for row in rows:
        if row.unit == "mm":
            assert row.drafted == reduced(1000.0, use, "bust", Cloth(1.0, None, None)).ease
            continue
        stretch = parse_stretch(row.of.partition("(")[2].rstrip(")")).stretch
        place = "hip" if row.parameter == "hip_ease" else "trunk"
        stated = reduction_rows()[use, share_rows()[place].direction].at(stretch)
        assert row.drafted == pytest.approx(-100.0 * stated, abs=0.05)
