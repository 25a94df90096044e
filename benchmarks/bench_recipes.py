"""Replay of a whole style of 20 steps, its edits, its checks, five sizes of it, and what it keeps in memory.

The style is the princess dress of the four styles with a vent, a lining and what a cutter needs; it and its
bodies are invented. What it takes is set beside what general-purpose libraries take for the same outlines.
"""

from __future__ import annotations

import pickle
import tracemalloc
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any, Final

from forgetting import forget
from lower_sheets import lower_bodies
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.recipe import Recipe, Replay, add_step, change_step, recipe_from_json, replay
from style_outlines import outline_rows
from timing import Figure, Row, median_ms, timed
from upper_sheets import bodies

ROOT = Path(__file__).resolve().parents[1]

STYLE: Final = ROOT / "tests" / "integration" / "four_styles" / "princess_dress.json"

BASE: Final = "medium-92"

SIZES: Final = 5

EDITED: Final = "set_hem-1"
"""The step that is changed for the edit of the last third."""

_SKIRT: Final = ("dress.skirt_front", "dress.skirt_back")

_SIDES: Final = tuple((f"{piece}/side_seam", f"{piece}/waist_side") for piece in _SKIRT)

ADDED: Final[tuple[tuple[str, Mapping[str, Any]], ...]] = (
    (
        "taper",
        {
            "amount": "-15 mm",
            "nothing_at": [
                {"edge": edge, "from_point": point, "distance": "24 cm"} for edge, point in _SIDES
            ],
        },
    ),
    ("true_junction", {"seam": "dress/shoulder", "end": "start"}),
    ("declare_ease", {"seam": "dress/bodice_side_seam", "ease": "0 mm"}),
    ("set_hem", {"hems": [f"{piece}/hem" for piece in _SKIRT], "depth": "4 cm"}),
    ("set_allowance", {"edges": [edge for edge, _ in _SIDES], "width": "15 mm"}),
    ("set_allowance", {"edges": ["dress.bodice_back/neck"], "width": "6 mm"}),
    ("true_seam", {"seam": "dress/skirt_side_seam"}),
    (
        "pocket_bag",
        {
            "edges": [{"edge": edge, "upper_end": point} for edge, point in _SIDES],
            "distance": "24 cm",
            "opening": "15 cm",
        },
    ),
    ("lining", {"pieces": list(_SKIRT), "hems": [f"{piece}/hem" for piece in _SKIRT]}),
    ("interlining", {"pieces": ["front_princess.bodice_front_center"]}),
)
"""The ten steps that are added to the ten of the dress."""

KEY: Final = (
    "The style is the princess dress of tests/integration/four_styles with ten steps more. Five sizes are "
    "those of five\ninvented women, each drafted anew with nothing kept of a draft before. The other "
    "libraries are given the finished\noutlines: svgpathtools measures every edge and moves it, shapely "
    "lays an allowance of 10 mm round every piece."
)


@cache
def women() -> dict[str, MeasureSet]:
    """The invented women by name."""
    invented = {name: measures for name, _, measures in bodies()} | dict(lower_bodies())
    return {name: measures for name, measures in invented.items() if measures.population == "women"}


@cache
def style() -> Recipe:
    """The recipe of 20 steps."""
    base = women()[BASE]
    recipe = recipe_from_json(STYLE.read_text(encoding="utf-8"))
    for operation, parameters in ADDED:
        recipe = add_step(recipe, operation, parameters, base=base)
    return recipe


def whole() -> Replay:
    """The style run on its base."""
    return drafted(style(), women()[BASE])


def drafted(recipe: Recipe, measures: MeasureSet) -> Replay:
    """A recipe run with nothing kept of a run before; it may not stop."""
    forget()
    run = replay(recipe, measures)
    if run.suspended is not None:
        raise AssertionError(f"{measures.name}, {run.suspended.step}: {run.suspended.error}")
    return run


def edited(depth: str) -> Recipe:
    """The style with another hem: the last third runs again."""
    return change_step(style(), EDITED, {"depth": depth}, base=women()[BASE])


def figures() -> Iterator[Figure]:
    """Replay, edit, checks, five sizes, memory."""
    run, sizes = whole(), list(women().values())
    if len(sizes) != SIZES:
        raise AssertionError(f"{len(sizes)} women")
    steps, later = len(run.states), len(run.states) - replay(edited("5 cm"), run.measures, run).reused
    yield timed(f"replay of a dress of {steps} steps, whole", whole)
    change = edited("5 cm")
    yield timed(f"the same after an edit: {later} steps again", lambda: replay(change, run.measures, run))
    yield timed("checks while shaping: the dress", lambda: examine(run, cut=False), 5)
    yield timed("all checks: the dress", lambda: examine(run), 5)
    yield timed("five sizes of the dress", lambda: [drafted(style(), size) for size in sizes], 5)
    yield from _memory(run)


def _memory(run: Replay) -> Iterator[Figure]:
    """What one run with all its states takes: in memory, and written down."""
    tracemalloc.start()
    kept = whole()
    taken = tracemalloc.get_traced_memory()[0] / 1e6
    tracemalloc.stop()
    del kept
    yield Figure("memory that a run with all its states takes", taken, taken, taken, "MB")
    written = len(pickle.dumps(dict(run.pattern.edges))) / 1e6
    yield Figure("its outlines alone, written down", written, written, written, "MB")


def rows() -> list[Row]:
    """The same outlines handed to general-purpose libraries."""
    run = whole()
    return [
        *outline_rows(run),
        (f"a dress of {len(run.states)} steps, whole", "notchbook", median_ms(whole)),
    ]
