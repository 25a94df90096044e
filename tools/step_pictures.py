"""Draws each pattern step before and after for the reference pages, from real drafts on one invented body.

The rows stand in step_pictures.toml: the block, the steps that come before, and the step that is shown.
Pieces that the step leaves as they are, are not drawn.
"""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from html import escape
from typing import Any, Final

from house import ROOT
from notchbook.app.drafting import completed, trial_recipe
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import set_from_data
from notchbook.geometry import Box, Cubic, Path
from notchbook.pattern import Pattern, Piece
from notchbook.recipe import add_step, replay

ROWS: Final = ROOT / "tools" / "step_pictures.toml"
FOLDER: Final = "reference/steps"

_GAP = 40.0
_HEAD = 34.0
_SCALE = 0.6
"""Pixels for each mm of a piece."""

_LETTERS = 26.0
_STYLE: Final = (
    "path{fill:none;stroke:#1c2530;stroke-width:1.4;vector-effect:non-scaling-stroke}"
    ".leg{stroke-width:1}.line{stroke:#8a94a0;stroke-width:.8}"
    ".old{stroke:#b4432f;stroke-width:.9;stroke-dasharray:5 4}"
    "text{font-family:sans-serif;fill:#1c2530}"
)


@dataclass(frozen=True)
class Shown:
    """A step that is drawn: the patterns before and after it."""

    operation: str
    title: str
    before: Pattern
    after: Pattern


@cache
def rows() -> tuple[dict[str, Any], ...]:
    """The rows of the table, in its order."""
    return tuple(tomllib.loads(ROWS.read_text(encoding="utf-8"))["step"])


def picture_row(operation: str) -> dict[str, Any] | None:
    """The row of a step; None where it has no picture."""
    return next((row for row in rows() if row["operation"] == operation), None)


def step_pictures() -> dict[str, str]:
    """Path under docs/ -> SVG, for each step of the table."""
    return {f"{FOLDER}/{row['operation']}.svg": svg(shown(row)) for row in rows()}


def shown(row: dict[str, Any]) -> Shown:
    """The step of a row, run on the invented body; a refusal is raised."""
    body = set_from_data(BODY_OF_PICTURES)
    recipe = trial_recipe(row["block"], body, row.get("settings", {}))
    for step in row.get("before", ()):
        recipe = add_step(recipe, step["operation"], step["parameters"], base=body, slug=step.get("slug", ""))
    before = completed(replay(recipe, body)).pattern
    recipe = add_step(recipe, row["operation"], row["parameters"], base=body, slug=row.get("slug", ""))
    return Shown(row["operation"], row["title"], before, completed(replay(recipe, body)).pattern)


def svg(step: Shown) -> str:
    """Two rows: the pieces before, and after with the old outline dashed below it."""
    old = [piece for name, piece in step.before.pieces.items() if piece != step.after.pieces.get(name)]
    new = [piece for name, piece in step.after.pieces.items() if piece != step.before.pieces.get(name)]
    kept = {piece.name: piece for piece in old}
    first = _row(old or list(step.before.pieces.values()), {})
    second = _row(new or list(step.after.pieces.values()), kept)
    wide = max(first.width, second.width)
    height = first.height + second.height + 2.0 * _HEAD + _GAP
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide:.0f} {height:.0f}" '
        f'width="{wide * _SCALE:.0f}" role="img" aria-label="{escape(step.title, quote=True)}">',
        f"<title>{escape(step.title)}</title><style>{_STYLE}</style>",
        '<rect width="100%" height="100%" fill="#fffdf8"/>',
    ]
    top = 0.0
    for word, row in (("Before", first), ("After", second)):
        lines.append(
            f'<text x="{_GAP / 2:.0f}" y="{top + _HEAD * 0.8:.0f}" font-size="{_LETTERS:.0f}">{word}</text>'
        )
        lines += [
            f'<g transform="translate({x:.1f} {top + _HEAD + y:.1f})">{body}</g>' for x, y, body in row.placed
        ]
        top += row.height + _HEAD + _GAP
    return "\n".join([*lines, "</svg>"]) + "\n"


@dataclass(frozen=True)
class _Row:
    width: float
    height: float
    placed: tuple[tuple[float, float, str], ...]


def _row(pieces: Sequence[Piece], old: dict[str, Piece]) -> _Row:
    """The pieces side by side, each with its old outline, if it has one."""
    placed: list[tuple[float, float, str]] = []
    x, height = _GAP, 0.0
    for piece in pieces:
        box = piece.bounds if piece.name not in old else piece.bounds.union(old[piece.name].bounds)
        placed.append((x - box.min_x, box.max_y, _drawn(piece, old.get(piece.name))))
        x += _wide(box) + _GAP
        height = max(height, box.max_y - box.min_y)
    return _Row(x, height, tuple(placed))


def _wide(box: Box) -> float:
    return box.max_x - box.min_x


def _drawn(piece: Piece, old: Piece | None) -> str:
    parts = [] if old is None else [f'<path class="old" d="{path_data(old.sew_line)}"/>']
    parts += [f'<path class="line" d="{path_data(line.path)}"/>' for line in piece.lines]
    for edge in piece.outline:
        kind = ' class="leg"' if edge.kind == "leg" else ""
        parts.append(f'<path{kind} d="{path_data(edge.path)}"/>')
    return "".join(parts)


def path_data(path: Path) -> str:
    """The path for SVG, y down, to a tenth of a millimeter."""
    words = [f"M{path.start.x:.1f} {-path.start.y:.1f}"]
    for segment in path.segments:
        points = (
            (segment.start_handle, segment.end_handle, segment.end)
            if isinstance(segment, Cubic)
            else (segment.end,)
        )
        letter = "C" if isinstance(segment, Cubic) else "L"
        words.append(letter + " ".join(f"{point.x:.1f} {-point.y:.1f}" for point in points))
    return "".join(words).replace("-0.0", "0.0")
