"""Drafting: from a block's name and a measure set to a pattern, with all that is to be said of it."""

from collections.abc import Mapping
from typing import Any

from notchbook.body import MeasureSet, refuse_inconsistent
from notchbook.errors import InputError
from notchbook.recipe import Recipe, Replay, StepDefinition, add_step, all_definitions, replay


def blocks() -> tuple[StepDefinition[Any], ...]:
    """The blocks that can be drafted, by name."""
    return tuple(step for step in all_definitions() if step.kind == "block")


def block_named(name: str) -> StepDefinition[Any]:
    """The block of this name; InputError ``block-unknown`` when there is none."""
    known = {step.operation: step for step in blocks()}
    if name not in known:
        raise InputError("block-unknown", block=name, known=tuple(known))
    return known[name]


def draft_recipe(
    block: str, measures: MeasureSet, parameters: Mapping[str, Any] | None = None, title: str = ""
) -> Recipe:
    """A recipe of one step: the block, its open choices settled on these measures.

    Refused with InputError: ``block-unknown``, ``measure-missing`` (naming all that are needed), and
    measures that no body has (``check_consistent``).
    """
    step = block_named(block)
    measures.require(step.needs.needed)
    refuse_inconsistent(measures)
    recipe = Recipe(title or f"{step.title.removeprefix('Draft ').capitalize()} block")
    return add_step(recipe, block, parameters, base=measures)


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
