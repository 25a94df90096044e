"""What the checks say of every size on the screen: one line a size and finding; and the same as data."""

from collections.abc import Iterable
from typing import Any

from notchbook.app.checked_by_size import CheckedSize
from notchbook.app.finding_words import amounts_in, in_words, message_in
from notchbook.checks.report import finding_data
from notchbook.cli.screen import Screen
from notchbook.pattern import Finding, Severity
from notchbook.units import LengthStyle, Unit


def show_sizes_checked(screen: Screen, sizes: Iterable[CheckedSize], unit: Unit) -> None:
    """A line for each size, and one for each finding in it."""
    style = LengthStyle(unit)
    for size in sizes:
        if size.refusal is not None:
            screen.line(f"no   {size.name}: {size.refusal.text(in_words(style))}  [{size.refusal.code}]")
        elif size.is_right:
            screen.line(f"ok   {size.name}")
        for finding in size.findings:
            screen.line(f"{_grade(finding):5}{size.name}: {_told(finding, style)}  [{finding.code}]")
        for broken in () if size.report is None else size.report.broken:
            screen.line(f"STOP {size.name}: the check {broken.id} broke: {broken.error}")


def sizes_checked_data(sizes: Iterable[CheckedSize]) -> list[dict[str, Any]]:
    """The sizes as data; lengths in mm."""
    return [
        {
            "size": size.name,
            "ok": size.is_right,
            "code": "" if size.refusal is None else size.refusal.code,
            "message": "" if size.refusal is None else size.refusal.text(),
            "findings": [finding_data(finding) for finding in size.findings],
        }
        for size in sizes
    ]


def _grade(finding: Finding) -> str:
    return "STOP" if finding.severity is Severity.STOP else "look"


def _told(finding: Finding, style: LengthStyle) -> str:
    amounts = amounts_in(finding, style)
    return f"{message_in(finding, style)} ({amounts})" if amounts else message_in(finding, style)
