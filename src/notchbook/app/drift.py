"""Drift: a stored pattern that its own recipe would draw otherwise today.

A style file and a revision keep the geometry that came out when they were written. When a newer
program draws the same recipe on the same body otherwise, that is said, never passed over.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from notchbook.geometry import Path, greatest_gap
from notchbook.pattern import Finding, Measured, Pattern, Severity, spoken, worded
from notchbook.recipe import definition
from notchbook.recipe.definition import REDRAWN

_CHECK = "drift"
"""The name under which drift is told."""

LEAST_DRIFT = 0.01
"""mm; a step's version must rise when its result moves by more (decision 0002)."""

_SAMPLES = 24


def drift_findings(stored: Pattern, now: Pattern) -> tuple[Finding, ...]:
    """What of the stored pattern would come out otherwise now: moved edges, names gone or new."""
    return tuple(_drift(stored, now))


def _drift(stored: Pattern, now: Pattern) -> Iterator[Finding]:
    gone = tuple(name for name in stored.index if name not in now.index)
    new = tuple(name for name in now.index if name not in stored.index)
    if gone:
        yield worded(_CHECK, "drift-gone", Severity.LOOK, names=gone, first=spoken(gone[0]), count=len(gone))
    if new:
        yield worded(_CHECK, "drift-new", Severity.LOOK, names=new, first=spoken(new[0]), count=len(new))
    for name, edge in stored.edges.items():
        if name in now.edges and edge.path != now.edges[name].path:
            moved = edge_drift(edge.path, now.edges[name].path)
            if moved > LEAST_DRIFT:
                amount = Measured(moved, LEAST_DRIFT)
                yield worded(_CHECK, "drift-moved", Severity.LOOK, amount, where=name, edge=spoken(name))


def redrawn_steps(recipe: Mapping[str, Any]) -> tuple[Finding, ...]:
    """The steps of a stored recipe (as data) that an older version wrote and this one may draw otherwise."""
    found: list[Finding] = []
    for step in recipe.get("steps", ()):
        known, version = definition(step["operation"]), step["version"]
        if any(known.upcasters.get(older) is REDRAWN for older in range(version, known.version)):
            facts = {"step": step["id"], "title": step["title"] or known.title, "version": version}
            found.append(worded(_CHECK, "step-redrawn", Severity.LOOK, now=known.version, **facts))
    return tuple(found)


def edge_drift(stored: Path, now: Path) -> float:
    """How far a path has moved, mm: between the paths, and between their ends."""
    ends = max(stored.start.distance_to(now.start), stored.end.distance_to(now.end))
    return max(ends, greatest_gap(stored, now, _SAMPLES))
