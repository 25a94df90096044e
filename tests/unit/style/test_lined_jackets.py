"""Linings of jackets: behind a lapel, with sleeves of one and two pieces, shorter than the facing."""

from itertools import pairwise

import pytest
from shapely.geometry import LineString

from lower_sheets import lower_bodies
from notchbook.app.examining import examine
from notchbook.app.rack.styles import rack_style
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Pattern, Severity, locate, pattern_from_data, pattern_to_data
from notchbook.recipe import Replay, replay
from notchbook.style.traced.allowance_of import allowance_of
from support.collar_steps import code_of, pattern_of, said, shape_of
from support.edge_steps import misfits
from support.jackets import lined, lined_jacket, measures_of

MADE = [("two", "notched_lapel"), ("one", "notched_lapel"), ("two", "shawl_collar")]


def worse(run: Replay) -> set[str]:
    """The codes of what is more than a note and speaks of the lining."""
    return {
        one.code
        for one in examine(run).findings
        if one.severity is Severity.STOP or (one.severity is not Severity.NOTE and "lining" in f"{one}")
    }


def line(pattern: Pattern, name: str) -> LineString:
    return LineString([(point.x, point.y) for point in pattern.edges[name].path.flattened(0.005)])


def height_of(pattern: Pattern, name: str) -> float:
    """The highest point of an edge."""
    return float(line(pattern, name).bounds[3])


@pytest.mark.parametrize(("sleeve", "lapel"), MADE)
def test_every_seam_of_the_lining_walks(sleeve: str, lapel: str) -> None:
    pattern = pattern_of(lined_jacket(sleeve=sleeve, lapel=lapel))
    found = {name: off for name, off in misfits(pattern).items() if name.startswith("lining/")}
    words = {"shoulder", "side_seam", "front_armhole", "back_armhole", "front_facing", "back_neck"}
    assert {f"lining/{word}" for word in words} <= set(found)
    assert found == pytest.approx(dict.fromkeys(found, 0.0), abs=0.05)
    assert pattern_from_data(pattern_to_data(pattern)) == pattern


@pytest.mark.parametrize("silhouette", ["unlined_jacket", "jacket"])
def test_the_checks_have_nothing_to_say_of_it(silhouette: str) -> None:
    assert worse(lined_jacket(silhouette=silhouette)) == set()


@pytest.mark.parametrize("lapel", ["notched_lapel", "shawl_collar"])
def test_nothing_of_it_stops_the_papers_behind_either_lapel(lapel: str) -> None:
    found = examine(lined_jacket(lapel=lapel)).findings
    assert [one.code for one in found if one.severity is Severity.STOP] == []


def test_the_front_lining_ends_on_the_free_edge_of_the_lapel_facing() -> None:
    """By an outside program: lining and facing lie side by side, and the facing hangs on below the hem."""
    pattern = pattern_of(lined_jacket())
    lining, facing = (shape_of(pattern, name) for name in ("lining.front", "collar.facing"))
    assert lining.intersection(facing).area == pytest.approx(0.0, abs=1.0)
    sewn = line(pattern, "collar.facing/edge/sewn")
    assert sewn.hausdorff_distance(line(pattern, "lining.front/facing_edge")) < 0.05
    assert line(pattern, "collar.facing/edge/hanging").length == pytest.approx(20.0, abs=0.05)
    assert pattern.groups["collar.facing/edge"].members == (
        "collar.facing/edge/sewn",
        "collar.facing/edge/hanging",
    )


def test_a_lining_as_long_as_the_facing_leaves_its_free_edge_whole() -> None:
    pattern = pattern_of(lined(measures_of("medium-92"), hems=[]))
    assert "collar.facing/edge" in pattern.edges
    assert pattern.edges["collar.facing/edge"].length == pytest.approx(
        pattern.edges["lining.front/facing_edge"].length, abs=0.01
    )


def test_the_shoulder_of_the_facing_is_sewn_where_the_back_has_none() -> None:
    pattern = pattern_of(lined_jacket())
    seam = pattern.seams["lining/shoulder"]
    assert [use.edge for use in seam.first] == ["collar.facing/shoulder", "lining.front/shoulder"]
    assert [use.edge for use in seam.second] == ["lining.back/shoulder"]
    outer = pattern.seams["bodice/shoulder"]
    assert seam.ease == outer.ease


@pytest.mark.parametrize("sleeve", ["one", "two"])
def test_the_underarm_of_the_sleeve_goes_up_and_the_ease_of_the_cap_stays(sleeve: str) -> None:
    """Sleeve lining up 15 to 20 mm where the armhole goes up 10 (common practice, no source)."""
    pattern = pattern_of(lined_jacket(sleeve=sleeve))
    word, outer = ("under_sleeve", "tailored") if sleeve == "two" else ("sleeve", "sleeve")
    front = pattern.seams["lining/front_armhole"].second[0].starts_at
    was = pattern.pieces[f"{outer}.{word}"].points["sleeve.sleeve/underarm_front"]
    now = pattern.pieces[f"lining.{word}"].points[front]
    assert now.y - was.y == pytest.approx(15.0, abs=0.1)
    eases = [
        sum(pattern.seams[f"{slug}/{side}_armhole"].ease for side in ("front", "back"))
        for slug in ("sleeve", "lining")
    ]
    assert eases[1] == pytest.approx(eases[0], abs=0.05)


def test_what_lies_below_the_balance_notches_is_not_eased_in_the_lining() -> None:
    pattern = pattern_of(lined_jacket())
    for side in ("front", "back"):
        seam = pattern.seams[f"lining/{side}_armhole"]
        notches = [
            notch
            for notch in pattern.notches.values()
            if notch.serves(seam.name) and notch.name.endswith("/balance_notch")
        ]
        assert len(notches) == 2
        assert notches[0].place.amount == pytest.approx(notches[1].place.amount, abs=0.01)


def test_the_under_sleeve_of_a_full_arm_is_raised_by_less_and_stays_hollow() -> None:
    run = lined_jacket("very-full-bust")
    assert "lining-sleeve-raised-less" in said(run)
    under = run.pattern.pieces["lining.under_sleeve"].points
    corners = [point.y for name, point in under.items() if name.endswith(("hind_arm_top", "forearm_top"))]
    assert len(corners) == 2
    assert min(corners) > under["lining.under_sleeve/underarm_front"].y
    assert "lining-sleeve-raised-less" not in said(lined_jacket())


def test_a_cap_that_cannot_be_had_is_refused_in_words() -> None:
    """One whole sleeve has room enough to go up far, but no crown that then fits the armhole."""
    run = lined(measures_of("medium-92"), sleeve="one", sleeve_raised="70 mm")
    assert code_of(run) == "lining-sleeve-too-high"


def test_the_shoulder_of_the_lining_is_closed_before_its_sleeves_are_set_in() -> None:
    """Facing to front, shoulders, sides, sleeves, as the garment is sewn (common practice, no source)."""
    keys = [line.key for line in sewing_order(pattern_of(lined_jacket())).lines]
    sewn = [f"lining/{word}" for word in ("front_facing", "shoulder", "side_seam", "front_armhole")]
    assert sorted(sewn, key=keys.index) == sewn


def test_lapel_and_collar_are_turned_when_all_their_layers_are_closed() -> None:
    """Behind a lining the facing is sewn to the upper collar late, for its shoulder is closed first."""
    keys = [line.key for line in sewing_order(pattern_of(lined_jacket())).lines]
    layers = ("collar/front_edge", "collar/outer", "collar/facing_gorge")
    assert keys.index("collar/turned") > max(map(keys.index, layers))


def test_the_lining_is_sewn_in_an_order_that_can_be_kept() -> None:
    order = sewing_order(pattern_of(lined_jacket()))
    assert (order.gaps, order.waiting) == ((), ())
    place = {line.key: line.number for line in order.lines}
    chain = ["lining/pleat", "lining/side_seam", "lining/front_armhole"]
    assert all(place[first] < place[second] for first, second in pairwise(chain))
    assert place["lining/front_facing"] < place["lining/shoulder"] < place["lining/back_neck"]


def test_a_notch_whose_seam_was_cut_away_goes_with_it() -> None:
    """The collar of a shawl is cut on the front: that part of the neck seam lies on the facing."""
    pattern = pattern_of(lined_jacket(lapel="shawl_collar"))
    assert {notch.seam for notch in pattern.notches.values() if notch.seam} <= set(pattern.seams)
    assert all(locate(pattern, notch.place) for notch in pattern.notches.values())


def test_the_hem_of_a_sleeve_is_turned_up_alike_in_both_of_its_parts() -> None:
    """Top and under sleeve have one hem; turned by two amounts the lining would twist on the sleeve."""
    pattern = pattern_of(lined_jacket(sleeve="two"))
    hems = [
        edge.name
        for piece in pattern.pieces.values()
        if piece.name.startswith("lining.") and "sleeve" in piece.name
        for edge in piece.outline
        if "/hem" in edge.name
    ]
    classes = {own.allowance_class for own in (allowance_of(pattern, hem) for hem in hems) if own is not None}
    assert len(hems) == 2
    assert len(classes) == 1


def test_a_layer_has_neither_buttons_nor_holes_of_its_own() -> None:
    """They are marked on the front; on its interfacing they would be bought and worked twice."""
    body = dict(lower_bodies())["medium-92"]
    pattern = replay(rack_style("S-212").recipe, body).pattern
    front, layer = pattern.pieces["bodice.front"], pattern.pieces["front_fusing.front"]
    assert len([mark for mark in front.marks if mark.kind == "button"]) == 2
    assert not [mark for mark in layer.marks if mark.kind == "button"]
    assert not [line for line in layer.lines if line.kind == "buttonhole"]
