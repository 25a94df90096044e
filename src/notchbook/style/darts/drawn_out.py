"""The line over gathers where it would bend all at once at one end of them: drawn out beyond that end.

A dart that opens askew to its edge leaves the two sides of its mouth offset against each other. A line that
has to have done all its bending where the gathers end then goes nearly straight and bends there like a
corner, or swings out first. The hand lets it run straight for a while, and bend evenly from there through
what is not gathered.
"""

from math import radians, tan

from notchbook.errors import GeometryError
from notchbook.geometry import Path, Point, fair_curve, inflections
from notchbook.geometry.path import turn_degrees

_WINDOW = 10.0
"""mm over which the eye takes in the roundness of a curve, as the check of the finished pattern has it."""

_SHARP = 5.0
"""Degrees of turn over that length from which a line is drawn out: a radius of 115 mm. Own judgment."""

_REACH = 60.0
"""mm beyond the gathers over which a line is drawn out at most. Own judgment."""


def drawn_out(before: Path, line: Path, after: Path) -> tuple[Path, Path, Path]:
    """The gathered ``line`` and what lies before and after it, drawn out where the line bends sharply
    or changes its side.

    What lies before and after keeps its length, and the whole its ends and its directions there.
    """
    if _sharpest(line) <= _SHARP and not inflections(line):
        return before, line, after
    chord = line.end - line.start
    bends = [abs(turn_degrees(chord, line.tangent_at(place))) for place in (0.0, line.length)]
    if bends[1] >= bends[0]:
        return before, *_out_at_end(line, after)
    turned, shorter = _out_at_end(line.reversed(), before.reversed())
    return shorter.reversed(), turned.reversed(), after


def _sharpest(line: Path) -> float:
    """The most that the line turns over a centimeter, degrees."""
    last = max(line.length - _WINDOW, 0.0)
    places = [min(float(place), last) for place in range(int(last) + 2)]
    return max(
        abs(turn_degrees(line.tangent_at(place), line.tangent_at(min(place + _WINDOW, line.length))))
        for place in places
    )


def _out_at_end(line: Path, after: Path) -> tuple[Path, Path]:
    """The line and what follows it, bent evenly from within the one to within the other."""
    reach = min(_REACH, after.length)
    end, arriving = after.point_at(reach), after.tangent_at(reach)
    curve = _evenly(line.start, line.tangent_at(0.0), end, arriving)
    if curve is None:
        return line, after
    whole = curve if reach == after.length else curve.joined(after.split_at(reach)[1])
    return whole.split_at(whole.length - after.length)


def _evenly(start: Point, leaving: Point, end: Point, arriving: Point) -> Path | None:
    """Straight on from ``start`` for as long as leaves a bend that grows evenly to its ``end``; None where no
    such line bends to one side only.

    A curve that begins straight and bends ever more leaves its chord by a third of its turn.
    """
    turn, chord = turn_degrees(leaving, arriving), end - start
    along, beside = chord.dot(leaving.unit()), leaving.unit().cross(chord)
    if along <= 0.0 or turn * beside <= 0.0:
        return None
    straight = max(along - abs(beside) / tan(radians(abs(turn) / 3.0)), 0.0)
    begin = start + leaving.unit() * straight
    try:
        bent = fair_curve([begin, end], leaving.direction(), arriving.direction()).path
    except GeometryError:
        return None
    return bent if straight == 0.0 else Path.line(start, begin).joined(bent)
