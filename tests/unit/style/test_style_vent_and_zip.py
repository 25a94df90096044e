"""Vent, zip and allowances: what they add, and nothing else."""

from typing import Any

import pytest

from notchbook.app.examining import examine
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Pattern, pattern_to_data, sewn_length, walk_seam
from notchbook.recipe import Recipe, definition
from support.skirt_judge import Judge
from support.sleeve_styles import SLEEVE, sleeve_style, stopped_with
from support.yoke_skirt import BACK, FLARE, FRONT, VENT, YOKE, ZIP, run, skirt_recipe, stopped, with_steps

PLAIN = run(skirt_recipe()).pattern


def vented(start: Recipe | None = None, **changes: Any) -> Recipe:
    return with_steps(start or skirt_recipe(), ("vent", "vent", {**VENT[2], **changes}))


def added(pattern: Pattern, piece: str = BACK) -> float:
    return pattern.pieces[piece].sew_line.area() - PLAIN.pieces[piece].sew_line.area()


@pytest.mark.parametrize(
    ("height", "width", "slant"), [(180.0, 40.0, 20.0), (180.0, 40.0, 0.0), (250.0, 55.0, 30.0)]
)
def test_a_vent_adds_its_height_times_its_width_less_the_slant(
    height: float, width: float, slant: float
) -> None:
    pattern = run(vented(height=height, width=width, slant=slant)).pattern
    assert added(pattern) == pytest.approx(height * width - slant * width / 2.0, abs=1e-6)
    judge = Judge(pattern_to_data(pattern))
    assert judge.polygon(BACK).is_valid
    assert judge.polygon(BACK).exterior.is_ccw


def test_the_seam_ends_at_the_top_of_the_vent_and_the_fold_is_the_old_line() -> None:
    pattern = run(vented()).pattern
    assert sewn_length(pattern, f"{BACK}/center_back/seam") == pytest.approx(600.0 - 180.0)
    walk = walk_seam(pattern, pattern.seams["skirt/center_back"])
    assert walk.first == pytest.approx(420.0)
    (fold,) = [line for line in pattern.pieces[BACK].lines if line.kind == "fold_line"]
    assert fold.path.length == pytest.approx(180.0)
    assert {round(point.x, 9) for point in (fold.path.start, fold.path.end)} == {0.0}
    assert pattern.edges["vent.back/hem"].kind == "hem"
    assert pattern.allowances["vent.back/hem"] == PLAIN.allowances[f"{BACK}/hem"]


SIDE_VENT: dict[str, Any] = {"edge": f"{FRONT}/side_seam", "hem_end": f"{FRONT}/hem_side"}


def test_a_vent_in_a_side_seam_opens_both_of_its_edges() -> None:
    pattern = run(with_steps(skirt_recipe(), ("vent", "vent", SIDE_VENT))).pattern
    assert added(pattern, FRONT) == pytest.approx(180.0 * 40.0 - 400.0, abs=1e-6)
    assert added(pattern, BACK) == pytest.approx(180.0 * 40.0 - 400.0, abs=1e-6)
    walk = walk_seam(pattern, pattern.seams["skirt/side_seam"])
    assert walk.misfit == pytest.approx(0.0, abs=1e-6)
    assert walk.first == pytest.approx(sewn_length(PLAIN, f"{FRONT}/side_seam") - 180.0)
    for piece in ("front", "back"):
        assert pattern.notches[f"vent.{piece}/vent_notch"].place.edge == f"skirt.{piece}/side_seam/seam"
        assert pattern.allowances[f"skirt.{piece}/side_seam/vent"].allowance_class == "vent"


def test_a_vent_of_version_1_opens_the_edge_that_was_named_alone() -> None:
    """Two steps made one vent then; recipes that have them open for ever."""
    back = {"edge": f"{BACK}/side_seam", "hem_end": f"{BACK}/hem_side", "both_edges": False}
    front = ("vent", "front_vent", {**SIDE_VENT, "both_edges": False})
    pattern = run(with_steps(skirt_recipe(), front, ("vent", "back_vent", back))).pattern
    assert walk_seam(pattern, pattern.seams["skirt/side_seam"]).misfit == pytest.approx(0.0, abs=1e-6)
    one_sided = run(with_steps(skirt_recipe(), front)).pattern
    assert walk_seam(one_sided, one_sided.seams["skirt/side_seam"]).misfit == pytest.approx(180.0, abs=1e-6)
    newer = definition("vent").upcasters[1]({"height": "18 cm"})
    assert newer == {"height": "18 cm", "both_edges": False}


def test_a_vent_is_closed_after_its_seam_and_turned_after_the_hem() -> None:
    """Common practice, no source: the top is stitched when the seam above is closed, the corner is last."""
    for start, seam in ((vented(), "center_back"), (vented(**SIDE_VENT), "side_seam")):
        pattern = run(start).pattern
        order = [line.key for line in sewing_order(pattern).lines]
        assert (
            order.index(f"skirt/{seam}") < order.index("vent/vent_closed") < order.index("vent/vent_turned")
        )
        assert order[-1] == "vent/vent_turned"
    mitered = run(vented(corner="mitered", hem_depth="4 cm")).pattern
    assert "vent/miter" in mitered.operations and "vent/vent_turned" not in mitered.operations


def test_a_vent_on_the_fold_or_on_both_edges_of_one_piece_is_refused() -> None:
    fold: dict[str, Any] = {"edge": f"{FRONT}/center_front", "hem_end": f"{FRONT}/hem_center"}
    assert stopped(vented(**fold)) == "opening-on-fold"
    assert stopped(vented(**fold, both_edges=False)) == "opening-on-fold"
    seam = {"edge": f"{SLEEVE}/front_seam", "hem_end": f"{SLEEVE}/hem_front", "height": "8 cm"}
    assert stopped_with(sleeve_style([("vent", "vent", seam)])) == "vent-twice-on-piece"
    one = sleeve_style([("vent", "vent", {**seam, "both_edges": False})])
    assert one.suspended is None, str(one.suspended)


def test_vents_that_cannot_be_made_are_refused() -> None:
    assert stopped(vented(slant="18 cm")) == "vent-slant"
    assert stopped(vented(slant="-1 cm")) == "vent-slant"
    assert stopped(vented(height="0 cm")) == "amount-not-positive"
    assert stopped(vented(height="80 cm")) == "place-beyond-edge"
    assert stopped(vented(with_steps(skirt_recipe(), YOKE), height="50 cm")) == "vent-too-high"
    assert (
        stopped(vented(edge=f"{BACK}/side_seam", hem_end=f"{BACK}/hem_side", height="50 cm"))
        == "vent-edge-curved"
    )


def test_a_zip_changes_no_shape_and_marks_its_stop() -> None:
    pattern = run(with_steps(skirt_recipe(), ZIP)).pattern
    assert pattern.pieces == PLAIN.pieces
    notch = pattern.notches["zip.back/zip_notch"]
    assert (notch.place.amount, notch.place.from_point) == (180.0, f"{BACK}/waist_center")
    assert pattern.allowances[f"{BACK}/center_back"].allowance_class == "zip"
    assert (
        stopped(with_steps(skirt_recipe(), ("zip_opening", "zip", {**ZIP[2], "length": "80 cm"})))
        == "place-beyond-edge"
    )
    assert (
        stopped(with_steps(skirt_recipe(), ("zip_opening", "zip", {**ZIP[2], "length": "0 cm"})))
        == "amount-not-positive"
    )


def test_an_allowance_is_set_by_class_or_width_and_changes_no_shape() -> None:
    edges = [f"{FRONT}/side_seam", f"{FRONT}/waist"]
    wide = with_steps(
        skirt_recipe(),
        ("set_allowance", "wide", {"edges": edges, "allowance_class": "side", "width": "1/2 in"}),
    )
    pattern = run(wide).pattern
    assert pattern.pieces == PLAIN.pieces
    for edge in edges:
        assert pattern.allowances[edge].allowance_class == "side"
        assert pattern.allowances[edge].width == pytest.approx(12.7)
    by_class = with_steps(
        skirt_recipe(), ("set_allowance", "wide", {"edges": edges, "allowance_class": "side"})
    )
    assert run(by_class).pattern.allowances[edges[0]].width is None
    lost = ("set_allowance", "wide", {"edges": [f"{FRONT}/waist_dart"]})
    assert stopped(with_steps(skirt_recipe(), lost)) == "name-lost"
    closed = ("set_allowance", "wide", {"edges": [f"{FRONT}/waist_dart/side_leg"]})
    assert stopped(with_steps(skirt_recipe(), FLARE, closed)) == "name-lost"


def test_a_zip_in_the_side_seam_is_told_on_both_edges() -> None:
    # Fact of the trade: a zip lies between two edges, which get the same allowance and the same mark.
    side = {"edge": f"{BACK}/side_seam", "from_point": f"{BACK}/waist_side", "length": "20 cm"}
    done = run(with_steps(skirt_recipe(), ("zip_opening", "zip", side)))
    for piece in (BACK, FRONT):
        assert done.pattern.allowances[f"{piece}/side_seam"].allowance_class == "zip"
        notch = done.pattern.notches[f"zip.{piece.partition('.')[2]}/zip_notch"]
        assert (notch.place.from_point, notch.place.amount) == (f"{piece}/waist_side", 200.0)
    codes = {found.code for found in examine(done).findings}
    assert not codes & {"seam-allowances-differ", "notch-mate-missing"}


def test_a_zip_from_the_other_end_is_marked_from_there_on_both_edges() -> None:
    side = {"edge": f"{BACK}/side_seam", "from_point": f"{BACK}/hem_side", "length": "15 cm"}
    pattern = run(with_steps(skirt_recipe(), ("zip_opening", "zip", side))).pattern
    assert pattern.notches["zip.front/zip_notch"].place.from_point == f"{FRONT}/hem_side"


def test_a_zip_in_a_yoke_and_what_hangs_from_it_is_told_on_both_edges() -> None:
    side = {"edge": f"{FRONT}/side_seam", "from_point": f"{FRONT}/waist_side", "length": "20 cm"}
    pattern = run(with_steps(skirt_recipe(), FLARE, YOKE, ("zip_opening", "zip", side))).pattern
    assert {f"{BACK}/side_seam", f"{FRONT}/side_seam"} <= set(pattern.allowances)
