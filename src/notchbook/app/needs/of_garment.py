"""What a garment needs of a body: a block by its name, a style of the rack or a style file."""

from dataclasses import dataclass, replace

from notchbook.app.bodies.filling_estimates import Filled, fill_for_draft, fill_for_recipe
from notchbook.app.bodies.next_measure import NextMeasure
from notchbook.app.bodies.next_measures import measure_next, measure_next_for_block, measure_next_in_general
from notchbook.app.needs.of_steps import needs_of_block, needs_of_recipe
from notchbook.app.rack.named import recipe_named
from notchbook.body import MeasureSet
from notchbook.body.estimating.estimate import Estimates
from notchbook.body.estimating.estimating import estimate
from notchbook.errors import InputError, StepRefused
from notchbook.recipe import MeasureNeeds, Recipe


@dataclass(frozen=True, slots=True)
class GarmentNeeds:
    """A block (``recipe`` None) or the recipe of a style; ``needs`` is all that it ever needs or can use."""

    block: str
    recipe: Recipe | None
    needs: MeasureNeeds

    @property
    def keys(self) -> tuple[str, ...]:
        """What it needs of any body, then what it takes a substitute for, then what helps it."""
        return self.needs.keys

    def needs_of(self, measures: MeasureSet) -> MeasureNeeds:
        """What it needs of this body."""
        if self.recipe is None:
            return needs_of_block(self.block, measures)
        return needs_of_recipe(self.recipe, measures)

    def missing(self, measures: MeasureSet) -> tuple[str, ...]:
        """What it needs of this body or can use, and the set does not have."""
        return tuple(key for key in self.needs_of(measures).keys if not measures.has(key))

    def filled(self, measures: MeasureSet) -> Filled:
        """The set filled in as for its draft, and refused as that."""
        if self.recipe is None:
            return fill_for_draft(measures, self.block)
        return fill_for_recipe(measures, self.recipe)


@dataclass(frozen=True, slots=True)
class GarmentEstimates:
    """What is estimated for a garment: that with which it would be drafted, and nothing else.

    ``idle`` are measures that were left out, for no line of it answers to them. ``can_be_drafted`` is false
    where no draft could tell that; all that it asks for is then estimated.
    """

    estimates: Estimates
    idle: tuple[str, ...]
    can_be_drafted: bool = True


def garment_named(text: str) -> GarmentNeeds:
    """The block of this name, the style of the rack with this number, or the style in this file.

    Refused as :func:`~notchbook.app.needs.garment_parameters.block_named` and
    :func:`~notchbook.app.rack.named.recipe_named`.
    """
    recipe = recipe_named(text)
    if recipe is None:
        return GarmentNeeds(text, None, needs_of_block(text))
    return GarmentNeeds("", recipe, needs_of_recipe(recipe))


def estimates_for(garment: GarmentNeeds | None, measures: MeasureSet) -> GarmentEstimates:
    """The estimates for a garment, or for the whole body where there is none.

    Refused as :func:`notchbook.body.estimating.estimating.estimate`.
    """
    if garment is None:
        return GarmentEstimates(estimate(measures), ())
    try:
        filled = garment.filled(measures)
    except (InputError, StepRefused):
        # Something needed is not known, or the measures do not go together: the draft would say so.
        return GarmentEstimates(estimate(measures, garment.missing(measures)), (), can_be_drafted=False)
    told = filled.estimates or estimate(measures, ())
    found = {key: one for key, one in told.found.items() if key in filled.keys}
    return GarmentEstimates(replace(told, found=found), filled.idle)


def next_for_garment(garment: GarmentNeeds | None, measures: MeasureSet) -> tuple[NextMeasure, ...]:
    """What to measure next for a garment; for the whole body where there is none."""
    if garment is None:
        return measure_next_in_general(measures)
    if garment.recipe is None:
        return measure_next_for_block(garment.block, measures)
    return measure_next(garment.recipe, measures)
