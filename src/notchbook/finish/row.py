"""One row of a house table: a figure with where it comes from."""

from dataclasses import dataclass

GRADES = ("standard", "handbook", "common practice", "memory", "house")
"""How well a figure is founded; ``house`` is a studio's own choice."""


@dataclass(frozen=True, slots=True)
class Row:
    """A figure of the table: mm unless ``unit`` says ``times`` or ``percent``; its source and grade."""

    value: float
    source: str
    grade: str
    unit: str = "mm"
