"""Neck, shoulder and armhole traced as one run: the shoulder moved in by the turn of the cloth."""

from dataclasses import replace

from notchbook.geometry import Path, Point, Transform
from notchbook.style.edges.carried_edge import Carry, carried_edge
from notchbook.style.traced.faced_run import Faced, FacedRun

_STILL = Point(0.0, 0.0)


def strap_drawn_in(run: FacedRun, turn: float) -> FacedRun:
    """The run of three edges, its middle one, the shoulder, moved inward square to itself by the turn, mm.

    The shoulder keeps its length, so that front and back still agree; the edges beside it are drawn in.
    """
    first, shoulder, last = run.faced
    chord = shoulder.path.end - shoulder.path.start
    inward = chord.unit().perpendicular() * turn
    moved = replace(shoulder, path=shoulder.path.transformed(Transform.translation(inward.x, inward.y)))
    before = _drawn(first, Carry(_STILL, inward, _STILL))
    after = _drawn(last, Carry(inward, _STILL, _STILL))
    return replace(run, faced=(before, moved, after))


def _drawn(faced: Faced, carry: Carry) -> Faced:
    path: Path = carried_edge(faced.path, carry)
    return replace(faced, path=path, less=faced.less + faced.path.length - path.length)
