"""Notches on what opens now: no seam runs there any more, so they serve none."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from notchbook.pattern import Notch, Pattern, locate
from notchbook.style.closures.divided import Divided
from notchbook.units import TOLERANCES

Opened = tuple[str, float]
"""The end of an edge from which it opens, and how far, mm along the edge."""


def opened_by(*cuts: Divided) -> Mapping[str, Opened]:
    """What these cuts open, by edge."""
    return {cut.edge: (cut.end, cut.opened) for cut in cuts}


def notches_left(pattern: Pattern, opened: Mapping[str, Opened]) -> Iterator[Notch]:
    """The notches that lie on what opens of these edges: they stay as lone marks.

    ``pattern`` is that before the edges were divided. A notch at the very end of the opening stays with its
    seam, which begins there.
    """
    for notch in pattern.notches.values():
        if notch.seam is None:
            continue
        found = locate(pattern, notch.place)
        if found.edge.name not in opened:
            continue
        end, length = opened[found.edge.name]
        at = found.distance if found.edge.start == end else found.edge.length - found.distance
        if at < length - TOLERANCES.sew_length:
            yield replace(notch, seam=None)
