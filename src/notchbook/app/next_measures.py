"""What to measure next: what shrinks the uncertainty of this garment most for one laying of the tape."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from notchbook.app.drafting import draft_recipe
from notchbook.app.filling import NEVER_BESIDE, fill, needs_of_block, needs_of_recipe
from notchbook.app.uncertainty import Moved, Sensitivity, sensitivities, sensitivity
from notchbook.body import Measure, MeasureSet, measure_entry, measure_table
from notchbook.body.estimating.estimating import estimate, population_of
from notchbook.body.population import Gain, Population
from notchbook.body.quantity_words import said_key
from notchbook.errors import InputError
from notchbook.pattern import spoken
from notchbook.recipe import MeasureNeeds, Recipe, replay
from notchbook.units import LengthStyle

Reason = Literal["needed", "moves", "tells", "helps", "knows"]
"""``needed``: without it the pattern is not drafted. ``moves``: the pattern rests on it or can use it.
``tells``: it says more about such a measure. ``helps``: the pattern can use it, and how much it would move
is not known. ``knows``: it says most about the whole body, where no garment is named."""

LEAST_GAIN: Final = 0.5
"""mm of the ± that a measure must take away to be worth the tape: what sewing does not show. Own judgment."""

NINE_OF_TEN: Final = 1.645
"""Standard deviations within which nine of ten lie (normal distribution, two-sided)."""


@dataclass(frozen=True, slots=True)
class NextMeasure:
    """A measure to take. ``moves`` is what would move most and by up to how much (mm), None where that is
    not known; ``before`` and ``after`` the ± of the pattern (mm; nine of ten) without and with it, after
    those that stand earlier in the list; None where no population can tell."""

    key: str
    reason: Reason
    moves: Moved | None = None
    before: float | None = None
    after: float | None = None

    @property
    def share(self) -> float:
        """The part of what was uncertain (as a variance) that it takes, 0 to 1; 0 where that is not known."""
        if not self.before or self.after is None:
            return 0.0
        return 1.0 - (self.after / self.before) ** 2

    def words(self, style: LengthStyle) -> str:
        """What is said to her: ``Take hip depth: it moves skirt, side seam by up to 1.4 cm.``"""
        said = f"Take {said_key(self.key)}"
        if self.reason == "needed" and self.moves is None:
            return f"{said}: the pattern cannot be drafted without it."
        if self.moves is not None:
            needed = "it is needed, and " if self.reason == "needed" else ""
            amount = style.text(self.moves.amount)
            return f"{said}: {needed}it moves {spoken(self.moves.name)} by up to {amount}."
        if self.reason == "knows":
            return f"{said}: it takes {self.share:.0%} of what is not known of this body."
        if self.before is not None and self.after is not None:
            return f"{said}: the pattern’s ± {style.text(self.before)} become ± {style.text(self.after)}."
        return f"{said}: the pattern can use it; without it a usual share is taken."


def measure_next(recipe: Recipe, measures: MeasureSet, most: int = 6) -> tuple[NextMeasure, ...]:
    """What to take next for this recipe, at most ``most`` measures, the best first.

    What is needed and missing comes first. Then each measure stands where it takes most of what those
    before it have left uncertain. Without a population only the ± that stand with the estimates count.
    """
    return _next(recipe, needs_of_recipe(recipe), measures)[:most]


def measure_next_for_block(block: str, measures: MeasureSet, most: int = 6) -> tuple[NextMeasure, ...]:
    """As :func:`measure_next`, for a block as it comes; InputError ``block-unknown``."""
    needs = needs_of_block(block)
    filled = _filled(measures, needs)
    if filled is None:
        return _needed(needs, measures, {})[:most]
    return _next(draft_recipe(block, filled), needs, measures)[:most]


def measure_next_in_general(measures: MeasureSet, most: int = 6) -> tuple[NextMeasure, ...]:
    """What tells most about the whole body: every length and girth of the population counts alike.

    Refused with InputError ``estimate-no-population``.
    """
    people = population_of(measures)
    weights = {key: 1.0 for key in people.keys if measure_entry(key).is_length and not _taken(measures, key)}
    return tuple(
        NextMeasure(gain.key, "knows", None, gain.before * NINE_OF_TEN, gain.after * NINE_OF_TEN)
        for gain in _best_first(people, measures, weights, most)
    )


def _next(recipe: Recipe, needs: MeasureNeeds, measures: MeasureSet) -> tuple[NextMeasure, ...]:
    moved = {one.key.partition("@")[0]: one for one in _all_sensitivities(recipe, needs, measures)}
    first = _needed(needs, measures, moved)
    known = () if measures.population is None else population_of(measures).keys
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
    helpful = [
        NextMeasure(key, "helps") for key in needs.helpful if not measures.has(key) and key not in taken
    ]
    return (*first, *told, *rest, *helpful)


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
        for key, measure in _helpful(needs, filled).items():
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


def _helpful(needs: MeasureNeeds, measures: MeasureSet) -> dict[str, Measure]:
    """Estimates of what would help and is missing; none where no population can tell."""
    keys = [
        key
        for key in needs.helpful
        if not measures.has(key)
        and not any(measures.find(other) is not None for other in NEVER_BESIDE.get(key, ()))
    ]
    if measures.population is None or not keys:
        return {}
    return {key: one.measure() for key, one in estimate(measures, keys).found.items()}


def _gains(measures: MeasureSet, weights: Mapping[str, float]) -> tuple[Gain, ...]:
    if measures.population is None or not any(weights.values()):
        return ()
    return _best_first(population_of(measures), measures, weights, most=len(measure_table()))


def _best_first(
    people: Population, measures: MeasureSet, weights: Mapping[str, float], most: int
) -> tuple[Gain, ...]:
    """Measures one after another, each the one that takes most of what is left with those before it."""
    chosen: list[Gain] = []
    known = measures
    while len(chosen) < most:
        candidates: Sequence[str] = [key for key in people.keys if not _taken(known, key)]
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


def _taken(measures: MeasureSet, key: str) -> bool:
    found = measures.find(key)
    return found is not None and found.status != "estimated"
