"""Checking a style in every size asked: its recipe is run on each set of measures, and each run checked."""

from collections.abc import Iterable
from dataclasses import dataclass

from notchbook.app.drafting import completed
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.checks import Report
from notchbook.errors import HouseFault, NotchbookError
from notchbook.pattern import Finding, Severity
from notchbook.recipe import Recipe, replay


@dataclass(frozen=True, slots=True)
class CheckedSize:
    """One size: what the checks say of it, or why it could not be drafted."""

    name: str
    report: Report | None
    refusal: NotchbookError | None

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What is to be looked at in this size, notes apart; none where it was refused."""
        found = () if self.report is None else self.report.findings
        return tuple(finding for finding in found if finding.severity is not Severity.NOTE)

    @property
    def is_right(self) -> bool:
        """Whether it was drafted, no check broke and nothing is to be looked at."""
        return self.report is not None and not self.report.broken and not self.findings


def checked_by_size(recipe: Recipe, sets: Iterable[MeasureSet]) -> tuple[CheckedSize, ...]:
    """The recipe checked on each set, in their order, the papers too; one that stops says why."""
    return tuple(_checked(recipe, measures) for measures in sets)


def _checked(recipe: Recipe, measures: MeasureSet) -> CheckedSize:
    try:
        run = completed(replay(recipe, measures))
        return CheckedSize(measures.name, examine(run), None)
    except HouseFault:
        raise
    except NotchbookError as refusal:
        return CheckedSize(measures.name, None, refusal)
