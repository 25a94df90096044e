"""Invented bodies with arms for the tests of the sleeve, and the recipes of bodice and sleeve."""

from typing import Any

from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.pattern import Finding
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.bodice_bodies import WOMAN, body, without

ARM: dict[str, float] = {
    "upper_arm_girth": 285.0,
    "elbow_girth": 262.0,
    "wrist_girth": 163.0,
    "elbow_length": 335.0,
    "arm_length": 590.0,
}
"""An arm for a woman of bust 92, invented."""


def woman(**more: float) -> MeasureSet:
    """The woman of bust 92 with an arm; what is named replaces its value."""
    return body({**WOMAN, **ARM, **more})


def woman_without(*keys: str) -> MeasureSet:
    """The same woman, some measures not taken."""
    return body(without({**WOMAN, **ARM}, *keys))


def sleeve_recipe(base: MeasureSet, top: dict[str, Any] | None = None, **parameters: Any) -> Recipe:
    """A bodice, and the sleeve in it."""
    chosen = (
        parameters if {"fabric", "cap_ease"} & parameters.keys() else {"fabric": "wool_dress", **parameters}
    )
    recipe = add_step(Recipe("Bodice and sleeve"), "bodice", top or {}, base=base)
    return add_step(recipe, "sleeve", chosen, base=base)


def sleeve_run(
    measures: MeasureSet | None = None, top: dict[str, Any] | None = None, **parameters: Any
) -> Replay:
    """Bodice and sleeve drafted for a body."""
    base = measures or woman()
    return replay(sleeve_recipe(base, top, **parameters), base)


def spoken_of(run: Replay) -> list[Finding]:
    """What checks and drafts find to look at in the run."""
    return [finding for finding in examine(run).findings if finding.severity != "note"]
