"""Invented bodies and recipes for the tests of the stretch blocks; none of them is anybody. mm."""

from collections.abc import Sequence
from typing import Any

from notchbook.app.examining import examine
from notchbook.body import MeasureSet, PopulationName
from notchbook.pattern import Finding
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.bodice_bodies import CHILD, FULL_BUST, MAN, WOMAN, body

_LIMBS: dict[str, float] = {
    "upper_arm_girth": 285.0,
    "wrist_girth": 163.0,
    "arm_length": 590.0,
    "crotch_length": 700.0,
    "standing_rise": 265.0,
    "inside_leg": 780.0,
    "thigh_girth": 570.0,
    "knee_girth": 370.0,
    "calf_girth": 360.0,
    "ankle_girth": 230.0,
}

WHOLE_WOMAN = WOMAN | _LIMBS
"""The woman of bust 92 with arms and legs."""

WHOLE_PLUS = (
    FULL_BUST
    | _LIMBS
    | {
        "upper_arm_girth": 360.0,
        "thigh_girth": 680.0,
        "crotch_length": 780.0,
        "knee_girth": 430.0,
        "calf_girth": 410.0,
        "ankle_girth": 260.0,
    }
)
"""The woman with a full bust with arms and legs."""

WHOLE_MAN = MAN | _LIMBS | {"upper_arm_girth": 320.0, "arm_length": 630.0, "crotch_length": 700.0}
"""The man of chest 100 with arms and legs."""

WHOLE_CHILD = CHILD | {
    "shoulder_slope": 22.0,
    "upper_arm_girth": 190.0,
    "wrist_girth": 125.0,
    "arm_length": 400.0,
    "crotch_length": 500.0,
    "standing_rise": 185.0,
    "inside_leg": 510.0,
    "thigh_girth": 370.0,
    "knee_girth": 260.0,
    "calf_girth": 245.0,
    "ankle_girth": 175.0,
}
"""The child of 116 cm with arms and legs."""

BODIES: dict[str, tuple[dict[str, float], PopulationName | None]] = {
    "woman": (WHOLE_WOMAN, "women"),
    "plus": (WHOLE_PLUS, "women"),
    "man": (WHOLE_MAN, "men"),
    "child": (WHOLE_CHILD, None),
}

CLOTH = {"across": "50 %", "along": "50 %"}
"""A stretchy knit, both ways alike."""


def whole(name: str = "woman", **more: float) -> MeasureSet:
    """One of the bodies; what is named replaces its value."""
    values, population = BODIES[name]
    return body({**values, **more}, population)


def stretch_recipe(block: str, base: MeasureSet, **parameters: Any) -> Recipe:
    """The block alone, in a stretchy knit unless another cloth is named."""
    return add_step(Recipe(block), block, {**CLOTH, **parameters}, base=base)


def stretch_run(block: str, base: MeasureSet | None = None, **parameters: Any) -> Replay:
    """The block drafted for a body."""
    measures = base or whole()
    return replay(stretch_recipe(block, measures, **parameters), measures)


def banded_run(
    block: str,
    edges: Sequence[tuple[str, str]],
    base: MeasureSet | None = None,
    top: dict[str, Any] | None = None,
    **parameters: Any,
) -> Replay:
    """The block with a band round these edges: each by its name and the end at which the band comes to it."""
    measures = base or whole()
    recipe = stretch_recipe(block, measures, **(top or {}))
    given = [{"edge": edge, "starts_at": point} for edge, point in edges]
    recipe = add_step(recipe, "stretch_band", {"edges": given, **parameters}, base=measures)
    return replay(recipe, measures)


def spoken_of(run: Replay, *, notes: bool = False) -> list[Finding]:
    """What checks and drafts find in the run: to look at, and with ``notes`` all that is said."""
    return [finding for finding in examine(run).findings if notes or finding.severity != "note"]


def codes(run: Replay) -> set[str]:
    """The codes of everything that the steps themselves say."""
    return {finding.code for finding in run.notes}
