"""Amounts of closures: below nothing they are refused, outside of what is usual they are told, else neither.

The usual ranges are of common practice and stand in the table of figures; here each row is gone past from
both sides in the step that reads it.
"""

from collections.abc import Callable, Iterable
from typing import Any

import pytest

from notchbook.pattern import Severity
from notchbook.recipe import Replay
from notchbook.recipe.parameters import read_amount
from notchbook.recipe.registry import definition
from notchbook.recipe.style_figure import RangedFigure
from notchbook.style.closures import figures
from notchbook.style.closures.usual_amounts import USUAL_AMOUNTS
from support.closure_steps import BACK_OPENING, FLY, FLY_WAIST, SIDE_SLIT, STAND, STRAP, stepped
from support.edge_steps import applied, bodice, place, refusal, skirt, trousers


def back_seamed() -> Replay:
    """The bodice with a seam down its back."""
    return stepped(bodice(), ("center_seam", {"center": "bodice.back/center_back"}))


WRITTEN_LOOPS = {"edges": FLY_WAIST, "follow_waist": False}
LOOPS = {"edge": "bodice.back/center_back", "top": "bodice.back/nape", "length": "30 cm", "button": "5 mm"}
LONG_STAND = {
    "centers": [{"center": "skirt.front/center_front", "top": "skirt.front/waist_center"}],
    "number": 2,
}

Told = tuple[Callable[[], Replay], str, dict[str, Any], str, Iterable[Any], Iterable[Any]]

ROWS: dict[str, Told] = {
    "FACING_CUT_ON": (
        skirt,
        "button_stand",
        LONG_STAND,
        "facing_width",
        ("40 mm", "90 mm"),
        ("35 mm", "95 mm"),
    ),
    "LAST_ABOVE_HEM": (skirt, "button_stand", LONG_STAND, "last", ("60 mm", "40 cm"), ("20 mm", "45 cm")),
    "FLY_WIDTH": (trousers, "fly", FLY, "width", ("32 mm", "50 mm"), ("20 mm", "55 mm")),
    "SHIELD_MORE": (trousers, "fly", FLY, "shield_more", ("5 mm", "8 mm"), ("2 mm", "20 mm")),
    "LOOPS_APART": (trousers, "belt_loops", WRITTEN_LOOPS, "each_side", (3,), (1, 7)),
    "CASING_EASE": (skirt, "elastic_casing", {}, "ease", ("2 mm", "8 mm"), ("0 mm", "30 mm")),
    "ELASTIC_SHARE": (skirt, "elastic_casing", {}, "share", (0.85, 0.95), (0.6, 1.05)),
    "SLIT_TURNED": (skirt, "hem_slit", SIDE_SLIT, "turned", ("10 mm", "50 mm"), ("5 mm", "12 cm")),
    "BUTTON_LOOPS_APART": (back_seamed, "button_loops", LOOPS, "number", (12, 1), (50, 2)),
    "SPACING": (bodice, "button_stand", {**STAND, "level": None}, "number", (5,), (2,)),
}
"""Rows of the figures: base, step, its parameters, the one held against the row, what is usual, what not."""


def told(row: Told, value: Any) -> set[str]:
    """The codes of what is to be looked at with this value."""
    base, operation, parameters, field, _, _ = row
    done = applied(base(), operation, **{**parameters, field: value})
    assert done.suspended is None, done.suspended.error
    return {one.code for one in done.states[-1].notes if one.severity is Severity.LOOK}


def code_of(name: str) -> str:
    """Buttons that are far apart have a finding of their own."""
    return "buttons-far-apart" if name == "SPACING" else "amount-unusual"


HOOKS = {word: place("skirt.back/center_back", "skirt.back/waist_center", "5 mm") for word in ("hook", "eye")}
GIVEN: dict[str, tuple[Callable[[], Replay], dict[str, Any]]] = {
    "vent": (skirt, {"edge": "skirt.back/center_back", "hem_end": "skirt.back/hem_center"}),
    "hem_slit": (skirt, SIDE_SLIT),
    "button_stand": (skirt, LONG_STAND),
    "elastic_casing": (skirt, {"made": "separate"}),
    "belt_loops": (trousers, {"edges": FLY_WAIST}),
    "strap": (bodice, {**STRAP, "length": "60 cm"}),
    "tie": (skirt, {}),
    "belt": (skirt, {"holes": 0}),
    "waistband": (skirt, {"edges": BACK_OPENING}),
    "contoured_waistband": (skirt, {"edges": BACK_OPENING}),
    "button_loops": (back_seamed, {**LOOPS, "number": 2, "length": "5 cm"}),
    "hook_and_eye": (skirt, HOOKS),
}
"""Each step of the table of usual amounts: its base and parameters."""


def no_measure(key: str) -> float:
    """A default that is a length needs none."""
    raise KeyError(key)


def unusual(operation: str, field: str, value: float) -> set[str]:
    """The fields that the step tells as unusual with this amount, mm; or the code with which it refuses."""
    base, parameters = GIVEN[operation]
    done = applied(base(), operation, **{**parameters, field: f"{value:.4f} mm"})
    if done.suspended is not None:
        return {done.suspended.error.code}
    notes = [one for one in done.states[-1].notes if one.code == "amount-unusual"]
    return {one.message.partition(":")[0].replace(" ", "_") for one in notes}


@pytest.mark.parametrize(("operation", "field"), USUAL_AMOUNTS)
def test_an_amount_outside_of_what_is_made_is_told_or_refused(operation: str, field: str) -> None:
    row = USUAL_AMOUNTS[operation, field]
    for beyond in (row.least - 0.6, row.most + 1.0, 20.0 * row.most):
        if beyond >= 0.0:
            found = unusual(operation, field, beyond)
            assert len(found) == 1 and found <= {field, *REFUSED}, beyond


REFUSED = {
    "amount-not-positive",
    "band-too-short",
    "band-too-round",
    "hook-off-piece",
    "loops-too-many",
    "place-beyond-edge",
    "stand-facing-too-narrow",
    "stand-too-narrow",
    "strap-too-short",
    "strip-too-short",
    "vent-slant",
}
"""With which codes these steps refuse what cannot be drawn."""


@pytest.mark.parametrize(("operation", "field"), USUAL_AMOUNTS)
def test_what_is_given_when_nothing_is_said_is_usual(operation: str, field: str) -> None:
    row = USUAL_AMOUNTS[operation, field]
    assert row.least <= row.value <= row.most
    assert field not in unusual(operation, field, row.value)
    said = definition(operation).parameters.model_fields[field].default
    if said is not None:
        assert read_amount(said).evaluate(no_measure) == pytest.approx(row.value)


def test_no_range_of_the_table_is_idle() -> None:
    assert set(ROWS) == {name for name, one in vars(figures).items() if isinstance(one, RangedFigure)}


@pytest.mark.parametrize("name", ROWS)
def test_what_is_usual_is_not_told(name: str) -> None:
    for value in ROWS[name][4]:
        assert code_of(name) not in told(ROWS[name], value), value


@pytest.mark.parametrize("name", ROWS)
def test_what_is_outside_of_the_usual_is_told_and_drawn(name: str) -> None:
    for value in ROWS[name][5]:
        assert code_of(name) in told(ROWS[name], value), value


def test_the_finding_says_the_amount_and_the_limit_that_it_passes() -> None:
    done = stepped(trousers(), ("fly", {**FLY, "shield_more": "20 mm"}))
    (note,) = done.states[-1].notes
    assert (note.measured, note.wanted, note.piece) == (20.0, 8.0, "fly.shield")
    assert "20.0 mm" in note.message and "5.0 mm" in note.message and "8.0 mm" in note.message


@pytest.mark.parametrize(
    ("base", "operation", "given"),
    [
        (skirt, "elastic_casing", {"ease": "-3 mm"}),
        (skirt, "elastic_casing", {"turned": "-1 mm"}),
        (skirt, "belt_loops", {"edges": BACK_OPENING, "each_side": 2, "ease": "-5 mm"}),
        (bodice, "strap", {**STRAP, "width": "2 mm", "to_fit": "-1 cm"}),
        (bodice, "strap", {**STRAP, "width": "2 mm", "to_fit": "1/4 waist - 40 cm"}),
    ],
)
def test_what_is_added_cannot_be_below_nothing(
    base: Callable[[], Replay], operation: str, given: dict[str, Any]
) -> None:
    assert refusal(base(), operation, **given) == "amount-negative"
    field = next(word for word in ("to_fit", "turned", "ease") if word in given)
    done = applied(base(), operation, **{**given, field: "0 mm"})
    assert done.suspended is None
