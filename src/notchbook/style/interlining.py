"""Interlining: the shape of a piece in a layer for warmth or body, caught in its seams.

It is derived: it is made anew after the last shaping step, so that it can never go stale.
"""

from functools import partial

from notchbook.recipe import StepDefinition
from notchbook.recipe.parameters import MaterialWord
from notchbook.style.traced.layer import LayerParameters, run_layer


class InterliningParameters(LayerParameters):
    """The ``pieces`` that are interlined, and by how much the interlining is smaller."""

    allowances: bool = True
    """Whether it keeps the allowances of the piece, to be caught in the seams."""
    material: MaterialWord = "interlining"
    """The material that it is cut in."""


STEP = StepDefinition(
    operation="interlining",
    version=1,
    kind="style",
    phase="derived",
    title="Interlining",
    sentence="{pieces}, trimmed by {trimmed}",
    parameters=InterliningParameters,
    run=partial(run_layer, "interlining"),
)
