"""Collars, hoods and bindings of odd amounts: drawn so that they can be cut and sewn, or refused in words."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from notchbook.errors import InputError, StepRefused
from notchbook.recipe import Replay
from support.collar_steps import FRONT_EDGE, after, collared, on_stand, opened
from support.edge_steps import misfits
from support.traced_steps import ARMHOLE
from support.upper_patterns import drafted

LAPEL = {"edge": FRONT_EDGE, "breaks": "20 cm"}
FIELDS: dict[str, tuple[str, ...]] = {
    "flat_collar": ("width", "overlap", "point", "lean", "turn", "extension"),
    "roll_collar": ("stand", "fall", "drop", "point", "lean", "turn", "extension"),
    "stand_collar": ("height", "rise", "overlap", "button", "extension"),
    "shirt_collar": ("stand", "fall", "rise", "drop", "point", "lean", "turn", "overlap", "button"),
    "hood": ("height", "depth", "middle", "extension"),
    "notched_lapel": ("breaks", "stand", "fall", "swing", "lapel", "gorge", "top", "end", "facing", "turn"),
    "shawl_collar": ("breaks", "stand", "fall", "swing", "lapel", "facing", "facing_shoulder", "turn"),
    "binding": ("width",),
}
CHOICES: dict[str, dict[str, tuple[Any, ...]]] = {
    "flat_collar": {"front": ("round", "pointed"), "opens": ("front", "back")},
    "roll_collar": {"front": ("round", "pointed")},
    "stand_collar": {"front": ("round", "square"), "opens": ("front", "back")},
    "hood": {"panels": ("two", "three")},
    "notched_lapel": {"slope": (-30.0, 10.0, 40.0), "notch": (30.0, 75.0, 120.0)},
    "binding": {"fold": ("double", "single")},
}
ODD = (0.0, 0.01, 1.0, 3.0, 12.0, 25.0, 60.0, 120.0, 300.0, 1000.0, 1e5, -1.0, -40.0, -300.0)


@st.composite
def odd_amounts(draw: st.DrawFn, operation: str) -> dict[str, Any]:
    """One to three amounts of a step that nobody would ask for, and what it may choose."""
    fields = FIELDS[operation]
    chosen = draw(st.lists(st.sampled_from(fields), min_size=1, max_size=min(3, len(fields)), unique=True))
    amounts: dict[str, Any] = {field: f"{draw(st.sampled_from(ODD))} mm" for field in chosen}
    choices = CHOICES.get(operation, {})
    return amounts | {field: draw(st.sampled_from(among)) for field, among in choices.items()}


def made(operation: str, amounts: dict[str, Any]) -> Replay:
    """The step on a bodice that opens in front where it needs to."""
    if operation == "binding":
        return after(drafted("medium-92", "bodice"), operation, edges=ARMHOLE, **amounts)
    if operation in ("notched_lapel", "shawl_collar"):
        return on_stand(operation, **{**LAPEL, **amounts})
    return (collared if operation in ("flat_collar", "hood") else on_stand)(operation, **amounts)


@pytest.mark.parametrize("operation", sorted(FIELDS))
@given(data=st.data())
@settings(max_examples=20, deadline=None)
def test_odd_amounts_are_drawn_plainly_or_refused(operation: str, data: st.DataObject) -> None:
    """By an outside program: no outline crosses itself, and what is sewn together is as long (0.2 mm)."""
    done = made(operation, data.draw(odd_amounts(operation)))
    if done.suspended is not None:
        error = done.suspended.error
        assert isinstance(error, (StepRefused, InputError)), error
        assert error.text() and error.next_step()
        return
    for name, piece in done.pattern.pieces.items():
        shape = Polygon([(point.x, point.y) for point in piece.sew_line.flattened(0.002)])
        assert shape.is_valid and shape.area > 1.0, name
    off = {name: by for name, by in misfits(done.pattern).items() if name.startswith(f"{operation}/")}
    assert off == pytest.approx(dict.fromkeys(off, 0.0), abs=0.2)


def test_usual_amounts_are_drawn() -> None:
    """What the test above would also pass if every step refused everything."""
    for operation in FIELDS:
        assert made(operation, {}).suspended is None, operation
    assert opened().suspended is None
