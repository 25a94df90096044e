"""The handbook draft of tailored trousers (waist 68, hip 94, quoted from memory: T7) against our own.

Front extension, hip quarters and hem halves were taken from it; the rest was not set on it.
"""

import pytest

from notchbook.blocks.legs import draft_trousers
from support.legs_given import woman

TAILORED = woman(680.0, 940.0, 206.0, 280.0)


def test_frame() -> None:
    half = draft_trousers(TAILORED)
    widths = [panel.hip_side.x - panel.hip_center.x for panel in (half.front, half.back)]
    assert widths == pytest.approx([240.0, 250.0], abs=0.01)
    reach = half.front.hip_center.x - half.front.crotch_point.x
    assert reach == pytest.approx(63.75, abs=3.0)
    assert half.back.hem.start.x - half.front.hem.start.x == pytest.approx(10.0, abs=1e-6)


def test_waist() -> None:
    """Front side and center together 47.5 and a dart of 20; back two darts of 20; center back 30 to 45 in."""
    half = draft_trousers(TAILORED)
    assert half.front.side_take_in == pytest.approx(37.5, abs=6.0)
    assert sum(half.front.intakes) == pytest.approx(20.0, abs=6.0)
    assert half.back.intakes == pytest.approx([20.0, 20.0], abs=6.0)
    slant = half.back.waist[0].start.x - half.back.hip_center.x
    assert 28.0 <= slant <= 45.0


def test_crease() -> None:
    """From the center front the crease lies a twelfth of the hip and 15 mm: 93.3."""
    half = draft_trousers(TAILORED)
    assert -half.front.hip_center.x == pytest.approx(93.3, abs=4.0)
