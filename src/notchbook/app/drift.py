"""Drift: a stored pattern that its own recipe would draw otherwise today.

A style file and a revision keep the geometry that came out when they were written. When a newer
program draws the same recipe on the same body otherwise, that is said, never passed over.
"""

from collections.abc import Iterator

from notchbook.geometry import Path, greatest_gap
from notchbook.pattern import Finding, Pattern, Severity, spoken

LEAST_DRIFT = 0.01
"""mm; a step's version must rise when its result moves by more (decision 0002)."""

_SAMPLES = 24


def drift_findings(stored: Pattern, now: Pattern) -> tuple[Finding, ...]:
    """What of the stored pattern would come out otherwise now: moved edges, names gone or new."""
    return tuple(_drift(stored, now))


def _drift(stored: Pattern, now: Pattern) -> Iterator[Finding]:
    gone = tuple(name for name in stored.index if name not in now.index)
    new = tuple(name for name in now.index if name not in stored.index)
    for code, names, said in (
        ("drift-gone", gone, "stands in the stored pattern and is not drawn now"),
        ("drift-new", new, "is drawn now and does not stand in the stored pattern"),
    ):
        if names:
            more = f" and {len(names) - 1} more" if len(names) > 1 else ""
            yield _finding(code, f"{spoken(names[0])}{more} {said}.", names=names)
    for name, edge in stored.edges.items():
        if name in now.edges and edge.path != now.edges[name].path:
            moved = edge_drift(edge.path, now.edges[name].path)
            if moved > LEAST_DRIFT:
                message = f"{spoken(name)} is drawn otherwise now than when the style was stored."
                yield _finding("drift-moved", message, where=name, measured=moved, names=(name,))


def edge_drift(stored: Path, now: Path) -> float:
    """How far a path has moved, mm: between the paths, and between their ends."""
    ends = max(stored.start.distance_to(now.start), stored.end.distance_to(now.end))
    return max(ends, greatest_gap(stored, now, _SAMPLES))


def _finding(
    code: str,
    message: str,
    *,
    where: str | None = None,
    measured: float | None = None,
    names: tuple[str, ...] = (),
) -> Finding:
    return Finding(
        "drift",
        code,
        Severity.LOOK,
        message,
        where=where,
        measured=measured,
        wanted=None if measured is None else LEAST_DRIFT,
        suggestion="Compare with the stored paper before cutting, then write the style again.",
        names=names,
    )
