"""A style checked in every size of a chart: sizes across, what is to check down."""

from collections.abc import Iterable
from typing import Literal

from notchbook.app.checked_by_size import CheckedSize
from notchbook.app.finding_words import amounts_in, in_words, message_in, suggestion_in
from notchbook.pattern import Finding, Severity
from notchbook.units import format_degrees
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.refusal import Refusal, refusal
from notchbook.workroom.reader import Reader
from notchbook.workroom.size_jobs import SizeJob, SizeJobState

Standing = Literal["right", "look", "wrong", "not drafted"]


class SizeColumn(Answer):
    """One size that was checked, and how it stands."""

    label: str
    standing: Standing


class SizeCell(Answer):
    """What a row says of one size: the amount (a mark where nothing is measured), and in whole words."""

    text: str
    words: str


class SizeRow(Answer):
    """One thing to check. ``said`` is in the words of the worst size; ``cells`` follow the sizes, None where
    a size has nothing of it. ``worst`` is the largest amount, empty where nothing is measured."""

    code: str
    stops: bool
    said: str
    next_step: str
    worst: str
    cells: tuple[SizeCell | None, ...]


class SizesAnswer(Answer):
    """How far the check is, of which ``version`` of the style, and what came of it so far."""

    id: int
    version: int
    state: SizeJobState
    chart: str
    labels: tuple[str, ...]
    sizes: tuple[SizeColumn, ...]
    rows: tuple[SizeRow, ...]
    refused: Refusal | None


MARK = "to check"
"""What stands in a cell where nothing is measured."""

_Key = tuple[str, str, bool]


def sizes_answer(job: SizeJob, reader: Reader) -> SizesAnswer:
    """The check in the reader's unit."""
    checked = job.checked
    return SizesAnswer(
        id=job.id,
        version=job.version,
        state=job.state,
        chart=job.chart.name,
        labels=tuple(job.chart.labels),
        sizes=tuple(
            SizeColumn(label=label, standing=_standing(size))
            for label, size in zip(job.chart.labels, checked, strict=False)
        ),
        rows=(*_refused_rows(checked, reader), *_found_rows(checked, reader)),
        refused=None if job.error is None else refusal(job.error, reader),
    )


def _standing(size: CheckedSize) -> Standing:
    if size.report is None:
        return "not drafted"
    if size.report.broken or any(finding.severity is Severity.STOP for finding in size.findings):
        return "wrong"
    return "look" if size.findings else "right"


def _refused_rows(checked: tuple[CheckedSize, ...], reader: Reader) -> Iterable[SizeRow]:
    """A row for each reason for which sizes could not be drafted, or a check broke in them."""
    said: dict[str, tuple[str, str]] = {}
    told: dict[str, dict[int, SizeCell]] = {}
    words = in_words(reader.style)
    for index, size in enumerate(checked):
        if size.refusal is not None:
            code, whole = size.refusal.code, size.refusal.text(words)
            said.setdefault(code, (whole, ""))
            told.setdefault(code, {})[index] = SizeCell(text="not drafted", words=whole)
        for broken in () if size.report is None else size.report.broken:
            said.setdefault(broken.id, (f"The check {broken.id} broke: our fault.", ""))
            told.setdefault(broken.id, {})[index] = SizeCell(text="broke", words=str(broken.error))
    for code, (message, next_step) in said.items():
        cells = tuple(told[code].get(index) for index in range(len(checked)))
        yield SizeRow(code=code, stops=True, said=message, next_step=next_step, worst="", cells=cells)


def _found_rows(checked: tuple[CheckedSize, ...], reader: Reader) -> Iterable[SizeRow]:
    """A row for each thing found, the gravest first, then as the checks go.

    What is too long in one size and too short in another is two things: one row says it of both in the words
    of one.
    """
    found: dict[_Key, dict[int, Finding]] = {}
    for index, size in enumerate(checked):
        for finding in size.findings:
            key = (finding.code, finding.where or finding.piece or "", _off(finding) < 0.0)
            by_size = found.setdefault(key, {})
            if index not in by_size or _amount(finding) > _amount(by_size[index]):
                by_size[index] = finding
    rows = [_row(by_size, len(checked), reader) for by_size in found.values()]
    return sorted(rows, key=lambda row: not row.stops)


def _row(by_size: dict[int, Finding], count: int, reader: Reader) -> SizeRow:
    worst = max(by_size.values(), key=_amount)
    cells = tuple(None if index not in by_size else _cell(by_size[index], reader) for index in range(count))
    return SizeRow(
        code=worst.code,
        stops=any(finding.severity is Severity.STOP for finding in by_size.values()),
        said=message_in(worst, reader.style),
        next_step=suggestion_in(worst, reader.style),
        worst="" if worst.measured is None else _text(worst, reader),
        cells=cells,
    )


def _cell(finding: Finding, reader: Reader) -> SizeCell:
    message, amounts = message_in(finding, reader.style), amounts_in(finding, reader.style)
    return SizeCell(text=_text(finding, reader), words=f"{message} ({amounts})" if amounts else message)


def _off(finding: Finding) -> float:
    """How far above what is wanted it is (below: negative), or how much was measured where nothing is: mm,
    degrees, a count."""
    return 0.0 if finding.measured is None else finding.measured - (finding.wanted or 0.0)


def _amount(finding: Finding) -> float:
    """How far it is off, either way."""
    return abs(_off(finding))


def _text(finding: Finding, reader: Reader) -> str:
    if finding.measured is None:
        return MARK
    amount = _amount(finding)
    if finding.unit == "mm":
        return reader.fine(amount)
    return format_degrees(amount) if finding.unit == "deg" else f"{amount:.4g} {finding.unit}".rstrip()
