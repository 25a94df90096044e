"""A head that was not measured."""

from typing import Final

USUAL_HEAD: Final = 570.0
"""mm; a grown-up's head, 56 to 58 cm (common practice)."""

USUAL_CHILD_HEAD: Final = 530.0
"""mm; a child's head of 6 years, 52 to 54 cm (common practice)."""
