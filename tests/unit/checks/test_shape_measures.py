"""What the shape checks measure, on lines whose shape is known by arithmetic."""

from dataclasses import replace
from math import cos, radians, sin

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.checks.bow import bow, rounded
from notchbook.checks.caps import LaidCap, laid_points, lay_gap, lay_length
from notchbook.checks.limits import LIMITS
from notchbook.checks.measured import dense, up_to
from notchbook.checks.necks import rise_and_width
from notchbook.checks.rules.no_bump import slack
from notchbook.checks.turning import bends, stretches
from notchbook.checks.walks import walked_seams
from notchbook.checks.word_runs import WordRun, word_runs
from notchbook.geometry import Cubic, Line, Path, Point, Transform
from notchbook.pattern import Edge, Group, Intake, Pattern, Piece, frozen_map
from support.hand_upper import hand_upper

UPPER = hand_upper()


def run_named(name: str, pattern: Pattern = UPPER) -> WordRun:
    word = name.rsplit("/", 1)[-1]
    return next(run for run in word_runs(pattern, word) if run.name == name)


# ------------------------------------------------------------------ runs by their word


def darted(turn: float) -> Pattern:
    """A piece whose top, a straight line of 200 mm, has a dart of ``turn`` degrees in its middle; beyond the
    dart the line goes on turned by the dart, so that it is straight once that is closed."""
    point = Point(100.0, 0.0)
    mouth, end = Point(100.0, 80.0), Point(200.0, 80.0)

    def opened(place: Point) -> Point:
        return place.rotated(-turn, point)

    def edge(word: str, start: Point, stop: Point, names: tuple[str, str]) -> Edge:
        return Edge(f"a.b/{word}", Path.line(start, stop), f"a.b/{names[0]}", f"a.b/{names[1]}")

    corner = Point(0.0, 80.0)
    outline = (
        edge("neck/side", opened(end), opened(mouth), ("end", "second")),
        edge("dart/leg", opened(mouth), point, ("second", "point")),
        edge("dart/other", point, mouth, ("point", "first")),
        edge("neck/center", mouth, corner, ("first", "nape")),
        edge("left", corner, Point(0.0, -50.0), ("nape", "low")),
        edge("right", Point(0.0, -50.0), opened(end), ("low", "end")),
    )
    dart = Intake("a.b/dart", "a.b/neck", "a.b/dart/leg", "a.b/dart/other", "a.b/point")
    piece = Piece("a.b", "B", outline, intakes=(dart,))
    group = Group(("a.b/neck/side", "a.b/neck/center"), "a")
    return Pattern(pieces=frozen_map({"a.b": piece}), groups=frozen_map({"a.b/neck": group}))


@given(st.floats(0.0, 40.0))
@settings(max_examples=25, deadline=None)
def test_a_dart_in_an_edge_is_closed(turn: float) -> None:
    run = run_named("a.b/neck", darted(turn))
    points = run.line.points
    assert run.line.length == pytest.approx(200.0, abs=1e-6)
    assert float(np.hypot(*(points[-1] - points[0]))) == pytest.approx(200.0, abs=1e-6)


@given(st.floats(0.0, 40.0))
@settings(max_examples=25, deadline=None)
def test_walked_from_the_other_end_that_end_lies_still(turn: float) -> None:
    run = run_named("a.b/neck", darted(turn)).from_point("nape")
    assert run is not None
    assert (run.goes_round, run.first_point, run.last_point) == (False, "a.b/nape", "a.b/end")
    assert run.line.points[0] == pytest.approx([0.0, 80.0], abs=1e-9)
    assert run.line.points[-1] == pytest.approx([200.0, 80.0], abs=1e-6)
    assert rise_and_width(run) == pytest.approx((0.0, 200.0), abs=1e-6)


def test_an_edge_shared_between_pieces_has_no_shape_of_its_own() -> None:
    groups = {"top.front/neck_all": Group(("top.front/neck", "top.back/neck"), "a")}
    shared = Pattern(UPPER.pieces, groups=frozen_map(groups))
    assert [run.name for run in word_runs(shared, "neck_all")] == []


def test_a_group_with_another_edge_between_is_left_out() -> None:
    groups = {"top.back/rim": Group(("top.back/neck", "top.back/hem"), "a")}
    assert list(word_runs(Pattern(UPPER.pieces, groups=frozen_map(groups)), "rim")) == []


def test_a_run_knows_panel_instance_and_side() -> None:
    run = run_named("top.front/armhole")
    assert (run.word, run.panel, run.instance, run.side) == ("armhole", "front", "top", "both")
    assert run.from_point("hem_side") is None


# ------------------------------------------------------------------ bows and turns


def arc(turn: float, radius: float = 100.0) -> Path:
    """An arc of up to 90 degrees from (radius, 0), counter-clockwise, by the usual cubic."""
    reach = 4.0 / 3.0 * np.tan(radians(turn) / 4.0) * radius
    end = Point(cos(radians(turn)), sin(radians(turn)))
    return Path.of(
        Cubic(
            Point(radius, 0.0),
            Point(radius, float(reach)),
            end * radius - Point(-end.y, end.x) * float(reach),
            end * radius,
        )
    )


@given(st.floats(10.0, 90.0))
@settings(max_examples=25, deadline=None)
def test_the_turning_of_an_arc_and_its_sagitta_are_known(turn: float) -> None:
    line = dense(arc(turn))
    (stretch,) = stretches(line, 1.0)
    assert stretch.turned == pytest.approx(turn, abs=1.5)
    half = 10.0 / 100.0 / radians(1.0)
    assert float(bends(line, 10.0).mean()) == pytest.approx(half, rel=0.01)


def test_a_hollow_is_measured_against_the_straight_way() -> None:
    run = run_named("top.back/armhole").from_point("underarm")
    assert run is not None
    shape = bow(run)
    start, end = (UPPER.pieces["top.back"].points[f"top.back/{w}"] for w in ("underarm", "shoulder_point"))
    assert shape.chord == pytest.approx(start.distance_to(end))
    away = [(end - start).cross(Point(*spot) - start) / shape.chord for spot in run.line.points.tolist()]
    assert shape.into == pytest.approx(max(abs(one) for one in away))
    assert min(away) > -1e-9 or max(away) < 1e-9, "to one side only"
    deepest = run.line.points[max(range(len(away)), key=lambda place: abs(away[place]))]
    assert shape.tall == pytest.approx(end.y - start.y, rel=0.01), "it leaves the underarm level"
    assert shape.into_height == pytest.approx((deepest[1] - start.y) / (end.y - start.y), abs=0.01)
    assert all(one.turned < 0.0 for one in rounded(run, 0.5)), "hollow all along"


def test_a_line_is_cut_short_at_a_distance() -> None:
    line = dense(arc(60.0))
    short = up_to(line, 40.0)
    assert short.length == 40.0
    assert short.points[-1] == pytest.approx(line.at(40.0))
    assert up_to(line, 500.0) is line


def test_one_arc_has_no_slack_and_two_with_a_straight_between_have_all_of_it() -> None:
    straight = slack(dense(Path.line(Point(0, 0), Point(90, 0))))
    assert straight is None or straight.depth < 1e-9
    whole = slack(dense(arc(60.0)))
    assert whole is not None
    assert whole.depth < 0.05
    first = arc(40.0)
    on = first.end + first.tangent_at(first.length) * 60.0
    second = (
        arc(40.0)
        .transformed(Transform.rotation(40.0))
        .transformed(Transform.translation(on.x - first.end.x, on.y - first.end.y))
    )
    worst = slack(dense(Path((*first.segments, Line(first.end, on), *second.segments))))
    assert worst is not None
    assert worst.depth == pytest.approx(5.73, abs=0.05), "an arc of 100 mm turns 5.73 degrees a centimeter"


# ------------------------------------------------------------------ the cap on the armhole


def straight_upper(armhole: float, cap: float) -> LaidCap:
    """An armhole and a cap that are straight lines of 100 mm, at these angles inside their seams, degrees."""

    def piece(name: str, word: str, degrees: float, start: str) -> Piece:
        way = Point(-sin(radians(degrees)), -cos(radians(degrees))) * 100.0
        corners = [Point(0, 0), way, Point(-60.0, -200.0), Point(0, -200.0)]
        names = [start, "top", "low", "hem"]
        words = [word, "other", "hem", "side_seam"]
        outline = tuple(
            Edge(
                f"{name}/{words[i]}",
                Path.line(corners[i], corners[(i + 1) % 4]),
                f"{name}/{names[i]}",
                f"{name}/{names[(i + 1) % 4]}",
            )
            for i in range(4)
        )
        return Piece(name, name, outline)

    pieces = (
        piece("a.front", "armhole", armhole, "underarm"),
        piece("b.sleeve", "cap_front", cap, "underarm_front"),
    )
    pattern = Pattern(pieces=frozen_map({one.name: one for one in pieces}))
    hole, half = run_named("a.front/armhole", pattern), run_named("b.sleeve/cap_front", pattern)
    return LaidCap(half, hole, next(walked_seams(UPPER)), ())


@pytest.mark.parametrize("degrees", [80.0, 90.0, 100.0, 120.0])
@pytest.mark.parametrize("turn", [0.0, 2.0, -3.0, 5.0])
def test_the_gap_of_two_straight_lines_is_that_of_a_triangle(degrees: float, turn: float) -> None:
    laid = straight_upper(degrees, degrees + turn)
    assert lay_gap(laid, 60.0) == pytest.approx(60.0 * sin(radians(abs(turn))), abs=1e-6)


def test_front_and_back_are_laid_alike() -> None:
    for name, word in (("top.front/armhole", "underarm"), ("sleeve.sleeve/cap_back", "underarm_back")):
        run = run_named(name).from_point(word)
        assert run is not None
        points = laid_points(run)
        assert points[0] == pytest.approx([0.0, 0.0])
        assert points[len(points) // 3, 0] > 0.0
        assert points[-1, 1] > 100.0


def test_the_cap_is_laid_over_less_of_a_small_armhole() -> None:
    laid = straight_upper(90.0, 92.0)
    assert lay_length(laid, LIMITS) == pytest.approx(min(60.0, 0.3 * laid.armhole.line.length))
    long, short = replace(LIMITS, lay_share=1.0), replace(LIMITS, lay_share=0.1)
    assert lay_length(laid, long) == 60.0
    assert lay_length(laid, short) == pytest.approx(0.1 * laid.armhole.line.length)
