"""Darts moved on plausible women: exact before truing, within a pencil line after it, or refused in words.

Invariants of a transfer: every length but that of the two edges it touches, the sum of angles and the area;
there and back; several ways to one place. Areas are measured by shapely.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from notchbook.errors import InputError, StepRefused, catalogue
from notchbook.pattern import Pattern, Piece, sewn_length, walk_seam
from notchbook.pattern.slashing import (
    Closing,
    DartNames,
    Legs,
    Opening,
    dart_angle,
    located_on,
    pivot,
    with_point,
)
from notchbook.recipe import add_step, replay
from support.bodice_bodies import bodice_recipe
from support.dart_shapes import FRONT, PLACES, transfer
from upper_random import keys_of, plausible_body

COUNT = len(keys_of("women"))
DRAWN = st.lists(st.floats(-1.5, 1.5), min_size=COUNT, max_size=COUNT)
EDGES = ("neck", "shoulder", "armhole", "side_seam/above", "side_seam/below")
BUST = f"{FRONT}/bust_dart"


def bodice_of(drawn: list[float]) -> Pattern | None:
    """The bodice of a plausible woman with one front waist dart; None where the draft refuses her."""
    measures = plausible_body(drawn, "women")
    try:
        run = replay(bodice_recipe(measures, front_darts=1), measures)
    except (InputError, StepRefused):
        return None
    return None if run.suspended is not None else run.pattern


def area(piece: Piece) -> float:
    return float(Polygon([(point.x, point.y) for point in piece.sew_line.flattened(0.0005)]).area)


@settings(max_examples=12, deadline=None)
@given(DRAWN, st.sampled_from(EDGES), st.floats(0.15, 0.85), st.floats(0.1, 1.0))
def test_turning_about_the_bust_point_is_exact(
    drawn: list[float], edge: str, place: float, share: float
) -> None:
    pattern = bodice_of(drawn)
    if (
        pattern is None
        or BUST not in pattern.intakes
        or not pattern.pieces[FRONT].has_edge(f"{FRONT}/{edge}")
    ):
        return
    piece = pattern.pieces[FRONT]
    bust = piece.points[f"{FRONT}/bust_point"]
    piece = with_point(piece, piece.intake(BUST), bust)
    angle = dart_angle(piece, piece.intake(BUST))
    whole = share > 0.9
    moved = angle if whole else angle * share
    found = piece.edge(f"{FRONT}/{edge}")
    names = DartNames.of("moved.front/dart", counted_from_start=True)
    opening = Opening(located_on(piece, found.name, found.length * place), moved, Legs(names))
    try:
        after = pivot(
            piece, bust, (Closing(piece.intake(BUST), moved, whole),), (opening,), f"{FRONT}/center_front"
        )
    except StepRefused as error:  # the way to the bust point runs over another dart
        assert error.code == "slash-leaves-piece"
        return
    assert dart_angle(after.piece, after.piece.intake(names.intake)) == pytest.approx(moved, abs=1e-9)
    if not whole:
        assert dart_angle(after.piece, after.piece.intake(BUST)) == pytest.approx(angle - moved, abs=1e-9)
    for one in piece.outline:
        if after.piece.has_edge(one.name) and one.kind != "leg":
            assert after.piece.edge(one.name).length == pytest.approx(one.length, abs=1e-6)
    assert area(after.piece) == pytest.approx(area(piece), abs=1.0)


@settings(max_examples=8, deadline=None)
@given(DRAWN, st.sampled_from(sorted(PLACES)))
def test_every_place_of_every_woman_walks_or_is_refused_in_words(drawn: list[float], place: str) -> None:
    measures = plausible_body(drawn, "women")
    before = bodice_of(drawn)
    if before is None or BUST not in before.intakes:
        return
    recipe = add_step(bodice_recipe(measures, front_darts=1), *transfer(place), base=measures)
    run = replay(recipe, measures)
    if run.suspended is not None:
        assert run.suspended.error.code in catalogue()
        return
    for word in ("neck", "shoulder", "armhole", "side_seam", "waist", "center_front"):
        name = f"{FRONT}/{word}"
        assert sewn_length(run.pattern, name) == pytest.approx(sewn_length(before, name), abs=0.15)
    for seam in before.seams.values():
        assert walk_seam(run.pattern, run.pattern.seams[seam.name]).misfit == pytest.approx(
            walk_seam(before, seam).misfit, abs=0.15
        )
    ring = Polygon([(point.x, point.y) for point in run.pattern.pieces[FRONT].sew_line.flattened(0.01)])
    assert ring.buffer(-0.01).geom_type == "Polygon"
