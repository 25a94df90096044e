"""The stretch torso: widths at their levels, one side seam, an armhole that is no pouch."""

from dataclasses import replace

import numpy as np
import pytest

from notchbook.blocks.stretch import StrapGiven, TorsoGiven, TorsoHalf, draft_torso
from notchbook.blocks.stretch.figures import figure, stretch_figure_table
from notchbook.errors import DraftRefused
from notchbook.geometry import Point, inflections
from support.stretch_shapes import (
    ANGLE,
    BODIES,
    PLUS,
    TOLERANCE,
    WOMAN,
    between,
    end_heading,
    length,
    panel_area,
    points,
    start_heading,
    width_at,
)


@pytest.fixture(scope="module", params=BODIES)
def drafted(request: pytest.FixtureRequest) -> tuple[TorsoGiven, TorsoHalf]:
    given = BODIES[request.param]
    return given, draft_torso(given)


def lever(half: TorsoHalf, name: str) -> float:
    return next(one.pulled for one in half.levers if one.name == name)


def test_widths_at_their_levels(drafted: tuple[TorsoGiven, TorsoHalf]) -> None:
    given, half = drafted
    side = half.front.side
    assert side.start.x == pytest.approx(given.bust / 4, abs=TOLERANCE)
    if given.waist is not None:
        assert width_at((side,), 0.0) == pytest.approx(given.waist / 4, abs=TOLERANCE)
    assert width_at((side,), -given.hip_depth) == pytest.approx(given.hip / 4, abs=TOLERANCE)
    assert half.front.hem.end.y == pytest.approx(-given.length, abs=1e-6)


def test_front_and_back_have_one_side_seam_and_shoulder(drafted: tuple[TorsoGiven, TorsoHalf]) -> None:
    _, half = drafted
    assert half.front.side == half.back.side
    assert length(half.front.shoulder) == pytest.approx(length(half.back.shoulder), abs=TOLERANCE)


def test_the_side_is_upright_at_waist_and_hip(drafted: tuple[TorsoGiven, TorsoHalf]) -> None:
    given, half = drafted
    assert end_heading(half.front.side) == pytest.approx(-90.0, abs=ANGLE)
    if given.waist is not None:
        assert end_heading(half.front.side.split_at(_way_to(half, 0.0))[0]) == pytest.approx(-90, abs=ANGLE)


def _way_to(half: TorsoHalf, level: float) -> float:
    places = points(half.front.side, 2000)
    nearest = places[int(np.abs(places[:, 1] - level).argmin())]
    return float(np.hypot(*np.diff(places[: int(np.where(places == nearest)[0][0]) + 1], axis=0).T).sum())


def test_the_base_neck_is_as_long_as_asked() -> None:
    for given in (one for one in BODIES.values() if one.neck_wider == 0.0):
        half = draft_torso(given)
        assert length(half.front.neck) + length(half.back.neck) == pytest.approx(
            given.neck / 2, abs=TOLERANCE
        )


def test_an_opened_neck_is_longer_and_lower() -> None:
    base = draft_torso(WOMAN)
    opened = draft_torso(replace(WOMAN, neck_wider=20.0, front_neck_lower=50.0, back_neck_lower=15.0))
    assert opened.front.neck.start.y == pytest.approx(base.front.neck.start.y - 50.0)
    assert opened.back.neck.start.y == pytest.approx(base.back.neck.start.y - 15.0)
    assert length(opened.front.shoulder) == pytest.approx(length(base.front.shoulder) - 20.0, abs=TOLERANCE)


def test_necks_run_on_across_the_shoulder_and_level_at_the_center(
    drafted: tuple[TorsoGiven, TorsoHalf],
) -> None:
    _, half = drafted
    turns = [
        between(start_heading(panel.shoulder), end_heading(panel.neck)) for panel in (half.front, half.back)
    ]
    assert sum(turns) == pytest.approx(180.0, abs=ANGLE)
    for panel in (half.front, half.back):
        assert start_heading(panel.neck) == pytest.approx(0.0, abs=ANGLE)


def test_the_armhole_is_no_pouch(drafted: tuple[TorsoGiven, TorsoHalf]) -> None:
    _, half = drafted
    for panel in (half.front, half.back):
        inmost = float(points(panel.armhole)[:, 0].min())
        assert inmost >= panel.across.x - 0.3, "nowhere farther in than where it is upright"
        assert not inflections(panel.armhole)
        room = (panel.underarm.x - panel.across.x) / panel.underarm.x
        assert 0.15 < room < 0.38


def test_the_armhole_is_square_to_shoulder_and_side(drafted: tuple[TorsoGiven, TorsoHalf]) -> None:
    _, half = drafted
    for panel in (half.front, half.back):
        assert between(end_heading(panel.shoulder), start_heading(panel.armhole)) == pytest.approx(
            -90.0, abs=ANGLE
        )
        assert between(end_heading(panel.armhole), start_heading(panel.side)) == pytest.approx(
            -90.0, abs=ANGLE
        )


def test_the_front_armhole_stands_forward(drafted: tuple[TorsoGiven, TorsoHalf]) -> None:
    _, half = drafted
    assert half.front.across.x < half.back.across.x - 2.0
    assert half.front.across.y < half.back.across.y
    assert half.front.shoulder.end.y < half.back.shoulder.end.y, "the seam lies a little forward"


def test_the_shoulder_is_narrowed_with_the_bust() -> None:
    narrow = draft_torso(replace(WOMAN, bust=660.0))
    assert lever(narrow, "shoulder_narrowed") > lever(draft_torso(WOMAN), "shoulder_narrowed") + 5.0
    wide = draft_torso(replace(WOMAN, bust=1050.0))
    assert lever(wide, "shoulder_narrowed") < 0.0, "drafted longer for a wide bust"


def test_a_much_narrowed_bust_takes_no_more_than_a_tenth_of_the_across_back() -> None:
    half = draft_torso(replace(WOMAN, bust=700.0, waist=580.0, sleeve=None))
    assert lever(half, "across_back") == pytest.approx(-0.1 * WOMAN.across_back, abs=TOLERANCE)
    assert next(one for one in half.levers if one.name == "across_back").at_limit, "and it is told"
    drawn = points(half.back.armhole)[:, 0].min()
    assert drawn > 0.9 * WOMAN.across_back / 2.0 - 1.0


@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"length": 0.0},
        {"length": 80.0},
        {"length": 400.0},
        {"strap": StrapGiven(40.0), "sleeve": None},
        {
            "strap": StrapGiven(25.0, 50.0),
            "sleeve": None,
            "front_neck_lower": 90.0,
            "back_neck_lower": 200.0,
        },
        {"shoulder_in": 15.0, "sleeve": None},
    ],
)
def test_outlines_do_not_cross_themselves(changes: dict[str, object]) -> None:
    for given in BODIES.values():
        half = draft_torso(replace(given, **changes))  # type: ignore[arg-type]  # fields by name
        for panel in (half.front, half.back):
            area = panel_area(panel)
            assert area.is_valid
            assert area.area > 10_000.0


def test_a_strap_lies_where_it_was_asked() -> None:
    half = draft_torso(replace(WOMAN, strap=StrapGiven(30.0, 60.0), sleeve=None))
    base = draft_torso(WOMAN).front.neck.end
    for panel in (half.front, half.back):
        assert length(panel.shoulder) == pytest.approx(30.0, abs=TOLERANCE)
        assert panel.shoulder.start.distance_to(base) == pytest.approx(45.0, abs=TOLERANCE)


def test_a_deep_back_is_a_scoop_that_bends_one_way_and_runs_on_across_the_shoulder() -> None:
    strap = StrapGiven(30.0, may_move=True)
    half = draft_torso(replace(WOMAN, strap=strap, sleeve=None, front_neck_lower=90.0, back_neck_lower=200.0))
    corners = [
        between(start_heading(panel.shoulder), end_heading(panel.neck)) for panel in (half.front, half.back)
    ]
    assert sum(corners) == pytest.approx(180.0, abs=ANGLE)
    places = points(half.back.neck)
    turns = np.diff(np.unwrap(np.arctan2(*np.diff(places, axis=0).T[::-1])))
    assert turns.min() > -1e-6, "it never bends back"
    assert np.degrees(turns.sum()) > 62.0
    assert lever(half, "strap_moved_out") > 0.0


def test_a_strap_that_was_placed_stays_there() -> None:
    scooped = replace(PLUS, sleeve=None, front_neck_lower=90.0, back_neck_lower=120.0)
    kept = draft_torso(replace(scooped, strap=StrapGiven(35.0, 40.0)))
    moved = draft_torso(replace(scooped, strap=StrapGiven(35.0, 40.0, may_move=True)))
    assert lever(kept, "strap_moved_out") == 0.0
    out = lever(moved, "strap_moved_out")
    assert out > 5.0
    assert moved.front.shoulder.start.distance_to(kept.front.shoulder.start) == pytest.approx(
        out, abs=TOLERANCE
    )
    for half, most in ((moved, 6.0), (kept, 14.0)):
        way = half.back.across - half.back.shoulder.end
        assert np.degrees(np.arctan2(way.x, -way.y)) < most, "and the armhole is no diagonal"


def test_the_waist_gives_way_where_the_side_would_lean_too_much() -> None:
    round_hip = replace(WOMAN, waist=560.0)
    asked = draft_torso(round_hip)
    loosened = draft_torso(replace(round_hip, loosest_waist=700.0))
    assert lever(asked, "waist_wider") == 0.0
    wider = lever(loosened, "waist_wider")
    assert 10.0 < wider < 140.0
    assert _lean(asked) > 19.0
    assert _lean(loosened) == pytest.approx(18.0, abs=0.1), "15 to 18 degrees (a patternmaker's review)"
    at_waist = loosened.front.side.nearest(Point(0.0, 0.0)).point
    assert 4.0 * at_waist.x == pytest.approx(560.0 + wider, abs=TOLERANCE)
    most = draft_torso(replace(round_hip, loosest_waist=570.0))
    assert lever(most, "waist_wider") == pytest.approx(10.0, abs=TOLERANCE)
    to_waist = draft_torso(replace(round_hip, loosest_waist=700.0, length=0.0))
    assert lever(to_waist, "waist_wider") == 0.0, "a side that ends at the waist leans nowhere"


def _lean(half: TorsoHalf) -> float:
    """How much the side leans outward below the waist, at most, degrees."""
    places = points(half.front.side, 600)
    ways = np.diff(places[places[:, 1] < 0.0], axis=0)
    return float(np.degrees(np.arctan2(ways[:, 0], -ways[:, 1])).max())


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"length": -5.0}, "stretch-length-negative"),
        ({"armhole_depth": 370.0}, "stretch-side-short"),
        ({"armhole_depth": 60.0}, "stretch-shoulder-below-underarm"),
        ({"bust": 330.0}, "stretch-shoulder-against-bust"),
        ({"strap": StrapGiven(5.0, 40.0), "sleeve": None}, "stretch-strap-narrow"),
        ({"strap": StrapGiven(5.0), "sleeve": None}, "stretch-neck-wide"),
        ({"strap": StrapGiven(60.0, 10.0), "sleeve": None}, "stretch-strap-narrow"),
        ({"neck_wider": 90.0}, "stretch-neck-wide"),
        ({"neck": 342.0, "front_neck_depth": 300.0}, "stretch-neck-unreachable"),
    ],
)
def test_what_is_refused(changes: dict[str, object], code: str) -> None:
    with pytest.raises(DraftRefused) as caught:
        draft_torso(replace(WOMAN, **changes))  # type: ignore[arg-type]  # fields by name
    assert caught.value.code == code
    assert caught.value.text()


def test_the_ruler_sees_a_planted_fault() -> None:
    half = draft_torso(WOMAN)
    moved = half.front.side.with_end(replace(half.front.side.end, x=half.front.side.end.x + 0.2))
    assert width_at((moved,), moved.end.y) != pytest.approx(WOMAN.hip / 4, abs=TOLERANCE)


def test_every_figure_says_where_it_comes_from() -> None:
    table = stretch_figure_table()
    assert figure("cap.usual_share") == table["cap.usual_share"].value
    assert all(row.source and row.grade and row.unit in ("", "mm", "deg") for row in table.values())
