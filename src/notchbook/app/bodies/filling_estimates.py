"""Filling in, by estimates, what a draft needs or can use and nobody took."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

from notchbook.app.bodies.uncertainty import answers
from notchbook.app.drafting import trial_recipe
from notchbook.app.needs.of_steps import needs_of_block, needs_of_recipe
from notchbook.body import MeasureSet, PopulationName
from notchbook.body.estimating.estimate import Estimates
from notchbook.body.estimating.estimating import estimate
from notchbook.recipe import MeasureNeeds, Recipe, replay

NEVER_BESIDE: Final = {
    "outside_leg": ("front_waist_to_floor", "back_waist_to_floor"),
    "front_waist_to_floor": ("outside_leg", "back_waist_to_floor"),
    "back_waist_to_floor": ("outside_leg", "front_waist_to_floor"),
}
"""Measures that are not estimated beside these when they were taken: a draft uses the small difference of
the two, which the ± of an estimate would drown. Own reasoning."""


@dataclass(frozen=True, slots=True)
class Filled:
    """A set with estimates filled in; ``keys`` are those that are new, ``estimates`` all that was said.

    ``idle`` are estimates that were left out, for no line of the pattern answers to them."""

    measures: MeasureSet
    keys: tuple[str, ...]
    estimates: Estimates | None
    idle: tuple[str, ...] = ()


def with_population(measures: MeasureSet, population: PopulationName | None) -> MeasureSet:
    """The set, held against this population where one is named, else as it is."""
    return measures if population is None else replace(measures, population=population)


def fill_for_draft(measures: MeasureSet, block: str, parameters: Mapping[str, Any] | None = None) -> Filled:
    """As :func:`fill`, for what a block needs and what helps it; InputError ``block-unknown``.

    A wished estimate to which this draft does not answer is left out: the pattern does not rest on it.
    """
    needs = needs_of_block(block, measures, parameters)
    filled = fill(measures, needs)
    return _without_idle(filled, needs, lambda: trial_recipe(block, filled.measures, parameters))


def fill_for_recipe(measures: MeasureSet, recipe: Recipe) -> Filled:
    """As :func:`fill_for_draft`, for the recipe of a style."""
    needs = needs_of_recipe(recipe, measures)
    return _without_idle(fill(measures, needs), needs, lambda: recipe)


def _without_idle(filled: Filled, needs: MeasureNeeds, recipe: Callable[[], Recipe]) -> Filled:
    wished = [key for key in filled.keys if key not in needs.needed]
    if not wished:
        return filled
    run = replay(recipe(), filled.measures)
    idle = tuple(key for key in wished if not answers(run, key, run.measures.get(key)))
    kept = filled.measures
    for key in idle:
        kept = kept.without(key)
    keys = tuple(key for key in filled.keys if key not in idle)
    return replace(filled, measures=kept, keys=keys, idle=idle)


def fill(measures: MeasureSet, needs: MeasureNeeds) -> Filled:
    """The set with what is needed or wished and missing estimated.

    A needed measure of which nothing is known is refused with its reason, a wished one is left out: the
    draft then takes its own substitute, or does without.
    Refused with InputError as :func:`notchbook.body.estimating.estimating.estimate`.
    """
    wanted = tuple(_missing(measures, (*needs.needed, *needs.wished)))
    if not wanted:
        return Filled(measures, (), None)
    estimates = estimate(measures, wanted)
    for left in estimates.left_out:
        if left.key in needs.needed:
            raise left.problem
    filled = measures
    for key, one in estimates.found.items():
        filled = filled.with_value(key, one.measure())
    return Filled(filled, tuple(estimates.found), estimates)


def _missing(measures: MeasureSet, keys: Iterable[str]) -> Iterator[str]:
    for key in keys:
        beside = NEVER_BESIDE.get(key, ())
        if not measures.has(key) and not any(measures.find(other) is not None for other in beside):
            yield key
