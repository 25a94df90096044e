"""Estimates that no longer follow from the measures as they are now."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from notchbook.body.estimate_method import is_own_estimate
from notchbook.body.estimating.estimate import Estimate
from notchbook.body.estimating.estimating import estimate
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet
from notchbook.body.sides import plain_key
from notchbook.errors import InputError


@dataclass(frozen=True, slots=True)
class StaleEstimate:
    """A stored estimate of the book, and what would be estimated now (None: nothing any more)."""

    key: str
    stored: Measure
    now: Estimate | None


def stale_estimates(measures: MeasureSet) -> tuple[StaleEstimate, ...]:
    """The estimates of the book whose value or ± would come out otherwise now, since she measured more,
    corrected something, or holds the set against another population. Estimates of her own judgment are
    hers and are not among them."""
    own = tuple(name for name, measure in measures.values.items() if is_own_estimate(measure))
    if not own:
        return ()
    now = _now(measures, {plain_key(name) for name in own})
    found = (StaleEstimate(name, measures.values[name], now.get(plain_key(name))) for name in own)
    return tuple(one for one in found if one.now is None or _differs(one.stored, one.now))


def _now(measures: MeasureSet, keys: Collection[str]) -> Mapping[str, Estimate]:
    """What would be estimated now; nothing where the set is refused as a whole."""
    try:
        return estimate(measures, keys).found
    except InputError as refused:
        if not refused.code.startswith("estimate-"):
            raise
        return {}


def _differs(stored: Measure, now: Estimate) -> bool:
    """Whether value or ± is another; less than half a step comes from a file in inches."""
    return abs(stored.value - now.value) >= 0.5 or abs((stored.error or 0.0) - now.error) >= 0.5
