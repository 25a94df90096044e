"""Darts of a run closed and opened again: rigid, exact, and every name accounted for.

That a dart closed and opened again gives the outline back within 1e-6 mm, and that lengths are kept, is plane
geometry.
"""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Transform, assert_paths_close
from notchbook.pattern import Edge, Intake, Piece
from notchbook.pattern.closing import close_run, darts_in, stretches_between
from support.hand_skirt import hand_skirt

FRONT, BACK = "skirt.front", "skirt.back"


def waist_run(panel: str) -> tuple[Piece, tuple[Edge, ...], tuple[Intake, ...]]:
    """The waist of a panel with its legs, in the order of the outline."""
    piece = hand_skirt().pieces[panel]
    legs = {leg for dart in piece.intakes for leg in (dart.first_leg, dart.second_leg)}
    run = tuple(edge for edge in piece.outline if edge.name in legs or "/waist" in edge.name)
    return piece, run, darts_in(run, piece.intakes)


@pytest.mark.parametrize("panel", [FRONT, BACK])
@pytest.mark.parametrize("still", [0, -1])
def test_closed_the_stretches_meet_and_keep_their_lengths(panel: str, still: int) -> None:
    _, run, darts = waist_run(panel)
    stretches = stretches_between(run, darts)
    closed = close_run(run, darts, still % len(stretches))
    for before, after in zip(closed.edges, closed.edges[1:], strict=False):
        assert before.path.end.distance_to(after.path.start) < 1e-6
        assert before.end == after.start
    assert [edge.length for edge in closed.edges] == pytest.approx(
        [edge.length for stretch in stretches for edge in stretch], abs=1e-6
    )
    kept = closed.motions[still % len(stretches)]
    assert kept.apply(run[0].path.start).distance_to(run[0].path.start) < 1e-9


@settings(max_examples=25, deadline=None)
@given(st.floats(0.0, 60.0), st.integers(0, 1))
def test_closed_and_opened_again_is_the_same_run(wider: float, still: int) -> None:
    """Whatever the dart takes up, the inverse motions give the edges back within 1e-6 mm."""
    _, run, darts = waist_run(FRONT)
    turned = Transform.rotation(wider, run[0].path.start)
    run = tuple(edge.transformed(turned) for edge in run)
    closed = close_run(run, darts, still)
    opened = [
        edge.path.transformed(motion.inverse())
        for motion, stretch in zip(closed.motions, closed.stretches, strict=True)
        for edge in [done for done in closed.edges if done.name in {one.name for one in stretch}]
    ]
    originals = [edge.path for stretch in closed.stretches for edge in stretch]
    for again, original in zip(opened, originals, strict=True):
        assert_paths_close(again, original, 1e-6)


def test_the_mouth_that_is_gone_became_the_one_on_the_side_that_stays() -> None:
    _, run, darts = waist_run(FRONT)
    (dart,) = darts
    names = {edge.name: edge for edge in run}
    first, second = names[dart.first_leg].start, names[dart.second_leg].end
    assert close_run(run, darts, 0).merges == {second: (first,)}
    assert close_run(run, darts, 1).merges == {first: (second,)}


def test_a_dart_that_takes_up_nothing_closes_without_moving_anything() -> None:
    _, run, darts = waist_run(FRONT)
    (dart,) = darts
    tip = next(edge.path.end for edge in run if edge.name == dart.first_leg)
    mouth = next(edge.path.start for edge in run if edge.name == dart.first_leg)
    shut: list[Edge] = []
    for edge in run:
        if edge.name == dart.second_leg:
            edge = replace(edge, path=Path.line(tip, mouth))
        elif shut and shut[-1].name == dart.second_leg:
            edge = replace(edge, path=edge.path.with_start(mouth))
        shut.append(edge)
    closed = close_run(tuple(shut), darts, 0)
    assert closed.motions[1].apply(tip).distance_to(tip) < 1e-9
    assert closed.motions[1].determinant == pytest.approx(1.0)


def test_uneven_legs_are_refused_with_the_step_at_the_mouth() -> None:
    _, run, darts = waist_run(FRONT)
    (dart,) = darts
    longer = tuple(
        replace(edge, path=Path.line(edge.path.start, edge.path.end.lerp(edge.path.start, -0.05)))
        if edge.name == dart.second_leg
        else edge
        for edge in run
    )
    moved = next(edge.path.end for edge in longer if edge.name == dart.second_leg)
    joined: list[Edge] = []
    for edge in longer:
        before = joined[-1].name if joined else ""
        joined.append(replace(edge, path=edge.path.with_start(moved)) if before == dart.second_leg else edge)
    with pytest.raises(StepRefused) as refused:
        close_run(tuple(joined), darts, 0)
    assert refused.value.code == "dart-legs-uneven"
    assert refused.value.text()
