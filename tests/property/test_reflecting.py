"""A piece reflected twice about any line is the piece; once, it keeps lengths, area and how it is sewn."""

from functools import cache
from math import isclose

from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.geometry import Point, Transform
from notchbook.pattern import Pattern, Piece, walk_seam
from support.hand_upper import hand_upper

_PLACES = st.floats(-900.0, 900.0)
_ANGLES = st.floats(0.0, 180.0)


@cache
def upper() -> Pattern:
    return hand_upper()


def line_through(x: float, y: float, angle: float) -> Transform:
    """The reflection about the line through a place at an angle, degrees."""
    return Transform.reflection(Point(x, y), Point(x, y) + Point(1000.0, 0.0).rotated(angle))


def apart(one: Piece, other: Piece) -> float:
    """How far the same things of two pieces lie apart, mm."""
    gaps = [0.0]
    for first, second in zip(one.outline, other.outline, strict=True):
        assert (first.name, first.start, first.end, first.kind) == (
            second.name,
            second.start,
            second.end,
            second.kind,
        )
        for share in (0.0, 0.3, 1.0):
            place = first.path.point_at(first.length * share)
            gaps.append(place.distance_to(second.path.point_at(second.length * share)))
    for line, again in zip(one.lines, other.lines, strict=True):
        assert line.name == again.name
        gaps.append(line.path.start.distance_to(again.path.start))
        gaps.append(line.path.end.distance_to(again.path.end))
    for mark, second_mark in zip(one.marks, other.marks, strict=True):
        gaps.append(mark.position.distance_to(second_mark.position))
    return max(gaps)


@settings(max_examples=15)
@given(x=_PLACES, y=_PLACES, angle=_ANGLES)
def test_a_piece_reflected_twice_is_the_piece(x: float, y: float, angle: float) -> None:
    about = line_through(x, y, angle)
    for piece in upper().pieces.values():
        once = piece.transformed(about)
        twice = once.transformed(about)
        assert apart(piece, twice) < 1e-6
        assert twice.intakes == piece.intakes
        assert isclose(twice.grain.degrees % 180.0, piece.grain.degrees % 180.0, abs_tol=1e-6) or isclose(
            abs(twice.grain.degrees - piece.grain.degrees) % 180.0, 180.0, abs_tol=1e-6
        )
        # Once is not nothing: the outline still runs counter-clockwise, the other way about.
        assert once.outline[0].name != piece.outline[0].name or len(piece.outline) == 1
        assert isclose(once.sew_line.area(), piece.sew_line.area(), rel_tol=1e-9)


@settings(max_examples=5)
@given(x=_PLACES, y=_PLACES, angle=_ANGLES)
def test_a_pattern_reflected_twice_walks_and_is_called_as_before(x: float, y: float, angle: float) -> None:
    about = line_through(x, y, angle)
    once = upper().with_pieces(*(piece.transformed(about) for piece in upper().pieces.values()))
    twice = once.with_pieces(*(piece.transformed(about) for piece in once.pieces.values()))
    for pattern in (once, twice):
        assert pattern.index.keys() == upper().index.keys()
        for name, seam in upper().seams.items():
            walked, before = walk_seam(pattern, pattern.seams[name]), walk_seam(upper(), seam)
            assert isclose(walked.misfit, before.misfit, abs_tol=1e-6)
    assert list(twice.index) == list(upper().index)
