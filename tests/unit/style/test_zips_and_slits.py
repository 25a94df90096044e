"""Zips by their setting, the step of their allowance, and slits: marks, stitches, what stays sewn.

Outside: shapely measures the lines. Figures of common practice: stitches 1/4 in beside a centered zip, a lap
of 3/8 to 1/2 in, 5/8 in beside an invisible one; 3/4 in in general (factory allowance charts).
"""

from typing import Any

import pytest
from shapely.geometry import LineString, Polygon

from notchbook.finish import finish, production_table
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Notch, Pattern, Place, directed, locate, pattern_to_data, walk_seam
from notchbook.recipe import Change, Replay, StepContext
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
from support.odd_steps import NoParameters, odd_step, register
from support.two_sided import BLOCKS, drafted
from support.yoke_skirt import FLARE, YOKE, run, skirt_recipe, with_steps

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


SLEEVE = "sleeve.sleeve"
SLEEVE_SLIT = {"edge": f"{SLEEVE}/front_seam", "hem_end": f"{SLEEVE}/hem_front"}


def sleeve() -> Replay:
    """A sleeve whose seam joins two edges of one piece, with the bodice that it goes into."""
    return drafted("bodice and sleeve", BLOCKS["bodice and sleeve"].body())


def test_a_slit_opens_both_edges_of_a_seam_that_lie_on_one_piece() -> None:
    before, done = sleeve().pattern, stepped(sleeve(), ("hem_slit", {**SLEEVE_SLIT, "height": "8 cm"}))
    pattern = done.pattern
    assert polygon(pattern.pieces[SLEEVE]).symmetric_difference(polygon(before.pieces[SLEEVE])).area < 1.0
    for edge in ("front_seam", "back_seam"):
        assert outside_length(pattern, f"{SLEEVE}/{edge}/opening") == pytest.approx(80.0, abs=0.01)
        assert pattern.allowances[f"{SLEEVE}/{edge}/opening"].allowance_class == "hem_slit"
    walk = walk_seam(pattern, pattern.seams["sleeve/sleeve_seam"])
    assert walk.first == pytest.approx(outside_length(before, f"{SLEEVE}/front_seam") - 80.0, abs=0.01)
    assert walk.misfit == pytest.approx(0.0, abs=0.05)
    tops = [locate(pattern, one.place) for one in pattern.notches.values() if one.purpose == "top of slit"]
    assert {one.edge.name for one in tops} == {
        f"{SLEEVE}/{edge}/seam" for edge in ("front_seam", "back_seam")
    }
    assert codes(done) == codes(sleeve())


@pytest.mark.parametrize("setting", ["plain", "centered", "lapped"])
def test_a_zip_between_two_edges_of_one_piece_is_marked_on_both(setting: str) -> None:
    told = {"edge": SLEEVE_SLIT["edge"], "from_point": SLEEVE_SLIT["hem_end"], "length": "12 cm"}
    done = stepped(sleeve(), ("zip_opening", {**told, "setting": setting, "step": True}))
    pattern = done.pattern
    marked = {
        purpose: {
            locate(pattern, one.place).edge.name.split("/")[1]
            for one in pattern.notches.values()
            if one.purpose == purpose
        }
        for purpose in ("zip stop", "allowance steps")
    }
    assert list(marked.values()) == [{"front_seam", "back_seam"}] * 2
    for edge in ("front_seam", "back_seam"):
        assert outside_length(pattern, f"{SLEEVE}/{edge}/zip") == pytest.approx(140.0, abs=0.01)
    stitches = [one for one in pattern.pieces[SLEEVE].lines if one.kind == "stitch_line"]
    assert len(stitches) == {"plain": 0, "centered": 2, "lapped": 1}[setting]
    assert codes(done) == codes(sleeve())


def zip_stops(pattern: Pattern) -> set[tuple[str, float]]:
    """The pieces on which a zip is notched, and how far from where it opens."""
    stops = [one.place for one in pattern.notches.values() if one.purpose == "zip stop"]
    return {(locate(pattern, one).piece, one.amount) for one in stops}


def test_a_zip_finds_its_other_edge_where_the_seam_has_become_shorter() -> None:
    """The side seam is sewn above a slit only, so that it joins parts of both edges."""
    done = stepped(skirt(), ("hem_slit", SIDE_SLIT), ("zip_opening", SIDE))
    assert zip_stops(done.pattern) == {("skirt.front", 200.0), (BACK, 200.0)}
    by_part = {**SIDE, "edge": "skirt.front/side_seam/seam"}
    done = stepped(skirt(), ("hem_slit", SIDE_SLIT), ("zip_opening", by_part))
    assert zip_stops(done.pattern) == {("skirt.front", 200.0), (BACK, 200.0)}


def test_a_zip_begun_on_a_part_of_an_edge_is_set_into_the_whole_seam() -> None:
    """The bust dart divides the front edge alone; from the waist up both edges have the zip, which may go on
    over the dart."""
    zipped_up = {"edge": "bodice.front/side_seam/below", "from_point": "bodice.front/waist_side"}
    below = outside_length(sleeve().pattern, zipped_up["edge"])
    for length in (60.0, 160.0):
        done = stepped(sleeve(), ("zip_opening", {**zipped_up, "length": f"{length} mm"}))
        assert zip_stops(done.pattern) == {("bodice.front", length), ("bodice.back", length)}
    assert 60.0 < below < 160.0


def test_a_zip_in_a_seam_of_many_edges_is_set_into_those_that_meet() -> None:
    """A yoke seam divides both edges of the side seam, which is sewn above a slit: two edges on each side."""
    start = run(with_steps(skirt_recipe(), FLARE, YOKE))
    slit = stepped(start, ("hem_slit", {**SIDE_SLIT, "height": "10 cm"}))
    upper = stepped(slit, ("zip_opening", {**SIDE, "length": "12 cm"})).pattern
    assert zip_stops(upper) == {("yoke.front_above", 120.0), ("yoke.back_above", 120.0)}
    seam = slit.pattern.seams["skirt/side_seam"]
    assert (len(seam.first), len(seam.second)) == (2, 2)
    begins = {use.edge: use.starts_at for use in (*seam.first, *seam.second)}
    for use in (*seam.first, *seam.second):
        (walk,) = directed(slit.pattern, use.edge, use.starts_at)
        part = slit.pattern.carriers[use.edge].rpartition("_")[2]
        for end in (walk.edge.start, walk.edge.end):
            told = {"edge": use.edge, "from_point": end, "length": "9 cm"}
            opened = stepped(slit, ("zip_opening", told)).pattern
            assert zip_stops(opened) == {(f"yoke.front_{part}", 90.0), (f"yoke.back_{part}", 90.0)}
            stops = [one.place for one in opened.notches.values() if one.purpose == "zip stop"]
            assert len({one.from_point == begins[one.edge] for one in stops}) == 1  # both up, or both down


def test_an_opening_begun_inside_a_seam_is_refused() -> None:
    front = sleeve().pattern.pieces["bodice.front"]
    above = front.edge("bodice.front/side_seam/above")
    inner = above.end if above.start == "bodice.front/underarm" else above.start
    told = {"edge": above.name, "from_point": inner, "length": "3 cm"}
    assert refusal(sleeve(), "zip_opening", **told) == "opening-inside-seam"


@pytest.mark.parametrize(
    ("operation", "given", "passed"),
    [
        ("hem_slit", {**SIDE_SLIT, "height": "45 cm"}, True),
        ("hem_slit", {**SIDE_SLIT, "height": "30 cm"}, False),
    ],
)
def test_a_notch_on_what_opens_serves_no_seam(operation: str, given: dict[str, Any], passed: bool) -> None:
    """The hip notch lies about 20 cm below the waist: of 60 cm, 45 cm reach past it and 30 cm do not."""
    done = stepped(skirt(), (operation, given))
    hip = done.pattern.notches["skirt.front/hip_notch"]
    assert (hip.seam is None) is passed
    assert "notch-off-seam" not in codes(done)


@pytest.mark.parametrize(("height", "passed"), [("18 cm", True), ("12 cm", False)])
def test_a_notch_on_a_vent_serves_no_seam(monkeypatch: pytest.MonkeyPatch, height: str, passed: bool) -> None:
    """A notch of the center back seam 15 cm above the hem, put there by a step of this test."""
    whole = outside_length(skirt().pattern, f"{BACK}/center_back")

    def marked(pattern: Pattern, _context: StepContext, _parameters: NoParameters) -> Change:
        place = Place(f"{BACK}/center_back", f"{BACK}/waist_center", whole - 150.0)
        return Change(pattern.with_notches(Notch("odd.back/mark", place, seam="skirt/center_back")))

    register(monkeypatch, odd_step(marked))
    vent = {"edge": f"{BACK}/center_back", "hem_end": f"{BACK}/hem_center", "height": height}
    done = stepped(skirt(), ("odd", {}), ("vent", vent))
    assert (done.pattern.notches["odd.back/mark"].seam is None) is passed
    assert "notch-off-seam" not in codes(done)


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


def test_both_lower_corners_of_a_slit_are_cut_to_a_miter() -> None:
    done = stepped(skirt(), ("hem_slit", SIDE_SLIT)).pattern
    assert {name for name, corner in done.corners.items() if corner == "turned"} == {
        "skirt.front/hem_side",
        "skirt.back/hem_side",
    }


def test_the_corners_of_a_slit_are_mitered_before_the_hem_is_turned() -> None:
    """Common practice, no source: a miter is sewn while both edges are flat."""
    order = [line.key for line in sewing_order(stepped(skirt(), ("hem_slit", SIDE_SLIT)).pattern).lines]
    hems = [order.index(key) for key in order if key.endswith("/hem_line")]
    assert order.index("hem_slit/slit") < order.index("hem_slit/miter") < min(hems)
    assert max(hems) < order.index("hem_slit/slit_turned")


@pytest.mark.parametrize(
    ("operation", "given"),
    [
        ("zip_opening", {"edge": "skirt.front/center_front", "from_point": "skirt.front/waist_center"}),
        ("hem_slit", {"edge": "skirt.front/center_front", "hem_end": "skirt.front/hem_center"}),
    ],
)
def test_nothing_opens_on_the_fold(operation: str, given: dict[str, Any]) -> None:
    """Both halves are cut as one there; a zip was set into it, and the back was cut whole."""
    assert refusal(skirt(), operation, **given) == "opening-on-fold"
    seamed = stepped(skirt(), ("center_seam", {"center": "skirt.front/center_front"}), (operation, given))
    assert seamed.suspended is None, str(seamed.suspended)
