"""Slanted pockets: the corner cut off, waist and side as long as before, bags that lie on each other."""

from dataclasses import replace
from typing import Any

import pytest
from shapely import LineString, affinity
from shapely import Point as Dot
from shapely.ops import split

from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.checks import Subject, run_checks
from notchbook.finish.sewing import sewing_order
from notchbook.geometry import Line, Path
from notchbook.output.flat.garment import garment_flat
from notchbook.output.flat.joined import center_x, placed
from notchbook.output.flat.laid import laying
from notchbook.output.flat.outer import view_pieces
from notchbook.pattern import sewn_length, walk_seam
from notchbook.recipe import Replay, add_step, replay
from support.charts import even_chart
from support.edge_steps import applied, changed, misfits, refusal, skirt, trousers
from support.pockets import (
    BODIES,
    SLANT,
    WAISTBAND,
    away,
    drafted_for,
    line_of,
    new_findings,
    polygon_of,
    uneven,
)
from support.yoke_skirt import FORM_A, run, yoke_recipe

OWN = "slant_pocket.front"
SKIRT: dict[str, Any] = {"waist": "skirt.front/waist", "side": "skirt.front/side_seam"}


@pytest.fixture(scope="module")
def done() -> Replay:
    return applied(trousers(), "slant_pocket", **SLANT)


def test_waist_and_side_are_as_long_as_before_under_their_old_names(done: Replay) -> None:
    before, after = trousers().pattern, done.pattern
    for name in ("trousers.front/waist", "trousers.front/side_seam"):
        assert sewn_length(after, name) == pytest.approx(sewn_length(before, name), abs=0.001)
    assert {
        after.carriers[name] for name in ("trousers.front/waist/side/outer", "trousers.front/side_seam/above")
    } == {f"{OWN}_under"}
    assert new_findings(trousers(), done) == []


def test_the_edge_of_the_opening_is_longer_than_the_line_below_it(done: Replay) -> None:
    line = done.pattern.pieces[f"{OWN}_under"].line(f"{OWN}_under/opening_line").path
    ease = done.pattern.edges[f"{OWN}/opening"].length - line.length
    assert 3.0 <= ease <= 6.0  # common practice, no source
    assert line.length == pytest.approx((45.0**2 + 170.0**2) ** 0.5, rel=0.05)
    assert changed(trousers(), "slant_pocket", **SLANT, ease="0 cm").edges[
        f"{OWN}/opening"
    ].length == pytest.approx(line.length, abs=1e-6)


def test_the_piece_loses_the_corner_and_no_more(done: Replay) -> None:
    """Without ease the corner is cut along the ruler laid at 45 and 170 mm; the ease only lifts the end of
    the opening at the waist, nowhere by more than its 4 mm."""
    block = trousers().pattern
    whole = polygon_of(block.pieces["trousers.front"].sew_line)
    waist, side = (
        line_of(block.edges[f"trousers.front/{word}"].path) for word in ("waist/side", "side_seam")
    )
    if waist.distance(Dot(side.coords[0])) > 1e-6:
        side = side.reverse()
    if Dot(waist.coords[0]).distance(side) > 1e-6:
        waist = waist.reverse()
    ruler = affinity.scale(LineString([waist.interpolate(45.0), side.interpolate(170.0)]), 1.2, 1.2)
    cut = sorted(split(whole, ruler).geoms, key=lambda part: float(part.area))[-2]
    plain = polygon_of(
        changed(trousers(), "slant_pocket", **SLANT, ease="0 cm").pieces["trousers.front"].sew_line
    )
    assert whole.difference(plain).symmetric_difference(cut).area < 5.0, "a pencil line along the waist"
    assert plain.difference(whole).area < 5.0
    front = polygon_of(done.pattern.pieces["trousers.front"].sew_line)
    lifted = front.symmetric_difference(plain)
    assert lifted.area > 60.0
    assert lifted.buffer(-2.1).is_empty, "nowhere thicker than the ease"
    assert lifted.distance(Dot(side.coords[-1])) > 500.0, "nothing below the opening"
    assert polygon_of(done.pattern.pieces[f"{OWN}_under"].sew_line).buffer(0.1).contains(cut)


def test_the_bags_lie_on_each_other_and_on_the_opening(done: Replay) -> None:
    pattern = done.pattern
    assert misfits(pattern)["slant_pocket/front_bag"] == pytest.approx(0.0, abs=1e-6)
    assert misfits(pattern)["slant_pocket/front_opening"] == pytest.approx(0.0, abs=1e-6)
    assert pattern.edges[f"{OWN}_facing/opening"].path == pattern.edges[f"{OWN}_outer_bag/opening"].path
    outer, inner = (pattern.pieces[f"{OWN}_{word}_bag"] for word in ("outer", "inner"))
    assert outer.instructions[0].material == inner.instructions[0].material == "lining"
    assert inner.bounds.height == pytest.approx(280.0, abs=12.0)
    assert (
        polygon_of(inner.sew_line).buffer(0.1).contains(polygon_of(pattern.pieces[f"{OWN}_under"].sew_line))
    )


def test_the_end_of_the_opening_is_notched_on_both_sides_of_the_side_seam(done: Replay) -> None:
    walk = walk_seam(done.pattern, done.pattern.seams["trousers/side_seam"])
    station = next(one for one in walk.stations if one.notch == "slant_notch")
    assert (station.first, station.second) == pytest.approx((170.0, 170.0))


def test_it_can_be_sewn_the_pocket_before_the_side(done: Replay) -> None:
    order = sewing_order(done.pattern)
    keys = [line.key for line in order.lines]
    assert not order.gaps and not order.waiting
    wanted = [
        "slant_pocket/bags_faced",
        "slant_pocket/front_opening",
        "slant_pocket/front_bag",
        "slant_pocket/opening_laid",
        "trousers/side_seam",
    ]
    assert sorted(wanted, key=keys.index) == wanted


def test_the_flat_shows_the_side_piece_under_the_opening(done: Replay) -> None:
    pattern = done.pattern
    under, front = pattern.pieces[f"{OWN}_under"], pattern.pieces["trousers.front"]
    placing = placed(pattern, view_pieces(pattern, "front"))
    for place in (under.points["trousers.front/waist_side"], under.points[f"{OWN}_under/opening_end"]):
        lying = [placing[one.name](laying(one, center_x(one))(place)) for one in (under, front)]
        apart = lying[0].distance_to(lying[1])
        assert apart < 4.2  # the ease of the opening, and what a flattened line may lie off in a flat
    fills = [shape.fill for shape in garment_flat(pattern)[0].shapes]
    assert [round(fill.bounds().height) < 300 for fill in fills] == [True, True, False, False]


def test_a_band_is_sewn_over_both_pieces_of_the_waist(done: Replay) -> None:
    after = applied(done, "waistband", **WAISTBAND)
    assert new_findings(applied(trousers(), "waistband", **WAISTBAND), after) == []


def test_a_scooped_opening_bows_toward_the_center() -> None:
    given = {**SLANT, "along_waist": "8 cm", "down_side": "8 cm", "bow": "2 cm", "bag_width": "15 cm"}
    pattern = changed(trousers(), "slant_pocket", **given)
    line = pattern.pieces[f"{OWN}_under"].line(f"{OWN}_under/opening_line").path
    middle = line.start.lerp(line.end, 0.5)
    assert away(middle, line) == pytest.approx(20.0, abs=0.2)
    assert line.point_at(line.length / 2.0).x > middle.x  # the side lies left of it


@pytest.mark.parametrize("body", BODIES)
def test_slant_pockets_are_clean_on_every_body(body: str) -> None:
    before = drafted_for("trousers", body)
    after = applied(before, "slant_pocket", **SLANT)
    found = [(code, where) for code, where in new_findings(before, after) if code != "edge-wavers"]
    assert found == []
    assert max(map(abs, misfits(after.pattern).values())) < 0.01


def test_a_level_across_the_opening_is_as_long_as_before() -> None:
    given = {**SKIRT, "down_side": "24 cm", "bag_depth": "34 cm", "along_waist": "4 cm"}
    before = applied(skirt(), "slant_pocket", **given)
    assert before.suspended is None
    assert new_findings(skirt(), before) == []
    assert len(before.pattern.groups["skirt.front/hip_line"].members) == 2


def test_left_and_right_of_an_uneven_body_each_have_their_own_pocket() -> None:
    before = uneven("trousers")
    after = applied(before, "slant_pocket", **SLANT)
    assert after.suspended is None
    assert {f"{OWN}_under@left", f"{OWN}_under@right"} <= set(after.pattern.pieces)
    assert new_findings(before, after) == []


def test_a_pocket_in_the_left_front_alone_brings_its_materials() -> None:
    both = trousers()
    recipe = add_step(both.recipe, "slant_pocket", SLANT, base=both.measures, side="left")
    done = replay(recipe, both.measures)
    assert f"{OWN}_inner_bag@left" in done.pattern.pieces
    assert f"{OWN}_inner_bag@right" not in done.pattern.pieces
    assert new_findings(both, done) == []


def test_a_lining_that_stands_before_the_pocket_stays_whole() -> None:
    lined = applied(skirt(), "lining", pieces=["skirt.front", "skirt.back"])
    after = applied(lined, "slant_pocket", **SKIRT)
    assert new_findings(lined, after) == []
    assert after.pattern.pieces["lining.front"] == lined.pattern.pieces["lining.front"]


def test_a_yoke_seam_may_be_the_upper_edge() -> None:
    yoke = run(yoke_recipe(), FORM_A)
    given = {"waist": "yoke.front_below/style_line", "side": "skirt.front/side_seam/below"}
    after = applied(yoke, "slant_pocket", **given, down_side="14 cm", bag_depth="24 cm")
    assert after.suspended is None
    assert new_findings(yoke, after) == []


def test_a_bag_that_was_cut_too_long_is_found(done: Replay) -> None:
    """A planted fault: the check of the seams speaks of the bags."""
    bag = done.pattern.pieces[f"{OWN}_inner_bag"]
    edge = bag.edge(f"{OWN}_inner_bag/bag")
    begin, rest = edge.path.split_at(edge.path.length / 2.0)
    aside = begin.end + begin.tangent_at(begin.length).perpendicular() * -8.0
    drawn = Path((*begin.segments, Line(begin.end, aside), Line(aside, rest.start), *rest.segments))
    broken = done.pattern.with_pieces(bag.with_edges(replace(edge, path=drawn)))
    report = run_checks(Subject(broken, is_block=False), ["seam-walks"])
    assert [one.where for one in report.findings if one.severity.value == "stop"] == [
        "slant_pocket/front_bag"
    ]


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("slant-no-corner", {"side": "trousers.back/side_seam"}),
        ("slant-past-part", {"along_waist": "12 cm"}),
        ("slant-past-part", {"down_side": "98 cm", "bag_depth": "120 cm"}),
        ("slant-past-center", {"bag_width": "30 cm"}),
        ("slant-bag-narrow", {"bag_width": "10 cm"}),
        ("slant-flat", {"along_waist": "10 cm", "down_side": "1 cm", "facing": "1 cm"}),
        ("pocket-too-shallow", {"bag_depth": "20 cm"}),
        ("pocket-bag-past-edge", {"bag_width": "19.5 cm", "bag_depth": "33 cm"}),
        ("amount-outside-trade", {"ease": "2 cm"}),
    ],
)
def test_slant_pockets_that_cannot_be_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(trousers(), "slant_pocket", **{**SLANT, **changes}) == code


def test_a_chart_of_five_sizes_has_the_same_pieces_and_clean_seams() -> None:
    base = skirt()
    given = {**SKIRT, "along_waist": "1/20 waist_girth", "down_side": "0.8 hip_depth"}
    recipe = add_step(base.recipe, "slant_pocket", given, base=base.measures)
    names, openings = set(), []
    for size in even_chart(5).sizes:
        body = size.with_value("hip_depth", 200.0)
        done = replay(recipe, body)
        assert done.suspended is None, str(done.suspended.error)
        names.add(tuple(done.pattern.index))
        openings.append(done.pattern.edges[f"{OWN}/opening"].length)
        assert max(map(abs, misfits(done.pattern).values())) < 0.01
    assert len(names) == 1
    assert sorted(openings) == openings
    assert openings[-1] > openings[0] + 1.0


def test_a_low_waist_whose_pocket_crosses_the_hip_line_still_has_a_fair_side() -> None:
    """Below the pocket the side is round at the hip and hollow at the thigh, as it was before it was cut."""
    low = draft("trousers", trousers().measures, {"silhouette": "straight", "waist_drop": "4 cm"})
    pocketed = applied(low, "slant_pocket", **SLANT)
    assert "trousers.front/hip_line/inner" in pocketed.pattern.index, "the opening crosses the hip line"
    assert "edge-wavers" not in {one.code for one in examine(pocketed, cut=False).findings}


def test_a_bag_that_ends_beside_a_closed_dart_ends_on_it() -> None:
    """Beside the joint of the two parts of the waist a scrap of 2 mm could not be sewn; 4 mm off it is left
    as it was asked for."""
    joint = trousers().pattern.edges["trousers.front/waist/side"].length
    for asked, wanted in ((joint + 2.0, joint), (joint + 4.0, joint + 4.0), (joint - 2.0, joint)):
        pattern = changed(trousers(), "slant_pocket", **SLANT, bag_width=f"{asked} mm")
        upper = line_of(pattern.edges[f"{OWN}_inner_bag/upper"].path).length
        assert upper == pytest.approx(wanted, abs=0.01)
