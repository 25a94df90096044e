"""A foreign table taken apart: its measures as lines, its bodies, every cell still text."""

from dataclasses import dataclass
from typing import Final, Literal

Layout = Literal["body_a_row", "measure_a_row", "sizes_across", "own_sets"]
"""One body a row; one measure a row of one body; measures as rows and sizes (or bodies) as columns; sets
in the form that this program writes itself."""

TEXT_LAYOUTS: Final[tuple[Layout, ...]] = ("body_a_row", "measure_a_row", "sizes_across")

Place = Literal["column", "row"]


@dataclass(frozen=True, slots=True)
class ForeignLine:
    """What stands in one column (or, with measures as rows, in one row) for all bodies.

    ``words`` are its header as it stands, ``name`` the same made unique within the table (``Hip``,
    ``Hip (2)``); ``number`` is that of its column from 1, or of its line in the text. ``unit_words`` is
    what a unit column or a row of units says of it. ``fields`` are further cells of a measure's row:
    status, error, note and the like.
    """

    name: str
    number: int
    words: str
    unit_words: str = ""
    fields: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class ForeignBody:
    """One body of the table: ``cells`` stand in the order of the lines.

    ``number`` is the number of its line in the text, or of its column; ``name`` what stands over its
    column. ``cells_found`` is above 0 when its row has more cells than the header.
    """

    number: int
    name: str
    cells: tuple[str, ...]
    cells_found: int = 0


@dataclass(frozen=True, slots=True)
class SetAside:
    """A line or column of the text that is no body and no measure: a title, a note, a total."""

    number: int
    text: str
    why: str


@dataclass(frozen=True, slots=True)
class ForeignTable:
    """A table as it was found. ``header_line`` is the number of the header's line, 0 without one.

    ``own_sets`` are plain data of sets in this program's own form, in the layout ``own_sets`` alone.
    """

    layout: Layout
    delimiter: str
    header_line: int
    lines: tuple[ForeignLine, ...] = ()
    bodies: tuple[ForeignBody, ...] = ()
    set_aside: tuple[SetAside, ...] = ()
    own_sets: tuple[object, ...] = ()

    @property
    def place(self) -> Place:
        """Where a measure's name stands: over a column, or at the beginning of a row."""
        return "column" if self.layout == "body_a_row" else "row"

    @property
    def body_place(self) -> str:
        """What the number of a body counts: lines of the text, columns, or entries of a list."""
        if self.delimiter == "json":
            return "entry"
        return "line" if self.layout == "body_a_row" else "column"

    def cells_of(self, position: int) -> tuple[tuple[int, str], ...]:
        """The filled cells of the line at this position, each with the number of its body."""
        found = ((body.number, body.cells[position]) for body in self.bodies)
        return tuple((number, text) for number, text in found if text)
