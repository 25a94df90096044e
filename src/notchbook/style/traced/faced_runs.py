"""From the edges that were asked for to runs: neighbors in one, over the panels of a piece that was cut."""

from collections.abc import Sequence

from notchbook.errors import StepRefused
from notchbook.pattern import Pattern, require, spoken
from notchbook.style.traced.faced_run import FacedRun
from notchbook.style.traced.panel_run import Asked, PartAsked, over_panels, panel_run


def faced_runs(pattern: Pattern, asked: Sequence[Asked], depth: float | None = None) -> tuple[FacedRun, ...]:
    """The edges as asked for, gathered to one run for each stretch of neighbors, in order.

    An edge that was cut into panels is one edge: the panels are laid together. They are laid edge to edge
    down to ``depth``, mm; None: as deep as the edges are faced. StepRefused ``facing-edge-broken``,
    ``facing-end-elsewhere``, ``facing-edges-apart``, ``facing-on-fold``, ``facing-drawn-in``,
    ``facing-panels-apart``.
    """
    runs: list[list[Asked]] = []
    for one in asked:
        if runs and _goes_on(pattern, runs[-1][-1], one):
            runs[-1].append(one)
        else:
            runs.append([one])
    return tuple(_run(pattern, run, depth) for run in runs)


def _ends(pattern: Pattern, one: Asked) -> tuple[str, str, bool]:
    """The points where the walk begins and ends, and whether it goes counter-clockwise."""
    members = require(pattern, one.edge)
    first, last = pattern.edges[members[0]].start, pattern.edges[members[-1]].end
    if one.starts_at not in (first, last):
        raise StepRefused("facing-end-elsewhere", edge=spoken(one.edge), point=spoken(one.starts_at))
    return (first, last, True) if one.starts_at == first else (last, first, False)


def _goes_on(pattern: Pattern, one: Asked, other: Asked) -> bool:
    """Whether the second edge begins where the first ends, on the same piece."""
    if _ends(pattern, one)[1] != other.starts_at:
        return False
    last = require(pattern, one.edge)[-1 if _ends(pattern, one)[2] else 0]
    first = require(pattern, other.edge)[0 if _ends(pattern, other)[2] else -1]
    return pattern.carriers[last] == pattern.carriers[first]


def _run(pattern: Pattern, asked: list[Asked], depth: float | None) -> FacedRun:
    forward = _ends(pattern, asked[0])[2]
    if any(_ends(pattern, one)[2] != forward for one in asked):
        raise StepRefused("facing-edges-apart", first=spoken(asked[0].edge), second=spoken(asked[-1].edge))
    reach = max(one.depth for one in asked) if depth is None else depth
    panels = _by_panels(pattern, asked if forward else asked[::-1])
    runs = [panel_run(pattern, parts, reach, forward=forward) for parts in panels]
    return runs[0] if len(runs) == 1 else over_panels(pattern, runs, reach)


def _by_panels(pattern: Pattern, in_order: Sequence[Asked]) -> list[list[PartAsked]]:
    """What of the edges lies on each piece, counter-clockwise; refused where a piece comes back."""
    panels: list[tuple[str, list[PartAsked]]] = []
    for one in in_order:
        part: list[str] = []
        for name in require(pattern, one.edge):
            carrier = pattern.carriers[name]
            if not panels or panels[-1][0] != carrier:
                if any(carrier == known for known, _ in panels):
                    raise StepRefused("facing-edge-broken", edge=spoken(one.edge), piece=spoken(carrier))
                panels.append((carrier, []))
                part = []
            if not part:
                panels[-1][1].append(PartAsked(one, ()))
            part.append(name)
            panels[-1][1][-1] = PartAsked(one, tuple(part))
    return [parts for _, parts in panels]
