"""Whether a set is that of a child, for whom no population is at hand."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from notchbook.body.measure_set import MeasureSet

CHILD_HEIGHT: Final = 1450.0
"""mm; below it a body with a child's girths is taken for a child (own judgment)."""

CHILD_GIRTHS: Final[Mapping[str, float]] = MappingProxyType(
    {"bust_girth": 760.0, "waist_girth": 680.0, "hip_girth": 820.0}
)
"""mm; a child of 1450 mm has less, and hardly an adult has less in all (own judgment, near the least of
adults in measures.toml)."""


def is_child(measures: MeasureSet) -> bool:
    """Whether height and every girth of the trunk that was taken are a child's; a slip in one is no child."""
    if measures.kind != "body":
        return False
    height = measures.find("height")
    girths = [(found.value, most) for key, most in CHILD_GIRTHS.items() if (found := measures.find(key))]
    if height is None or height.status == "estimated" or height.value >= CHILD_HEIGHT or not girths:
        return False
    return all(value < most for value, most in girths)
