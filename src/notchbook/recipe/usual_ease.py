"""An ease that a block states: how much, for which silhouette, and where the figure comes from."""

from dataclasses import dataclass
from typing import Literal

Grade = Literal["standard", "handbook", "memory", "common practice", "own judgment"]
"""How well a figure stands."""

EaseUnit = Literal["mm", "percent"]
"""Of what an ease is told: mm, or hundredths of the body's measure (below 0: the pattern is smaller)."""


@dataclass(frozen=True, slots=True)
class UsualEase:
    """One figure of a block's ease table, mm or as ``unit`` says.

    ``parameter`` is the parameter of the step that overrides it, ``of`` what the ease is for in words
    (``bust``). ``drafted`` is the ease that the block really takes for this ``silhouette`` (empty: for every
    one); ``least`` to ``most`` is the usual range, None where no source gives one. ``wearer`` is empty or
    whom the figure is for: ``women``, ``men``, ``children``.
    """

    silhouette: str
    parameter: str
    of: str
    drafted: float
    least: float | None
    most: float | None
    source: str
    grade: Grade
    wearer: str = ""
    unit: EaseUnit = "mm"
