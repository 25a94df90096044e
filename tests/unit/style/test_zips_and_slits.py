"""Zips by their setting, the step of their allowance, and slits: marks, stitches, what stays sewn.

Outside: shapely measures the lines. Figures of common practice: stitches 1/4 in beside a centered zip, a lap
of 3/8 to 1/2 in, 5/8 in beside an invisible one; 3/4 in in general (factory allowance charts).
"""

from typing import Any

import pytest
from shapely.geometry import LineString, Polygon

from notchbook.finish import finish, production_table
from notchbook.pattern import pattern_to_data, walk_seam
from notchbook.recipe import Replay
from notchbook.style.closures.zip_settings import ZIP_SETTINGS
from support.closure_steps import (
    BACK_OPENING,
    SIDE_SLIT,
    codes,
    line,
    outside_length,
    polygon,
    said_more,
    stepped,
)
from support.edge_steps import refusal, skirt

BACK = "skirt.back"
CENTER = {"edge": f"{BACK}/center_back", "from_point": f"{BACK}/waist_center", "length": "18 cm"}
SIDE = {"edge": "skirt.front/side_seam", "from_point": "skirt.front/waist_side", "length": "20 cm"}


def zipped(**given: Any) -> Replay:
    return stepped(skirt(), ("zip_opening", given))


@pytest.mark.parametrize(
    ("setting", "inside", "allowance"),
    [("centered", 6.0, 19.0), ("lapped", 10.0, 25.0), ("invisible", None, 16.0), ("plain", None, 19.0)],
)
def test_a_setting_has_its_allowance_and_its_stitches(
    setting: str, inside: float | None, allowance: float
) -> None:
    pattern = zipped(**CENTER, setting=setting).pattern
    assert production_table().width(pattern.allowances[CENTER["edge"]].allowance_class) == allowance
    stitches = [one for one in pattern.pieces[BACK].lines if one.kind == "stitch_line"]
    if inside is None:
        assert stitches == []
        return
    (found,) = stitches
    edge = line(pattern.edges[CENTER["edge"]].path)
    path = line(found.path)
    assert path.length == pytest.approx(180.0 + inside, abs=0.05)
    assert path.hausdorff_distance(edge.intersection(path.buffer(inside + 0.1))) == pytest.approx(
        inside, abs=0.2
    )
    assert polygon(pattern.pieces[BACK]).buffer(0.01).contains(path)


def test_no_outline_changes_where_a_zip_is_set_in() -> None:
    plain, done = skirt().pattern, zipped(**CENTER, setting="lapped").pattern
    for name, piece in plain.pieces.items():
        assert done.pieces[name].outline == piece.outline


def test_a_centered_zip_in_a_side_seam_is_stitched_on_both_edges_a_lapped_one_on_one() -> None:
    for setting, pieces in (("centered", {"skirt.front", BACK}), ("lapped", {"skirt.front"})):
        pattern = zipped(**SIDE, setting=setting).pattern
        found = {
            name
            for name, piece in pattern.pieces.items()
            if any(one.kind == "stitch_line" for one in piece.lines)
        }
        assert found == pieces
        stops = [one.place.amount for one in pattern.notches.values() if one.purpose == "zip stop"]
        assert stops == pytest.approx([200.0, 200.0])


def test_the_allowance_steps_back_below_the_zip_and_is_notched_there() -> None:
    """Notch every change of width (common practice). The seam is walked as a whole still."""
    done = zipped(**SIDE, setting="centered", step=True)
    pattern = done.pattern
    for piece in ("skirt.front", BACK):
        assert outside_length(pattern, f"{piece}/side_seam/zip") == pytest.approx(220.0, abs=0.01)
        assert pattern.allowances[f"{piece}/side_seam/zip"].allowance_class == "zip"
        assert f"{piece}/side_seam" not in pattern.allowances
        assert f"zip_opening.{piece.split('.')[1]}/zip_end_notch" in pattern.notches
    assert walk_seam(pattern, pattern.seams["skirt/side_seam"]).misfit == pytest.approx(0.0, abs=1e-6)
    assert codes(done) == codes(skirt())


def test_the_table_of_settings_names_its_sources() -> None:
    assert all(row.source and row.grade for row in ZIP_SETTINGS.values())


def test_a_slit_opens_both_edges_and_the_seam_is_sewn_above() -> None:
    before, done = skirt().pattern, stepped(skirt(), ("hem_slit", {**SIDE_SLIT, "height": "20 cm"}))
    pattern = done.pattern
    for piece in ("skirt.front", BACK):
        drawn = polygon(pattern.pieces[piece])
        assert drawn.symmetric_difference(polygon(before.pieces[piece])).area < 1.0
        assert outside_length(pattern, f"{piece}/side_seam/opening") == pytest.approx(200.0, abs=0.01)
        turned = pattern.allowances[f"{piece}/side_seam/opening"]
        assert (turned.allowance_class, turned.width) == ("hem_slit", 30.0)
    walk = walk_seam(pattern, pattern.seams["skirt/side_seam"])
    whole = outside_length(before, "skirt.front/side_seam")
    assert walk.first == pytest.approx(whole - 200.0, abs=0.01)
    assert walk.misfit == pytest.approx(0.0, abs=0.05)
    assert codes(done) == codes(skirt())


@pytest.mark.parametrize(
    ("operation", "code", "given"),
    [
        (
            "hem_slit",
            "slit-not-at-hem",
            {"edge": "skirt.front/side_seam", "hem_end": "skirt.front/waist_side"},
        ),
        ("hem_slit", "place-beyond-edge", {**SIDE_SLIT, "height": "200 cm"}),
        ("hem_slit", "amount-not-positive", {**SIDE_SLIT, "height": "0 cm"}),
        ("zip_opening", "place-beyond-edge", {**CENTER, "length": "59 cm", "step": True}),
    ],
)
def test_openings_that_cannot_be_are_refused(operation: str, code: str, given: dict[str, Any]) -> None:
    assert refusal(skirt(), operation, **given) == code


def test_an_opening_across_parts_of_an_edge_is_refused() -> None:
    stepped_once = zipped(**CENTER, setting="centered", step=True)
    long = {"edge": f"{BACK}/center_back", "hem_end": f"{BACK}/hem_center", "height": "55 cm"}
    assert refusal(stepped_once, "hem_slit", **long) == "closure-across-parts"


@pytest.mark.parametrize("name", ["small-80", "plus-128", "child-116", "uneven"])
def test_a_skirt_with_zip_slit_and_band_is_right_on_other_bodies(name: str) -> None:
    done = stepped(
        skirt(),
        ("zip_opening", {**CENTER, "setting": "lapped", "step": True}),
        ("hem_slit", SIDE_SLIT),
        ("waistband", {"edges": BACK_OPENING}),
    )
    assert said_more(done, "skirt", name) == set()


def test_operations_tell_how_the_zip_is_set_and_are_kept_with_the_pattern() -> None:
    pattern = zipped(**CENTER, setting="lapped", laps="right").pattern
    assert "lap the wearer's right side over it" in pattern.operations["zip_opening/zip"].text
    assert pattern_to_data(pattern)["operations"]


@pytest.mark.parametrize(("depth", "width"), [(40.0, 40.0), (51.0, 40.0), (30.0, 50.0)])
def test_a_mitered_vent_meets_its_hem_when_both_are_turned(depth: float, width: float) -> None:
    """Closed form: folded back along the vent, the miter runs from the end of the fold to where the edge of
    the extension and the raw edge of the hem cross; the end of the hem does too."""
    vent = {"edge": f"{BACK}/center_back", "hem_end": f"{BACK}/hem_center", "corner": "mitered"}
    steps = (("set_hem", {"hems": [f"{BACK}/hem"], "depth": depth}), ("vent", {**vent, "width": width}))
    done = stepped(skirt(), *steps)
    piece = done.pattern.pieces[BACK]
    (fold,) = [one for one in piece.lines if one.kind == "fold_line"]
    corner = min((fold.path.start, fold.path.end), key=lambda point: point.y)
    miter = done.pattern.edges["vent.back/miter"].path
    outer = max((miter.start, miter.end), key=lambda point: point.y)
    assert (abs(outer.x - corner.x), outer.y - corner.y) == pytest.approx((width, depth), abs=1e-6)
    # Cut, its line runs on through the allowance of the hem: along it, 6 mm outside, to the raw edge.
    (cut,) = [one for one in finish(done.pattern, production_table()) if one.name == BACK]
    made = Polygon([(point.x, point.y) for point in cut.cut_line.flattened(0.01)])
    stitched = LineString([(outer.x, outer.y), (2.0 * corner.x - outer.x, 2.0 * corner.y - outer.y)])
    assert stitched.interpolate(0.5, normalized=True).distance(made.exterior) == pytest.approx(6.0, abs=0.05)
    assert made.buffer(0.01).contains(stitched)


def test_a_miter_needs_the_depth_of_the_hem_and_room_for_it() -> None:
    vent = {"edge": f"{BACK}/center_back", "hem_end": f"{BACK}/hem_center", "corner": "mitered"}
    assert refusal(skirt(), "vent", **vent) == "vent-hem-unsaid"
    assert refusal(skirt(), "vent", **vent, hem_depth="17 cm") == "vent-miter-too-high"
    done = stepped(skirt(), ("vent", {**vent, "hem_depth": "4 cm"}))
    assert codes(done) - codes(skirt()) == set()
