"""Cloth to let out in the seat seam: 1 in at the waist, running down to the crotch seam (common practice)."""

from typing import Any

import pytest
from shapely.geometry import LineString, Point

from notchbook.finish import CutPiece, finish, production_table
from notchbook.pattern import Pattern, pattern_from_data, pattern_to_data, sewn_length
from notchbook.recipe import replay
from support.closure_steps import codes, line, lower_sets, stepped
from support.edge_steps import misfits, refusal, trousers

SEAM, WAIST = "trousers.back/crotch_seam", "trousers.back/waist_center"
UNTIL = {"edge": SEAM, "from_point": WAIST, "distance": "0 mm", "notch": "trousers.back/crotch_notch"}


def seated(**until: Any) -> Pattern:
    return stepped(trousers(), ("seat_seam", {"until": {**UNTIL, **until}})).pattern


def back_of(pattern: Pattern) -> CutPiece:
    return next(piece for piece in finish(pattern, production_table()) if piece.name == "trousers.back")


def outside(piece: CutPiece, edge: str, share: float) -> float:
    """How far the cut line lies outside the edge at a share of its length; by an outside program."""
    sew = line(piece.edge(edge).sew)
    place = sew.interpolate(share, normalized=True)
    return float(line(piece.cut_line).distance(Point(place.x, place.y)))


def test_the_allowance_runs_from_an_inch_at_the_waist_down_to_that_of_the_crotch() -> None:
    back = back_of(seated())
    waist, crotch = (production_table().width(name) for name in ("seat_seam", "crotch"))
    assert (waist, crotch) == (25.0, 10.0)
    for share in (0.1, 0.5, 0.9):
        wanted = waist + share * (crotch - waist)
        assert outside(back, f"{SEAM}/seat", share) == pytest.approx(wanted, abs=0.15)
    assert outside(back, f"{SEAM}/curve", 0.3) == pytest.approx(crotch, abs=0.05)


def test_the_cut_line_has_no_step_where_the_curve_begins() -> None:
    back = back_of(seated())
    seat, curve = (back.edge(f"{SEAM}/{word}").cut for word in ("seat", "curve"))
    assert seat is not None
    assert curve is not None
    assert seat.end.distance_to(curve.start) <= 0.01


def test_no_shape_changes_and_the_seam_still_walks() -> None:
    plain, after = trousers().pattern, seated()
    assert sewn_length(after, SEAM) == pytest.approx(sewn_length(plain, SEAM))
    before, now = (
        LineString([(p.x, p.y) for p in one.pieces["trousers.back"].sew_line.flattened(0.01)])
        for one in (plain, after)
    )
    assert now.hausdorff_distance(before) <= 0.02
    assert misfits(after)["trousers/back_crotch_seam"] == pytest.approx(0.0, abs=0.01)
    assert pattern_from_data(pattern_to_data(after)) == after


def test_part_of_the_straight_seam_can_be_let_out_and_the_rest_is_narrow() -> None:
    back = back_of(seated(distance="10 cm", notch=None))
    assert back.edge(f"{SEAM}/seat").sew.length == pytest.approx(100.0)
    assert outside(back, f"{SEAM}/curve", 0.05) == pytest.approx(10.0, abs=0.05)


def test_a_curve_is_refused() -> None:
    assert (
        refusal(trousers(), "seat_seam", until={**UNTIL, "distance": "30 cm", "notch": None})
        == "seat-seam-bent"
    )


@pytest.mark.parametrize("name", ["small-80", "plus-128", "man-100", "uneven"])
def test_on_other_bodies_nothing_more_is_said(name: str) -> None:
    body = lower_sets()[name]
    plain = replay(trousers().recipe, body)
    done = replay(stepped(trousers(), ("seat_seam", {"until": UNTIL})).recipe, body)
    assert done.suspended is None
    assert codes(done) <= codes(plain)


def test_a_bent_part_keeps_its_width_all_along() -> None:
    """Only a straight allowance can run down evenly; a fitting step may bend the seat later."""
    run = stepped(
        trousers(),
        ("seat_seam", {"until": UNTIL}),
        ("set_allowance", {"edges": [f"{SEAM}/curve"], "allowance_class": "seat_seam"}),
        ("set_allowance", {"edges": [f"{SEAM}/seat"], "allowance_class": "crotch"}),
    )
    assert outside(back_of(run.pattern), f"{SEAM}/curve", 0.3) == pytest.approx(25.0, abs=0.05)
