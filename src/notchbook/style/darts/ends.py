"""How short of its pivot a dart ends and which way it is pressed: the trade's habits, by the edge."""

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Literal

from notchbook.pattern.names import split_side

Press = Literal["still", "down"]

_OTHER = "other"


@dataclass(frozen=True, slots=True)
class DartEnd:
    """A row of the table: how far the point stays from the pivot (mm; usually, least, most), how the dart is
    pressed (toward the part that lies still, or down), where that comes from and how sure it is."""

    short: float
    least: float
    most: float
    press: Press
    source: str
    grade: str


@cache
def dart_ends() -> dict[str, DartEnd]:
    """Every row by the word of the edge; ``other`` for edges that have none."""
    text = files("notchbook.style.darts").joinpath("points.toml").read_text(encoding="utf-8")
    return {word: DartEnd(**row) for word, row in tomllib.loads(text).items()}


def edge_word(name: str) -> str:
    """What an edge is called by, whatever parts it has been divided into: ``side_seam`` for a part of one."""
    return split_side(name)[0].split("/")[1]


def dart_end(edge: str) -> DartEnd:
    """The habits for a dart that opens in this edge."""
    rows = dart_ends()
    return rows.get(edge_word(edge), rows[_OTHER])
