"""Estimates of measures that nobody took, from those that were taken and a population of bodies.

Every estimate has its ± (nine of ten bodies of that population lie within it) and names its population.
Estimates are never evidence for other estimates.
"""
