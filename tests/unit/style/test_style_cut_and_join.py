"""Cutting a style line and joining again: nothing is gained or lost."""

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from notchbook.errors import StepRefused
from notchbook.pattern import Group, Notch, Pattern, Place, frozen_map, pattern_to_data, walk_seam
from notchbook.recipe import Recipe, replay
from notchbook.style.join_pieces import _notches_on
from support.skirt_judge import Judge
from support.yoke_skirt import (
    BACK,
    FORM_A,
    FRONT,
    WHOLE_BACK,
    YOKE,
    ZIP,
    place,
    run,
    skirt_recipe,
    stopped,
    with_steps,
    yoke_line,
)

CUT = with_steps(skirt_recipe(), YOKE)
JOINED = with_steps(CUT, WHOLE_BACK)
PLAIN = run(skirt_recipe()).pattern


def area(pattern: Pattern, *pieces: str) -> float:
    return sum(pattern.pieces[piece].sew_line.area() for piece in pieces)


def cut_one(**line: Any) -> Recipe:
    lines = [{**yoke_line(FRONT, "center_front"), **line}]
    return with_steps(skirt_recipe(), ("cut_style_line", "cut", {"lines": lines}))


@pytest.mark.parametrize("angle", [0.0, 12.0, -12.0])
def test_the_area_is_kept_whatever_the_shape_of_the_line(angle: float) -> None:
    pattern = run(cut_one(start_angle=angle, end_angle=-angle / 2.0)).pattern
    assert area(pattern, "cut.front_above", "cut.front_below") == pytest.approx(area(PLAIN, FRONT), abs=1e-6)
    # Outside: shapely finds the parts side by side, sharing the line and no cloth.
    judge = Judge(pattern_to_data(pattern))
    above, below = judge.polygon("cut.front_above"), judge.polygon("cut.front_below")
    assert above.is_valid
    assert below.is_valid
    assert above.intersection(below).area < 0.05
    assert above.union(below).area == pytest.approx(area(PLAIN, FRONT), abs=0.5)


def test_the_parts_are_sewn_along_the_line_with_a_pair_of_notches() -> None:
    pattern = run(CUT).pattern
    for word, count in (("front", "single"), ("back", "double")):
        walk = walk_seam(pattern, pattern.seams[f"yoke/{word}_style_line"])
        assert walk.misfit == pytest.approx(0.0, abs=1e-6)
        (balance,) = walk.stations
        assert balance.first == pytest.approx(0.45 * walk.first)
        assert balance.second == pytest.approx(balance.first or 0.0)
        assert pattern.notches[f"yoke.{word}_above/balance_notch"].kind == count


def test_the_line_meets_both_edges_square_unless_it_is_turned() -> None:
    judge = Judge(pattern_to_data(run(cut_one()).pattern))
    for piece in ("cut.front_above", "cut.front_below"):
        assert judge.corner(piece, "side_seam_end") == pytest.approx(90.0, abs=0.2)
        assert judge.corner(piece, "center_front_end") == pytest.approx(90.0, abs=0.2)
    turned = Judge(pattern_to_data(run(cut_one(start_angle=10.0)).pattern))
    corners = [turned.corner(f"cut.front_{part}", "side_seam_end") for part in ("above", "below")]
    assert sorted(corners) == pytest.approx([80.0, 100.0], abs=0.3)


def test_what_lies_on_the_piece_goes_to_the_part_where_it_lies() -> None:
    pattern = run(CUT).pattern
    assert [intake.name for intake in pattern.pieces["yoke.front_above"].intakes] == [f"{FRONT}/waist_dart"]
    assert pattern.pieces["yoke.front_below"].intakes == ()
    assert [line.name for line in pattern.pieces["yoke.front_below"].lines] == [f"{FRONT}/hip_line"]
    assert pattern.pieces["yoke.front_above"].lines == ()
    assert [pattern.pieces[f"yoke.front_{part}"].cut for part in ("above", "below")] == ["fold", "fold"]
    assert pattern.pieces["yoke.front_above"].title == "Front yoke"


def test_a_line_from_waist_to_hem_divides_the_hip_line_and_leaves_the_fold() -> None:
    line = {
        "start": place(f"{FRONT}/waist", f"{FRONT}/waist_center", "40 mm", part=f"{FRONT}/waist/center"),
        "end": place(f"{FRONT}/hem", f"{FRONT}/hem_center", "60 mm"),
    }
    recipe = with_steps(
        skirt_recipe(),
        ("cut_style_line", "panel", {"lines": [line], "first_role": "middle", "second_role": "side"}),
    )
    pattern = run(recipe).pattern
    assert pattern.pieces["panel.front_middle"].cut == "fold"
    assert pattern.pieces["panel.front_side"].cut == "pair"
    members = pattern.groups[f"{FRONT}/hip_line"].members
    assert set(members) == {f"{FRONT}/hip_line/middle", f"{FRONT}/hip_line/side"}
    judge = Judge(pattern_to_data(pattern))
    assert judge.length(*members) == pytest.approx(240.0, abs=1e-6)


def test_cut_and_joined_the_outline_is_the_same_again() -> None:
    whole, plain = run(JOINED).pattern.pieces["whole_back.back"], PLAIN.pieces[BACK]
    assert whole.sew_line.area() == pytest.approx(plain.sew_line.area(), abs=1e-6)
    shares = np.linspace(0.0, 1.0, 60)
    begins = whole.sew_line.nearest(plain.outline[0].path.start).distance_along
    length = plain.sew_line.length
    assert whole.sew_line.length == pytest.approx(length, abs=1e-6)
    for share in shares:
        along = (begins + share * length) % length
        assert whole.sew_line.point_at(along).distance_to(plain.sew_line.point_at(share * length)) < 1e-3
    assert {intake.name for intake in whole.intakes} == {intake.name for intake in plain.intakes}
    assert whole.title == "Back"


def test_joining_takes_seam_and_notches_of_the_line_out_and_says_so() -> None:
    pattern = run(JOINED).pattern
    assert "yoke/back_style_line" not in pattern.seams
    assert [name for name in pattern.notches if "back" in name and "balance" in name] == []
    assert pattern.fates["yoke.back_above"].into == ("whole_back.back",)
    assert pattern.fates["yoke.back_above/style_line"].by == "join_pieces-1"
    assert walk_seam(pattern, pattern.seams["skirt/side_seam"]).misfit == pytest.approx(0.0, abs=0.01)


def test_joining_leaves_an_allowance_of_the_line_behind() -> None:
    wide = with_steps(
        CUT, ("set_allowance", "wide", {"edges": ["yoke.back_above/style_line"], "width": "2 cm"})
    )
    assert "yoke.back_above/style_line" in run(wide).pattern.allowances
    assert "yoke.back_above/style_line" not in run(with_steps(wide, WHOLE_BACK)).pattern.allowances


def join(first: str, second: str) -> tuple[str, str, dict[str, Any]]:
    return ("join_pieces", "joined", {"first_edge": first, "second_edge": second})


def test_what_does_not_lie_on_each_other_is_not_joined() -> None:
    short = join(f"{FRONT}/center_front", f"{BACK}/hem")
    assert stopped(with_steps(skirt_recipe(), short)) == "join-misfit"
    # The side seams are one line, but both bulge outward: laid on each other they part.
    bulging = join(f"{FRONT}/side_seam", f"{BACK}/side_seam")
    assert stopped(with_steps(skirt_recipe(), bulging)) == "join-misfit"
    one = join(f"{BACK}/hem", f"{BACK}/side_seam")
    assert stopped(with_steps(skirt_recipe(), one)) == "join-one-piece"


def test_a_seam_that_needs_the_edge_with_others_holds_the_join() -> None:
    """The side seam is sewn over above and below; the part below alone cannot leave it."""
    below = join(f"{FRONT}/side_seam/below", f"{BACK}/side_seam/below")
    assert stopped(with_steps(CUT, below)) == "join-seam-shared"


def test_a_notch_counted_along_more_than_the_joined_edge_holds_the_join() -> None:
    pattern = run(CUT).pattern
    edges = ("yoke.front_above/style_line", f"{FRONT}/center_front/above")
    group = replace(pattern, groups=frozen_map({**pattern.groups, "x.y/run": Group(edges, "x")}))
    noted = group.with_notches(Notch("x.y/notch", Place("x.y/run", "yoke.front_above/style_line", 3.0)))
    with pytest.raises(StepRefused, match="join-notch-shared"):
        list(_notches_on(noted, {edges[0]}))
    assert "x.y/notch" in list(_notches_on(noted, set(edges)))


CENTER = {"edge": f"{FRONT}/center_front", "from_point": f"{FRONT}/waist_center"}

REFUSED: list[tuple[str, dict[str, Any], str]] = [
    (
        "two pieces",
        {"end": place(f"{BACK}/center_back", f"{BACK}/waist_center", "15 cm")},
        "line-between-pieces",
    ),
    ("one edge", {"end": place(f"{FRONT}/side_seam", f"{FRONT}/waist_side", "30 cm")}, "cut-same-edge"),
    ("at the end", {"end": {**CENTER, "fraction": 1.0}}, "cut-at-end"),
    (
        "beyond",
        {"end": place(f"{FRONT}/center_front", f"{FRONT}/waist_center", "3000 mm")},
        "place-beyond-edge",
    ),
    ("turned", {"end": place(f"{FRONT}/center_front", f"{FRONT}/hem_center", "40 cm")}, "line-ends-disagree"),
    ("no end", {"end": place(f"{FRONT}/center_front", f"{FRONT}/waist_side", "15 cm")}, "end-lost"),
    (
        "through the dart",
        {
            "start": place(f"{FRONT}/side_seam", f"{FRONT}/waist_side", "50 mm"),
            "end": place(f"{FRONT}/center_front", f"{FRONT}/waist_center", "50 mm"),
        },
        "style-line-crosses",
    ),
    (
        "no amount",
        {"end": CENTER},
        "place-needs-one-amount",
    ),
]


@pytest.mark.parametrize(("line", "code"), [row[1:] for row in REFUSED], ids=[row[0] for row in REFUSED])
def test_lines_that_cannot_be_cut_are_refused(line: dict[str, Any], code: str) -> None:
    if code == "cut-same-edge":
        line = {**line, "start": place(f"{FRONT}/side_seam", f"{FRONT}/hem_side", "20 cm")}
    assert stopped(cut_one(**line)) == code


def test_all_lines_are_cut_or_none() -> None:
    bad = {
        **yoke_line(BACK, "center_back"),
        "end": place(f"{BACK}/center_back", f"{BACK}/waist_center", "3000 mm"),
    }
    recipe = with_steps(
        skirt_recipe(), ("cut_style_line", "cut", {"lines": [yoke_line(FRONT, "center_front"), bad]}), ZIP
    )
    done = replay(recipe, FORM_A)
    assert done.suspended is not None
    assert list(done.pattern.pieces) == [FRONT, BACK]
