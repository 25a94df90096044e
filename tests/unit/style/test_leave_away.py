"""Pieces left away: what stays is as it was, seams go on over what is left, names say why they are gone."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.app.examining import examine
from notchbook.errors import NameLost
from notchbook.pattern import Pattern, Severity, locate, require, sewn_length, walk_seam
from notchbook.recipe import Replay
from support.style_lines import SKIRT_BACK, SKIRT_FRONT, code, good, place, skirt_with
from support.yoke_skirt import FORM_A

ABOVE = ("low.front_above", "low.back_above")


def lines(down: str = "16 cm", *, both: bool = True, shape: str = "curve") -> dict[str, Any]:
    front = {
        "start": place(f"{SKIRT_FRONT}/side_seam", f"{SKIRT_FRONT}/waist_side", down),
        "end": place(f"{SKIRT_FRONT}/center_front", f"{SKIRT_FRONT}/waist_center", "19 cm"),
        "shape": shape,
    }
    back = {
        "start": place(f"{SKIRT_BACK}/side_seam", f"{SKIRT_BACK}/waist_side", down),
        "end": place(f"{SKIRT_BACK}/center_back", f"{SKIRT_BACK}/waist_center", "19 cm"),
        "shape": shape,
    }
    return {"lines": [front, back] if both else [front]}


def lowered(cut: dict[str, Any], pieces: tuple[str, ...] = ABOVE, *more: tuple[str, str, Any]) -> Replay:
    steps = (("cut_style_line", "low", cut), ("leave_away", "without", {"pieces": list(pieces)}), *more)
    return skirt_with(*steps, measures=FORM_A)


def before(cut: dict[str, Any]) -> Pattern:
    return good(skirt_with(("cut_style_line", "low", cut), measures=FORM_A))


def test_what_stays_is_as_it_was_and_the_rest_is_gone() -> None:
    whole, left = before(lines()), good(lowered(lines()))
    assert set(left.pieces) == set(whole.pieces) - set(ABOVE)
    assert {name: left.pieces[name].outline for name in left.pieces} == {
        name: whole.pieces[name].outline for name in left.pieces
    }
    assert not {name for name in left.seams if name.startswith("low/")}


@given(st.integers(min_value=140, max_value=240))
@settings(max_examples=8, deadline=None)
def test_the_side_seam_goes_on_over_what_is_left_of_it(down: int) -> None:
    whole, left = before(lines(f"{down} mm")), good(lowered(lines(f"{down} mm")))
    seam = left.seams["skirt/side_seam"]
    assert abs(walk_seam(left, seam).misfit) < 0.1
    gone = sewn_length(whole, f"{SKIRT_FRONT}/side_seam") - sum(
        sewn_length(left, use.edge) for use in seam.first
    )
    assert gone == pytest.approx(down, abs=0.01)


def test_nothing_is_broken_and_the_free_edge_has_an_allowance() -> None:
    run = lowered(lines(shape="even"))
    report = examine(run)
    assert report.broken == ()
    assert [one.code for one in report.findings if one.severity is Severity.STOP] == []
    assert "closure-left-away" in {one.code for one in report.findings}
    assert run.pattern.allowances["low.front_below/style_line"].allowance_class == "facing_edge"


def test_a_step_that_asks_for_what_is_gone_is_told_so() -> None:
    run = lowered(
        lines(), ABOVE, ("set_hem", "hem", {"hems": ["low.front_above/style_line"], "depth": "2 cm"})
    )
    assert run.suspended is not None
    assert isinstance(run.suspended.error, NameLost)
    assert "left away" in run.suspended.error.text()


def test_a_notch_stays_where_it_was() -> None:
    whole, left = before(lines()), good(lowered(lines()))
    for name in (f"{SKIRT_FRONT}/hip_notch", f"{SKIRT_BACK}/hip_notch"):
        first, second = (locate(one, one.notches[name].place) for one in (whole, left))
        assert first.position.distance_to(second.position) < 1e-6
        assert left.notches[name].place.edge not in left.groups


def test_a_seam_that_would_not_match_is_refused() -> None:
    assert code(lowered(lines(both=False), ("low.front_above",))) == "leave-away-across"


def test_all_pieces_are_never_left_away() -> None:
    pieces = (*ABOVE, "low.front_below", "low.back_below")
    assert code(lowered(lines(), pieces)) == "leave-away-all"


def test_what_is_left_of_a_divided_edge_can_be_required() -> None:
    left = good(lowered(lines()))
    assert require(left, f"{SKIRT_FRONT}/side_seam/below")
    with pytest.raises(NameLost):
        require(left, f"{SKIRT_FRONT}/side_seam")
