"""What an answer is about, where a block was drafted with others: a sleeve, not its bodice."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from notchbook.app.eases.ease_rows import EaseRow
from notchbook.pattern import Finding, Severity


@dataclass(frozen=True, slots=True)
class Focus:
    """The slug of the block that was asked for, empty where all are alike; ``is_whole`` shows the others
    in full too."""

    slug: str = ""
    is_whole: bool = True

    def is_on(self, finding: Finding) -> bool:
        """Whether a finding is about the block in focus."""
        names = (finding.piece, finding.where, *finding.names)
        return any(name is not None and self._owns(name) for name in names)

    def shows_finding(self, finding: Finding) -> bool:
        """Whether it is shown: a mere note on another block only with the whole."""
        return self.is_whole or finding.severity is not Severity.NOTE or self.is_on(finding)

    def split(self, rows: Iterable[EaseRow]) -> tuple[tuple[EaseRow, ...], tuple[EaseRow, ...]]:
        """The rows of the block in focus, and those of the others."""
        every = tuple(rows)
        own = tuple(row for row in every if self._owns(row.name))
        return own, tuple(row for row in every if row not in own)

    def in_short(self, rows: Sequence[EaseRow]) -> tuple[EaseRow, ...]:
        """The rows of other blocks that are shown: their girths alone, unless the whole is."""
        return tuple(row for row in rows if self.is_whole or row.kind == "girth")

    def _owns(self, name: str) -> bool:
        return not self.slug or name.split("/", 1)[0].split(".", 1)[0] == self.slug


WHOLE: Final = Focus()
"""All blocks alike."""
