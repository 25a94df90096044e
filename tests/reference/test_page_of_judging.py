"""The figures that are typed into the page on judging are those of the survey beside it."""

import json
import re
from typing import Any

import pytest

from house import ROOT

PAGE = (ROOT / "docs" / "how-measures-are-judged.md").read_text(encoding="utf-8")
SURVEY: dict[str, Any] = json.loads((ROOT / "docs" / "survey" / "measures.json").read_text(encoding="utf-8"))
SLIPS: dict[str, Any] = SURVEY["populations"]["women"]["arms"]["22 measures"]["slips"]

FIGURES = (
    (r"\| two digits of .*? \| stopped (\d+) times", "swapped digits, whole cm", "share"),
    (r"\| 10 cm .*? \| stopped (\d+) times", "10 cm", "share"),
    (r"\| 5 cm \| stopped (\d+) times", "5 cm", "share"),
    (r"\| 5 cm \| .*? a second look (\d+) times", "5 cm", "look_again"),
    (r"\| 2 cm \| hardly: (\d+) of", "2 cm", "share"),
    (r"the right one in (\d+) of 100 \(5 cm\)", "5 cm", "right"),
)


@pytest.mark.parametrize(("pattern", "slip", "what"), FIGURES)
def test_a_figure_of_the_page_is_that_of_the_survey(pattern: str, slip: str, what: str) -> None:
    (told,) = re.findall(pattern, PAGE)
    assert int(told) == round(100 * SLIPS[slip][what])


def test_the_numbers_of_people_are_those_that_the_populations_were_made_from() -> None:
    for name, told in zip(("women", "men"), re.findall(r"\*([\d,]+) (?:women|men of)", PAGE), strict=True):
        assert SURVEY["populations"][name]["words"].startswith(f"{told.replace(',', '')} {name}")


def test_even_chances_are_those_of_the_survey() -> None:
    told = re.findall(r"about (\d+) cm in the bust and (\d+) cm in the waist", PAGE)[0]
    spots = SURVEY["populations"]["women"]["blind_spots"]
    for whole, key in zip(told, ("bust_girth", "waist_girth"), strict=True):
        assert 10 * int(whole) == pytest.approx(spots[key], abs=6.0)
