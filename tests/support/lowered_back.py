"""How much lower the straight skirt's waist lies at the center back, where nothing else is asked for.

A length is taken at the center back, so that a front and a side are longer than it by as much.
"""

from notchbook.blocks.skirt import SkirtParameters
from notchbook.units import parse_length

LOWERED = parse_length(SkirtParameters().center_back_lowered, None)
"""mm."""
