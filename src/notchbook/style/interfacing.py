"""Interfacing: the shape of a piece or a facing in fusible, without allowances or trimmed by so much.

It is derived: it is made anew after the last shaping step, so that it can never go stale.
"""

from functools import partial

from notchbook.recipe import StepDefinition
from notchbook.recipe.parameters import Word
from notchbook.style.traced.layer import LayerParameters, run_layer


class InterfacingParameters(LayerParameters):
    """The ``pieces`` that are interfaced, and by how much the interfacing is smaller."""

    allowances: bool = False
    """Whether it keeps the allowances of the piece, to be caught in the seams."""
    material: Word = "fusible"
    """The material that it is cut in."""


STEP = StepDefinition(
    operation="interfacing",
    version=1,
    kind="style",
    phase="derived",
    title="Interfacing",
    sentence="{pieces}, trimmed by {trimmed}",
    parameters=InterfacingParameters,
    run=partial(run_layer, "interfacing"),
)
