"""Filling a body's missing measures with estimates, and working out anew those that no longer follow."""

from dataclasses import dataclass

from notchbook.body import MeasureSet, split_key
from notchbook.body.estimating.estimating import estimate
from notchbook.body.estimating.stale import stale_estimates
from notchbook.errors import InputError


@dataclass(frozen=True, slots=True)
class FillEstimates:
    """Estimates written where nothing was measured: for these keys, or for all that are missing."""

    keys: tuple[str, ...] = ()

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the estimates. A key that was named and cannot be estimated is refused with its
        reason; without keys what is not known stays empty."""
        estimates = estimate(measures, self.keys or None)
        if self.keys and estimates.left_out:
            raise estimates.left_out[0].problem
        filled = measures
        for key, one in estimates.found.items():
            filled = filled.with_value(key, one.measure())
        return filled


@dataclass(frozen=True, slots=True)
class RefreshEstimates:
    """Stored estimates worked out anew from the measures as they are: these (keys as stored, with their
    side), or all that no longer follow."""

    keys: tuple[str, ...] = ()

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the estimates refreshed; InputError ``estimate-not-stale`` for a key whose estimate
        still follows, or that holds none. An estimate of which nothing is known any more is taken out."""
        stale = {one.key: one for one in stale_estimates(measures)}
        for key in self.keys:
            if key not in stale:
                raise InputError("estimate-not-stale", key=key)
        refreshed = measures
        for name in self.keys or stale:
            now = stale[name].now
            key, side = split_key(name)
            if now is None:
                refreshed = refreshed.without(key, side)
            else:
                refreshed = refreshed.with_value(key, now.measure(), side)
        return refreshed
