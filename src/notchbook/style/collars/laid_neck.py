"""Front and back laid together at the shoulder: the neck as one line, and how long the garment is beside it.

All is drawn as the layer under the collar is seen from its own face: the center back is the line x = 0, the
nape lies in the origin, the neck runs to +x and the garment lies on its left, behind the nape toward +y.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, Transform, direction, fair_curve, offset
from notchbook.pattern import Pattern, spoken
from notchbook.pattern.names import last_word, split_side
from notchbook.style.collars.neck import Neck
from notchbook.style.traced.faced_run import FacedRun
from notchbook.style.traced.faced_runs import faced_runs
from notchbook.style.traced.laid import in_order, laid_together
from notchbook.style.traced.mates import mated_ends
from notchbook.style.traced.panel_run import Asked

_USUAL_SHOULDER = 120.0
"""mm that a shoulder is taken to be long where no seam lies on it (common practice, no source)."""

_AT_SHOULDER = 2.0
"""mm within which the pieces as laid end at the shoulder: the laid neck is smoothed at its seams. Own
judgment."""

_LOOKED = 1.0
"""mm; depth to which the pieces are laid edge to edge: at the neck itself."""


@dataclass(frozen=True, slots=True)
class LaidNeck:
    """The neck from the nape to its front end, one smooth line; ``back`` mm of it lie behind the shoulder,
    whose seam is ``shoulder`` mm long."""

    path: Path
    back: float
    shoulder: float

    def girth(self, distance: float) -> float:
        """How long the garment is from center to center at a distance from its neck, mm (one side)."""
        return parallel_length(self.path, distance)


def parallel_length(path: Path, distance: float) -> float:
    """How long the line is that runs so far beside a path, mm, on its left; StepRefused ``collar-crosses``
    where it would turn back on itself."""
    if distance <= 0.0:
        return path.length
    try:
        return offset(path, distance).length
    except GeometryError as error:
        raise StepRefused("collar-crosses", width=distance) from error


def laid_neck(neck: Neck) -> LaidNeck:
    """The pieces of the neck laid together, their darts closed; StepRefused ``collar-neck-not-laid``."""
    try:
        return _laid(neck.pattern, neck)
    except (StepRefused, GeometryError) as error:
        raise StepRefused(
            "collar-neck-not-laid", edge=spoken(neck.uses[0].edge), because=error.text()
        ) from error


def laid_if_it_lies(neck: Neck, beyond: float = 0.0) -> LaidNeck | None:
    """The same without the ``beyond`` mm before the center front; None where the pieces cannot be laid
    together, as at a neck that is gathered."""
    try:
        laid = laid_neck(neck)
    except StepRefused:
        return None
    return replace(laid, path=laid.path.between(0.0, laid.path.length - beyond))


def _laid(pattern: Pattern, neck: Neck) -> LaidNeck:
    runs = faced_runs(pattern, [Asked(use.edge, use.starts_at, _LOOKED) for use in neck.uses])
    if len(runs) > 1:
        runs = laid_together(in_order(runs, mated_ends(pattern, runs)), 0.0)
    paths = [faced.path for run in runs for faced in run.faced]
    whole = paths[0]
    for path in paths[1:]:
        whole = whole.joined(path.with_start(whole.end))
    is_forward = runs[0].forward
    whole = whole if is_forward else whole.reversed()
    nape = whole.end
    down = _down_the_back(whole, runs[-1] if is_forward else runs[0], is_forward)
    home = Transform.carrying(nape, nape + down, Point(0.0, 0.0), Point(0.0, 1.0))
    path = whole.reversed().transformed(home)
    if path.point_at(path.length / 2.0).x < 0.0:
        path = path.transformed(Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0)))
    return LaidNeck(path, neck.back, _shoulder_length(neck, runs))


def _shoulder_length(neck: Neck, runs: Sequence[FacedRun]) -> float:
    """How long the seam is that leaves the neck at the shoulder; as usual where none does, as over a yoke."""
    is_forward, along = runs[0].forward, 0.0
    for run in runs if is_forward else runs[::-1]:
        along += sum(faced.path.length for faced in run.faced)
        if abs(along - neck.front) <= _AT_SHOULDER:
            return (run.after if is_forward else run.before).path.length
    return _USUAL_SHOULDER


def _down_the_back(whole: Path, last: FacedRun, is_forward: bool) -> Point:
    """The direction of the center back at the nape: along its edge; square to the neck where that goes on
    into the neck of the other half, on a piece drawn whole, or into the top of a button stand."""
    faced = last.faced[-1 if is_forward else 0].members[-1 if is_forward else 0]
    beyond = last.after if is_forward else last.before
    along = beyond.path.tangent_at(0.0)
    (following, its_side), (base, side) = split_side(beyond.edge.name), split_side(faced.name)
    is_other_half = following == base and its_side != side
    if not is_other_half and last_word(following) != "lap_top":
        return along
    onward = (whole.tangent_at(whole.length) + along).unit()
    return onward.perpendicular() * (1.0 if is_forward else -1.0)


_LEAST_SPREAD, _SPREAD, _MOST_SPREAD = 8.0, 0.55, 45.0
"""mm to each side over which the line is smoothed: at least, for each mm of overlap, and at most. Own
judgment."""

_STEPS = 240
_KNOTS = 8


def overlapped(laid: LaidNeck, overlap: float) -> Path:
    """The neck with the front swung about the side-neck point until the shoulder tips lap by so much, mm.

    The swing is spread over the shoulder, the more the larger it is, so that the line is smooth; its length
    is that of the neck. The directions at both ends are those of their pieces.
    """
    swing = 2.0 * math.degrees(math.asin(min(1.0, max(overlap, 0.0) / (2.0 * laid.shoulder))))
    path, length = laid.path, laid.path.length
    spread = min(_LEAST_SPREAD + _SPREAD * overlap, _MOST_SPREAD)
    step = length / _STEPS
    middles = [(number + 0.5) * step for number in range(_STEPS)]
    turned = [path.tangent_at(at).direction() + (swing if at > laid.back else 0.0) for at in middles]
    ends = path.tangent_at(0.0).direction(), path.tangent_at(length).direction() + swing
    points = [Point(0.0, 0.0)]
    for degrees in _smoothed(turned, ends, max(1, round(spread / step))):
        points.append(points[-1] + direction(degrees) * step)
    chosen = [points[round(number * _STEPS / _KNOTS)] for number in range(_KNOTS + 1)]
    return as_long(fair_curve(chosen, *ends).path, length)


def _smoothed(values: list[float], ends: tuple[float, float], reach: int) -> list[float]:
    """Each value as the mean of those around it; beyond the ends they go on turned about the end."""
    reach = min(reach, len(values) - 1)
    before = [2.0 * ends[0] - value for value in reversed(values[:reach])]
    beyond = [2.0 * ends[1] - value for value in reversed(values[-reach:])]
    whole = [*before, *values, *beyond]
    width = 2 * reach + 1
    return [sum(whole[index : index + width]) / width for index in range(len(values))]


def as_long(path: Path, length: float) -> Path:
    """The path a little larger or smaller, so that it is exactly so long, mm; its start stays."""
    return scaled(path, length / path.length)


def scaled(path: Path, factor: float) -> Path:
    """The path made larger about the origin."""
    rows = [[row[0], *(float(value) * factor for value in row[1:])] for row in path.to_data()]
    return Path.from_data(rows)
