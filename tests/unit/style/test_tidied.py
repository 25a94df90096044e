"""Lines cut beside a joint of their curves: no part is left that is too short to draw."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.app.drafting import draft_recipe
from notchbook.app.rack.styles import rack_style
from notchbook.body.charts import shipped_chart
from notchbook.geometry import Cubic, Line, Path, Point
from notchbook.recipe import add_step, change_step, replay
from notchbook.style.edges.tidied import SLIVER, tidied
from support.closure_steps import upper_sets

JOINED = Path(
    (
        Cubic(Point(0.0, 0.0), Point(20.0, 0.0), Point(40.0, 10.0), Point(50.0, 30.0)),
        Cubic(Point(50.0, 30.0), Point(60.0, 50.0), Point(60.0, 70.0), Point(50.0, 90.0)),
        Line(Point(50.0, 90.0), Point(40.0, 110.0)),
    )
)
JOINT = JOINED.segments[0].length
DRESS = rack_style("S-202").recipe
JACKET = {
    "bust_dart": "side",
    "length": "hip",
    "contour": "none",
    "back_shoulder": "ease",
    "back_shoulder_amount": "5 mm",
    "silhouette": "semi_fitted",
    "armhole_lowered": "1 cm",
}


@given(st.floats(-0.099, 0.099), st.booleans())
def test_a_cut_beside_a_joint_leaves_no_sliver_and_moves_no_end(off: float, from_start: bool) -> None:
    at = JOINT + off
    cut = JOINED.between(0.0, at) if from_start else JOINED.between(at, JOINED.length)
    tidy = tidied(cut)
    assert min(segment.length for segment in tidy.segments) >= SLIVER
    assert tidy.start.distance_to(cut.start) <= 1e-9
    assert tidy.end.distance_to(cut.end) <= 1e-9
    assert tidy.length == pytest.approx(cut.length, abs=0.2 * abs(off) + 1e-9)


@given(st.floats(1.0, 30.0))
def test_a_cut_elsewhere_is_left_as_it_is(off: float) -> None:
    cut = JOINED.between(JOINT - off, JOINED.length)
    assert tidied(cut) is cut


def test_a_path_of_nothing_but_slivers_is_left_as_it_is() -> None:
    short = Path.line(Point(0.0, 0.0), Point(0.1, 0.0))
    assert tidied(short) is short


def test_the_cap_of_a_two_piece_sleeve_is_cut_without_slivers() -> None:
    """In size 104 its forearm seam meets the cap 0.04 mm beside a joint of the cap."""
    base = upper_sets()["medium-92"]
    cloth = {"fabric": "tailored_jacket", "upper_arm_ease": "7 cm", "wrist_ease": "9 cm"}
    recipe = add_step(draft_recipe("bodice", base, JACKET), "sleeve", cloth, base=base)
    size = next(one for one in shipped_chart("women").sizes if one.name.endswith("104"))
    done = replay(add_step(recipe, "two_piece_sleeve", {}, base=base), size)
    edges = [edge for piece in done.pattern.pieces.values() for edge in piece.outline if "cap" in edge.name]
    assert len(edges) == 4
    assert min(part.length for edge in edges for part in edge.path.segments) >= SLIVER


def test_the_end_of_a_facing_is_traced_without_slivers() -> None:
    """In size 80, its armholes 6 mm higher, the dart in the side seam ends beside the facing's lower edge."""
    recipe = DRESS
    (armhole,) = (step for step in recipe.steps if step.id == "change_armhole-1")
    base = upper_sets()["medium-92"]
    higher = change_step(recipe, armhole.id, {"lower": "-6 mm"}, base=base)
    size = next(one for one in shipped_chart("women").sizes if one.name.endswith("80"))
    done = replay(higher, size)
    assert done.suspended is None
    side = done.pattern.edges["facing.bodice_front/side_seam"].path
    assert min(part.length for part in side.segments) >= SLIVER
