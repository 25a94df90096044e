"""Seams join two ordered groups, and live on where one is cut, moved or crossed (design decision)."""

from typing import Any

import pytest

from notchbook.pattern import Pattern, require, walk_seam
from notchbook.recipe import remove_step, replay
from support.style_lines import (
    BACK,
    EMPIRE,
    FRONT,
    SKIRT_FRONT,
    bodice_with,
    code,
    good,
    hip_yoke,
    place,
    princess,
    skirt_with,
)
from support.yoke_skirt import FORM_A


def misfits(pattern: Pattern) -> dict[str, float]:
    """Every seam that is out of true by more than a pencil line."""
    walks = {name: walk_seam(pattern, seam).misfit for name, seam in pattern.seams.items()}
    return {name: misfit for name, misfit in walks.items() if abs(misfit) > 0.5}


def cut_front(**more: Any) -> dict[str, Any]:
    line = {
        "start": place(f"{FRONT}/side_seam", f"{FRONT}/waist_side", "6 cm", part=f"{FRONT}/side_seam/below"),
        "end": place(f"{FRONT}/center_front", f"{FRONT}/waist_center", "7 cm"),
        "darts": [{"intake": f"{FRONT}/waist_dart", "rest": "stays"}],
    }
    return {"lines": [line], **more}


def test_one_side_of_a_seam_is_cut() -> None:
    """The front side seam now lies on two pieces, the back one is whole: the walk is as it was."""
    pattern = good(bodice_with(("cut_style_line", "cut", cut_front())))
    seam = pattern.seams["bodice/side_seam"]
    assert seam.first[0].edge == f"{FRONT}/side_seam"
    carriers = {pattern.carriers[edge] for edge in require(pattern, f"{FRONT}/side_seam")}
    assert carriers == {"cut.front_above", "cut.front_below"}
    walk, before = walk_seam(pattern, seam), walk_seam(good(bodice_with()), seam)
    assert walk.misfit == pytest.approx(before.misfit, abs=0.01)
    assert [stop.notch for stop in walk.stations] == [stop.notch for stop in before.stations]
    for stop, old in zip(walk.stations, before.stations, strict=True):
        assert stop.first == pytest.approx(old.first, abs=0.01)
    assert misfits(pattern) == {}


def test_a_dart_leaves_a_paired_edge() -> None:
    """The bust dart leaves the side seam for a princess seam: the side seam is walked as sewn, as before."""
    pattern = good(bodice_with(("princess_seam", "princess", princess())))
    walk = walk_seam(pattern, pattern.seams["bodice/side_seam"])
    before = walk_seam(good(bodice_with()), good(bodice_with()).seams["bodice/side_seam"])
    assert walk.first == pytest.approx(before.first, abs=0.05)
    assert walk.misfit == pytest.approx(before.misfit, abs=0.05)
    assert walk.stations[0].first == pytest.approx(before.stations[0].first, abs=0.05)
    assert misfits(pattern) == {}


def test_a_yoke_crosses_a_seam() -> None:
    """Both sides of the side seam are cut by one yoke line: the seam is sewn over both cuts."""
    pattern = good(skirt_with(("cut_style_line", "yoke", hip_yoke()), measures=FORM_A))
    walk = walk_seam(pattern, pattern.seams["skirt/side_seam"])
    assert walk.misfit == pytest.approx(0.0, abs=0.01)
    for panel in ("front", "back"):
        above, below = (
            require(pattern, f"skirt.{panel}/side_seam")
            if panel == "front"
            else reversed(require(pattern, f"skirt.{panel}/side_seam"))
        )
        assert pattern.edges[above].length == pytest.approx(110.0, abs=0.01)
        assert pattern.carriers[above] == f"yoke.{panel}_above"
        assert pattern.carriers[below] == f"yoke.{panel}_below"
    assert misfits(pattern) == {}


def test_a_seam_out_of_true_is_still_alive_and_says_by_how_much() -> None:
    """Only the front is cut, and only the front lengthened below the cut: the walk says what is missing."""
    cut = {"lines": hip_yoke()["lines"][:1]}
    longer = {"hems": [f"{SKIRT_FRONT}/hem"], "amount": "12 mm"}
    steps = (("cut_style_line", "cut", cut), ("change_length", "longer", longer))
    walk = misfits(good(skirt_with(*steps, measures=FORM_A)))
    assert walk == {"skirt/side_seam": pytest.approx(-12.0, abs=0.05)}


def test_seams_live_on_through_yoke_princess_and_seam_under_the_bust() -> None:
    """A back and a front cut in turn: every seam of the block and of the cuts is true."""
    pattern = good(bodice_with(("cut_style_line", "empire", EMPIRE)))
    assert misfits(pattern) == {}
    assert set(pattern.seams) >= {
        "bodice/shoulder",
        "bodice/side_seam",
        "empire/front_style_line",
        "empire/back_style_line",
    }


def test_without_the_cut_exactly_its_dependants_are_lost() -> None:
    allowance = {"edges": ["yoke.front_above/style_line"], "width": "2 cm"}
    longer = {"hems": [f"{SKIRT_FRONT}/hem", "skirt.back/hem"], "amount": "5 cm"}
    done = skirt_with(
        ("cut_style_line", "yoke", hip_yoke()),
        ("change_length", "longer", longer),
        ("set_allowance", "wide", allowance),
        measures=FORM_A,
    )
    good(done)
    without = replay(remove_step(done.recipe, "cut_style_line-1"), FORM_A)
    assert code(without) == "name-lost"
    assert without.suspended is not None
    assert without.suspended.step == "set_allowance-1"
    assert [state.record.id for state in without.states] == ["skirt-1", "change_length-1"]


def test_a_cut_changes_no_name_that_it_does_not_touch() -> None:
    before, after = good(bodice_with()), good(bodice_with(("cut_style_line", "cut", cut_front())))
    untouched = set(before.pieces[BACK].names())
    assert untouched <= set(after.index)
    for name in before.pieces[BACK].names():
        if name in before.edges:
            assert after.edges[name] == before.edges[name]
