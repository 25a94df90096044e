"""What to measure next: what shrinks the uncertainty of this garment most for one laying of the tape."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from notchbook.app.bodies.filling_estimates import NEVER_BESIDE, fill
from notchbook.app.bodies.next_measure import NextMeasure
from notchbook.app.bodies.uncertainty import Sensitivity, sensitivities, sensitivity
from notchbook.app.drafting import trial_recipe
from notchbook.app.needs.of_steps import needs_of_block, needs_of_recipe
from notchbook.body import Measure, MeasureSet, measure_entry, measure_table, plain_key
from notchbook.body.doubts.standing import NINE_OF_TEN
from notchbook.body.estimating.estimating import estimate, people_for, population_of
from notchbook.body.estimating.reach import refuse_beyond
from notchbook.body.population import Gain, Population
from notchbook.errors import InputError, StepRefused
from notchbook.recipe import MeasureNeeds, Recipe, replay

LEAST_GAIN: Final = 0.5
"""mm of the ± that a measure must take away to be worth the tape: what sewing does not show. Own judgment."""


def measure_next(recipe: Recipe, measures: MeasureSet, most: int = 6) -> tuple[NextMeasure, ...]:
    """What to take next for this recipe, at most ``most`` measures, the best first.

    What is needed and missing comes first. Then each measure stands where it takes most of what those
    before it have left uncertain. Without a population only the ± that stand with the estimates count.
    """
    return _next(recipe, needs_of_recipe(recipe, measures), measures)[:most]


def measure_next_for_block(block: str, measures: MeasureSet, most: int = 6) -> tuple[NextMeasure, ...]:
    """As :func:`measure_next`, for a block as it comes; InputError ``block-unknown``."""
    needs = needs_of_block(block, measures)
    recipe = _trial(block, _filled(measures, needs))
    if recipe is None:
        needed = _needed(needs, measures, {})[:most]
        return tuple(replace(one, population=measures.population) for one in needed)
    return _next(recipe, needs, measures)[:most]


def _trial(block: str, filled: MeasureSet | None) -> Recipe | None:
    """The recipe on which it is tried what measures move; None where the body cannot be drafted so far."""
    try:
        return None if filled is None else trial_recipe(block, filled)
    except StepRefused:
        return None


def measure_next_in_general(measures: MeasureSet, most: int = 6) -> tuple[NextMeasure, ...]:
    """What tells most about the whole body: every length and girth of the population counts alike.

    Refused with InputError ``estimate-no-population``.
    """
    people = population_of(measures)
    if _any_taken(measures):
        refuse_beyond(measures, people)
    asked = [key for key in people.keys if _is_asked(measures, key)]
    weights = {key: 1.0 for key in asked if measure_entry(key).is_length and not _taken(measures, key)}
    gains = _best_first(people, measures, weights, most)
    return tuple(
        NextMeasure(
            gain.key,
            "knows",
            None,
            gain.before * NINE_OF_TEN,
            gain.after * NINE_OF_TEN,
            is_first=place == 0,
            population=people.name,
        )
        for place, gain in enumerate(gains)
    )


def _next(recipe: Recipe, needs: MeasureNeeds, measures: MeasureSet) -> tuple[NextMeasure, ...]:
    moved = {plain_key(one.key): one for one in _all_sensitivities(recipe, needs, measures)}
    first = _needed(needs, measures, moved)
    people = _foretelling(measures)
    known = () if people is None else people.keys
    gains = _gains(measures, {key: one.per_mm for key, one in moved.items()})
    taken = {one.key for one in first}
    told = [_told(gain, moved.get(gain.key)) for gain in gains if gain.key not in taken]
    taken |= {one.key for one in told}
    rest = [
        NextMeasure(key, "moves", one.outline)
        for key, one in moved.items()
        if key not in (*taken, *known) and one.outline.amount >= LEAST_GAIN
    ]
    taken |= {one.key for one in rest} | set(moved)
    wished = [
        NextMeasure(key, "helps")
        for key in needs.wished
        if not measures.has(key) and key not in taken and _is_asked(measures, key)
    ]
    found = (*first, *told, *rest, *wished)
    return tuple(replace(one, population=measures.population) for one in found)


def _told(gain: Gain, moved: Sensitivity | None) -> NextMeasure:
    before, after = gain.before * NINE_OF_TEN, gain.after * NINE_OF_TEN
    if moved is None:
        return NextMeasure(gain.key, "tells", None, before, after)
    return NextMeasure(gain.key, "moves", moved.outline, before, after)


def _needed(
    needs: MeasureNeeds, measures: MeasureSet, moved: Mapping[str, Sensitivity]
) -> tuple[NextMeasure, ...]:
    """What is missing and needed, that which moves most first."""
    missing = [key for key in needs.needed if not measures.has(key)]
    missing.sort(key=lambda key: -moved[key].outline.amount if key in moved else 0.0)
    return tuple(NextMeasure(key, "needed", moved[key].outline if key in moved else None) for key in missing)


def _all_sensitivities(recipe: Recipe, needs: MeasureNeeds, measures: MeasureSet) -> tuple[Sensitivity, ...]:
    """Of the estimates in the set, of what is needed and missing, and of what would help."""
    filled = _filled(measures, needs)
    if filled is None:
        return ()
    found = list(sensitivities(recipe, filled))
    run = replay(recipe, filled)
    if run.suspended is None:
        for key, measure in _wished(needs, filled).items():
            found.append(sensitivity(run, key, measure))
    return tuple(sorted(found, key=lambda one: -one.outline.amount))


def _filled(measures: MeasureSet, needs: MeasureNeeds) -> MeasureSet | None:
    """The set with what is needed and missing estimated; None where that is not known."""
    try:
        return fill(measures, MeasureNeeds(needs.needed)).measures
    except InputError as error:
        if not error.code.startswith("estimate-"):
            raise
        return None


def _wished(needs: MeasureNeeds, measures: MeasureSet) -> dict[str, Measure]:
    """Estimates of what would help and is missing; none where no population can tell."""
    keys = [
        key
        for key in needs.wished
        if not measures.has(key)
        and not any(measures.find(other) is not None for other in NEVER_BESIDE.get(key, ()))
    ]
    if _foretelling(measures) is None or not keys:
        return {}
    return {key: one.measure() for key, one in estimate(measures, keys).found.items()}


def _gains(measures: MeasureSet, weights: Mapping[str, float]) -> tuple[Gain, ...]:
    people = _foretelling(measures)
    if people is None or not any(weights.values()):
        return ()
    return _best_first(people, measures, weights, most=len(measure_table()))


def _foretelling(measures: MeasureSet) -> Population | None:
    """The population that can tell about this body; None where none is named or none fits."""
    try:
        return people_for(measures)
    except InputError:
        return None


def _best_first(
    people: Population, measures: MeasureSet, weights: Mapping[str, float], most: int
) -> tuple[Gain, ...]:
    """Measures one after another, each the one that takes most of what is left with those before it."""
    chosen: list[Gain] = []
    known = measures
    while len(chosen) < most:
        candidates: Sequence[str] = [
            key for key in people.keys if not _taken(known, key) and _is_asked(measures, key)
        ]
        gains = people.gain(known, candidates, weights)
        if not gains or gains[0].before - gains[0].after < LEAST_GAIN / NINE_OF_TEN:
            break
        best = gains[0]
        expected = people.expect(best.key, known)
        if expected is None:
            break
        chosen.append(best)
        # What the tape will say does not change how sure one is after it: the expected value serves.
        known = known.with_value(best.key, expected.value)
    return tuple(chosen)


def _any_taken(measures: MeasureSet) -> bool:
    return any(measure.status != "estimated" for measure in measures.values.values())


def _is_asked(measures: MeasureSet, key: str) -> bool:
    return measure_entry(key).is_asked(measures.kind, measures.population)


def _taken(measures: MeasureSet, key: str) -> bool:
    found = measures.find(key)
    return found is not None and found.status != "estimated"
