"""Draws the sheets of trousers, skirts and stretch blocks as SVG and PNG: pieces side by side."""

from __future__ import annotations

import sys
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT / "benchmarks")]

import numpy as np

from lower_judged import JUDGES
from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.errors import NotchbookError
from notchbook.pattern import Severity, pattern_to_data
from support.bodice_judge import UpperJudge
from upper_sheet import GAP, Line, Sheet, Word, below, piece_lines
from upper_sheets import BODIES, picture, svg

LOWER_BODIES: Final = ROOT / "tools" / "lower_sheet_bodies.toml"


@dataclass(frozen=True)
class SheetKind:
    """A block that is drawn: the name of its sheets and how it is drafted."""

    name: str
    block: str
    settings: Mapping[str, Any]


LETTERS: Final = 12.0
"""mm; these sheets are larger than those of the bodices."""

CLOTH: Final = {"across": "50 %", "along": "50 %"}

KINDS: Final = (
    SheetKind("trousers", "trousers", {}),
    SheetKind("skirt", "skirt", {}),
    SheetKind("gored-skirt", "gored_skirt", {}),
    SheetKind("circle-skirt", "circle_skirt", {}),
    SheetKind("stretch-torso", "stretch_torso", CLOTH),
    SheetKind("bodysuit", "bodysuit", CLOTH),
    SheetKind("leggings", "leggings", CLOTH),
)


def lower_bodies() -> Iterator[tuple[str, MeasureSet]]:
    """Name and measures of the six invented bodies."""
    upper = {row["name"]: row for row in tomllib.loads(BODIES.read_text(encoding="utf-8"))["body"]}
    for row in tomllib.loads(LOWER_BODIES.read_text(encoding="utf-8"))["body"]:
        whole = upper.get(row["name"], {}) | row
        values = {key: float(value) for key, value in whole.items() if not isinstance(value, str)}
        title = f"{whole['title']} (invented)"
        yield row["name"], MeasureSet.from_mm(title, values, population=whole.get("population"))


def sheet_of(kind: SheetKind, measures: MeasureSet) -> Sheet:
    """The sheet of one body; refused as the draft is."""
    run = draft(kind.block, measures, kind.settings)
    judge = UpperJudge(pattern_to_data(run.pattern))
    sheet = Sheet(f"{kind.name.replace('-', ' ')}: {measures.name}", letters=LETTERS)
    right = 0.0
    for name in sorted(judge.pieces):
        lines = _placed(list(piece_lines(judge, name)), right)
        sheet.lines += lines
        sheet.words.append(below(lines, judge.pieces[name]["title"]))
        right = max(float(line.points[:, 0].max()) for line in lines) + GAP
    top = max(float(line.points[:, 1].max()) for line in sheet.lines)
    judged = JUDGES[kind.block](run)
    texts = [f"{name}: {_figure(value)}" for name, value in judged.figures.items()]
    texts += [f"does not agree: {word}" for word in judged.open]
    texts += [f"sent back: {word}" for word in judged.faults]
    found = [one.code for one in examine(run, cut=False).findings if one.severity is not Severity.NOTE]
    texts += [f"to look at: {code}" for code in dict.fromkeys(found)]
    sheet.words += [Word(right, top - 1.6 * LETTERS * row, text) for row, text in enumerate(texts)]
    sheet.words.append(Word(0.0, top + 20.0, sheet.title, small=False))
    return sheet


def _figure(value: float) -> str:
    """A share with two decimals, all else with one."""
    return f"{value:.2f}" if 0.0 < abs(value) < 1.0 else f"{value:.1f}"


def _placed(lines: list[Line], right: float) -> list[Line]:
    """The lines of a piece, moved so that they begin at ``right``."""
    aside = np.array([right - min(float(line.points[:, 0].min()) for line in lines), 0.0])
    return [Line(line.points + aside, line.look) for line in lines]


def write_lower_sheets(folder: Path, pictures: Path | None, only: str = "") -> int:
    """Write every sheet, as PNG too where a folder for them is named; how many bodies were refused."""
    refused = 0
    for kind in KINDS:
        for name, measures in lower_bodies() if only in ("", kind.name) else ():
            try:
                sheet = sheet_of(kind, measures)
            except NotchbookError as error:
                print(f"{kind.name} {name}: {error}", file=sys.stderr)
                refused += 1
                continue
            folder.mkdir(parents=True, exist_ok=True)
            (folder / f"{kind.name}-{name}.svg").write_text(svg(sheet), encoding="utf-8")
            if pictures is not None:
                pictures.mkdir(parents=True, exist_ok=True)
                picture(sheet, pictures / f"{kind.name}-{name}.png")
            print(f"{kind.name} {name}: drawn")
    return refused
