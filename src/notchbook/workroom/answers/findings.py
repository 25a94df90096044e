"""What the checks say, as pencil marks: where, how grave, in words, and what is proven."""

from functools import partial

from notchbook.checks import Report, check_sources, load_check
from notchbook.pattern import Finding, Severity, spoken
from notchbook.units import format_degrees
from notchbook.workroom.answers.form import Answer, At
from notchbook.workroom.answers.lines import at
from notchbook.workroom.reader import Reader


class FindingNote(Answer):
    """One finding; ``place`` lies in the frame of ``piece``. ``why`` is the patternmaker's reason."""

    code: str
    severity: Severity
    message: str
    numbers: str
    suggestion: str
    why: str
    piece: str | None
    where: str | None
    place: At | None


class Proven(Answer):
    """How many checks had nothing to say, how many seams were walked and the worst of them."""

    checks: int
    seams: int
    worst: str
    skipped: int
    broken: tuple[str, ...]


class Findings(Answer):
    """All that is to check, the gravest first, and the quiet line of what is proven.

    ``papers`` says whether the cut pieces, of which the papers are made, were looked at too.
    """

    notes: tuple[FindingNote, ...]
    proven: Proven
    papers: bool


def findings(report: Report, reader: Reader, *, papers: bool) -> Findings:
    """The report in the reader's unit."""
    worst = report.worst_seam
    return Findings(
        papers=papers,
        notes=tuple(_note(finding, reader) for finding in report.findings),
        proven=Proven(
            checks=len(report.passed),
            seams=0 if worst is None else worst.walked,
            worst="" if worst is None else f"{spoken(worst.seam)} {reader.fine(abs(worst.misfit))}",
            skipped=len(report.skipped),
            broken=tuple(broken.id for broken in report.broken),
        ),
    )


def _note(finding: Finding, reader: Reader) -> FindingNote:
    return FindingNote(
        code=finding.code,
        severity=finding.severity,
        message=finding.message,
        numbers=_numbers(finding, reader),
        suggestion=finding.suggestion,
        why=_why(finding),
        piece=finding.piece,
        where=finding.where,
        place=None if finding.position is None else at(finding.position),
    )


def _why(finding: Finding) -> str:
    """The reason of the check; a note of a draft comes from no check."""
    return load_check(finding.check).rationale if finding.check in check_sources() else ""


def _numbers(finding: Finding, reader: Reader) -> str:
    """``measured 24.7 cm, wanted 24.5 cm``, ``20.3 cm ± 1.8 cm``; nothing when nothing was measured."""
    if finding.measured is not None and finding.error is not None:
        write = reader.text if finding.unit == "mm" else partial(_number, unit=finding.unit, reader=reader)
        now = "" if finding.wanted is None else f", now {write(finding.wanted)}"
        return f"{write(finding.measured)} ± {write(finding.error)}{now}"
    words = [
        f"{word} {_number(value, finding.unit, reader)}"
        for word, value in (("measured", finding.measured), ("wanted", finding.wanted))
        if value is not None
    ]
    return ", ".join(words)


def _number(value: float, unit: str, reader: Reader) -> str:
    if unit == "mm":
        return reader.fine(value)
    return format_degrees(value) if unit == "deg" else f"{value:g}"
