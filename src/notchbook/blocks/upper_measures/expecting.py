"""What a body lets expect of one of its measures, where there is a population to ask."""

from typing import TYPE_CHECKING

from notchbook.blocks.upper_measures.upper_measures import UpperMeasures

if TYPE_CHECKING:
    from notchbook.body.population import Expected


def expected_value(
    measures: UpperMeasures, key: str, without: frozenset[str] = frozenset()
) -> "Expected | None":
    """The measure as the others that were taken let expect it, but for ``without``.

    None for a body that no population fits, and where the population knows nothing of the measure.
    """
    if measures.population is None or measures.is_child:
        return None
    # Loaded here: a body without a population is drafted without numbers of one.
    from notchbook.blocks.upper_measures.common_body import expected_among

    return expected_among(measures, measures.population, key, without)
