"""Open choices of a step, settled once on the base measures and written down."""

from collections.abc import Callable
from typing import Any

from pydantic import ValidationError

from notchbook.body import MeasureSet
from notchbook.errors import HouseFault, NotchbookError
from notchbook.pattern.names import Side
from notchbook.pattern.pattern import Pattern
from notchbook.recipe.context import StepContext
from notchbook.recipe.parameters import StepParameters
from notchbook.recipe.recipe import StepRecord
from notchbook.recipe.registry import AnyStep
from notchbook.recipe.track import parameter_error, run_track

SettleOn = Callable[[Pattern, StepContext, Any], StepParameters]
"""Settles what a step leaves open on the pattern that it is given."""


def settled_parameters(
    step: AnyStep,
    parameters: dict[str, Any],
    base: MeasureSet,
    before: tuple[StepRecord, ...],
    named: tuple[str, str, Side],
) -> StepParameters:
    """The typed parameters with what they leave open settled on the base measures.

    ``before`` are the steps that run before it, for what depends on the pattern that it is given; ``named``
    are its slug, id and side. InputError for parameters that cannot be read.
    """
    slug, step_id, side = named
    try:
        read: StepParameters = step.parameters.model_validate(parameters)
    except ValidationError as error:
        raise parameter_error(step_id, error) from error
    context = StepContext(base, slug, step_id, "right" if side == "both" else side)
    if step.settle is not None:
        read = step.settle(context, read)
    if step.settle_on is None or all(getattr(read, field) for field in step.settles):
        return read
    return _settled_on(step.settle_on, read, context, before)


def _settled_on(
    settle_on: SettleOn, parameters: StepParameters, context: StepContext, before: tuple[StepRecord, ...]
) -> StepParameters:
    """What depends on the pattern, settled; left open where the steps before or the step itself cannot run,
    which its run says in words."""
    other = "left" if context.side == "right" else "right"
    records = tuple(one for one in before if one.phase != "whole" and one.side != other)
    track = run_track(records, (Pattern(), "base"), context.measures, context.side)
    if track.suspended is not None:
        return parameters
    try:
        settled: StepParameters = settle_on(track.pattern, context, parameters)
    except HouseFault:
        raise
    except NotchbookError:
        return parameters
    return settled
