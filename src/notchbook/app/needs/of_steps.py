"""What blocks and styles need of a body, with the blocks that must stand before them."""

from collections.abc import Mapping
from contextlib import suppress
from dataclasses import replace
from typing import Any

from pydantic import ValidationError

from notchbook.app.needs.garment_parameters import blocks_in_order, chosen_by_block
from notchbook.body import MeasureSet
from notchbook.errors import InputError
from notchbook.recipe import MeasureNeeds, Recipe, StepDefinition, StepRecord, definition, needs_together
from notchbook.recipe.parameters import read_amount
from notchbook.recipe.targets.numbers import amounts_in
from notchbook.recipe.track import parameter_error, read_parameters


def needs_of_block(
    block: str, measures: MeasureSet | None = None, parameters: Mapping[str, Any] | None = None
) -> MeasureNeeds:
    """What a block and those that it is drafted with need, each key once.

    Of this body with these parameters; without a body all that is ever needed. InputError
    ``block-unknown``; ``parameter-refused`` and ``setting-unknown`` where the parameters cannot be read.
    """
    steps = blocks_in_order(block, parameters or {})
    if measures is None:
        return needs_together(_ever(step.needs) for step in steps)
    chosen = chosen_by_block(block, parameters or {})
    return needs_together(_of_body(step, chosen[step.operation], measures) for step in steps)


def needs_of_recipe(recipe: Recipe, measures: MeasureSet | None = None) -> MeasureNeeds:
    """What the steps of a recipe need of this body, or ever where none is given, each key once.

    That is what each block needs, and the measures that an amount of any step is written in: a sleeve with
    the length ``arm_length - 6 cm`` needs the arm length.
    """
    return needs_together(_of_record(record, measures) for record in recipe.steps)


def _ever(needs: MeasureNeeds) -> MeasureNeeds:
    at_times = tuple(key for one in needs.sometimes for key in one.keys)
    return MeasureNeeds((*needs.needed, *at_times), needs.helpful, needs.estimated)


def _of_body(step: StepDefinition[Any], parameters: Mapping[str, Any], measures: MeasureSet) -> MeasureNeeds:
    needs = step.needs
    if step.needs_for is not None:
        try:
            read = step.parameters.model_validate(dict(parameters))
        except ValidationError as error:
            raise parameter_error(f"{step.operation}-1", error) from error
        needs = step.needs_of(read, measures)
    return _with_amounts(needs, step, parameters)


def _of_record(record: StepRecord, measures: MeasureSet | None) -> MeasureNeeds:
    step = definition(record.operation)
    needs = _ever(step.needs) if measures is None else step.needs
    if measures is not None and step.needs_for is not None:
        # Where parameters cannot be read, the run says which, and why.
        with suppress(InputError):
            needs = step.needs_of(read_parameters(step, record), measures)
    return _with_amounts(needs, step, record.parameters)


def _with_amounts(
    needs: MeasureNeeds, step: StepDefinition[Any], parameters: Mapping[str, Any]
) -> MeasureNeeds:
    """The needs, and the measures in which amounts of the step are written."""
    named = (key for text in amounts_in(step.form, parameters) for key in _measures_in(text))
    return replace(needs, needed=tuple(dict.fromkeys((*needs.needed, *named))))


def _measures_in(amount: str) -> tuple[str, ...]:
    """The measures that an amount is written in; none where it cannot be read: the run says so, and why."""
    try:
        return read_amount(amount).measures
    except InputError:
        return ()
