"""What became longer or shorter between two runs: girths and lengths of the ease table, edges as sewn."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from notchbook.app.eases.ease_rows import ease_table
from notchbook.pattern import Pattern, sewn_length, spoken
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import Found, resolve
from notchbook.recipe import Replay

LEAST_CHANGE: Final = 0.1
"""mm; what changed by less was not changed by hand: no pencil is finer. Own judgment."""


@dataclass(frozen=True, slots=True)
class LengthChange:
    """One length before and after, mm; ``said`` is what it is called."""

    name: str
    said: str
    before: float
    after: float

    @property
    def by(self) -> float:
        """How much longer it became, mm."""
        return self.after - self.before


def girth_changes(before: Replay, after: Replay) -> tuple[LengthChange, ...]:
    """The finished girths and lengths of the drafts that changed, the largest change first."""
    known = {row.name: row.finished for row in ease_table(before)}
    rows = (
        LengthChange(row.name, f"finished {last_word(row.name).replace('_', ' ')}", was, row.finished)
        for row in ease_table(after)
        if row.finished is not None and (was := known.get(row.name)) is not None
    )
    return _largest_first(rows)


def edge_changes(before: Pattern, after: Pattern) -> tuple[LengthChange, ...]:
    """The edges and groups that became longer or shorter as sewn, the largest change first; no dart legs."""
    shared = (name for name in whole_runs(before) if isinstance(resolve(after, name), Found))
    return _largest_first(
        LengthChange(name, spoken(name), sewn_length(before, name), sewn_length(after, name))
        for name in shared
    )


def whole_runs(pattern: Pattern) -> tuple[str, ...]:
    """Every edge of the outlines, and in the stead of parts the group that they belong to; no dart legs."""
    groups = {name for name in pattern.groups if isinstance(resolve(pattern, name), Found)}
    parts = {part for name in groups for part in pattern.groups[name].members}
    edges = (edge.name for edge in pattern.edges.values() if edge.kind != "leg" and edge.name not in parts)
    return (*edges, *(name for name in pattern.groups if name in groups - parts))


def _largest_first(changes: Iterator[LengthChange]) -> tuple[LengthChange, ...]:
    real = (change for change in changes if abs(change.by) > LEAST_CHANGE)
    return tuple(sorted(real, key=lambda change: -abs(change.by)))
