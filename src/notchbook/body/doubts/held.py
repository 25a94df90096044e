"""A set held against a population: what stands out, and what must be said beside it.

Loads numpy; imported only where a set is held against a population.
"""

from collections.abc import Sequence

from notchbook.body.doubts.against_population import judged_together, population_doubts
from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.file_shift import BesideFile
from notchbook.body.doubts.other_side import asking_for_other_side
from notchbook.body.doubts.outside import Outside, outside
from notchbook.body.doubts.rest_words import naming_the_rest
from notchbook.body.doubts.softened import softened
from notchbook.body.doubts.standing import Standing
from notchbook.body.doubts.taken_instead import asking_for_neighbors
from notchbook.body.doubts.together import Together
from notchbook.body.measure_set import MeasureSet
from notchbook.body.population import Population
from notchbook.errors import InputError
from notchbook.units import LengthStyle, Unit


def held_against(
    population: Population,
    measures: MeasureSet,
    style: LengthStyle,
    unit: Unit,
    beside: BesideFile | None = None,
) -> tuple[tuple[Doubt, ...], tuple[Standing, ...]]:
    """The doubts, and every value against all others.

    A body that lies outside of the population is judged with wider ranges, and said to lie there once.
    """
    whole = judged_together(population, measures, beside)
    far = outside(population, measures, whole, beside) if len(whole.keys) > 1 else None
    judged = far.wide if far else whole
    doubts, standings = population_doubts(
        population, measures, style, unit, judged, beside=beside, may_exchange=far is None
    )
    if far and not far.bad:
        doubts = ()
    doubts = asking_for_other_side(doubts, measures, style)
    doubts = asking_for_neighbors(doubts, measures, population)
    doubts = softened(doubts, measures, judged, _stop(population, judged))
    said = _said_once(far, population, doubts) if far else ()
    return (*said, *naming_the_rest(doubts, standings)), standings


def _stop(population: Population, whole: Together) -> float:
    return population.stop_for(len(whole.keys))


def _said_once(far: Outside, population: Population, doubts: Sequence[Doubt]) -> tuple[Doubt, ...]:
    others = "the other values agree" if doubts else "the values agree"
    problem = InputError("held-outside", way=far.way, agree=others, population=population.words, where="")
    return (Doubt("check", (), problem),)
