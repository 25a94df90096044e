"""What a promise is measured on after steps: parts of lines, panels laid together, darts closed, pleats laid.

Widths and places are reckoned by hand from the rectangles below.
"""

from dataclasses import replace
from math import atan, cos, degrees, hypot, sin

import pytest

from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import (
    Edge,
    EdgeUse,
    Expectation,
    Fate,
    Group,
    Intake,
    InternalLine,
    Pattern,
    Piece,
    Seam,
    frozen_map,
)
from notchbook.pattern.laid_pleats import laid_away
from notchbook.pattern.led_lines import led_to_outline
from notchbook.pattern.promise_parts import Gone, PromiseParts, promise_parts
from notchbook.pattern.promised_length import promised_length

Corner = tuple[str, float, float]


def piece_of(name: str, corners: tuple[Corner, ...], **more: object) -> Piece:
    """A piece with straight edges; each edge is called after the corner where it begins."""
    places = [(f"{name}/{word}", Point(x, y)) for word, x, y in corners]
    outline = tuple(
        Edge(f"{start}_edge", Path.line(here, there), start, end)
        for (start, here), (end, there) in zip(places, (*places[1:], places[0]), strict=True)
    )
    return replace(Piece(name, name, outline), **more)  # type: ignore[arg-type]  # any field, by its name


def box(name: str, width: float, top: float, bottom: float = 0.0) -> Piece:
    """A rectangle from x = 0: corners low_left, low_right, high_right, high_left."""
    return piece_of(
        name,
        (
            ("low_left", 0.0, bottom),
            ("low_right", width, bottom),
            ("high_right", width, top),
            ("high_left", 0.0, top),
        ),
    )


def with_line(piece: Piece, name: str, y: float, start: float, end: float) -> Piece:
    """The piece with a level line from x to x."""
    line = InternalLine(f"{piece.name}/{name}", Path.line(Point(start, y), Point(end, y)))
    return replace(piece, lines=(*piece.lines, line))


def whole(*pieces: Piece, seams: tuple[Seam, ...] = ()) -> Pattern:
    """A pattern of these pieces and seams."""
    return Pattern(
        pieces=frozen_map({piece.name: piece for piece in pieces}),
        seams=frozen_map({seam.name: seam for seam in seams}),
    )


def promise(*names: str, chains: tuple[tuple[str, ...], ...] = (), **more: object) -> Expectation:
    """A promise of nothing but where it is measured."""
    made = Expectation("cut/some_girth", "", names, 1, 0.0, 0.0, "", chains=chains)
    return replace(made, **more)  # type: ignore[arg-type]  # any field, by its name


YOKE = box("cut.above", 100.0, 50.0)
SKIRT = box("cut.below", 100.0, 400.0)
LEVEL = Seam(
    "cut/level",
    (EdgeUse("cut.above/low_left_edge", "cut.above/low_left"),),
    (EdgeUse("cut.below/high_right_edge", "cut.below/high_left"),),
)
DOWN = promise(chains=(("cut.above/high_left", "cut.below/low_left"),))


def test_a_length_over_a_seam_is_that_of_both_pieces() -> None:
    assert promised_length(whole(YOKE, SKIRT, seams=(LEVEL,)), DOWN) == pytest.approx(450.0)


def test_a_piece_that_was_turned_in_its_frame_is_laid_back() -> None:
    turned = SKIRT.transformed(Transform.rotation(33.0, Point(12.0, -7.0)))
    across = replace(DOWN, chains=(("cut.above/high_left", "cut.below/low_right"),))
    found = promised_length(whole(YOKE, turned, seams=(LEVEL,)), across)
    assert found == pytest.approx(hypot(100.0, 450.0))  # Pythagoras
    assert promised_length(
        whole(YOKE, turned, seams=(LEVEL,)), replace(across, reach="down")
    ) == pytest.approx(450.0)


def test_pieces_that_no_seam_joins_are_not_laid_together() -> None:
    found = promise_parts(whole(YOKE, SKIRT), DOWN)
    assert isinstance(found, Gone)
    assert found.name == "cut.below/low_left" and "seam" in found.reason


def test_no_length_is_measured_over_a_facing() -> None:
    facing = replace(YOKE, rule="facing")
    other = box("cut.mid", 100.0, 10.0)
    first = Seam(
        "cut/first",
        (EdgeUse("cut.mid/low_left_edge", "cut.mid/low_left"),),
        (EdgeUse("cut.above/high_right_edge", "cut.above/high_left"),),
    )
    way = promise(chains=(("cut.mid/high_left", "cut.below/low_left"),))
    seams = (first, LEVEL)
    assert promised_length(whole(other, YOKE, SKIRT, seams=seams), way) == pytest.approx(460.0)
    assert promised_length(whole(other, facing, SKIRT, seams=seams), way) is None


def test_the_pieces_are_laid_at_the_end_of_the_seam_that_lies_nearer() -> None:
    """The upper edge of the lower piece slants: laid to the yoke it is turned about the corner there."""
    slanted = piece_of(
        "cut.below",
        (
            ("low_left", 0.0, 0.0),
            ("low_right", 100.0, 0.0),
            ("high_right", 100.0, 380.0),
            ("high_left", 0.0, 400.0),
        ),
    )
    pattern = whole(YOKE, slanted, seams=(LEVEL,))
    left = promised_length(pattern, replace(DOWN, reach="down"))
    slant = atan(20.0 / 100.0)
    assert left == pytest.approx(50.0 + 400.0 * cos(slant))
    right = replace(DOWN, chains=(("cut.above/high_right", "cut.below/low_right"),), reach="down")
    assert promised_length(pattern, right) == pytest.approx(50.0 + 380.0 * cos(slant))


def test_a_line_in_parts_is_measured_on_all_of_them() -> None:
    center = with_line(box("cut.center", 60.0, 100.0), "bust_line", 50.0, 0.0, 60.0)
    side = with_line(box("cut.side", 45.0, 100.0), "bust_line", 50.0, 0.0, 45.0)
    group = Group(("cut.center/bust_line", "cut.side/bust_line"), "princess-1")
    pattern = replace(whole(center, side), groups=frozen_map({"block.front/bust_line": group}))
    bust = promise("block.front/bust_line", times=2)
    assert promised_length(pattern, bust) == pytest.approx(210.0)
    lost = pattern.with_pieces(without=("cut.side",))
    found = promise_parts(lost, bust)
    assert isinstance(found, Gone)
    assert found.name == "block.front/bust_line"
    assert promised_length(lost, bust) is None


def test_what_took_a_part_away_is_told() -> None:
    fate = Fate("removed", (), "cowl-1", "it became the fold of a cowl")
    pattern = replace(whole(YOKE), fates=frozen_map({"cut.above/neck": fate, "cut.above/pit": fate}))
    for gone in (promise("cut.above/neck"), promise(chains=(("cut.above/pit", "cut.above/low_left"),))):
        found = promise_parts(pattern, gone)
        assert isinstance(found, Gone)
        assert (found.by, found.reason) == ("cowl-1", "it became the fold of a cowl")


def test_a_corner_that_was_joined_into_another_is_measured_there() -> None:
    fate = Fate("merged", ("cut.above/low_right",), "convert_dart-1", "joined into another")
    pattern = replace(whole(YOKE), fates=frozen_map({"cut.above/mouth": fate}))
    way = promise(chains=(("cut.above/low_left", "cut.above/mouth"),))
    assert promised_length(pattern, way) == pytest.approx(100.0)


def test_a_line_is_led_on_where_a_step_cut_it_and_nowhere_else() -> None:
    """A draft may end a line beside the outline, or beyond it by a fault: so it is measured."""
    level = with_line(box("cut.center", 60.0, 100.0), "bust_line", 50.0, 4.0, 66.0)
    alone = promise("cut.center/bust_line")
    assert promised_length(whole(level), alone) == pytest.approx(62.0)
    cloth = promise_parts(whole(level), alone, to_outline=True)
    assert isinstance(cloth, PromiseParts)
    assert [line.path.length for line in cloth.lines] == pytest.approx([60.0])
    side = with_line(box("cut.side", 45.0, 100.0), "bust_line", 50.0, 3.0, 41.0)
    group = Group(("cut.center/bust_line", "cut.side/bust_line"), "princess-1")
    pattern = replace(whole(level, side), groups=frozen_map({"block.front/bust_line": group}))
    # Cut off at 60 at the cut of the first, led to 0 at that of the second: 56 and 41.
    assert promised_length(pattern, promise("block.front/bust_line")) == pytest.approx(97.0)


def test_a_level_that_runs_on_along_the_cut_is_not_led_on() -> None:
    cut = box("cut", 100.0, 50.0)
    for end, slope in ((60.0, 0.05), (97.0, -0.2)):
        # The cut is the upper edge, 2 mm above: 40 mm ahead, or never reached, but the side behind it.
        beside = Path.line(Point(0.0, 48.0 - slope * end), Point(end, 48.0))
        assert led_to_outline(cut, beside, ends=(False, True)) == beside
    steep = Path.line(Point(0.0, 18.0), Point(60.0, 48.0))
    assert led_to_outline(cut, steep, ends=(False, True)).end.y == pytest.approx(50.0)


def test_a_line_is_led_on_to_the_outline_and_cut_off_at_it() -> None:
    short = with_line(box("cut.center", 60.0, 100.0), "hip_line", 50.0, 4.0, 66.0)
    path = led_to_outline(short, short.lines[0].path)
    assert (path.start.x, path.end.x) == pytest.approx((0.0, 60.0))
    far = with_line(box("cut.center", 60.0, 100.0), "hip_line", 50.0, 28.0, 60.0)
    assert led_to_outline(far, far.lines[0].path).start.x == pytest.approx(28.0)
    meets = [Point(4.0, 50.0)]
    assert led_to_outline(short, short.lines[0].path, meets).start.x == pytest.approx(4.0)


DARTED = piece_of(
    "cut.front",
    (
        ("low_left", 0.0, 0.0),
        ("low_right", 200.0, 0.0),
        ("high_right", 200.0, 100.0),
        ("far_mouth", 120.0, 100.0),
        ("point", 100.0, 40.0),
        ("near_mouth", 80.0, 100.0),
        ("high_left", 0.0, 100.0),
    ),
)


@pytest.mark.parametrize(("dart", "is_closed"), [("moved.front/dart", True), ("cut.front/dart", False)])
def test_a_dart_that_a_step_opened_is_closed_for_a_distance_across(dart: str, is_closed: bool) -> None:
    intake = Intake(dart, "x", "cut.front/far_mouth_edge", "cut.front/point_edge", "cut.front/point")
    piece = replace(DARTED, intakes=(intake,))
    way = promise(chains=(("cut.front/high_left", "cut.front/high_right"),), reach="across")
    found = promised_length(whole(piece), way)
    # Closed, the right part turns about the point by the angle of the dart; turned as plane geometry has it.
    angle = 2.0 * atan(20.0 / 60.0)
    turned = 100.0 + 100.0 * cos(angle) - 60.0 * sin(angle)
    assert found == pytest.approx(turned if is_closed else 200.0)
    assert degrees(angle) == pytest.approx(36.87, abs=0.01)


@pytest.mark.parametrize(
    ("stitched", "laid", "sewn_shut"), [(0.0, 30.0, 0.0), (49.0, 30.0, 0.0), (51.0, 30.0, 30.0)]
)
def test_a_pleat_takes_what_lies_between_its_lines(stitched: float, laid: float, sewn_shut: float) -> None:
    lines = tuple(
        InternalLine(f"cut.below/{word}", Path.line(Point(x, 400.0), Point(x, 100.0)), "fold_line")
        for word, x in (("near_line", 40.0), ("far_line", 70.0))
    )
    pleat = Intake(
        "cut.below/pleat",
        "cut.below/high_right_edge",
        kind="pleat",
        first_line=lines[0].name,
        second_line=lines[1].name,
        stitched=stitched,
    )
    piece = with_line(replace(SKIRT, lines=lines, intakes=(pleat,)), "hip_line", 350.0, 0.0, 100.0)
    hip = promise("cut.below/hip_line")
    assert promised_length(whole(piece), hip) == pytest.approx(100.0)
    assert promised_length(whole(piece), hip, {}) == pytest.approx(100.0 - laid)
    assert laid_away(piece, piece.lines[-1].path, stitched_only=True) == pytest.approx(sewn_shut)
    below = Path.line(Point(0.0, 50.0), Point(100.0, 50.0))
    assert laid_away(piece, below) == 0.0
