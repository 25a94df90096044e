"""Draws the sheets of bodice and sleeve as SVG and PNG."""

from __future__ import annotations

import io
import sys
import tomllib
from collections.abc import Iterator
from html import escape
from pathlib import Path
from typing import Final

import pypdfium2
from reportlab.lib.colors import HexColor
from reportlab.pdfgen.canvas import Canvas
from shapely.geometry import LineString

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT / "benchmarks")]

from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.errors import NotchbookError
from notchbook.pattern import Severity, pattern_to_data
from support.bodice_judge import UpperJudge
from upper_sheet import Line, Sheet, block_sheet

BODIES: Final = ROOT / "tools" / "sheet_bodies.toml"

LOOKS: Final = {
    "sew": ("#1c2530", 0.9),
    "dart": ("#1c2530", 0.5),
    "level": ("#8a94a0", 0.4),
    "cap": ("#b4432f", 0.9),
    "guide": ("#8a94a0", 0.4),
}
"""Color and width in mm, at full size."""

MARGIN: Final = 20.0
SETTINGS: Final = {"fabric": "wool_dress"}


def bodies() -> Iterator[tuple[str, str, MeasureSet]]:
    """Name, title and measures of the invented bodies."""
    for row in tomllib.loads(BODIES.read_text(encoding="utf-8"))["body"]:
        values = {
            key: float(value) for key, value in row.items() if key not in ("name", "title", "population")
        }
        title = f"{row['title']} (invented)"
        yield row["name"], title, MeasureSet.from_mm(title, values, population=row.get("population"))


def sheet_of(title: str, measures: MeasureSet) -> Sheet:
    """The sheet of one body; refused as the draft is."""
    run = draft("sleeve", measures, SETTINGS)
    found = [one.code for one in examine(run, cut=False).findings if one.severity is not Severity.NOTE]
    return block_sheet(title, UpperJudge(pattern_to_data(run.pattern)), list(dict.fromkeys(found)))


def svg(sheet: Sheet) -> str:
    """The sheet as SVG, in mm; points to a hundredth of a millimeter."""
    low_x, low_y, high_x, high_y = sheet.box
    width, height = high_x - low_x + 2 * MARGIN, high_y - low_y + 2 * MARGIN

    def at(x: float, y: float) -> str:
        return f"{x - low_x + MARGIN:.2f},{high_y + MARGIN - y:.2f}"

    rows = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.0f} {height:.0f}" '
        f'width="{width:.0f}mm" height="{height:.0f}mm" font-family="sans-serif">',
        f"<title>{escape(sheet.title)}</title>",
        '<rect width="100%" height="100%" fill="#fffdf8"/>',
    ]
    for line in sheet.lines:
        color, pen = LOOKS[line.look]
        points = " ".join(at(x, y) for x, y in _thinned(line))
        rows.append(f'<polyline points="{points}" fill="none" stroke="{color}" stroke-width="{pen}"/>')
    for word in sheet.words:
        x, y = at(word.x, word.y).split(",")
        size = sheet.letters if word.small else 1.75 * sheet.letters
        rows.append(f'<text x="{x}" y="{y}" font-size="{size:g}" fill="#1c2530">{escape(word.text)}</text>')
    return "\n".join([*rows, "</svg>"]) + "\n"


def _thinned(line: Line) -> list[tuple[float, ...]]:
    """The points of a line without those that a straight line explains to 0.01 mm."""
    return list(LineString(line.points).simplify(0.01).coords)


def picture(sheet: Sheet, path: Path) -> None:
    """The sheet as PNG, about 1600 dots wide."""
    low_x, low_y, high_x, high_y = sheet.box
    width, height = high_x - low_x + 2 * MARGIN, high_y - low_y + 2 * MARGIN
    held = io.BytesIO()
    canvas = Canvas(held, pagesize=(width, height))
    canvas.translate(MARGIN - low_x, MARGIN - low_y)
    for line in sheet.lines:
        color, pen = LOOKS[line.look]
        canvas.setStrokeColor(HexColor(color))
        canvas.setLineWidth(pen * 1.4)
        drawn = canvas.beginPath()
        drawn.moveTo(*line.points[0])
        for x, y in line.points[1:]:
            drawn.lineTo(x, y)
        canvas.drawPath(drawn)
    for word in sheet.words:
        canvas.setFont("Helvetica", 1.1 * sheet.letters * (1.0 if word.small else 1.75))
        canvas.drawString(word.x, word.y, word.text)
    canvas.save()
    page = pypdfium2.PdfDocument(held.getvalue())[0]
    page.render(scale=1600.0 / width).to_pil().save(path)


def write_sheets(folder: Path, pictures: Path | None) -> int:
    """Write every sheet, as PNG too where a folder for them is named; how many bodies were refused."""
    refused = 0
    for name, title, measures in bodies():
        try:
            sheet = sheet_of(title, measures)
        except NotchbookError as error:
            print(f"{name}: {error}", file=sys.stderr)
            refused += 1
            continue
        folder.mkdir(parents=True, exist_ok=True)
        (folder / f"{name}.svg").write_text(svg(sheet), encoding="utf-8")
        if pictures is not None:
            pictures.mkdir(parents=True, exist_ok=True)
            picture(sheet, pictures / f"{name}.png")
        print(f"{name}: drawn")
    return refused
