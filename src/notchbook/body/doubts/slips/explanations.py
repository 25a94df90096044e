"""Which values would explain a disagreement, and what is likely enough to be offered for them."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from notchbook.body.doubts.doubt import Repair
from notchbook.body.doubts.slips.hypothesis import Hypothesis
from notchbook.body.doubts.slips.likely_enough import LEAST_SHARE, likely_enough

WORST_FIT: Final = 2.0
"""Standard deviations that a repaired value may lie off; 95 % of values lie within."""

WORST_FIT_OF: Final = {"exchanged": 2.58, "other-unit": 2.58}
"""The same for slips that leave little choice of what was meant; 99 % of values lie within."""


@dataclass(frozen=True, slots=True)
class Explanation:
    """Values that would explain a disagreement together, with all that may have gone wrong with them.

    ``weight`` is the logarithm of how much better the set fits with any of it, priors included.
    """

    keys: tuple[str, ...]
    weight: float
    causes: tuple[Hypothesis, ...]


def explanations(found: Iterable[Hypothesis]) -> list[Explanation]:
    """The hypotheses gathered by the values that they explain, the likeliest values first."""
    by_keys: dict[tuple[str, ...], list[Hypothesis]] = {}
    for one in found:
        by_keys.setdefault(tuple(sorted(one.keys)), []).append(one)
    gathered = [
        Explanation(causes[0].keys, log_sum(one.weight for one in causes), tuple(causes))
        for causes in by_keys.values()
    ]
    return sorted(gathered, key=lambda one: -one.weight)


def log_sum(weights: Iterable[float]) -> float:
    """The logarithm of the sum of what these are logarithms of."""
    known = list(weights)
    most = max(known)
    return most + math.log(sum(math.exp(weight - most) for weight in known))


def repairs_of(told: Sequence[Explanation], total: float, least: float = LEAST_SHARE) -> tuple[Repair, ...]:
    """What is likely enough to be offered; slips that lead to one value count together.

    ``total`` is the logarithm of everything that would explain the doubt, ``least`` how likely what is
    offered must be together. Nothing is offered rather than a wild guess.
    """
    best: dict[tuple[tuple[str, float], ...], tuple[Hypothesis, float]] = {}
    causes = sorted((cause for one in told for cause in one.causes), key=lambda one: -one.weight)
    for cause in causes:
        if cause.changes and cause.fit <= WORST_FIT_OF.get(cause.slip, WORST_FIT):
            place = tuple((key, round(value, 3)) for key, value in cause.changes)
            first, share = best.get(place, (cause, 0.0))
            best[place] = (first, share + math.exp(cause.weight - total))
    return likely_enough(
        [Repair(cause.slip, cause.question, cause.changes, share) for cause, share in best.values()], least
    )
