"""Edges drawn anew by any amount, on several bodies: mates stay equal, nothing crosses, nothing is lost."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.geometry import Line, Path, Point
from notchbook.pattern import pattern_to_data, sewn_length
from notchbook.recipe import Replay, remove_step, replay
from notchbook.style.edges.batten import batten
from notchbook.style.edges.swelling import Swelling, swollen
from support.edge_steps import (
    BACK,
    BODICE_LEVELS,
    FRONT,
    GAPE,
    applied,
    area,
    armholes,
    bodice,
    levels,
    misfits,
    names_of,
    necks,
    place,
    side_seams,
    skirt,
)

FEW = settings(max_examples=8, deadline=None)
BODIES = st.sampled_from(["small-80", "medium-92", "large-116"])
SKIRT_LEVELS = levels(
    "skirt", "side_seam", "waist_side", "35 cm", {"front": "center_front", "back": "center_back"}
)


def mm(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False).map(lambda value: round(value, 2))


def is_sound(run: Replay) -> bool:
    """Refused with a code, or a pattern whose pieces are plain polygons for another program."""
    if run.suspended is not None:
        return bool(run.suspended.error.code)
    return all(area(piece) > 0.0 for piece in run.pattern.pieces.values())


# ---------------------------------------------------------------- the numbers below the steps


@FEW
@given(amount=mm(-30, 30), full=mm(60, 240), nothing=mm(0, 30), beyond=mm(270, 300))
def test_a_swelling_is_exact_where_it_is_full_and_nothing_where_it_ran_out(
    amount: float, full: float, nothing: float, beyond: float
) -> None:
    line = Path.line(Point(0.0, 300.0), Point(0.0, 0.0))
    swelling = Swelling(300.0, amount, full, (nothing, beyond))
    moved = swollen(line, 0.0, swelling, Point(1.0, 0.0))
    at_full = moved.nearest(Point(amount, 300.0 - full))
    assert at_full.gap < 1e-6
    assert moved.start == line.start
    assert moved.end == line.end
    assert not moved.corners(0.01), "it begins and ends without a corner"


@FEW
@given(amount=mm(-30, 30))
def test_a_swelling_from_end_to_end_keeps_a_straight_seam_straight(amount: float) -> None:
    line = Path.line(Point(0.0, 300.0), Point(0.0, 0.0))
    moved = swollen(line, 0.0, Swelling(300.0, amount, 0.0, (300.0,)), Point(1.0, 0.0))
    assert all(isinstance(segment, Line) for segment in moved.segments)
    assert moved.start == Point(amount, 300.0)


@FEW
@given(first=mm(-20, 20), second=mm(-20, 20), slope=st.floats(-0.2, 0.2))
def test_a_batten_meets_its_points_and_bends_without_a_jump(
    first: float, second: float, slope: float
) -> None:
    held = batten((0.0, 40.0, 130.0, 200.0), (0.0, first, second, 0.0), (slope, 0.0))
    for distance, amount in ((0.0, 0.0), (40.0, first), (130.0, second), (200.0, 0.0)):
        assert held.at(distance)[0] == pytest.approx(amount, abs=1e-9)
    assert held.at(0.0)[1] == pytest.approx(slope, abs=1e-12)
    step = 1e-4
    for place_of in (40.0, 130.0):
        slopes = [held.at(place_of + shift * step)[1] for shift in (-2, -1, 1, 2)]
        bends = [(slopes[1] - slopes[0]) / step, (slopes[3] - slopes[2]) / step]
        assert bends[0] == pytest.approx(bends[1], abs=1e-4)


# ---------------------------------------------------------------- the steps


@FEW
@given(name=BODIES, amount=mm(-25, 60))
def test_pieces_spread_together_stay_true(name: str, amount: float) -> None:
    run = applied(bodice(name), "change_length", amount=f"{amount} mm", levels=BODICE_LEVELS)
    assert run.suspended is None, run.suspended
    assert max(abs(off) for off in misfits(run.pattern).values()) < 0.1
    grown = (
        run.pattern.edges[f"{FRONT}/center_front"].length
        - bodice(name).pattern.edges[f"{FRONT}/center_front"].length
    )
    assert grown == pytest.approx(amount, abs=1e-6)
    assert is_sound(run)


@FEW
@given(amount=mm(-100, 200))
def test_a_parallel_spread_adds_a_rectangle(amount: float) -> None:
    run = applied(skirt(), "change_length", amount=f"{amount} mm", levels=SKIRT_LEVELS)
    before = skirt().pattern
    for side in ("skirt.front", "skirt.back"):
        more = area(run.pattern.pieces[side]) - area(before.pieces[side])
        assert more == pytest.approx(amount * before.edges[f"{side}/hem"].length, abs=2.0)


@FEW
@given(amount=mm(-40, 60), first=st.integers(0, 100), dart=st.integers(0, 60))
def test_the_waist_changes_by_the_amount_however_it_is_shared(amount: float, first: int, dart: int) -> None:
    rest = 1.0 - dart / 100
    seams = side_seams("0 cm", "20 cm")
    seams[0]["share"], seams[1]["share"] = rest * first / 100, rest - rest * first / 100
    darts = [{"intake": "skirt.back/waist_dart_center", "share": dart / 100}]
    run = applied(skirt(), "change_width", amount=f"{amount} mm", seams=seams, darts=darts)
    if run.suspended is not None:
        assert run.suspended.error.code == "width-dart-used-up"
        return
    waists = [
        2.0 * sum(sewn_length(pattern, f"skirt.{side}/waist") for side in ("front", "back"))
        for pattern in (skirt().pattern, run.pattern)
    ]
    assert waists[1] - waists[0] == pytest.approx(amount, abs=0.08)
    # Front and back may take unlike shares: what cannot be evened at the hem is told.
    off = max(abs(one) for one in misfits(run.pattern).values())
    told = {note.code for note in run.states[-1].notes}
    assert off < 0.5 or "seam-put-out" in told


@FEW
@given(
    name=BODIES,
    shape=st.sampled_from(["round", "scoop", "u", "boat", "v", "square"]),
    depth=mm(-10, 170),
    width=mm(0, 40),
    is_closed=st.booleans(),
)
def test_any_neckline_is_drawn_or_refused(
    name: str, shape: str, depth: float, width: float, is_closed: bool
) -> None:
    asked: dict[str, Any] = {"necks": necks(shape, f"{depth} mm", "round", "1 cm"), "width": f"{width} mm"}
    run = applied(bodice(name), "change_neckline", **asked, **(GAPE if is_closed else {}))
    assert is_sound(run)
    if run.suspended is None:
        assert max(abs(off) for off in misfits(run.pattern).values()) < 0.05


@FEW
@given(name=BODIES, shoulder=mm(-10, 50), lower=mm(-20, 40), hollow=mm(-5, 15))
def test_any_armhole_is_drawn_or_refused(name: str, shoulder: float, lower: float, hollow: float) -> None:
    asked = {"shoulder": f"{shoulder} mm", "lower": f"{lower} mm"}
    hollows = armholes(f"{hollow} mm", f"{hollow} mm")
    run = applied(bodice(name), "change_armhole", armholes=hollows, **asked, **GAPE)
    assert is_sound(run)
    if run.suspended is None:
        assert max(abs(off) for off in misfits(run.pattern).values()) < 0.05


@FEW
@given(amount=mm(-60, 90), distance=mm(150, 450))
def test_any_taper_keeps_the_side_seams_equal(amount: float, distance: float) -> None:
    places = [
        place(f"skirt.{s}/side_seam", f"skirt.{s}/waist_side", f"{distance} mm") for s in ("front", "back")
    ]
    run = applied(skirt(), "taper", amount=f"{amount} mm", nothing_at=places)
    assert is_sound(run)
    if run.suspended is None:
        assert max(abs(off) for off in misfits(run.pattern).values()) < 0.05


NOTHING: list[tuple[str, dict[str, Any]]] = [
    ("change_length", {"amount": "0 cm", "levels": BODICE_LEVELS}),
    ("change_neckline", {"necks": necks("round", "0 cm")}),
    ("change_armhole", {"armholes": armholes()}),
    ("reshape_edge", {"edge": f"{FRONT}/neck", "from_point": f"{FRONT}/neck_pit"}),
]


@pytest.mark.parametrize(("operation", "parameters"), NOTHING, ids=[name for name, _ in NOTHING])
def test_nothing_asked_changes_no_byte(operation: str, parameters: dict[str, Any]) -> None:
    after = applied(bodice(), operation, **parameters).pattern
    assert pattern_to_data(after) == pattern_to_data(bodice().pattern)


def test_removing_a_step_loses_exactly_what_hangs_on_what_it_made() -> None:
    square = applied(bodice(), "change_neckline", slug="square", necks=necks("square", "8 cm"), width="3 cm")
    other = applied(square, "set_allowance", slug="wide", edges=[f"{BACK}/armhole"], width="2 cm")
    hanging = applied(other, "set_allowance", slug="narrow", edges=[f"{FRONT}/neck/side"], width="5 mm")
    assert hanging.suspended is None
    without = replay(remove_step(hanging.recipe, "change_neckline-1"), hanging.measures)
    assert without.suspended is not None
    assert without.suspended.step == "set_allowance-2"
    assert without.suspended.error.code == "name-lost"
    assert f"{BACK}/armhole" in without.pattern.allowances, "the step before it still runs"


def test_removing_a_step_that_only_moves_loses_nothing() -> None:
    wide = applied(skirt(), "change_width", amount="2 cm", seams=side_seams("0 cm", "20 cm"))
    after = applied(wide, "set_allowance", edges=["skirt.front/waist"], width="2 cm")
    without = replay(remove_step(after.recipe, "change_width-1"), after.measures)
    assert without.suspended is None
    assert names_of(without.pattern) == names_of(skirt().pattern)
