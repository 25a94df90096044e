"""Estimates of measures that nobody took, from those that were taken and a population of bodies.

Every estimate has its ± (nine of ten bodies of that population lie within it) and names its population.
Estimates are never evidence for other estimates. Importing this package loads numpy.
"""

from notchbook.body.estimating.estimate import Estimate, Estimates, NotEstimable
from notchbook.body.estimating.estimating import estimate, with_estimates
from notchbook.body.estimating.many import estimate_many
from notchbook.body.estimating.stale import StaleEstimate, stale_estimates

__all__ = [
    "Estimate",
    "Estimates",
    "NotEstimable",
    "StaleEstimate",
    "estimate",
    "estimate_many",
    "stale_estimates",
    "with_estimates",
]
