"""How many darts a dress with a waist seam has: as the bodice asks, or the skirt where it asks for more."""

from notchbook.blocks.bodice_pieces.bodice_measures import bodice_measures
from notchbook.blocks.joined.parameters import DressParameters
from notchbook.blocks.skirts.halves import BACK_DART_SHARE, MOST_SIDE_TAKE_IN, SIDE_SHARE
from notchbook.blocks.upper.suppression import count_for
from notchbook.recipe import StepContext


def with_skirt_darts(
    context: StepContext, asked: DressParameters, settled: DressParameters
) -> DressParameters:
    """The settled choices, with more darts where they were left to auto and the skirt needs them.

    Bodice and skirt have the same darts, so that each runs on below the waist.
    """
    measures = bodice_measures(context, settled, context.side)
    waist, hip = measures.given.waist, measures.hip
    if waist is None or hip is None:
        return settled
    rest = (hip.hip - waist) / 2.0
    darts = rest - 2.0 * min(SIDE_SHARE * rest / 2.0, MOST_SIDE_TAKE_IN)
    wanted = {"front_darts": (1.0 - BACK_DART_SHARE) * darts, "back_darts": BACK_DART_SHARE * darts}
    more = {
        name: max(getattr(settled, name), count_for(intake))
        for name, intake in wanted.items()
        if getattr(asked, name) == "auto"
    }
    return settled.model_copy(update=more)
