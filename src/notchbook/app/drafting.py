"""Drafting: from a block's name and a measure set to a pattern, with all that is to be said of it."""

from collections.abc import Mapping, Sequence
from typing import Any

from notchbook.app.needs.garment_parameters import (
    blocks_in_order,
    chosen_by_block,
    standing,
)
from notchbook.app.needs.of_steps import needs_of_block
from notchbook.body import MeasureSet, refuse_inconsistent
from notchbook.errors import NotchbookError
from notchbook.pattern import Side
from notchbook.recipe import Recipe, Replay, StepDefinition, add_step, definition, replay


def draft_recipe(
    block: str, measures: MeasureSet, parameters: Mapping[str, Any] | None = None, title: str = ""
) -> Recipe:
    """A recipe of the block and, before it, of those that it is drafted with; open choices settled.

    ``parameters`` may name those of the other blocks too (see ``garment_parameters``). Refused with
    InputError: ``block-unknown``, ``measure-missing`` (naming all that are needed), measures that no body has
    (``check_consistent``) and parameters that cannot be read.
    """
    measures.require(needs_of_block(block, measures, parameters).needed)
    refuse_inconsistent(measures)
    chosen = chosen_by_block(block, parameters or {})
    steps = blocks_in_order(block, parameters or {})
    recipe = Recipe(title or _title(steps))
    for before in steps:
        recipe = add_block(recipe, before.operation, chosen[before.operation], base=measures)
    return recipe


def _title(steps: Sequence[StepDefinition[Any]]) -> str:
    """``Skirt block``; ``Bodice and sleeve`` where one is drafted with the other."""
    names = [step.title.removeprefix("Draft ") for step in steps]
    words = " and ".join(names) if len(names) > 1 else f"{names[0]} block"
    return words[:1].upper() + words[1:]


def add_block(
    recipe: Recipe,
    operation: str,
    parameters: Mapping[str, Any] | None = None,
    *,
    base: MeasureSet,
    slug: str = "",
    side: Side = "both",
    before: str | None = None,
) -> Recipe:
    """As :func:`notchbook.recipe.add_step`, for any operation; what it is drafted with stands before it.

    A block that it is drafted with and that the recipe lacks is added too, as it comes. A parameter
    of such a block's name is filled with the slug of the last one in the recipe, unless it is given.
    """
    step = definition(operation)
    filled = dict(parameters or {})
    for other in step.drafted_with:
        if not standing(recipe, other):
            recipe = add_block(recipe, other, base=base, before=before)
        if other in step.parameters.model_fields:
            filled.setdefault(other, standing(recipe, other))
    return add_step(recipe, operation, filled, base=base, slug=slug, side=side, before=before)


def trial_recipe(block: str, measures: MeasureSet, parameters: Mapping[str, Any] | None = None) -> Recipe:
    """As :func:`draft_recipe`, to try what a pattern rests on: what would be asked gets its first answer."""
    chosen = dict(parameters or {})
    while True:
        recipe = draft_recipe(block, measures, chosen)
        stop = replay(recipe, measures).suspended
        choices = () if stop is None else asks(stop.error)
        if stop is None or not choices or stop.error.facts["setting"] in chosen:
            return recipe
        chosen[str(stop.error.facts["setting"])] = choices[0]


def asks(error: NotchbookError) -> tuple[str, ...]:
    """The values of which one must be chosen, where a step is refused because nobody chose; else empty.

    Such a refusal has the facts ``setting`` (the parameter), ``choices`` (its values) and ``said`` (the words
    of each).
    """
    choices = error.facts.get("choices")
    return choices if isinstance(choices, tuple) and "setting" in error.facts else ()


def draft(
    block: str, measures: MeasureSet, parameters: Mapping[str, Any] | None = None, title: str = ""
) -> Replay:
    """Draft a block; a refusal of the draft is raised, never returned as a half-made pattern."""
    drafted = replay(draft_recipe(block, measures, parameters, title), measures)
    return completed(drafted)


def completed(run: Replay) -> Replay:
    """The run, when it reached its end; else the refusal that stopped it, with a note on where it stopped."""
    stop = run.suspended
    if stop is None:
        return run
    note = f"The pattern steps stopped at {stop.step}"
    note += f"; {', '.join(stop.waiting)} must wait." if stop.waiting else "."
    if note not in getattr(stop.error, "__notes__", ()):
        stop.error.add_note(note)
    raise stop.error
