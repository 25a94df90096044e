"""Classes of stretch cloth, from the table ``classes.toml``."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from notchbook.blocks._trade_figures import trade_table
from notchbook.recipe.usual_ease import Grade


@dataclass(frozen=True, slots=True)
class StretchClass:
    """One class: the ``stretch`` from which cloth belongs to it, as a share of the rest."""

    stretch: float
    words: str
    source: str
    grade: Grade


@cache
def stretch_classes() -> Mapping[str, StretchClass]:
    """Every class by its word, from the least stretch to the most."""
    table = trade_table("notchbook.blocks.stretch_fabric", "classes.toml")
    return MappingProxyType({name: StretchClass(**row) for name, row in table.items()})


def stretch_choices() -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What can be written for each class, and its words."""
    rows = stretch_classes().values()
    return tuple(f"{100.0 * row.stretch:.0f} %" for row in rows), tuple(row.words for row in rows)
