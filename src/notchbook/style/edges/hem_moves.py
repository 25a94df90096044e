"""A hem that moves square to itself, together with the hems that run on from it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, offset
from notchbook.geometry.path import turn_degrees
from notchbook.pattern import Edge, InternalLine, Piece, spoken
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.figures import HEM_BEND
from notchbook.style.edges.hem_corners import HemCorner, kept_corner
from notchbook.style.edges.level_lines import followed_lines
from notchbook.units import TOLERANCES

_RUNS_ON = 15.0
"""Degrees below which two hems that follow each other are one hem: at the foot of a vent, at a center that
was unfolded. Own judgment."""

_BENT_SHARE = 0.4
"""The most of a hem that bends at each of its ends, so that its middle stays as it was. Own judgment."""

_NEAR_JOINT = 0.15
"""So near to a joint of the moved hem, as a share of the amount, two hems part there: at a corner of 15
degrees the parallel has its corner 0.13 of the amount beside the foot of the old one."""


@dataclass(frozen=True, slots=True)
class MovedHem:
    """The piece with its hem moved, and for each edge beside it how much further the hem runs along it
    (mm, outward positive) so as to meet it at the angle as before; edges that it met so anyway are left
    out."""

    piece: Piece
    rises: dict[str, float]


def hem_runs(piece: Piece, names: Iterable[str]) -> tuple[tuple[str, ...], ...]:
    """The named edges of the piece in runs that can only move together, each in the order of the outline.

    A hem that runs on into another hem takes it along.
    """
    runs: list[tuple[str, ...]] = []
    for name in names:
        if all(name not in run for run in runs):
            before, after = _hems_on(piece, name, -1), _hems_on(piece, name, 1)
            runs.append((*reversed(before), name, *after))
    return tuple(runs)


def _hems_on(piece: Piece, name: str, way: int) -> list[str]:
    """The hems that run on from an edge, in this direction of the outline."""
    outline, index = piece.outline, piece.edge_index(name)
    found: list[str] = []
    for step in range(1, len(outline) - 2):
        last, following = (
            outline[(index + (step - 1) * way) % len(outline)],
            outline[(index + step * way) % len(outline)],
        )
        if last.kind != "hem" or following.kind != "hem" or not _runs_on(last, following, way):
            break
        found.append(following.name)
    return found


def _runs_on(edge: Edge, following: Edge, way: int) -> bool:
    first, second = (edge, following) if way > 0 else (following, edge)
    return abs(turn_degrees(first.path.tangent_at(first.length), second.path.tangent_at(0.0))) <= _RUNS_ON


def moved_hem(piece: Piece, run: Sequence[str], amount: float) -> MovedHem:
    """The piece with a run of hems moved outward square to themselves by the amount, mm (negative: inward).

    The edges beside the run are carried on, or cut, to where the moved hem meets them; where such an edge
    is curved the hem bends toward it, so that the corner keeps its angle. StepRefused ``hem-beyond-edge``,
    ``hem-not-square``.
    """
    if amount == 0.0:
        return MovedHem(piece, {})
    outline = list(piece.outline)
    indices = [piece.edge_index(name) for name in run]
    first, last = indices[0] - 1, (indices[-1] + 1) % len(outline)
    parallel = offset(_joined([outline[index].path for index in indices]), -amount)
    bend = min(HEM_BEND.value, _BENT_SHARE * parallel.length)
    after = _corner(outline[last].reversed(), parallel, amount, bend)
    before = _corner(outline[first], after.hem.reversed(), amount, bend)
    rises = {outline[first].name: before.rise, outline[last].name: after.rise}
    outline[first] = replace(outline[first], path=before.seam)
    outline[last] = replace(outline[last], path=after.seam.reversed())
    for index, path in zip(indices, _parted(before.hem.reversed(), piece, run, amount), strict=True):
        outline[index] = replace(outline[index], path=path)
    moved = replace(piece, outline=tuple(outline))
    moved = replace(moved, lines=_to_joints(piece, moved, run))
    return MovedHem(moved, {name: rise for name, rise in rises.items() if rise != 0.0})


def _to_joints(piece: Piece, moved: Piece, run: Sequence[str]) -> tuple[InternalLine, ...]:
    """The lines of the piece brought to its new outline; one that ended where two hems of the run meet, such
    as the fold of a vent, ends there again."""
    lines = followed_lines(piece, moved)
    for name in run[:-1]:
        old, new = piece.edge(name).path.end, moved.edge(name).path.end
        lines = tuple(replace(line, path=_ended_at(line.path, old, new)) for line in lines)
    return lines


def _ended_at(path: Path, old: Point, new: Point) -> Path:
    if path.end.distance_to(old) <= TOLERANCES.closure:
        return path.with_end(new)
    return path.with_start(new) if path.start.distance_to(old) <= TOLERANCES.closure else path


def _joined(paths: Sequence[Path]) -> Path:
    whole = paths[0]
    for path in paths[1:]:
        whole = whole.joined(path)
    return whole


def _corner(edge: Edge, hem: Path, amount: float, bend: float) -> HemCorner:
    """The edge beside, as it runs to the hem, and the moved hem as it runs to the edge."""
    if -amount >= edge.length - TOLERANCES.closure:
        raise StepRefused("hem-beyond-edge", edge=spoken(edge.name), length=edge.length, amount=-amount)
    straight_on = carried_on(edge.path, 2.0 * amount) if amount > 0.0 else edge.path
    nearest = straight_on.nearest(hem.end)
    if nearest.gap <= TOLERANCES.join:
        kept = straight_on.between(0.0, min(nearest.distance_along, straight_on.length))
        return HemCorner(kept, hem.with_end(kept.end))
    return kept_corner(edge.path, hem, amount, bend, spoken(edge.name))


def _parted(hem: Path, piece: Piece, run: Sequence[str], amount: float) -> list[Path]:
    """The moved hem in the parts of the run, divided where the parts met: at its own corner there, or
    square to where they ran straight on."""
    parts: list[Path] = []
    rest = hem
    for name in run[:-1]:
        path = piece.edge(name).path
        goal = path.end - path.tangent_at(path.length).perpendicular() * amount
        place = rest.nearest(goal).distance_along
        joint = min(rest.distances, key=lambda distance: abs(distance - place))
        part, rest = rest.split_at(joint if abs(joint - place) <= _NEAR_JOINT * abs(amount) else place)
        parts.append(part)
    return [*parts, rest]
