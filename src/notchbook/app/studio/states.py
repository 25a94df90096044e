"""What the studio hands out: styles, bodies and charts as they stand, and the lines of the library."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal

from notchbook.app.eases.ease_rows import EaseRow
from notchbook.app.examining import examine
from notchbook.body import Doubt, MeasureSet
from notchbook.body.charts.chart import SizeChart
from notchbook.checks import Report
from notchbook.finish import HouseTable
from notchbook.pattern import Finding
from notchbook.recipe import Recipe, Replay, StepKind

ShelfKind = Literal["style", "body", "form", "size", "chart"]
"""What a line of the library is; a size is one of a chart, kept as a set of measures of its own."""


@dataclass(frozen=True, slots=True)
class EntrySummary:
    """One line of the library."""

    id: int
    number: str
    name: str
    version: int
    status: str
    kind: ShelfKind


@dataclass(frozen=True, slots=True)
class StyleState:
    """A style as it stands: what is written, the run of it, and what is to be said of it.

    ``house`` is the table by which its cut pieces would be made; ``redrawn`` tells of steps that an older
    release wrote and this one draws otherwise, until the style is edited.
    """

    id: int
    number: str
    name: str
    version: int
    can_undo: bool
    can_redo: bool
    body: EntrySummary
    replay: Replay
    eases: tuple[EaseRow, ...]
    house: HouseTable
    redrawn: tuple[Finding, ...] = ()

    @property
    def recipe(self) -> Recipe:
        """The recipe of the style."""
        return self.replay.recipe

    @property
    def report(self) -> Report:
        """All checks but those on the cut pieces, run when asked for: whoever only looks at a shape
        does not wait for them. :meth:`Studio.full_report` runs every check."""
        return self.told(examine(self.replay, self.house, cut=False))

    def told(self, report: Report) -> Report:
        """The report with what is to be said of older steps."""
        return replace(report, findings=(*self.redrawn, *report.findings))


@dataclass(frozen=True, slots=True)
class BodyState:
    """A body's measures as they stand, and what should be looked at again."""

    id: int
    number: str
    version: int
    can_undo: bool
    can_redo: bool
    measures: MeasureSet
    doubts: tuple[Doubt, ...]


@dataclass(frozen=True, slots=True)
class ChartState:
    """A size chart as it stands."""

    id: int
    number: str
    version: int
    can_undo: bool
    can_redo: bool
    chart: SizeChart


@dataclass(frozen=True, slots=True)
class StepChoice:
    """A step that can be added; ``schema`` is the JSON schema of its parameters. ``superseded_by``: the
    operation that serves in the place of an older step, which recipes may have but is offered no longer."""

    operation: str
    title: str
    summary: str
    kind: StepKind
    schema: Mapping[str, Any]
    superseded_by: str = ""
