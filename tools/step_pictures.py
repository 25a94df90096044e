"""Draws each pattern step before and after for the reference pages, from real drafts on one invented body.

The rows stand in step_pictures.toml: the block, the steps that come before, and the step that is shown.
Pieces that the step leaves as they are, are not drawn.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from html import escape
from typing import Any, Final

from house import ROOT
from notchbook.app.drafting import completed, trial_recipe
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import set_from_data
from notchbook.pattern import Pattern, Piece
from notchbook.recipe import add_step, replay
from step_drawing import STYLE, drawn_piece

ROWS: Final = ROOT / "tools" / "step_pictures.toml"
FOLDER: Final = "reference/steps"

_GAP = 40.0
_HEAD = 34.0
_SCALE = 0.6
"""Pixels for each mm of a piece."""

_LETTERS = 26.0
_WIDEST: Final = 1300.0
"""mm of a row; pieces beyond it go into the next."""


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
    """The pieces before, and after with the old outline dashed below each; long rows are broken."""
    old = [piece for name, piece in step.before.pieces.items() if piece != step.after.pieces.get(name)]
    new = [piece for name, piece in step.after.pieces.items() if piece != step.before.pieces.get(name)]
    kept = {piece.name: piece for piece in old}
    parts: tuple[tuple[str, Pattern, Sequence[Piece], dict[str, Piece]], ...] = (
        ("Before", step.before, old or list(step.before.pieces.values()), {}),
        ("After", step.after, new or list(step.after.pieces.values()), kept),
    )
    lines: list[str] = []
    top = wide = 0.0
    for word, pattern, pieces, under in parts:
        lines.append(
            f'<text x="{_GAP / 2:.0f}" y="{top + _HEAD * 0.8:.0f}" font-size="{_LETTERS:.0f}">{word}</text>'
        )
        top += _HEAD
        for row in _rows(pattern, pieces, under):
            lines += [
                f'<g transform="translate({x:.1f} {top + y:.1f})">{body}</g>' for x, y, body in row.placed
            ]
            top += row.height + _GAP
            wide = max(wide, row.width)
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide:.0f} {top:.0f}" '
            f'width="{wide * _SCALE:.0f}" role="img" aria-label="{escape(step.title, quote=True)}">',
            f"<title>{escape(step.title)}</title><style>{STYLE}</style>",
            '<rect width="100%" height="100%" fill="#fffdf8"/>',
            *lines,
            "</svg>\n",
        ]
    )


@dataclass(frozen=True)
class _Row:
    width: float
    height: float
    placed: tuple[tuple[float, float, str], ...]


def _rows(pattern: Pattern, pieces: Sequence[Piece], old: dict[str, Piece]) -> Iterator[_Row]:
    """The pieces side by side, each with its old outline, if it has one."""
    placed: list[tuple[float, float, str]] = []
    x, height = _GAP, 0.0
    for piece in pieces:
        box = piece.bounds if piece.name not in old else piece.bounds.union(old[piece.name].bounds)
        wide = box.max_x - box.min_x
        if placed and x + wide > _WIDEST:
            yield _Row(x, height, tuple(placed))
            placed, x, height = [], _GAP, 0.0
        placed.append((x - box.min_x, box.max_y, drawn_piece(pattern, piece, old.get(piece.name))))
        x += wide + _GAP
        height = max(height, box.max_y - box.min_y)
    yield _Row(x, height, tuple(placed))
