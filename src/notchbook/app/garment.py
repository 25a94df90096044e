"""What a garment needs of a body: a block by its name, or a style file."""

from dataclasses import dataclass
from pathlib import Path

from notchbook.app.filling import needs_of_block, needs_of_recipe
from notchbook.app.next_measures import (
    NextMeasure,
    measure_next,
    measure_next_for_block,
    measure_next_in_general,
)
from notchbook.app.style_file import read_style
from notchbook.body import MeasureSet
from notchbook.recipe import MeasureNeeds, Recipe


@dataclass(frozen=True, slots=True)
class Garment:
    """A block (``recipe`` None) or the recipe of a style, with what it needs and what helps it."""

    block: str
    recipe: Recipe | None
    needs: MeasureNeeds

    @property
    def keys(self) -> tuple[str, ...]:
        """What it needs, then what helps it."""
        return (*self.needs.needed, *self.needs.helpful)

    def missing(self, measures: MeasureSet) -> tuple[str, ...]:
        """Those of its keys that the set does not have."""
        return tuple(key for key in self.keys if not measures.has(key))


def garment_named(text: str) -> Garment:
    """The block of this name, or the style in this file (ending ``.json``).

    Refused as :func:`~notchbook.app.drafting.block_named` and :func:`~notchbook.app.style_file.read_style`.
    """
    if text.lower().endswith(".json"):
        recipe = read_style(Path(text)).recipe
        return Garment("", recipe, needs_of_recipe(recipe))
    return Garment(text, None, needs_of_block(text))


def next_for_garment(garment: Garment | None, measures: MeasureSet) -> tuple[NextMeasure, ...]:
    """What to measure next for a garment; for the whole body where there is none."""
    if garment is None:
        return measure_next_in_general(measures)
    if garment.recipe is None:
        return measure_next_for_block(garment.block, measures)
    return measure_next(garment.recipe, measures)
