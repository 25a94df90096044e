"""The drawn dart point, short of the bust point, and the edge trued across the closed dart.

A dart is opened about the bust point but sewn to a point short of it. Its legs then lean a little more,
and with the dart closed the edge has a dip at the mouth. As at the table, the dart is folded and the
edge is drawn anew across it; unfolded, both legs end on the new line and are equally long.
"""

from collections.abc import Mapping
from math import asin, degrees, radians, sin

from notchbook.blocks.bodice_pieces.panel import Opening, Run
from notchbook.geometry import Path
from notchbook.pattern.slashing import trued_mouth

MOST_SHORTENED = 0.3
"""Share of the leg by which the point may be drawn back at most. Own judgment: a dart that is shorter no
longer shapes the bust."""

MOST_OF_ALL = 0.8
"""Share of its middle by which any dart may be drawn back: some of it must be left to sew."""

MOVED_MOUTH = 0.05
"""mm by which truing may move the mouth of a waist dart, for the front length ends there."""


def shortened(opening: Opening, by: float) -> Opening:
    """The dart with its point drawn back by mm along its middle."""
    middle = opening.first.lerp(opening.second, 0.5)
    depth = opening.point.distance_to(middle)
    if depth == 0.0:
        return opening
    point = opening.point.lerp(middle, min(by / depth, MOST_OF_ALL))
    return Opening(opening.dart, opening.first, point, opening.second)


def drawn_back(by: float, leg: float) -> float:
    """How far the point of a dart over the bust is drawn back: by mm, at most by its share of the leg."""
    return min(by, MOST_SHORTENED * leg)


def with_short_points(runs: tuple[Run, ...], short_by: Mapping[str, float]) -> tuple[Run, ...]:
    """The runs with the points of these darts drawn back by so many mm, and their edges trued."""
    return tuple(_short(run, short_by) if run.openings else run for run in runs)


def _short(run: Run, short_by: Mapping[str, float]) -> Run:
    parts, openings = list(run.parts), list(run.openings)
    moved = MOVED_MOUTH if run.edge == "waist" else None
    for index, opening in enumerate(openings):
        if opening.dart not in short_by:
            continue
        short = shortened(opening, short_by[opening.dart])
        parts[index], openings[index], parts[index + 1] = trued(parts[index], short, parts[index + 1], moved)
    return Run(run.edge, tuple(parts), tuple(openings))


def trued(
    before: Path, opening: Opening, after: Path, most_moved: float | None = None
) -> tuple[Path, Opening, Path]:
    """The two parts of an edge and the dart between them, drawn anew where they do not run on."""
    redrawn = trued_mouth(before, (opening.first, opening.second), opening.point, after, most_moved)
    if redrawn is None:
        return before, opening, after
    mouth = redrawn.before.end, redrawn.after.start
    return redrawn.before, Opening(opening.dart, mouth[0], opening.point, mouth[1]), redrawn.after


def dart_angle(intake: float, leg: float) -> float:
    """The angle of a dart in degrees from its intake straight across and its leg, mm."""
    return degrees(2.0 * asin(min(intake / 2.0 / leg, 1.0)))


def dart_intake(angle: float, leg: float) -> float:
    """The intake straight across of a dart of this angle (degrees) on legs of this length, mm."""
    return 2.0 * leg * sin(radians(angle) / 2.0)
