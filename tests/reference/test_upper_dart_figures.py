"""The forecast of the bust dart and the pairs, against figures from outside.

The draft: an adult women's bodice of a Japanese fashion school, bust 83, waist 64, back 38 cm, from memory.
Its dart is (bust/4 - 2.5) degrees. The balance of the forecast was calibrated on this draft in size 83, so
that size is no evidence for it; the other three are.
The sample: 600 Spanish women scanned in three dimensions, our own regression (src/notchbook/body/population/
regressions.toml), recomputed here by hand at 168, 92, 74, 98 cm.
"""

import math

import numpy as np
import pytest

from notchbook.blocks.upper_measures import UpperMeasures, bust_dart_angle, look_at_upper
from notchbook.blocks.upper_measures.dart_outlook import BUST_EASE, NECK_SHARE, SCYE_EASE, SIDE_SHARE
from notchbook.body.population import population
from notchbook.body.population.evidence import Frame
from notchbook.body.population.system import make_system


def published_draft(bust: float, back: float) -> dict[str, float]:
    """The lengths that the published draft has built in, as measures that would lead to it; mm.

    Front height bust/5 + 83, armhole line bust/12 + 137, half neck bust/24 + 34 in front and 2 more behind,
    half the block bust/2 + 60, chest bust/8 + 62 with the bust point in its middle, at the armhole line.
    """
    underarm, height = bust / 12.0 + 137.0, bust / 5.0 + 83.0
    half_neck = bust / 24.0 + 34.0
    point = (bust / 8.0 + 62.0) / 2.0 + 7.0
    to_point = math.hypot(height, point - half_neck)
    side = (bust / 2.0 + 60.0) * 2.0 * SIDE_SHARE
    return {
        "bust_girth": side / SIDE_SHARE - BUST_EASE,
        "neck_base_girth": (half_neck + 2.0) / NECK_SHARE,
        "back_waist_length": back,
        "front_waist_length": to_point + back - underarm,
        "neck_to_bust_point": to_point,
        "bust_point_width": 2.0 * point,
        "scye_depth": underarm - SCYE_EASE,
    }


@pytest.mark.parametrize("bust", [770.0, 830.0, 890.0, 950.0])
def test_the_dart_of_a_published_draft_is_foretold(bust: float) -> None:
    """Within 3 degrees: the side seam and the balance are a forecast's."""
    angle = bust_dart_angle(published_draft(bust, 380.0).get)
    assert angle == pytest.approx(bust / 40.0 - 2.5, abs=3.0)


def test_a_draft_with_another_balance_is_not_foretold() -> None:
    lengths = published_draft(830.0, 380.0)
    longer = lengths | {"front_waist_length": lengths["front_waist_length"] + 15.0}
    assert bust_dart_angle(longer.get) != pytest.approx(18.25, abs=3.0)


SAMPLE = {
    "front_waist_length": (62.3, 0.142, 0.177, -0.015, -0.016, 2.0),
    "center_front_length": (42.1, 0.129, 0.109, 0.021, -0.034, 8.0),
    "back_waist_length": (81.9, 0.153, -0.002, 0.038, 0.029, 5.0),
}
"""mm: constant, then mm for each mm of height, bust, waist and hip, then tape less straight line."""


def sample_length(key: str) -> float:
    """The length of the sample's women of 168, 92, 74, 98 cm, mm."""
    constant, *weights, tape = SAMPLE[key]
    return constant + float(np.dot(weights, (1680.0, 920.0, 740.0, 980.0))) + tape


def test_the_lengths_of_the_sample_are_a_clean_body() -> None:
    taken = {key: sample_length(key) for key in SAMPLE}
    assert taken["front_waist_length"] == pytest.approx(438.0, abs=1.5)
    body = {"height": 1680.0, "bust_girth": 920.0, "waist_girth": 740.0}
    assert not look_at_upper(UpperMeasures(body | taken, population="women")).disagreements
    wrong = taken | {"back_waist_length": taken["back_waist_length"] + 46.0}
    assert look_at_upper(UpperMeasures(body | wrong, population="women")).disagreements


@pytest.mark.parametrize(
    ("longer", "shorter", "mean", "deviation"),
    [
        ("front_waist_length", "back_waist_length", 39.0, 13.0),
        ("front_waist_length", "center_front_length", 88.0, 8.0),
        ("back_waist_length", "center_front_length", 49.0, 13.0),
    ],
)
def test_the_lengths_differ_as_in_the_sample(
    longer: str, shorter: str, mean: float, deviation: float
) -> None:
    """Mean of the difference, and its scatter given height, bust, waist and hip, the tape's scatter (5 mm for
    each) and the doubt of the back length (5 mm) added."""
    keys = (longer, shorter, "height", "bust_girth", "waist_girth", "hip_girth")
    system = make_system(population("women").model, Frame("book", "natural", False), keys)
    way = np.array([1.0, -1.0])
    rest = system.read[:2, :2] - system.read[:2, 2:] @ np.linalg.solve(
        system.read[2:, 2:], system.read[2:, :2]
    )
    assert float(way @ system.mean[:2]) == pytest.approx(mean, abs=2.0)
    wider = math.sqrt(deviation**2 + 2 * 5.0**2 + (25.0 if "back_waist_length" in keys else 0.0))
    assert float(np.sqrt(way @ rest @ way)) == pytest.approx(wider, abs=2.5)
