"""What a change of sign or side would turn about: straps, holes, bands that open in front, bands in three.

Outside: shapely and plain arithmetic; facts of the trade are named beside each check.
"""

from collections.abc import Callable

import numpy as np
import pytest
from shapely.geometry import LineString, Point

from notchbook.finish.sewing import sewing_order
from notchbook.pattern import EdgeUse, Pattern, run_length
from notchbook.recipe import Replay
from notchbook.style.closures.band_in_three import side_stops, three_pieces, with_three_sewn
from notchbook.style.closures.band_pieces import BandSize
from notchbook.style.closures.divided import divided
from notchbook.style.closures.half_waist import HalfWaist
from support.closure_steps import FLY, FLY_BAND, STAND, STRAP, holes, outside_length, polygon, stepped
from support.collar_steps import collared, on_stand
from support.edge_steps import bodice, place, skirt, trousers

WAIST = {"front": "bodice.front/waist_center", "back": "bodice.back/waist_center"}


def strap_of(**given: object) -> float:
    """The length of the strap as it is cut, by the outside program, mm."""
    west, _, east, _ = polygon(
        stepped(bodice(), ("strap", {**STRAP, **given})).pattern.pieces["strap.strap"]
    ).bounds
    return float(east - west)


@pytest.mark.parametrize(("low", "high"), [(30.0, 180.0), (90.0, 330.0), (0.0, 0.0)])
def test_a_strap_is_the_way_from_the_shoulder_less_what_the_garment_covers(low: float, high: float) -> None:
    """Caught on the straight centers, so far above the waist, every part is a plain difference of heights:
    in front below the side of the neck as far as the point lies, behind 20 mm above the nape."""
    length = strap_of(
        front=place("bodice.front/center_front", WAIST["front"], f"{low} mm"),
        back=place("bodice.back/center_back", WAIST["back"], f"{high} mm"),
        bust_point=WAIST["front"],
        waist=WAIST["back"],
        to_fit="0 mm",
    )
    measures = bodice().measures
    front = measures.value("neck_to_bust_point") - low
    back = measures.value("back_waist_length") + 20.0 - high
    assert length == pytest.approx(front + back, abs=0.01)


def test_a_strap_near_the_shoulder_is_no_longer_than_along_the_neck() -> None:
    """Caught 20 mm down the neck on both sides of the shoulder: the straight way is a little shorter."""
    assert 0.0 < strap_of(to_fit="0 mm", width="2 mm") < 40.0


def test_a_strap_of_a_given_length_is_cut_longer_by_what_is_left_to_fit() -> None:
    told = {"length": "35 cm", "bust_point": None, "waist": None}
    assert strap_of(**told) == pytest.approx(350.0 + 40.0)
    assert strap_of(**told, to_fit="15 mm") == pytest.approx(365.0)


@pytest.mark.parametrize(
    ("operation", "make", "given"),
    [("shirt_collar", on_stand, {}), ("stand_collar", collared, {"overlap": "20 mm"})],
)
def test_the_hole_of_a_stand_begins_toward_its_end_and_goes_inward(
    operation: str, make: Callable[..., Replay], given: dict[str, str]
) -> None:
    """The button pulls into the end of the hole nearer the edge, 3 mm beyond the center (1/8 in, memory); a
    hole toward the edge would tear out."""
    stand = make(operation, **given).pattern.pieces[f"{operation}.stand"]
    (mark,) = [one.position for one in stand.marks if one.kind == "button"]
    ((begin, end),) = holes(stand)
    free = LineString([(p.x, p.y) for p in stand.edge(f"{operation}.stand/end").path.flattened(0.01)])
    assert np.hypot(begin[0] - mark.x, begin[1] - mark.y) == pytest.approx(3.0, abs=1e-6)
    assert free.distance(Point(begin)) < free.distance(Point(mark.x, mark.y)) < free.distance(Point(end))


def corners(pattern: Pattern, name: str) -> list[str]:
    """The points along the lower edge of a band from left to right as it lies face up."""
    outline = pattern.pieces[name].outline
    lower = [edge for edge in outline if "/lower/" in edge.name]
    found = {
        point: at.x
        for edge in lower
        for point, at in ((edge.start, edge.path.start), (edge.end, edge.path.end))
    }
    return [point.rpartition("/")[2] for point in sorted(found, key=lambda point: found[point])]


@pytest.mark.parametrize(
    ("cut_in", "band", "wanted"),
    [
        ("one", "band", ["left_opening", "center", "right_opening", "underlap_lower"]),
        ("two", "band_right", ["center", "right_opening", "underlap_lower"]),
        ("two", "band_left", ["left_opening", "center"]),
        ("three", "band_right", ["right_side", "right_opening", "underlap_lower"]),
        ("three", "band_center", ["left_side", "center", "right_side"]),
        ("three", "band_left", ["left_opening", "left_side"]),
    ],
)
def test_a_contoured_band_that_opens_in_front_is_seen_from_behind(
    cut_in: str, band: str, wanted: list[str]
) -> None:
    """Face up and whole, with the opening in front, her left is at the left hand (a fact of how it is worn);
    its facing lies face up the other way. Both are hollow below: the waist is longer than the upper edge."""
    done = stepped(trousers(), ("fly", FLY), ("contoured_waistband", {**FLY_BAND, "cut_in": cut_in}))
    assert corners(done.pattern, f"contoured_waistband.{band}") == wanted
    facing = band.replace("band", "facing")
    assert corners(done.pattern, f"contoured_waistband.{facing}") == wanted[::-1]
    for name in (band, facing):
        piece = done.pattern.pieces[f"contoured_waistband.{name}"]
        lower = [edge.path for edge in piece.outline if "/lower/" in edge.name]
        ends = [(point.x, point.y) for path in lower for point in (path.start, path.end)]
        left, right = min(ends), max(ends)
        chord = LineString([left, right])
        middle = min(y for path in lower for y in (point.y for point in path.flattened(0.05)))
        assert middle < chord.interpolate(0.5, normalized=True).y - 0.5
        upper = sum(
            outside_length(done.pattern, one.name) for one in piece.outline if one.name.endswith("/upper")
        )
        assert upper < outside_length(
            done.pattern, *(one.name for one in piece.outline if "/lower/" in one.name)
        )


@pytest.mark.parametrize("width", [0.4, 5.0, 40.0])
def test_the_marks_of_a_band_in_three_are_there_however_narrow_a_panel_is(width: float) -> None:
    """A panel of the front so wide at the waist beside the side seam: its seam is marked on every body, that
    of the sides never."""
    pattern = skirt().pattern
    beside = next(name for name in pattern.groups["skirt.front/waist"].members if name.endswith("/side"))
    cut = divided(pattern, (beside, "skirt.front/waist_side"), width, ("panel", "rest", "cut"), "cut")
    pattern = pattern.with_pieces(cut.piece)
    back = "skirt.back/waist"
    uses = (
        EdgeUse(back, "skirt.back/waist_center"),
        EdgeUse(cut.near, "skirt.front/waist_side"),
        EdgeUse(cut.far, cut.point),
    )
    length = run_length(pattern, uses)
    halves = [HalfWaist("right", uses, length), HalfWaist("left", uses, length)]
    size = BandSize(length, length, 35.0, 0.0, "left")
    stops = side_stops(pattern, halves)
    pieces = three_pieces("waistband.band", size, stops, ("front waistband", "back waistband"))
    done = with_three_sewn(pattern, "waistband", pieces, halves, (size, stops))
    named = {name for name in done.notches if "_seam_notch_" in name}
    assert named == {f"waistband.band_center/{side}_seam_notch_2" for side in ("right", "left")}
    for name in named:
        assert done.notches[name].place.amount == pytest.approx(width, abs=0.01)


def stand_order(*more: tuple[str, dict[str, object]]) -> str:
    """What the order of work says of the facings of a button stand."""
    done: Replay = stepped(bodice(), ("button_stand", STAND), *more)
    (said,) = [one.text for one in sewing_order(done.pattern).lines if one.key.endswith("facing_folded")]
    return said


def test_the_ends_of_a_facing_at_the_neck_are_not_sewn_where_a_collar_goes_on() -> None:
    """Under a stand collar both layers go into the neck seam and are not closed before (common practice); a
    bodice that ends at the waist has no hem there. Nothing is interfaced where the style has no fusible."""
    said = stand_order()
    assert "sew their upper ends, and turn" in said
    assert "hem" not in said
    assert "nterface" not in said
