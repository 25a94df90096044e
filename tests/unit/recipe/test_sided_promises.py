"""What a draft promises and says of a body whose sides differ."""

from dataclasses import replace

import pytest

from notchbook.pattern import Allowance, Expectation, Finding, Severity
from notchbook.pattern.expectation import Reach
from notchbook.pattern.names import Side
from notchbook.recipe.sided_promises import assemble_expectations, assemble_notes
from notchbook.recipe.sides import assemble
from support.hand_upper import hand_upper

RIGHT = hand_upper()
LEFT = RIGHT.with_allowances(
    {f"top.{panel}/side_seam": Allowance("side", 20.0) for panel in ("front", "back")}
)
"""The same with more allowance at the side, so that front and back differ from side to side."""
WHOLE = assemble(RIGHT, LEFT)


def promise(
    names: tuple[str, ...] = (),
    chains: tuple[tuple[str, ...], ...] = (),
    reach: Reach = "straight",
    times: int = 1,
) -> Expectation:
    return Expectation(
        "top/length", "x", names, times, 300.0, 10.0, "told", kind="length", chains=chains, reach=reach
    )


def assembled(right: Expectation, left: Expectation | None = None) -> tuple[Expectation, ...]:
    return assemble_expectations((right,), (left or right,), WHOLE.index)


def test_a_center_that_both_sides_share_is_promised_once_under_its_own_name() -> None:
    center = promise(names=("top.back/center_back",))
    assert assembled(center) == (center,)
    assert "top.back/center_back" in {line.name for line in WHOLE.pieces["top.back"].lines}


def test_a_way_from_the_center_to_a_side_keeps_the_point_at_the_center() -> None:
    depth = promise(chains=(("top.back/nape", "top.back/underarm"),), reach="down")
    right, left = assembled(depth)
    assert right.chains == (("top.back/nape", "top.back/underarm@right"),)
    assert left.chains == (("top.back/nape", "top.back/underarm@left"),)
    assert (right.name, left.name) == ("top/length@right", "top/length@left")
    assert (right.reach, right.kind) == ("down", "length")


def test_a_width_taken_twice_becomes_right_and_left() -> None:
    wide = promise(chains=(("top.front/neck_pit", "top.front/shoulder_point"),), reach="across", times=2)
    (both,) = assembled(wide, replace(wide, body=320.0))
    assert both.times == 1
    assert both.body == 310.0
    assert both.chains == (
        ("top.front/neck_pit", "top.front/shoulder_point@right"),
        ("top.front/neck_pit", "top.front/shoulder_point@left"),
    )


def test_inner_darts_stand_on_both_halves_of_a_whole_front() -> None:
    front = WHOLE.pieces["top.front"]
    assert [dart.name for dart in front.inner_darts] == [
        "top.front/waist_dart@right",
        "top.front/waist_dart@left",
    ]
    for dart in front.inner_darts:
        assert front.line(dart.center_leg).path.start.distance_to(front.points[dart.upper_point]) < 1e-9
    right, left = (front.points[dart.upper_point] for dart in front.inner_darts)
    assert (right.x, right.y) == (-left.x, left.y)


def test_the_place_of_ease_is_kept_on_both_sides() -> None:
    for side in ("right", "left"):
        assert WHOLE.seams[f"sleeve/front_armhole@{side}"].ease_between == ("balance_notch", "ease_notch")


SLEEVE = "sleeve.sleeve"
assert WHOLE.pieces[SLEEVE].cut != "single"


def filled(severity: Severity, room: float) -> Finding:
    """What is said of the sleeve that serves both arms."""
    return Finding("house", "arm-fills-sleeve", severity, "Told.", SLEEVE, measured=room, wanted=30.0)


@pytest.mark.parametrize("sides", [("right", "left"), ("left", "right")])
def test_of_a_piece_for_both_sides_the_graver_of_two_notes_is_kept(sides: tuple[Side, Side]) -> None:
    """One sleeve, two arms: the left fills it so far that cloth would be spoiled, the right does not."""
    said = {sides[0]: filled(Severity.STOP, 2.0), sides[1]: filled(Severity.NOTE, 25.0)}
    (note,) = assemble_notes((said["right"],), (said["left"],), WHOLE)
    assert (note.severity, note.measured) == (Severity.STOP, 2.0)
    assert note.message == f"Told. (The wearer's {sides[0]}.)"


def test_of_two_notes_as_grave_the_one_that_is_farther_off_is_kept() -> None:
    right, left = filled(Severity.LOOK, 20.0), filled(Severity.LOOK, 12.0)
    (note,) = assemble_notes((right,), (left,), WHOLE)
    assert (note.measured, note.message) == (12.0, "Told. (The wearer's left.)")


def test_what_differs_by_less_than_can_be_seen_is_said_of_the_whole() -> None:
    (note,) = assemble_notes((filled(Severity.LOOK, 20.0),), (filled(Severity.LOOK, 20.05),), WHOLE)
    assert (note.measured, note.message) == (20.0, "Told.")
