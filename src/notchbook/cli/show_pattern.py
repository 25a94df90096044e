"""A drafted pattern on the screen: ease table, findings, cut pieces; and the same as data."""

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from notchbook.app.examining import GirthRow
from notchbook.app.papers import CutReady
from notchbook.body import measure_entry
from notchbook.body.quantity_words import one_unit, quantity_with_error
from notchbook.checks import Report
from notchbook.cli.screen import Screen
from notchbook.finish import CutPiece
from notchbook.pattern import Finding, Severity, spoken
from notchbook.units import LengthStyle, Unit, format_degrees, format_length

_FINE_DECIMALS: dict[Unit, int] = {"mm": 2, "cm": 2, "in": 3}
"""Decimals of what was measured and wanted: a tenth of a millimeter must show."""

_GRADES = {Severity.STOP: "STOP", Severity.LOOK: "look", Severity.NOTE: "note"}


def show_girths(screen: Screen, girths: Iterable[GirthRow], unit: Unit) -> None:
    """The ease table: body, ease, what the sew line measures, and the usual ease."""
    style = LengthStyle(unit)
    rows = [
        (
            spoken(girth.name),
            _body(girth, style),
            style.text(girth.shown_ease(style)),
            "gone" if girth.pattern is None else style.text(girth.pattern),
            "" if girth.usual is None else " to ".join(style.text(ease) for ease in girth.usual),
        )
        for girth in girths
    ]
    if rows:
        columns = ("girth", "body", "ease", "pattern", "usual ease")
        screen.table(columns, rows, numbers=columns[1:])
        screen.line()


def show_report(screen: Screen, report: Report, unit: Unit) -> None:
    """The findings, the gravest first, and the sum of the checks."""
    style = LengthStyle(unit)
    for finding in sorted(report.findings, key=lambda found: list(_GRADES).index(found.severity)):
        screen.line(
            f"{_GRADES[finding.severity]:5}{finding.message}{_amounts(finding, style)}  [{finding.code}]"
        )
        if finding.suggestion and finding.severity is not Severity.NOTE:
            screen.line(f"     {finding.suggestion}")
    for broken in report.broken:
        screen.line(f"STOP The check {broken.id} broke: {broken.error}")
    screen.line(f"{report.summary()}.")


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
            words = found.setdefault((edge.allowance_class or edge.kind).replace("_", " "), [])
            if style.text(edge.width) not in words:
                words.append(style.text(edge.width))
    return {kind: " and ".join(words) for kind, words in found.items()}


def show_files(screen: Screen, files: Mapping[str, Path]) -> None:
    """What was written."""
    for what, path in files.items():
        screen.line(f"written: {path}  ({what})")


def girth_data(girths: Iterable[GirthRow]) -> list[dict[str, Any]]:
    """The ease table as data, mm."""
    return [
        {
            "girth": girth.name,
            "measure": girth.measure,
            "body": round(girth.body, 6),
            "ease": round(girth.ease, 6),
            "pattern": None if girth.pattern is None else round(girth.pattern, 6),
            "usual_ease": None if girth.usual is None else list(girth.usual),
            **({} if girth.error is None else {"body_error": round(girth.error, 6)}),
        }
        for girth in girths
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
        words = ", ".join(f"{name.replace('_', ' ')} {value}" for name, value in settings.items())
        screen.line(f"Set: {words}.")
        screen.line()


def file_data(files: Mapping[str, Path]) -> dict[str, str]:
    """What was written, as data."""
    return {what: str(path) for what, path in files.items()}


def to_check(report: Report) -> bool:
    """Whether something is to be looked at before going on."""
    return report.stops or any(finding.severity is Severity.LOOK for finding in report.findings)


def _body(girth: GirthRow, style: LengthStyle) -> str:
    """The girth of the body, with its ± where it is an estimate."""
    if girth.error is None:
        return style.text(girth.body)
    return quantity_with_error(measure_entry(girth.measure), girth.body, girth.error, style)


def _amounts(finding: Finding, style: LengthStyle) -> str:
    """What was measured and what was wanted; of an estimate its ±, and what it would be now."""
    if finding.measured is None:
        return ""
    if finding.error is not None:
        value, spread = (_amount(one, finding.unit, style) for one in (finding.measured, finding.error))
        now = "" if finding.wanted is None else f", now {_amount(finding.wanted, finding.unit, style)}"
        return f" ({one_unit(value, spread)}{now})"
    if finding.wanted is None:
        return ""
    measured, wanted = (_fine(one, finding.unit, style) for one in (finding.measured, finding.wanted))
    return f" ({measured}, wanted {wanted})"


def _amount(value: float, unit: str, style: LengthStyle) -> str:
    return style.text(value) if unit == "mm" else _fine(value, unit, style)


def _fine(value: float, unit: str, style: LengthStyle) -> str:
    """A value in the reader's unit, fine enough for the misfit of a seam."""
    if unit == "mm":
        return format_length(value, style.unit, _FINE_DECIMALS[style.unit])
    return format_degrees(value) if unit == "deg" else f"{value:.4g} {unit}".rstrip()
