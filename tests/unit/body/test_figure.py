"""The drawn figure: what is on it, and that its lines lie where they should."""

import itertools
import math
import re
from collections import Counter
from typing import Any, Literal
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, MultiLineString
from shapely import Point as Spot
from svgpathtools import Path as SvgPath
from svgpathtools import parse_path

from notchbook.body import measure_table
from notchbook.body.figure import SCALE, View, ViewName, figure, figure_svg, number_box
from notchbook.body.figure.curve_through import curve_through
from notchbook.body.figure.figure_data import body_views
from notchbook.body.figure.path_text import path_text
from notchbook.body.figure.tape_lines import ring, slope
from notchbook.body.figure.tape_ways import tape_ways
from notchbook.errors import InputError
from notchbook.geometry import Path, Point, Transform

Box = tuple[float, float, float, float]
POPULATIONS: tuple[Literal["women", "men"], ...] = ("women", "men")
VIEWS = [(population, view) for population in POPULATIONS for view in figure(population).views]
IDS = [f"{population}-{view.name}" for population, view in VIEWS]
GIRTHS_ON_OUTLINE = {way.key for way in tape_ways() if way.kind == "round" and way.view == "front"}


def measured(text: str) -> SvgPath:
    return parse_path(text)


def line_of(text: str) -> MultiLineString:
    """The path data as shapely lines, each continuous part on its own."""
    parts = []
    for part in measured(text).continuous_subpaths():
        spots = [segment.point(step / 24) for segment in part for step in range(25)]
        parts.append(LineString([(spot.real, spot.imag) for spot in spots]))
    return MultiLineString(parts)


def outline_of(view: View) -> MultiLineString:
    return MultiLineString([line for text in view.outline for line in line_of(text).geoms])


def overlapping(boxes: list[tuple[str, Box]]) -> list[tuple[str, str]]:
    found = []
    for (name, one), (other_name, other) in itertools.combinations(boxes, 2):
        if one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]:
            found.append((name, other_name))
    return found


def test_every_measure_but_the_weight_is_drawn_in_one_or_two_views() -> None:
    for population in POPULATIONS:
        drawn = figure(population)
        assert drawn.keys == set(measure_table()) - {"weight"}
        counts = Counter(tape.key for view in drawn.views for tape in view.tapes)
        assert set(counts.values()) <= {1, 2}
        for view in drawn.views:
            assert len({tape.key for tape in view.tapes}) == len(view.tapes)
            assert [tape.number for tape in view.tapes] == sorted(
                measure_table()[tape.key].number for tape in view.tapes
            )


def test_both_figures_show_the_same_ways() -> None:
    women, men = (figure(population) for population in POPULATIONS)
    for one, other in zip(women.views, men.views, strict=True):
        assert [(tape.key, tape.side) for tape in one.tapes] == [
            (tape.key, tape.side) for tape in other.tapes
        ]


def test_an_unknown_figure_is_refused_in_words() -> None:
    population: Any = "children"
    with pytest.raises(InputError, match="children") as refusal:
        figure(population)
    assert refusal.value.code == "figure-unknown"


@pytest.mark.parametrize(("population", "view"), VIEWS, ids=IDS)
def test_all_lines_are_path_data_and_lie_in_the_view(population: str, view: View) -> None:
    lines = [*view.outline, *view.details, *view.levels]
    lines += [text for tape in view.tapes for text in (tape.path, tape.hidden_path) if text]
    assert len(lines) > 10, population
    for text in lines:
        left, right, top, bottom = measured(text).bbox()
        assert 0.0 <= left <= right <= view.width, text
        assert 0.0 <= top <= bottom <= view.height, text


@pytest.mark.parametrize(("population", "view"), VIEWS, ids=IDS)
def test_tapes_lie_on_the_body(population: str, view: View) -> None:
    """Only straight lengths held beside the body, a bare slope and the belly's depth may leave its box."""
    left, top, right, bottom = outline_of(view).bounds
    beside = {"height", "standing_rise", "shoulder_slope", "shoulder_length", "belly_depth"}
    for tape in view.tapes:
        if tape.key in beside:
            continue
        low_x, high_x, low_y, high_y = measured(tape.path).bbox()
        assert left - 0.3 <= low_x <= high_x <= right + 0.3, (population, tape.key)
        assert top - 0.3 <= low_y <= high_y <= bottom + 1.3, (population, tape.key)


@pytest.mark.parametrize("population", POPULATIONS)
def test_girths_end_on_the_outline_and_their_halves_meet(population: Literal["women", "men"]) -> None:
    front = figure(population).view("front")
    outline = outline_of(front)
    seen = 0
    for tape in front.tapes:
        if tape.key not in GIRTHS_ON_OUTLINE:
            continue
        near, far = measured(tape.path), measured(tape.hidden_path)
        assert abs(near.start - far.start) < 0.02
        assert abs(near.end - far.end) < 0.02
        for end in (near.start, near.end):
            assert outline.distance(Spot(end.real, end.imag)) < 0.8, tape.key
        lowest = near.point(0.5).imag
        assert lowest > max(near.start.imag, near.end.imag) - 1.5 > far.point(0.5).imag - 1.5, tape.key
        seen += 1
    assert seen >= 14


@pytest.mark.parametrize(("population", "view"), VIEWS, ids=IDS)
def test_numbers_do_not_collide_and_stand_in_the_view(population: str, view: View) -> None:
    boxes = [(tape.key, number_box(tape)) for tape in view.tapes]
    assert overlapping(boxes) == [], population
    for key, (left, top, right, bottom) in boxes:
        assert left >= 0 and right <= view.width and top >= 0 and bottom <= view.height, key


def test_colliding_numbers_would_be_found() -> None:
    tape = figure("women").view("front").tapes[0]
    beside = number_box(tape)[2] - number_box(tape)[0] + 0.01
    moved = (number_box(tape)[0] + beside, *number_box(tape)[1:2], number_box(tape)[2] + beside)
    apart: Box = (moved[0], moved[1], moved[2], number_box(tape)[3])
    assert overlapping([("a", number_box(tape)), ("b", number_box(tape))]) == [("a", "b")]
    assert overlapping([("a", number_box(tape)), ("b", apart)]) == []


@pytest.mark.parametrize(("population", "view"), VIEWS, ids=IDS)
def test_a_number_stands_at_its_line(population: str, view: View) -> None:
    for tape in view.tapes:
        far = line_of(tape.path).distance(Spot(tape.anchor.x, tape.anchor.y))
        assert far < 5.0, (population, tape.key)


@pytest.mark.parametrize("population", POPULATIONS)
def test_levels_of_the_drawing_are_the_heights_of_the_body(population: Literal["women", "men"]) -> None:
    """The drawing keeps its scale: crown to floor is the height, and the waist tape hangs at its level."""
    heights = body_views(population)[0].heights
    drawn = figure(population)
    way = next(tape for tape in drawn.view("front").tapes if tape.key == "height")
    _, _, top, bottom = measured(way.path).bbox()
    assert (bottom - top) * SCALE == pytest.approx(heights["crown"], abs=0.1)
    for name in ("front", "back", "side"):
        _, _, high, low = measured(drawn.view(name).levels[0]).bbox()
        assert high == pytest.approx(low, abs=0.01)
        assert (bottom - high) * SCALE == pytest.approx(heights["waist"], abs=0.1)
    side = {tape.key: measured(tape.path) for tape in drawn.view("side").tapes}
    assert side["standing_rise"][0].length() * SCALE == pytest.approx(
        heights["waist"] - heights["crotch"], abs=0.2
    )
    assert side["outside_leg"][0].length() * SCALE == pytest.approx(heights["waist"], abs=0.2)


def test_halves_of_front_and_back_are_reflections() -> None:
    for population, view in VIEWS:
        if view.name not in ("front", "back"):
            continue
        body = next(body for body in body_views(population) if body.name == view.name)
        middle = -body.left / SCALE
        half = len(body.strokes)
        for one, other in zip(view.outline[:half], view.outline[half:], strict=True):
            for share in (0.0, 0.3, 1.0):
                a, b = measured(one).point(share), measured(other).point(share)
                assert a.real - middle == pytest.approx(middle - b.real, abs=0.03)
                assert a.imag == pytest.approx(b.imag, abs=0.02)


def test_the_svg_stands_alone_and_names_every_tape() -> None:
    svg = figure_svg(figure("women"))
    root = ElementTree.fromstring(svg)
    space = {"s": "http://www.w3.org/2000/svg"}
    tapes = root.findall(".//s:g[@data-measure]", space)
    assert len(tapes) == sum(len(view.tapes) for view in figure("women").views)
    for tape in tapes:
        entry = measure_table()[tape.get("data-measure", "")]
        assert tape.findtext("s:title", namespaces=space) == f"{entry.number}. {entry.label}"
        assert tape.findtext("s:desc", namespaces=space) == entry.definition
        assert tape.findtext("s:text", namespaces=space) == str(entry.number)
    assert not re.findall(r"(?:href|src|url)\s*[=(]", svg)


def test_the_svg_writes_values_and_picks_one_measure_out() -> None:
    svg = figure_svg(figure("men"), {"waist_girth": '37 1/2" & more'}, "waist_girth", ("front",))
    root = ElementTree.fromstring(svg)
    space = {"s": "http://www.w3.org/2000/svg"}
    picked = root.findall(".//s:g[@class='picked']", space)
    assert [tape.get("data-measure") for tape in picked] == ["waist_girth"]
    assert picked[0].findtext("s:text", namespaces=space) == '37 1/2" & more'
    others = len(figure("men").view("front").tapes) - 1
    assert len(root.findall(".//s:g[@class='soft']", space)) == others
    assert [group.get("id") for group in root.findall("s:g", space)] == ["front"]
    assert root.findall("s:g", space)[0].findall("s:g", space)[-1] is picked[0]


def test_the_same_figure_gives_the_same_text() -> None:
    assert figure_svg(figure("women")) == figure_svg(figure("women"))
    assert figure_svg(figure("women")) != figure_svg(figure("men"))


def test_a_curve_through_points_of_a_circle_is_a_circle() -> None:
    """Hobby's curve through nine points of half a circle stays within 0.1 % of it."""
    turns = [index * math.pi / 8 for index in range(9)]
    points = [Point(100 * math.cos(turn), 100 * math.sin(turn)) for turn in turns]
    curve = curve_through(points)
    for step in range(101):
        spot = curve.point_at(min(curve.length, curve.length * step / 100))
        assert spot.norm() == pytest.approx(100, rel=1e-3)


def test_a_curve_through_two_points_is_straight() -> None:
    curve = curve_through([Point(0, 0), Point(30, 40)])
    assert curve.length == pytest.approx(50)


@given(st.lists(st.floats(-80, 80), min_size=3, max_size=9))
def test_a_curve_goes_through_its_points_without_a_corner(heights: list[float]) -> None:
    points = [Point(40.0 * index, height) for index, height in enumerate(heights)]
    curve = curve_through(points)
    assert [segment.start for segment in curve.segments] == points[:-1]
    assert curve.end == points[-1]
    assert curve.corners(0.5) == ()


@given(st.floats(-100, 100), st.floats(5, 100), st.floats(0.02, 0.2))
def test_a_ring_hangs_by_its_sag(left: float, width: float, sag: float) -> None:
    lines = ring(Point(left, 0), Point(left + width, 0), sag)
    near, far = lines.seen[0].bounds(), lines.hidden[0].bounds()
    assert near.min_y == pytest.approx(-sag * width, rel=1e-6)
    assert far.max_y == pytest.approx(sag * width, rel=1e-6)
    assert near.min_x == pytest.approx(left, abs=1e-6)
    assert near.max_x == pytest.approx(left + width, abs=1e-6)


@pytest.mark.parametrize("side", [1.0, -1.0])
def test_a_slope_is_an_arc_from_level_to_the_shoulder(side: float) -> None:
    lines = slope([Point(0, 0), Point(side * 100 * math.cos(0.4), -100 * math.sin(0.4))])
    arc, level = lines.seen
    assert arc.length == pytest.approx(40, rel=0.01)
    assert level.end.y == 0.0
    assert all(abs(arc.point_at(arc.length * share).norm() - 100) < 0.5 for share in (0.25, 0.5, 0.75))


def test_path_text_reads_back_with_the_same_length() -> None:
    """Outside: svgpathtools reads the text and measures it."""
    path = curve_through([Point(0, 0), Point(40, 90), Point(160, 20)])
    line = Path.line(Point(-3, -4), Point(0, 0))
    text = path_text([path, line], Transform(0.5, 0, 0, -0.5, 10, 10))
    assert measured(text).length() == pytest.approx((path.length + line.length) / 2, abs=0.03)
    assert path_text([], Transform()) == ""
    assert "-0 " not in text + " "


def test_left_and_right_are_the_wearers() -> None:
    """In the front view the wearer's right is at the viewer's left, in the back view at the right."""
    signs: list[tuple[ViewName, float]] = [("front", 1.0), ("back", -1.0)]
    for population in POPULATIONS:
        drawn = figure(population)
        for name, sign in signs:
            view = drawn.view(name)
            body = next(body for body in body_views(population) if body.name == name)
            for tape in view.tapes:
                if tape.side in ("left", "right"):
                    left, right, _, _ = measured(tape.path).bbox()
                    middle = (left + right) / 2 * SCALE + body.left
                    wanted = sign if tape.side == "left" else -sign
                    assert middle * wanted > 0, (population, tape.key)
