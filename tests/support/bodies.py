"""Invented bodies for tests, in mm."""

from notchbook.body import MeasureSet, PopulationName

FOUR = {"height": 1680.0, "bust_girth": 920.0, "waist_girth": 740.0, "hip_girth": 980.0}


def four_measures(population: PopulationName | None = "women", **more: float) -> MeasureSet:
    """A body of which only height, bust, waist and hip were taken, and what else is given."""
    measures = MeasureSet.from_mm("Invented W.", FOUR | more)
    return MeasureSet(measures.name, measures.values, population=population)
