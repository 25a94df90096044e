"""Bodies whose armhole comes down so steeply that it once met the side seam in a corner: invented, and such
as nobody has. The angle across the underarm is judged by outside code."""

import pytest

from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.checks import Subject
from notchbook.checks.rules.seam_junctions import seam_junctions
from notchbook.errors import StepRefused
from notchbook.geometry import Cubic, Path
from notchbook.pattern import Severity, pattern_to_data
from support.bent import path_changed
from support.bodice_judge import UpperJudge, misses
from support.upper_patterns import wanted_of

GIANT = MeasureSet.from_mm(
    "a man of no proportions",
    {
        "height": 2151.0,
        "neck_base_girth": 411.0,
        "bust_girth": 1345.0,
        "waist_girth": 987.5,
        "hip_girth": 950.5,
        "back_waist_length": 576.5,
        "scye_depth": 377.5,
        "across_back": 647.0,
        "center_front_length": 483.0,
        "across_chest": 637.0,
        "shoulder_length": 236.5,
        "arm_length": 821.5,
        "upper_arm_girth": 312.5,
        "wrist_girth": 126.0,
    },
    population="men",
)
"""The bust leaves little room between two wide across widths."""

SLOPING = MeasureSet.from_mm(
    "a woman of no proportions",
    {
        "height": 888.5,
        "neck_base_girth": 410.5,
        "upper_bust_girth": 1585.5,
        "bust_girth": 1138.0,
        "under_bust_girth": 1164.5,
        "waist_girth": 456.0,
        "hip_girth": 1599.5,
        "back_waist_length": 583.0,
        "scye_depth": 200.5,
        "across_back": 559.5,
        "center_front_length": 463.5,
        "neck_to_bust_point": 232.5,
        "front_waist_length": 590.0,
        "bust_point_width": 185.0,
        "across_chest": 432.0,
        "shoulder_length": 211.5,
        "shoulder_slope": 40.5,
        "arm_length": 519.0,
        "upper_arm_girth": 380.5,
        "wrist_girth": 82.5,
    },
    population="women",
)
"""The shoulder ends far inside of the across back."""


@pytest.mark.parametrize("measures", [GIANT, SLOPING], ids=str)
def test_the_armhole_turns_square_to_the_side_seam(measures: MeasureSet) -> None:
    run = draft("bodice", measures, {})
    data = pattern_to_data(run.pattern)
    judge = UpperJudge(data)
    across = sum(judge.corner(panel, "underarm") for panel in ("bodice.front", "bodice.back"))
    assert across == pytest.approx(180.0, abs=2.0)
    assert misses(data, wanted_of(run)) == []
    assert "armhole-corner" not in {one.code for one in examine(run, cut=False).findings}


def test_an_armhole_that_has_nothing_left_to_turn_in_is_refused_in_words() -> None:
    wider = {"across_back": 570.0, "bust_girth": 1080.0}
    body = {key: SLOPING.value(key) for key in SLOPING.measure_keys()} | wider
    with pytest.raises(StepRefused) as caught:
        draft("bodice", MeasureSet.from_mm("wider still", body, population="women"), {})
    assert caught.value.code == "bodice-armhole-corner"
    assert "across back of" in caught.value.text()


def test_a_corner_in_the_armhole_stops_the_papers() -> None:
    """The back armhole of the draft, square to the side for 0.5 mm: outside code and checks see it."""
    run = draft("bodice", SLOPING, {})
    spoiled = path_changed(run.pattern, "bodice.back/armhole", _turning_late)
    assert [miss for miss in misses(pattern_to_data(spoiled), {}) if "underarm" in miss]
    found = [one for one in seam_junctions.run(Subject(spoiled)) if one.severity is Severity.STOP]
    assert [one.code for one in found] == ["armhole-corner"]


def _turning_late(armhole: Path) -> Path:
    first, *rest = armhole.segments
    assert isinstance(first, Cubic)
    late = first.start.lerp(first.start_handle, 0.5 / first.start.distance_to(first.start_handle))
    return Path((Cubic(first.start, late, first.end_handle, first.end), *rest))
