"""The house table: allowances by class, and how notches, drill holes and corners are made."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Literal, get_args

from notchbook.errors import InputError
from notchbook.finish.house_values import require_ordered_marks, require_row
from notchbook.finish.row import Row
from notchbook.finish.stock import Stock
from notchbook.pattern import frozen_map
from notchbook.units import suggestion

Supply = Literal["whole", "fold"]
"""How half pieces are given to the cutter: as the whole piece, or on the fold with a bracket."""

HouseChange = float | str
"""A changed value: mm (times, percent), or the word for ``supply``."""


@dataclass(frozen=True)
class HouseTable:
    """What one house does between the sew line and the cut line.

    ``allowances`` by class and ``marks`` by name are rows with source and grade; lengths in mm. ``zips``
    says by kind in which lengths they are sold. A table is made from another by :meth:`with_changes`, or
    read by :func:`~notchbook.finish.read_house_table`.
    """

    name: str
    allowances: Mapping[str, Row]
    marks: Mapping[str, Row]
    supply: Supply = "whole"
    zips: Mapping[str, Stock] = field(default_factory=lambda: frozen_map({}))

    def __post_init__(self) -> None:
        if self.supply not in get_args(Supply):
            raise InputError("house-supply-unknown", given=self.supply, known=get_args(Supply))
        for key, row in (*self.allowances.items(), *self.marks.items()):
            require_row(key, row)
        require_ordered_marks(self.marks)

    def width(self, allowance_class: str) -> float:
        """The allowance of a class, mm; InputError ``allowance-class-unknown`` when there is none."""
        row = self.allowances.get(allowance_class)
        if row is None:
            known = tuple(self.allowances)
            raise InputError(
                "allowance-class-unknown",
                name=allowance_class,
                known=known,
                suggestion=suggestion(allowance_class, known),
            )
        return row.value

    def mark(self, name: str) -> float:
        """A figure of the marks table: mm, times or percent as its row says."""
        return self.marks[name].value

    def with_changes(self, changes: Mapping[str, HouseChange], name: str | None = None) -> "HouseTable":
        """The table with some values changed, by class or mark name; ``supply`` is changed by its word.

        A changed row is graded ``house``. InputError ``house-key-unknown`` for a name that the table
        does not have, ``house-value-unusable`` for a value that cannot be cut.
        """
        allowances, marks, supply = dict(self.allowances), dict(self.marks), self.supply
        for key, value in changes.items():
            if key == "supply":
                supply = _supply_word(value)
            elif key in allowances:
                allowances[key] = _changed(allowances[key], key, value)
            elif key in marks:
                marks[key] = _changed(marks[key], key, value)
            else:
                known = (*allowances, *marks, "supply")
                raise InputError("house-key-unknown", key=key, known=known, suggestion=suggestion(key, known))
        return HouseTable(name or self.name, frozen_map(allowances), frozen_map(marks), supply, self.zips)


def _changed(row: Row, key: str, value: HouseChange) -> Row:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise InputError("house-value-unusable", key=key, value=value, least=0, most=0, unit=row.unit)
    return replace(row, value=float(value), source="set in this house", grade="house")


def _supply_word(value: HouseChange) -> Supply:
    for word in get_args(Supply):
        if value == word:
            return "whole" if word == "whole" else "fold"
    raise InputError("house-supply-unknown", given=value, known=get_args(Supply))
