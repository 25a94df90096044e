"""Hooks with their eyes or bars, and press studs: marked on both sides of an opening where they are sewn."""

from dataclasses import replace
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Point
from notchbook.pattern import Mark, Pattern, locate, part_name, spoken
from notchbook.pattern.operation import Operation
from notchbook.recipe import (
    AmountText,
    Change,
    PlaceParameters,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.closures.divided import owner_on
from notchbook.style.closures.hook_beside import beside_notes
from notchbook.style.closures.not_on_fold import require_not_on_fold
from notchbook.style.closures.within_trade import told_unusual


class HookParameters(StepParameters):
    """Where the hook and its eye are sewn: beside a place on an edge, so far inside it."""

    hook: PlaceParameters
    """Beside which place of an edge the hook is sewn, on the side that lies over."""
    eye: PlaceParameters
    """Beside which place of an edge the eye or bar is sewn, on the side that lies under."""
    hook_inside: AmountText = "5 mm"
    """How far inside the edge the hook lies, so that it does not show."""
    eye_inside: AmountText = "5 mm"
    """How far inside the edge the eye or bar lies."""
    kind: Literal["hook_and_bar", "hook_and_eye", "press_stud"] = "hook_and_bar"
    """A flat hook and bar for a waistband, a hook and eye above a zip, or a press stud."""


def run(pattern: Pattern, context: StepContext, parameters: HookParameters) -> Change:
    """Mark both; no shape changes."""
    hook, eye = (context.mm(one) for one in (parameters.hook_inside, parameters.eye_inside))
    after, hook_mark = _marked(pattern, context, parameters.hook, ("hook", hook))
    after, eye_mark = _marked(after, context, parameters.eye, ("eye", eye))
    first, second = {
        "hook_and_bar": ("hook", "bar"),
        "hook_and_eye": ("hook", "eye"),
        "press_stud": ("ball of the press stud", "socket"),
    }[parameters.kind]
    text = f"Close the opening as it is worn, and sew the {first} and its {second} at their marks."
    at = (parameters.hook.edge, parameters.eye.edge)
    piece = locate(pattern, context.place(pattern, parameters.hook)).piece
    notes = (
        *told_unusual(piece, "hook_and_eye", {"hook_inside": hook, "eye_inside": eye}),
        *beside_notes(after, hook_mark, eye_mark),
    )
    after = after.with_operations(Operation(part_name(context.slug, "hook"), "finish", text, at))
    return Change(after, notes=notes)


def _marked(
    pattern: Pattern, context: StepContext, one: PlaceParameters, mark: tuple[str, float]
) -> tuple[Pattern, Mark]:
    """The pattern with the mark, and the mark. StepRefused ``hook-off-piece``, ``opening-on-fold``."""
    word, inside = mark
    require_not_on_fold(pattern, one.edge)
    found = locate(pattern, context.place(pattern, one))
    piece = pattern.pieces[found.piece]
    inward: Point = found.edge.path.tangent_at(found.distance).perpendicular()
    place = found.position + inward * inside
    if inside <= 0.0 or not piece.sew_line.contains(place):
        raise StepRefused("hook-off-piece", edge=spoken(found.edge.name), inside=inside)
    name = part_name(owner_on(context.slug, piece.name), word)
    made = Mark(name, place, "point")
    return pattern.with_pieces(replace(piece, marks=(*piece.marks, made))), made


STEP = StepDefinition(
    operation="hook_and_eye",
    version=1,
    kind="style",
    phase="whole",
    title="Hook and eye",
    sentence="{kind} from {hook} to {eye}",
    parameters=HookParameters,
    run=run,
)
