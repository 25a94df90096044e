"""The waist seam as a chain of arcs."""

from math import atan, degrees, radians, sin, tan

import pytest

from notchbook.blocks.upper.waist_chain import DartAim, waist_chain
from notchbook.errors import DraftRefused
from support.upper_judge import heading, length


def test_without_darts_or_tilt_it_is_straight() -> None:
    chain = waist_chain((), 240.0, 0.0)
    assert chain.length == 240.0
    assert chain.side_y == 0.0


def test_a_tilted_side_is_the_arc_of_a_circle() -> None:
    """Chord and arc of a circle, by the textbook: arc = radius x angle, chord = 2 x radius x sin(half)."""
    tilt = radians(9.0)
    chain = waist_chain((), 240.0, tilt)
    radius = 240.0 / sin(tilt)
    assert chain.length == pytest.approx(radius * tilt)
    assert chain.side_y == pytest.approx(-240.0 * tan(tilt / 2.0))
    assert length(chain.parts[0].path()) == pytest.approx(radius * tilt, abs=1e-4)
    assert chain.height_at(120.0) == pytest.approx(-(radius - (radius**2 - 120.0**2) ** 0.5))


def test_legs_stand_square_to_the_seam() -> None:
    chain = waist_chain((DartAim(95.0, 15.0, leg=170.0), DartAim(170.0, 8.0, height=130.0)), 230.0, 0.07)
    for index, dart in enumerate(chain.darts):
        half = degrees(atan(dart.half / (dart.point_y - dart.mouth_y)))
        assert heading(chain.parts[index].path(), at_end=True) == pytest.approx(-half, abs=0.05)
        assert heading(chain.parts[index + 1].path(), at_end=False) == pytest.approx(half, abs=0.05)
        assert dart.angle == pytest.approx(2.0 * half)
    assert chain.darts[0].leg == pytest.approx(170.0)
    assert chain.darts[1].point_y == pytest.approx(130.0)


def test_an_empty_dart_changes_nothing() -> None:
    assert waist_chain((DartAim(95.0, 0.0, leg=170.0),), 230.0, 0.0).length == pytest.approx(230.0)


@pytest.mark.parametrize(
    "aims",
    [
        (DartAim(10.0, 12.0, leg=170.0),),
        (DartAim(225.0, 12.0, leg=170.0),),
        (DartAim(95.0, 15.0, leg=170.0), DartAim(110.0, 8.0, height=130.0)),
        (DartAim(95.0, 40.0, leg=50.0),),
        (DartAim(95.0, 40.0, height=50.0),),
    ],
)
def test_darts_without_room_are_refused(aims: tuple[DartAim, ...]) -> None:
    with pytest.raises(DraftRefused, match="bodice-waist-darts-too-wide"):
        waist_chain(aims, 230.0, 0.0)
