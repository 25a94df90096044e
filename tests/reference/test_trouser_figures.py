"""Trousers beside a handbook draft and the traditions' crotch extensions; sources in ``trousers/SOURCES.md``.

Drafting systems differ in method, so tolerances are stated as what two patternmakers would still call the
same draft (own judgment).
"""

import csv
from functools import cache
from pathlib import Path
from typing import Any, Final

import pytest

from lower_tables import lower_tables
from notchbook.app.drafting import draft
from notchbook.body import MeasureSet
from notchbook.pattern import pattern_to_data
from support.lower_judge import PANELS, LowerJudge, Which, leg_figures
from support.skirt_judge import length

FOLDER: Final = Path(__file__).parent / "trousers"

SAME_RULE: Final = 0.6
"""mm; what the draft took over from the handbook must come out but for rounding."""

SAME_DRAFT: Final = {"extension": 12.0, "hem": 25.0}
"""mm by which figures that were not taken over may differ."""

BEYOND: Final = {"front": 0.020, "back": 0.035}
"""Share of the hip by which the levers of the crotch may leave the traditions' range: a reference draft by
other code let the extensions reach .085 in front and .145 behind."""


def rows(name: str) -> list[dict[str, str]]:
    with (FOLDER / name).open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


@cache
def handbook() -> dict[str, float]:
    """The handbook's figures, mm."""
    return {
        key: 10.0 * float(text) for key, text in rows("handbook_trousers.csv")[0].items() if key != "draft"
    }


@cache
def judged() -> LowerJudge:
    """What the block makes of the handbook's body with its eases; what it does not give is estimated."""
    figures = handbook()
    given = {"waist_girth": figures["waist_girth"], "hip_girth": figures["hip_girth"]}
    given |= {"sitting_rise": figures["sitting_rise"], "hip_depth": 206.0, "inside_leg": 760.0}
    measures = MeasureSet.from_mm(
        "Body of the handbook", given | {"height": 1660.0}, "chart", population="women"
    )
    eases = {key: f"{figures[key]} mm" for key in ("waist_ease", "hip_ease")}
    return LowerJudge(
        pattern_to_data(draft("trousers", measures, eases | {"silhouette": "straight"}).pattern)
    )


@pytest.mark.parametrize("which", PANELS)
def test_the_hip_and_the_net_waist_are_the_handbook_s(which: Which) -> None:
    """Taken over from it: arithmetic only. The side seam at the waist may be moved back or forward, so that
    the waists are held together."""
    panel = judged().panels[which]
    assert panel.hip_width == pytest.approx(handbook()[f"{which}_hip"], abs=SAME_RULE)
    net = sum(length(one.waist) for one in judged().panels.values())
    assert net == pytest.approx(handbook()["net_front_waist"] + handbook()["net_back_waist"], abs=SAME_RULE)


def test_the_front_extension_is_near_the_handbook_s() -> None:
    """The rule was taken over from it; the levers of the crotch length move it."""
    assert judged().front.extension == pytest.approx(
        handbook()["front_extension"], abs=SAME_DRAFT["extension"]
    )


@pytest.mark.parametrize("which", PANELS)
def test_the_hem_is_near_the_handbook_s(which: Which) -> None:
    """Its width is a choice of the silhouette; the back is wider than the front by 10 to 30 mm (common
    practice: 2 cm, give or take 1)."""
    hem = length(judged().panels[which].hem)
    assert hem == pytest.approx(handbook()[f"{which}_hem"], abs=SAME_DRAFT["hem"])
    more = length(judged().back.hem) - length(judged().front.hem)
    assert 9.0 <= more <= 31.0


def extension_range(which: Which, hip: float) -> tuple[float, float]:
    """The least and the most of any tradition for a body's hip, mm."""
    lines = [row for row in rows("extensions.csv") if row["panel"] == which]
    least = min(float(row["share_of_hip_least"]) * hip + float(row["more_mm_least"]) for row in lines)
    most = max(float(row["share_of_hip_most"]) * hip + float(row["more_mm_most"]) for row in lines)
    return least, most


WOMEN: Final = [body for body in lower_tables() if body.table == "EN 13402-3 women"]


@cache
def figures_of(place: int) -> dict[str, Any]:
    judge = LowerJudge(pattern_to_data(draft("trousers", WOMEN[place].measures).pattern))
    return {which: judge.panels[which].extension for which in PANELS} | leg_figures(judge)


@pytest.mark.parametrize("place", range(len(WOMEN)), ids=[body.label for body in WOMEN])
def test_extensions_lie_between_the_traditions(place: int) -> None:
    hip, figures = WOMEN[place].measures.value("hip_girth"), figures_of(place)
    for which in PANELS:
        least, most = extension_range(which, hip)
        beyond = BEYOND[which] * hip
        assert least - beyond <= figures[which] <= most + beyond, which


@pytest.mark.parametrize("place", range(len(WOMEN)), ids=[body.label for body in WOMEN])
def test_the_center_back_slants_by_what_the_trade_gives(place: int) -> None:
    """3 to 4.5 cm at the waist (common practice), widened for full seats: the angle lies between 3 and 18
    degrees (limits of a reference draft by other code)."""
    assert 3.0 <= figures_of(place)["back slant"] <= 18.0
    assert 0.0 < figures_of(place)["back drop"] <= 35.0


def test_the_ranges_of_the_traditions_are_apart() -> None:
    """So that a front could not pass for a back."""
    for hip in (840.0, 1000.0, 1320.0):
        assert (
            extension_range("front", hip)[1] + BEYOND["front"] * hip < extension_range("back", hip)[0] + 5.0
        )
