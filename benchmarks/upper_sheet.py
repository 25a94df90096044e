"""One sheet of a bodice with its sleeve: what is drawn where, as lines and words in mm, y up."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT / "benchmarks")]

from sheet_grain import grain_arrow
from support.bodice_judge import BODICE, Points, UpperJudge
from support.skirt_judge import length
from upper_figures import figures

GAP = 60.0
"""mm between the things on the sheet."""

SLEEVE = "sleeve.sleeve"


@dataclass(frozen=True)
class Line:
    """A polyline; ``look`` names how it is drawn: sew, dart, level, cap, guide."""

    points: Points
    look: str = "sew"


@dataclass(frozen=True)
class Word:
    """Words from a place on."""

    x: float
    y: float
    text: str
    small: bool = True


@dataclass
class Sheet:
    """What stands on a sheet."""

    title: str
    lines: list[Line] = field(default_factory=list)
    words: list[Word] = field(default_factory=list)
    letters: float = 8.0
    """Size of small words, mm."""

    @property
    def box(self) -> tuple[float, float, float, float]:
        """min x, min y, max x, max y of all lines and words."""
        places = np.concatenate([line.points for line in self.lines])
        words = np.array([[word.x, word.y] for word in self.words])
        low, high = np.vstack([places, words]).min(axis=0), np.vstack([places, words]).max(axis=0)
        return float(low[0]), float(low[1]), float(high[0]) + 20.0 * self.letters, float(high[1]) + 20.0


def block_sheet(title: str, judge: UpperJudge, findings: Sequence[str]) -> Sheet:
    """Front and back joined at the underarm, the sleeve, the cap laid into the armhole, and key figures."""
    sheet = Sheet(title)
    for which, lines in (("Back", list(piece_lines(judge, BODICE["back"]))), ("Front", _joined(judge))):
        sheet.lines += lines
        sheet.words.append(below(lines, which))
    right = max(float(line.points[:, 0].max()) for line in sheet.lines) + GAP
    if judge.has_sleeve:
        sleeve = list(piece_lines(judge, SLEEVE))
        shift = np.array([right - min(float(line.points[:, 0].min()) for line in sleeve), 0.0])
        shift[1] = _top(sheet.lines) - _top(sleeve)
        sleeve = [Line(line.points + shift, line.look) for line in sleeve]
        sheet.lines += sleeve
        sheet.words.append(below(sleeve, "Sleeve"))
        right = max(float(line.points[:, 0].max()) for line in sheet.lines) + GAP
    laid = list(_laid_in(judge))
    shift = np.array([right - min(float(line.points[:, 0].min()) for line in laid), 0.0])
    shift[1] = _top(sheet.lines) - _top(laid)
    sheet.lines += [Line(line.points + shift, line.look) for line in laid]
    bottom = min(float(line.points[:, 1].min() + shift[1]) for line in laid) - 2.0 * GAP / 3.0
    texts = [f"{name}: {_figure(name, value)}" for name, value in figures(judge).items()]
    texts += [f"to look at: {code}" for code in findings]
    sheet.words += [Word(right, bottom - 11.0 * row, text) for row, text in enumerate(texts)]
    sheet.words.append(Word(0.0, _top(sheet.lines) + 15.0, title, small=False))
    return sheet


def _figure(name: str, value: float) -> str:
    if "angle" in name:
        return f"{value:.1f} deg"
    return f"{value:.2f}" if value < 1.0 else f"{value:.0f}"


def _top(lines: Sequence[Line]) -> float:
    return max(float(line.points[:, 1].max()) for line in lines)


def piece_lines(judge: UpperJudge, piece: str) -> Iterator[Line]:
    """The lines of a piece where they are."""
    legs = {leg for _, first, second in judge.darts(piece) for leg in (first, second)}
    for edge in judge.pieces[piece]["outline"]:
        yield Line(judge.edges[edge["name"]], "dart" if edge["name"] in legs else "sew")
    for line in judge.pieces[piece]["lines"]:
        yield Line(judge.lines[line["name"]], "dart" if line["kind"] == "dart_leg" else "level")
    for arrow in _grain(judge, piece):
        yield Line(arrow, "guide")
    for mark in judge.pieces[piece]["marks"]:
        if mark["kind"] == "datum":  # measured from, not marked
            continue
        yield from _cross(np.array([mark["x"], mark["y"]]))
    for name in judge.notches:
        place = judge.notches[name]["place"]
        if place["edge"].startswith(f"{piece}/"):
            yield from _notch(judge, piece, name)


def _grain(judge: UpperJudge, piece: str) -> list[Points]:
    """The arrow of the grain, clear of what does not run across the piece."""
    whole = judge.pieces[piece]
    legs = [judge.edges[leg] for _, *pair in judge.darts(piece) for leg in pair]
    lines = [judge.lines[line["name"]] for line in whole["lines"] if line["kind"] != "level"]
    return grain_arrow(judge.polygon(piece), whole["grain"]["degrees"], legs + lines)


def below(lines: Sequence[Line], title: str) -> Word:
    """The title of a piece, under its lowest edge."""
    places = np.concatenate([line.points for line in lines])
    low, high = places.min(axis=0), places.max(axis=0)
    return Word(float(low[0]) + 0.4 * float(high[0] - low[0]), float(low[1]) - 16.0, title)


def _cross(place: Points, size: float = 4.0) -> Iterator[Line]:
    for arm in (np.array([size, 0.0]), np.array([0.0, size])):
        yield Line(np.array([place - arm, place + arm]), "dart")


def _notch(judge: UpperJudge, piece: str, name: str) -> Iterator[Line]:
    """A short stroke square to the edge, inward; two for a double notch."""
    place = judge.notches[name]["place"]
    word = place["edge"].removeprefix(f"{piece}/")
    edges = judge.named(piece, word)
    if place["notch"] is not None or not edges:
        return
    starts = judge.point(piece, place["from_point"].rpartition("/")[2])
    if np.linalg.norm(judge.edges[edges[0]][0] - starts) > 1e-6:
        edges = edges[::-1]
    amount = place["amount"] * (judge.length(*edges) if place["measure"] == "fraction" else 1.0)
    for edge in edges:
        run = judge.edges[edge]
        run = run if np.linalg.norm(run[0] - starts) < np.linalg.norm(run[-1] - starts) else run[::-1]
        if amount <= length(run):
            for step in (0.0, 6.0) if judge.notches[name]["kind"] == "double" else (0.0,):
                yield _stroke(run, amount + step)
            return
        amount -= length(run)


def _stroke(run: Points, amount: float, size: float = 7.0) -> Line:
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(run, axis=0), axis=1))])
    at, ahead = (
        np.array([np.interp(s, along, run[:, axis]) for axis in (0, 1)]) for s in (amount, amount + 0.5)
    )
    across = np.array([-(ahead - at)[1], (ahead - at)[0]])
    across *= size / max(float(np.linalg.norm(across)), 1e-9) / 2.0
    return Line(np.array([at - across, at + across]), "sew")


def _joined(judge: UpperJudge) -> list[Line]:
    """The front, moved to the back so that the side seams meet at the underarm."""
    back, front = BODICE["back"], BODICE["front"]
    at_back, at_front = judge.point(back, "underarm"), judge.point(front, "underarm")
    down_back, down_front = _down(judge, back), _down(judge, front)
    angle = np.arctan2(down_back[1], down_back[0]) - np.arctan2(down_front[1], down_front[0])
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    return [
        Line((line.points - at_front) @ turn.T + at_back, line.look) for line in piece_lines(judge, front)
    ]


def _down(judge: UpperJudge, piece: str) -> Points:
    """The direction in which the side seam leaves the underarm."""
    run, _ = judge.run(piece, "side_seam")
    start = judge.point(piece, "underarm")
    at_start = np.linalg.norm(run[0] - start) <= np.linalg.norm(run[-1] - start)
    first, second = (run[0], run[1]) if at_start else (run[-1], run[-2])
    found: Points = second - first
    return found


def _laid_in(judge: UpperJudge) -> Iterator[Line]:
    """The armhole seen along the closed side seam, front to the right, with the cap laid into it."""
    for which, way in (("front", 1.0), ("back", -1.0)):
        mirror = np.array([way, 1.0])
        yield Line(judge.armhole(which) * mirror)
        if judge.has_sleeve:
            yield Line(judge.cap(which) * mirror, "cap")
    yield Line(np.array([[0.0, 0.0], [0.0, -30.0]]), "guide")
