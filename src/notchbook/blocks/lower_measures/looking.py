"""Looking at the measures of a lower body before trousers are drafted from them."""

from notchbook.blocks.lower_measures.disagreement import LowerDisagreement
from notchbook.blocks.lower_measures.limits import by_arithmetic, parts_disagreement
from notchbook.blocks.lower_measures.lower_measures import LowerMeasures


def look_at_lower(measures: LowerMeasures) -> tuple[LowerDisagreement, ...]:
    """What contradicts each other, and what would explain it. Nothing is changed: bodies differ."""
    parts = parts_disagreement(measures)
    if measures.population is None or measures.is_child:
        return (*by_arithmetic(measures), *parts)
    # Loaded here: a body without a population is drafted without numbers of one.
    from notchbook.blocks.lower_measures.naming import named_disagreements

    return (*(named_disagreements(measures) or by_arithmetic(measures)), *parts)
