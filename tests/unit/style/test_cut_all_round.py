"""A seam round the garment in one entry: it meets at every seam, and each piece gets its seam and notches.

That a yoke or waist seam is one line when the pieces are sewn together, so that it meets itself at the same
height as sewn on both sides of each seam, is common practice, no source. numpy measures the stored outlines.
"""

from functools import cache
from itertools import pairwise
from math import atan2, degrees
from typing import Any

import pytest

from notchbook.app.drafting import draft_recipe
from notchbook.app.examining import examine
from notchbook.geometry import Path, Point, curve_between
from notchbook.geometry.met_square import met_square
from notchbook.pattern import Pattern, Severity, run_length, sewn_length, walk_seam
from notchbook.recipe import Replay, add_step, replay
from notchbook.style.lines.seams import clear_share
from support.bodice_bodies import body
from support.style_lines import SMALL, WOMAN, code, good, hip_yoke, judge, place, skirt_with

F, B = "dress.front", "dress.back"

YOKE: dict[str, Any] = {
    "from_point": "skirt.front/waist_center",
    "crosses": [
        {"edge": "skirt.front/center_front", "distance": "13 cm"},
        {"edge": "skirt.back/side_seam", "distance": "11 cm"},
        {"edge": "skirt.back/center_back", "distance": "13 cm"},
    ],
    "darts": [
        {"intake": "skirt.front/waist_dart"},
        {"intake": "skirt.back/waist_dart_center"},
        {"intake": "skirt.back/waist_dart_side"},
    ],
}

HARDLY_RISING = body(waist_girth=1000.0, hip_girth=1040.0, hip_depth=150.0)
"""An invented full body whose hips hardly come out below the waist, so that a yoke hardly rises."""


@cache
def yoke() -> Pattern:
    return good(skirt_with(("cut_all_round", "yoke", YOKE), measures=WOMAN))


def waist_of(front: tuple[str, ...], back: tuple[str, ...]) -> dict[str, Any]:
    """A level seam near the waist over the given edges between center front and center back."""
    edges = [*front, f"{F}/side_seam/below", *back, f"{B}/center_back"]
    return {
        "from_point": f"{F}/neck_pit",
        "crosses": [{"edge": f"{F}/center_front", "distance": "36 cm"}, *({"edge": edge} for edge in edges)],
        "shape": "straight",
        "first_title": "bodice",
        "second_title": "skirt",
    }


@cache
def princess_dress() -> Replay:
    """A dress without a waist seam in eight panels, then cut all round."""
    recipe = draft_recipe("dress", WOMAN, {"waist_seam": "none", "front_darts": 1, "back_darts": 1})
    for slug, panel, more in (
        ("front", F, {"bust_point": f"{F}/bust_point", "closed_dart": f"{F}/bust_dart"}),
        ("back", B, {}),
    ):
        told = {
            "center": f"{panel}/center_{slug}",
            "start": [place(f"{panel}/armhole", f"{panel}/shoulder_point", 0.5)],
            "inner_dart": f"{panel}/waist_dart",
            "end": [place(f"{panel}/hem", f"{panel}/hem_center", 0.45)],
            **more,
        }
        recipe = add_step(recipe, "princess_seam", told, base=WOMAN, slug=slug)
    told = waist_of(("front.front_center/style_line",), ("back.back_side/style_line",))
    return replay(add_step(recipe, "cut_all_round", told, base=WOMAN, slug="waist"), WOMAN)


def test_a_yoke_all_round_is_what_one_line_for_each_piece_gives() -> None:
    by_hand = good(skirt_with(("cut_style_line", "yoke", hip_yoke()), measures=WOMAN))
    one, other = judge(yoke()), judge(by_hand)
    assert yoke().pieces.keys() == by_hand.pieces.keys()
    assert yoke().seams.keys() == by_hand.seams.keys()
    for name in by_hand.pieces:
        assert one.polygon(name).area == pytest.approx(other.polygon(name).area, rel=1e-3), name


def test_the_line_meets_at_the_side_as_sewn() -> None:
    lengths = judge(yoke())
    for role in ("above", "below"):
        front, back = (lengths.length(f"skirt.{word}/side_seam/{role}") for word in ("front", "back"))
        assert front == pytest.approx(back, abs=0.01)
    assert lengths.length("skirt.back/side_seam/above") == pytest.approx(110.0, abs=0.01)


def test_each_piece_has_its_seam_and_a_pair_of_notches() -> None:
    for word in ("front", "back"):
        walk = walk_seam(yoke(), yoke().seams[f"yoke/{word}_style_line"])
        assert walk.misfit == pytest.approx(0.0, abs=0.01)
        (stop,) = walk.stations
        assert stop.first is not None
        assert stop.second == pytest.approx(stop.first, abs=0.01)


def test_a_waist_seam_over_all_panels_meets_at_every_seam_with_its_ease_where_it_was() -> None:
    pattern = good(princess_dress())
    panels = {f"{word}_{panel}" for word in ("front", "back") for panel in ("center", "side")}
    assert set(pattern.pieces) == {f"waist.{panel}_{role}" for panel in panels for role in ("above", "below")}
    seen = judge(pattern)
    for seam, ease in (("front/front_style_line", 4.0), ("back/back_style_line", 0.0)):
        assert pattern.seams[seam].ease == pytest.approx(ease)
        assert walk_seam(pattern, pattern.seams[seam]).misfit == pytest.approx(0.0, abs=0.05)
        word = seam[: seam.index("/")]
        lower = [seen.length(f"{word}.{word}_{panel}/style_line/below") for panel in ("center", "side")]
        assert lower[0] == pytest.approx(lower[1], abs=0.05), "the ease stays above, over the bust"
    for panel in panels:
        walk = walk_seam(pattern, pattern.seams[f"waist/{panel}_style_line"])
        assert walk.misfit == pytest.approx(0.0, abs=0.01)


def test_double_ended_darts_open_from_the_seam_all_round() -> None:
    recipe = draft_recipe("dress", WOMAN, {"waist_seam": "none"})
    pattern = good(
        replay(add_step(recipe, "cut_all_round", waist_of((), ()), base=WOMAN, slug="waist"), WOMAN)
    )
    for word in ("front", "back"):
        above, below = (pattern.pieces[f"waist.{word}_{role}"] for role in ("above", "below"))
        assert above.intakes
        assert below.intakes
        assert not above.inner_darts
        assert sewn_length(pattern, f"{above.name}/style_line") == pytest.approx(
            sewn_length(pattern, f"{below.name}/style_line"), abs=0.25
        )
    seam = pattern.seams["dress/side_seam"]
    assert run_length(pattern, seam.first) == pytest.approx(run_length(pattern, seam.second), abs=0.05)


def test_another_body_gives_the_same_names() -> None:
    small = good(skirt_with(("cut_all_round", "yoke", YOKE), measures=SMALL))
    assert list(small.index) == list(yoke().index)


@pytest.mark.parametrize(
    ("edges", "wanted"),
    [
        (("center_front", "center_back"), "round-not-one-piece"),
        (("center_front", "hem"), "round-level-misses"),
    ],
)
def test_what_is_not_clear_is_refused_in_words(edges: tuple[str, str], wanted: str) -> None:
    first, last = (f"skirt.{'back' if edge == 'center_back' else 'front'}/{edge}" for edge in edges)
    told = {**YOKE, "crosses": [{"edge": first, "distance": "13 cm"}, {"edge": last}], "darts": []}
    assert code(skirt_with(("cut_all_round", "yoke", told), measures=WOMAN)) == wanted


def test_the_first_edge_needs_its_distance() -> None:
    told = {**YOKE, "crosses": [{"edge": cross["edge"]} for cross in YOKE["crosses"]]}
    assert code(skirt_with(("cut_all_round", "yoke", told), measures=WOMAN)) == "place-needs-one-amount"


def test_a_dart_of_another_piece_is_refused() -> None:
    told = {**YOKE, "crosses": YOKE["crosses"][:2]}
    assert code(skirt_with(("cut_all_round", "yoke", told), measures=WOMAN)) == "dart-on-other-piece"


def test_a_balance_notch_keeps_off_a_dart_where_there_is_room() -> None:
    for parts in ([90.0, 110.0], [40.0, 60.0, 80.0], [200.0]):
        at, joints = clear_share(parts) * sum(parts), [sum(parts[:n]) for n in range(1, len(parts))]
        assert all(abs(at - joint) >= 15.0 for joint in joints)
        assert abs(at - sum(parts) / 2.0) > 0.04 * sum(parts)
    assert clear_share([9.0, 11.0]) == pytest.approx(0.45), "no room: where it always stands"


def shaped(*depths: str) -> dict[str, Any]:
    """The yoke so deep at center front, side and center back."""
    crosses = [cross | {"distance": depth} for cross, depth in zip(YOKE["crosses"], depths, strict=True)]
    return YOKE | {"crosses": crosses}


def told_of(done: Replay, words: str) -> list[str]:
    """The codes of what is to be looked at or stops at edges of these words."""
    return [
        found.code
        for found in examine(done, cut=False).findings
        if found.severity is not Severity.NOTE and words in f"{found.where} {found.names}"
    ]


def turns(path: Path) -> list[float]:
    """How much a line turns on each of its fifths, degrees."""
    ways = [path.tangent_at(path.length * share / 5.0) for share in range(6)]
    return [degrees(atan2(a.cross(b), a.dot(b))) for a, b in pairwise(ways)]


def test_the_waist_of_a_shallow_yoke_is_one_fair_line_where_its_darts_were_closed() -> None:
    """Closed within 5 cm, the two darts of a back turn its panels by 20 degrees and more at each mouth."""
    done = skirt_with(("cut_all_round", "yoke", shaped("5 cm", "5 cm", "6 cm")), measures=WOMAN)
    pattern = good(done)
    names = [edge.name for edge in pattern.pieces["yoke.back_above"].outline if "/waist/" in edge.name]
    assert len(names) == 3
    between = [abs(turn) for name in names if "middle" in name for turn in turns(pattern.edges[name].path)]
    assert min(between) > 0.6 * max(between), "as round between the darts as at them"
    before = good(skirt_with(measures=WOMAN))
    assert sewn_length(pattern, "skirt.back/waist") == pytest.approx(
        sewn_length(before, "skirt.back/waist"), abs=0.01
    )
    assert told_of(done, "waist") == []


def test_a_line_that_hardly_rises_stays_square_to_the_center_for_a_finger() -> None:
    """With no room for a bend to one side it turned away by 4 degrees within 5 mm of the fold."""
    for arriving in (4.7, 5.0, 6.0):
        ends = (Point(0.0, 0.0), 0.0), (Point(250.0, 20.0), arriving)
        path = met_square(*ends)
        assert path.tangent_at(10.0).direction() < 1.6
        assert path.tangent_at(path.length).direction() == pytest.approx(arriving)
        assert max(point.y - 0.08 * point.x for point in path.flattened(0.01)) < 0.5, "hardly an S"
    assert Path.of(curve_between(*ends[0], Point(250.0, 20.0), 4.7)).tangent_at(5.0).direction() > 3.9
    done = skirt_with(("cut_all_round", "yoke", shaped("8 cm", "7 cm", "9 cm")), measures=HARDLY_RISING)
    good(done)
    assert told_of(done, "style_line") == []
