"""A drafted pattern on the screen: ease table, findings, cut pieces; and the same as data."""

from collections.abc import Iterable, Mapping, Sequence
from itertools import zip_longest
from pathlib import Path
from typing import Any

from notchbook.app.contradictions import contradiction_in_words
from notchbook.app.eases.ease_rows import EaseRow
from notchbook.app.finding_words import amounts_in, in_words, message_in, suggestion_in
from notchbook.app.paper_draft import paper_ease
from notchbook.app.papers import CutReady
from notchbook.body import MeasureSet, PopulationName
from notchbook.checks import Report
from notchbook.cli.focus import WHOLE, Focus
from notchbook.cli.screen import Screen
from notchbook.finish import CutPiece, ElasticCut
from notchbook.finish.allowance_words import edge_words
from notchbook.pattern import Finding, Severity
from notchbook.units import LengthStyle, Unit, counted

_GRADES = {Severity.STOP: "STOP", Severity.LOOK: "look", Severity.NOTE: "note"}


def show_eases(
    screen: Screen,
    eases: Iterable[EaseRow],
    unit: Unit,
    focus: Focus = WHOLE,
    population: PopulationName | None = None,
) -> None:
    """The ease table: body, ease, what the sew line and the garment measure, the usual ease; girths first.

    Where one block is in focus its table comes first, and of the others their girths follow.
    """
    own, others = focus.split(eases)
    _show_table(screen, own, unit, population)
    _show_table(screen, focus.in_short(others), unit, population)
    if len(focus.in_short(others)) < len(others):
        screen.line("The lengths of the other blocks: add --all.")
        screen.line()


def _show_table(
    screen: Screen, rows: Sequence[EaseRow], unit: Unit, population: PopulationName | None
) -> None:
    style = LengthStyle(unit)
    for kind in ("girth", "length"):
        of_kind = [_ease_cells(row, style, population) for row in rows if row.kind == kind]
        if of_kind:
            columns = (kind, "body", "ease", "pattern", "finished", "usual ease")
            screen.table(columns, of_kind, numbers=columns[1:])
            _show_changes(screen, (row for row in rows if row.kind == kind), style, population)
            screen.line()


def _show_changes(
    screen: Screen, rows: Iterable[EaseRow], style: LengthStyle, population: PopulationName | None
) -> None:
    """What was drafted, and the steps since, of the lines that are no longer so."""
    for row in rows:
        told = paper_ease(row, style, population)
        if told.remark:
            screen.line(f"  {told.name}: {told.remark}.")


def _ease_cells(row: EaseRow, style: LengthStyle, population: PopulationName | None) -> tuple[str, ...]:
    told = paper_ease(row, style, population)
    return (told.name, told.body, told.ease, told.pattern, told.finished, told.usual)


def show_report(
    screen: Screen, report: Report, unit: Unit, measures: MeasureSet | None = None, focus: Focus = WHOLE
) -> None:
    """The findings, the gravest first, among them those of the block in focus; the sum of the checks.

    Under a contradiction stand both measures as ``measures`` have them, and what would explain both.
    """
    style = LengthStyle(unit)
    grades = list(_GRADES)
    shown = [found for found in report.findings if focus.shows_finding(found)]
    ordered = sorted(shown, key=lambda found: (grades.index(found.severity), not focus.is_on(found)))
    for finding, following in zip_longest(ordered, ordered[1:]):
        screen.line(f"{_GRADES[finding.severity]:5}{_told(finding, style)}  [{finding.code}]")
        if finding.contradiction is not None and measures is not None:
            screen.line(f"     {contradiction_in_words(finding.contradiction, measures, style).line()}")
        is_told_below = following is not None and following.suggestion == finding.suggestion
        if finding.suggestion and finding.severity is not Severity.NOTE and not is_told_below:
            screen.line(f"     {suggestion_in(finding, style)}")
    left = len(report.findings) - len(shown)
    if left:
        screen.line(f"{counted(left, 'note')} on the other pieces not shown: add --all.")
    for broken in report.broken:
        screen.line(f"STOP The check {broken.id} broke: {broken.error}")
    screen.line(f"{report.summary(in_words(style))}.")


def show_cut_pieces(screen: Screen, pieces: Iterable[CutPiece], unit: Unit) -> None:
    """The cut pieces as the cutter's must counts them: number, name, quantity, panels, allowances."""
    style = LengthStyle(unit)
    rows = [
        (
            f"{piece.number}/{piece.of}",
            piece.title,
            "; ".join(f"{quantity.material}: {quantity.text}" for quantity in piece.quantities),
            str(piece.panels),
            ", ".join(f"{kind} {width}" for kind, width in allowances(piece, style).items()),
        )
        for piece in pieces
    ]
    screen.table(("no.", "piece", "quantity", "panels", "allowances"), rows, numbers=("panels",))
    screen.line()


def allowances(piece: CutPiece, style: LengthStyle) -> dict[str, str]:
    """The allowance of each kind of edge of a piece, in words; several widths of a kind one after another."""
    found: dict[str, list[str]] = {}
    for edge in piece.edges:
        if edge.width > 0.0:
            words = found.setdefault(edge_words(edge.allowance_class or edge.kind), [])
            if style.text(edge.width) not in words:
                words.append(style.text(edge.width))
    return {kind: " and ".join(words) for kind, words in found.items()}


def show_files(screen: Screen, files: Mapping[str, Path]) -> None:
    """What was written."""
    for what, path in files.items():
        screen.line(f"written: {path}  ({what})")


def ease_data(eases: Iterable[EaseRow]) -> list[dict[str, Any]]:
    """The ease table as data, mm."""
    return [
        {
            "name": row.name,
            "kind": row.kind,
            "measure": row.measure,
            "body": round(row.body, 6),
            "ease": round(row.ease, 6),
            "pattern": None if row.pattern is None else round(row.pattern, 6),
            "finished": None if row.finished is None else round(row.finished, 6),
            "ease_now": None if row.pattern is None else round(row.pattern - row.body, 6),
            "usual_ease": None if row.usual is None else list(row.usual),
            **({"changed_by": list(row.changed_by)} if row.changed_by else {}),
            **({"gone": row.gone} if row.gone else {}),
            **({} if row.error is None else {"body_error": round(row.error, 6)}),
        }
        for row in eases
    ]


def piece_data(ready: CutReady) -> list[dict[str, Any]]:
    """The cut pieces as data, mm."""
    return [
        {
            "name": piece.name,
            "title": piece.title,
            "number": piece.number,
            "of": piece.of,
            "supplied": piece.supplied,
            "panels": piece.panels,
            "quantities": [
                {"material": quantity.material, "text": quantity.text, "panels": quantity.panels}
                for quantity in piece.quantities
            ],
            "allowances": {edge.name: round(edge.width, 6) for edge in piece.edges},
            "width": round(piece.bounds.width, 6),
            "height": round(piece.bounds.height, 6),
        }
        for piece in ready.pieces
    ]


def elastic_data(elastics: Iterable[ElasticCut]) -> list[dict[str, Any]]:
    """What elastics are cut to as data, mm: ``length`` of each, ``ring`` of it once joined."""
    return [
        {
            "name": one.name,
            "title": one.title,
            "times": one.times,
            "width": one.width,
            "length": round(one.length, 6),
            "ring": round(one.ring, 6),
        }
        for one in elastics
    ]


def typed(path: Path) -> str:
    """The path as it is typed in a command, in quotes where it has blanks."""
    text = str(path)
    return f'"{text}"' if " " in text else text


def command(
    verb: str, style: Path, rest: str = "", *, measures: Path | None = None, unit: Unit = "cm"
) -> str:
    """The command that goes on with a style, on the same measures and in the same unit."""
    words = [f"notchbook {verb} {typed(style)}"]
    if measures is not None:
        words.append(f"--measures {typed(measures)}")
    if unit != "cm":
        words.append(f"--unit {unit}")
    return " ".join([*words, rest]).rstrip()


def show_settings(screen: Screen, settings: Mapping[str, object]) -> None:
    """What was set by hand, with its unit, so that a slip of the unit is seen."""
    if settings:
        said = {name.replace("_", " ").replace(".", " "): value for name, value in settings.items()}
        words = ", ".join(f"{name} {value}" for name, value in said.items())
        screen.line(f"Set: {words}.")
        screen.line()


def file_data(files: Mapping[str, Path]) -> dict[str, str]:
    """What was written, as data."""
    return {what: str(path) for what, path in files.items()}


def to_check(report: Report) -> bool:
    """Whether something is to be looked at before going on."""
    return report.stops or any(finding.severity is Severity.LOOK for finding in report.findings)


def _told(finding: Finding, style: LengthStyle) -> str:
    """The words of a finding, with what was measured as what it means."""
    amounts = amounts_in(finding, style)
    return f"{message_in(finding, style)} ({amounts})" if amounts else message_in(finding, style)
