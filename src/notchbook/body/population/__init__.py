"""What the bodies of a survey foretell: expected values, how unusual a value is, what to measure next.

A population is a multivariate normal model of one sex of the U.S. Army survey ANSUR II (2012). Lengths are
mm, angles degrees, weight kg. Importing this package loads numpy; ``notchbook.body`` alone does not.
"""

from notchbook.body.population.definitions import Definition, definitions
from notchbook.body.population.population import Population, population, populations
from notchbook.body.population.results import Expected, Gain, Score

__all__ = [
    "Definition",
    "Expected",
    "Gain",
    "Population",
    "Score",
    "definitions",
    "population",
    "populations",
]
