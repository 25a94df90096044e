"""Moved darts against figures of the trade: a dart keeps its angle, not its width.

Source of the figures: plane geometry, as drafting handbooks state it (a chord of a circle: intake = 2 L sin
of half the angle); 3.5 cm on a leg of 20 cm is 10.0396 degrees and 4.200 cm on 24 cm; 7 cm on 24 cm is 16.8
degrees, and 5.0, 3.8 and 2.9 cm on 17, 13 and 10 cm. How far points stay from the bust point: waist 1 in
(from memory), side and French darts 1 to 1 1/2 in, shoulder 1 to 2 in, neck 1 1/2 in (drafting handbooks).
"""

from math import asin, degrees, hypot

import pytest

from notchbook.pattern import Piece
from notchbook.pattern.slashing import Closing, DartNames, Legs, Opening, dart_angle, located_on, pivot
from notchbook.style.darts.ends import dart_end, dart_ends
from support.dart_shapes import SHEET, sheet

NEW = DartNames.of("moved.front/dart", counted_from_start=True)
INCH = 25.4


def dart_of(intake: float, leg: float) -> Piece:
    """A sheet with a dart of this intake on legs of this length, mm."""
    depth = (leg**2 - (intake / 2.0) ** 2) ** 0.5
    return sheet(width=600.0, height=depth + 300.0, mouth=intake, depth=depth)


def intake_at(piece: Piece, leg: float) -> float:
    """The dart moved to the upper edge where that lies ``leg`` mm from the pivot: its width there, mm."""
    dart = piece.intakes[0]
    about = piece.points[dart.point]
    up = piece.bounds.max_y - about.y
    aside = (leg**2 - up**2) ** 0.5
    place = located_on(piece, f"{SHEET}/top", 300.0 - aside)
    angle = dart_angle(piece, dart)
    opening = Opening(place, angle, Legs(NEW))
    moved = pivot(piece, about, (Closing(dart, angle, removed=True),), (opening,), f"{SHEET}/left").piece
    first, second = moved.edge(NEW.first_leg).path, moved.edge(NEW.second_leg).path
    assert first.length == pytest.approx(leg, abs=1e-6)
    return first.start.distance_to(second.end)


@pytest.mark.parametrize(
    ("intake", "leg", "angle"), [(35.0, 200.0, 10.0396), (70.0, 240.0, 16.77)], ids=["3.5 at 20", "7 at 24"]
)
def test_the_angle_of_a_dart(intake: float, leg: float, angle: float) -> None:
    piece = dart_of(intake, leg)
    assert dart_angle(piece, piece.intakes[0]) == pytest.approx(angle, abs=0.005)


@pytest.mark.parametrize(
    ("intake", "leg", "other", "expected", "within"),
    [
        (35.0, 200.0, 240.0, 42.00, 0.005),
        (70.0, 240.0, 170.0, 50.0, 0.5),
        (70.0, 240.0, 130.0, 38.0, 0.5),
        (70.0, 240.0, 100.0, 29.0, 0.5),
    ],
)
def test_its_width_on_another_leg(
    intake: float, leg: float, other: float, expected: float, within: float
) -> None:
    piece = dart_of(intake, leg)
    low = sheet(
        width=600.0,
        height=piece.points[piece.intakes[0].point].y + 80.0,
        mouth=intake,
        depth=piece.points[piece.intakes[0].point].y,
    )
    assert intake_at(low, other) == pytest.approx(expected, abs=within)


def test_the_angle_is_the_arc_sine_of_half_the_intake() -> None:
    piece = sheet(mouth=44.0, depth=210.0)
    leg = hypot(22.0, 210.0)
    assert dart_angle(piece, piece.intakes[0]) == pytest.approx(2.0 * degrees(asin(22.0 / leg)), abs=1e-9)


@pytest.mark.parametrize(
    ("edge", "least", "most"),
    [("waist", 0.5, 1.0), ("side_seam", 1.0, 1.5), ("shoulder", 1.0, 2.0), ("neck", 1.5, 1.5)],
)
def test_how_far_points_stay_from_the_bust_point(edge: str, least: float, most: float) -> None:
    row = dart_end(f"bodice.front/{edge}")
    assert least * INCH - 0.7 <= row.least <= row.short <= row.most <= most * INCH + 0.7


def test_every_row_says_where_it_is_from() -> None:
    for word, row in dart_ends().items():
        assert row.source, word
        assert row.grade in ("standard", "handbook", "memory", "common practice", "own judgment"), word
        assert row.least <= row.short <= row.most, word


def test_darts_are_pressed_to_the_center_or_down() -> None:
    """Fold toward the center when upright, down when level (drafting handbooks)."""
    assert {word for word, row in dart_ends().items() if row.press == "still"} == {
        "waist",
        "shoulder",
        "neck",
    }
