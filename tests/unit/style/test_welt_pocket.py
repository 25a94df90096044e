"""Welt pockets: the box and its slit, welts that fill it, bags that lie on each other."""

from typing import Any

import pytest
from shapely.geometry import LineString

from notchbook.finish import finish, production_table
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Pattern, locate
from notchbook.recipe import Replay
from support.edge_steps import applied, area, changed, misfits, refusal, trousers
from support.pockets import BODIES, WELT, away, drafted_for, line_of, new_findings, uneven

OWN = "welt_pocket.back"
EIGHTH = 25.4 / 8.0
"""Drill holes stand 1/8 in inside the ends of a welt pocket (vocational textbook, 2024)."""


@pytest.fixture(scope="module")
def done() -> Replay:
    return applied(trousers(), "welt_pocket", **WELT)


def lines(pattern: Pattern, word: str) -> dict[str, Any]:
    """The lines of the box or of the slit, by their last words."""
    found = {line.name: line for line in pattern.pieces["trousers.back"].lines}
    start = f"{OWN}/{word}"
    return {name.removeprefix(start): line for name, line in found.items() if name.startswith(start)}


def test_the_slit_runs_along_the_middle_of_the_box_and_into_its_corners(done: Replay) -> None:
    box, slit = lines(done.pattern, "welt_box"), lines(done.pattern, "slit")
    assert {line.kind for line in box.values()} == {"stitch_line"}
    assert {line.kind for line in slit.values()} == {"cut_line"}
    upper, lower = box["/upper"].path, box["/lower"].path
    assert upper.length == lower.length == pytest.approx(120.0)
    assert line_of(upper).distance(line_of(lower)) == pytest.approx(25.4 / 2.0, abs=0.8)  # 1/2 in
    middle = slit[""].path
    assert away(middle.start, upper) == pytest.approx(away(middle.start, lower)) == pytest.approx(6.0)
    assert 120.0 - middle.length == pytest.approx(20.0)  # parts 3/8 to 1/2 in before both ends
    corners = {box["/upper"].path.start, box["/lower"].path.start}
    assert {slit["/near"].path.start, slit["/near"].path.end} == corners


def test_holes_are_drilled_inside_the_ends(done: Replay) -> None:
    box = lines(done.pattern, "welt_box")
    marks = {one.name: one for one in done.pattern.pieces["trousers.back"].marks if one.kind == "drill"}
    for word in ("near", "far"):
        place = marks[f"{OWN}/{word}_drill"].position
        assert away(place, box[f"/{word}"].path) == pytest.approx(EIGHTH, abs=0.25)


def test_the_near_end_lies_where_it_was_asked(done: Replay) -> None:
    pattern = done.pattern
    near = lines(pattern, "welt_box")["/near"].path
    place = near.point_at(near.length / 2.0)
    side = line_of(pattern.edges["trousers.back/side_seam"].path)
    level = [(place.x, place.y), (place.x + 500.0, place.y)]
    assert LineString(level).intersection(side).bounds[0] - place.x == pytest.approx(30.0, abs=0.02)


@pytest.mark.parametrize(("welts", "shown", "times"), [("single", 12.0, 1), ("double", 6.0, 2)])
def test_a_welt_is_folded_and_fills_its_part_of_the_box(welts: str, shown: float, times: int) -> None:
    pattern = changed(trousers(), "welt_pocket", **WELT, welts=welts)
    welt = pattern.pieces[f"{OWN}_welt"]
    assert area(welt) == pytest.approx(120.0 * 2.0 * shown)
    assert welt.instructions[0].times == times
    fold = welt.line(f"{OWN}_welt/fold_line").path
    assert away(fold.start, welt.edge(f"{OWN}_welt/lower").path) == pytest.approx(shown)
    box = lines(pattern, "welt_box")
    height = line_of(box["/upper"].path).distance(line_of(box["/lower"].path))
    assert height == pytest.approx(times * shown)
    assert away(welt.edge(f"{OWN}_welt/lower").path.start, box["/lower"].path) < 1e-6


def test_the_inner_bag_is_as_much_higher_as_the_box_and_lies_on_the_outer(done: Replay) -> None:
    outer, inner = (done.pattern.pieces[f"{OWN}_{word}_bag"] for word in ("outer", "inner"))
    assert inner.bounds.height - outer.bounds.height == pytest.approx(12.0)
    assert misfits(done.pattern)["welt_pocket/back_bag"] == pytest.approx(0.0, abs=1e-9)
    assert inner.bounds.width > 120.0 + 20.0  # 1 to 2 cm wider at each end, common practice
    facing = done.pattern.pieces[f"{OWN}_facing"]
    assert facing.instructions[0].material == "self"
    assert facing.bounds.width == pytest.approx(inner.bounds.width)


def test_the_ends_of_the_opening_are_notched_on_both_bags_over_the_box(done: Replay) -> None:
    """The bags lie on the piece where they were drawn, so that notch and end of the box are one place, as
    seen along the opening."""
    box = lines(done.pattern, "welt_box")
    along = (box["/upper"].path.end - box["/upper"].path.start).unit()
    for bag in ("outer", "inner"):
        for word in ("near", "far"):
            notch = locate(done.pattern, done.pattern.notches[f"{OWN}_{bag}_bag/{word}_notch"].place)
            end = box[f"/{word}"].path.start
            assert (notch.position - end).dot(along) == pytest.approx(0.0, abs=1e-6)


def test_the_ends_of_the_welt_are_cut_longer_and_nothing_is_cut_off_a_free_edge(done: Replay) -> None:
    cut = {piece.name: piece for piece in finish(done.pattern, production_table())}
    welt = cut[f"{OWN}_welt"]
    assert welt.edge(f"{OWN}_welt/near").width > welt.edge(f"{OWN}_welt/lower").width
    assert cut[f"{OWN}_facing"].edge(f"{OWN}_facing/lower").width == 0.0


@pytest.mark.parametrize("body", BODIES[:3])
def test_welt_pockets_are_clean_on_every_grown_body(body: str) -> None:
    before = drafted_for("trousers", body)
    assert new_findings(before, applied(before, "welt_pocket", **WELT)) == []


def test_the_child_s_pocket_is_smaller() -> None:
    before = drafted_for("trousers", "child-116")
    assert refusal(before, "welt_pocket", **WELT) == "pocket-bag-past-edge"
    small = {**WELT, "down": "9 cm", "opening": "9 cm", "bag_depth": "10 cm"}
    assert new_findings(before, applied(before, "welt_pocket", **small)) == []


def test_each_side_of_an_uneven_body_gets_its_own_welt_pocket() -> None:
    before = uneven("trousers")
    after = applied(before, "welt_pocket", **WELT, welts="double", flap=True)
    assert new_findings(before, after) == []
    assert {f"{OWN}_flap@left", f"{OWN}_flap@right"} <= set(after.pattern.pieces)


def test_the_flap_is_set_in_before_the_bags() -> None:
    pattern = changed(trousers(), "welt_pocket", **WELT, welts="double", flap=True)
    order = sewing_order(pattern)
    keys = [line.key for line in order.lines]
    words = ("welt_prepared", "slit_opened", "flap_sewn", "bags_hung", "back_bag", "welt_finished")
    assert sorted(words, key=lambda word: keys.index(f"welt_pocket/{word}")) == list(words)
    assert not order.gaps and not order.waiting


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("pocket-over-dart", {"down": "6 cm", "inward": "5 cm"}),
        ("pocket-over-edge", {"opening": "40 cm"}),
        ("pocket-bag-past-edge", {"inward": "5 mm"}),
        ("amount-outside-trade", {"welt": "6 cm"}),
        ("amount-not-positive", {"opening": "0 cm"}),
        ("pocket-edges-apart", {"below": "trousers.front/waist"}),
    ],
)
def test_welt_pockets_that_cannot_be_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(trousers(), "welt_pocket", **{**WELT, **changes}) == code
