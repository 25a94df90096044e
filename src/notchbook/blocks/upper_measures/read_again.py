"""Whose second reading decides between two measures."""

from notchbook.blocks.upper_measures.agreement_table import Pair
from notchbook.blocks.upper_measures.upper_measures import UpperMeasures


def read_again(measures: UpperMeasures, key: str, pair: Pair) -> str:
    """Whose second reading decides: that of the explaining measure, if it was not read twice already."""
    other = pair.other(key)
    return other if key in measures.sure and other not in measures.sure else key
