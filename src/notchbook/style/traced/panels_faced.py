"""The panels under a facing, and which part of its free edge lies over each.

A lining is cut back to the free edge of a facing panel by panel, with its darts open again.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Transform
from notchbook.pattern import Edge, Intake, Pattern, Piece, closed_motions, spoken
from notchbook.pattern.closing import darts_in, stretches_between
from notchbook.style.traced.beside import Laid
from notchbook.style.traced.faced_run import FacedRun
from notchbook.style.traced.facing_laid import end_lengths, facing_laid

_BEYOND = 400.0
"""mm that the line of a dart is carried on beyond its point, to where the free edge passes it."""


@dataclass(frozen=True, slots=True)
class PanelFaced:
    """One panel under a facing: its piece, the edges that are taken (counter-clockwise, dart legs left out),
    the darts that open in them, and the part of the free edge over each stretch between the darts, in the
    frame of the piece and counter-clockwise.

    ``shed`` are those of the taken edges that lie beside the facing's own; ``corners`` the two points from
    which what is left is counted. ``ends`` are the edges before and after, ``reach`` how far along them, and
    ``cuts`` how far along the legs of each dart, the facing covers, mm.
    """

    piece: Piece
    gone: tuple[str, ...]
    shed: tuple[str, ...]
    corners: tuple[str, str]
    darts: tuple[Intake, ...]
    free: tuple[Path, ...]
    ends: tuple[str, str]
    reach: tuple[float, float]
    cuts: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class _Under:
    """A panel as it lay under a facing: the traced edges on it, edges ``before`` and ``after`` them that the
    facing covers whole, and how far it covers what follows these, mm (None: to a seam between panels).

    ``corner`` are the edges at the corner that it covers of a panel on which nothing was traced, the seam
    first where the walk comes over it.
    """

    laid: Laid
    traced: tuple[str, ...] = ()
    before: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    reach: tuple[float | None, float | None] = (None, None)
    corner: tuple[str, str] = ("", "")
    anchor: str = ""

    @property
    def names(self) -> tuple[str, ...]:
        """All the edges that are taken, counter-clockwise."""
        return (*self.before, *self.traced, *self.after)

    @property
    def opened(self) -> tuple[tuple[Intake, ...], tuple[tuple[Edge, ...], ...]]:
        """The darts that open between the edges, and the stretches between them, those on which the facing
        ends with them."""
        piece, count = self.laid.piece, len(self.laid.piece.outline)
        first, last = (piece.edge_index(name) for name in self.span)
        run = [piece.outline[(first + step) % count] for step in range((last - first) % count + 1)]
        darts = darts_in(run, [intake for intake in piece.intakes if intake.has_legs])
        return darts, stretches_between(run, darts)

    @property
    def span(self) -> tuple[str, str]:
        """The edges on which the facing ends, before and after those that are taken."""
        piece, names = self.laid.piece, self.names
        if not names:
            return self.corner
        return beyond(piece, names[0], ahead=False).name, beyond(piece, names[-1], ahead=True).name

    def motion(self, edge: str) -> Transform:
        """How the stretch with this edge lay."""
        motions = closed_motions(self.laid.piece, *self.span)
        return (
            motions[edge]
            .then(motions[self.traced[0] if self.traced else self.anchor].inverse())
            .then(self.laid.motion)
        )


def panels_faced(pattern: Pattern, facing: Piece, free: Edge) -> tuple[PanelFaced, ...]:
    """The panels under the facing, counter-clockwise.

    StepRefused ``lining-no-facing`` where the edge is not the free edge of a facing, ``lining-facing-shaped``
    where it cannot be divided between them.
    """
    runs = facing_laid(pattern, facing, free)
    lengths = end_lengths(facing, free)
    panels, seams = _under(runs)
    for ahead, reach in ((False, lengths[0]), (True, lengths[1])):
        panels, seams = _ended(panels, seams, runs, reach, ahead=ahead)
    line = free.path.reversed()
    along, depths = [0.0], list[float]()
    for divider in _dividers(panels, seams):
        crossings = divider.intersections(line)
        if not crossings:
            raise StepRefused("lining-facing-shaped", facing=spoken(facing.name))
        crossing = min(crossings, key=lambda found: found.at_self)
        along.append(crossing.at_other)
        depths.append(crossing.at_self)
    along.append(line.length)
    if any(second - first < 1.0 for first, second in pairwise(along)):
        raise StepRefused("lining-facing-shaped", facing=spoken(facing.name))
    parts = [line.between(*pair) for pair in pairwise(along)]
    return tuple(_panels(runs, panels, parts, depths))


def _under(runs: tuple[FacedRun, ...]) -> tuple[list[_Under], list[Path]]:
    """The panels of all runs with what was traced on each, in order, and the seam lines between them."""
    panels: list[_Under] = []
    seams: list[Path] = []
    for run in runs:
        edges = [edge.name for faced in run.faced for edge in faced.members]
        first = {one.piece.name: one for one in reversed(run.panels)}
        for name in dict.fromkeys(one.piece.name for one in run.panels):
            traced = tuple(edge for edge in edges if first[name].piece.has_edge(edge))
            panels.append(_Under(first[name], traced))
        seams += [*(seam.first for seam in run.seams), run.after.path]
    return panels, seams[:-1]


def _ended(
    panels: list[_Under], seams: list[Path], runs: tuple[FacedRun, ...], reach: float, *, ahead: bool
) -> tuple[list[_Under], list[Path]]:
    """With what the facing covers beyond the traced edges, on the last panel (``ahead``) or on the first, and
    on further panels where it reaches over their seam."""
    beside = runs[-1].after if ahead else runs[0].before
    added: list[_Under] = []
    panel = panels[-1 if ahead else 0]
    for index, walked in enumerate(beside.walked):
        covered, left = _covered(panel.laid.piece, walked, reach)
        ended = len(covered) < len(walked)
        added.append(_reaching(panel, covered, left if ended else None, ahead=ahead))
        if ended or index == len(beside.panels):
            break
        reach = left
        panel = _cornered(beside.panels[index], beside.walked[index + 1][0], ahead=ahead)
    between = list(beside.seams[: len(added) - 1])
    if ahead:
        return [*panels[:-1], *added], [*seams, *between]
    return [*added[::-1], *panels[1:]], [*between[::-1], *seams]


def _covered(piece: Piece, walked: tuple[str, ...], reach: float) -> tuple[tuple[str, ...], float]:
    """Those of the walked edges that the facing covers whole, and how far it covers what follows, mm."""
    covered: list[str] = []
    for name in walked:
        if reach < piece.edge(name).length - 1.0:
            break
        reach -= piece.edge(name).length
        covered.append(name)
    return tuple(covered), reach


def _reaching(panel: _Under, covered: tuple[str, ...], reach: float | None, *, ahead: bool) -> _Under:
    if ahead:
        return replace(panel, after=covered, reach=(panel.reach[0], reach))
    return replace(panel, before=covered[::-1], reach=(reach, panel.reach[1]))


def _cornered(laid: Laid, edge: str, *, ahead: bool) -> _Under:
    """A further panel of which the facing covers the corner where this edge begins."""
    seam = beyond(laid.piece, edge, ahead=not ahead).name
    return _Under(laid, corner=(seam, edge) if ahead else (edge, seam), anchor=seam)


def beyond(piece: Piece, edge: str, *, ahead: bool) -> Edge:
    """The next edge along the outline, the legs of darts left out."""
    legs = {name for dart in piece.intakes if dart.has_legs for name in (dart.first_leg, dart.second_leg)}
    found = piece.edge_after(edge) if ahead else piece.edge_before(edge)
    while found.name in legs:
        found = piece.edge_after(found.name) if ahead else piece.edge_before(found.name)
    return found


def _dividers(panels: list[_Under], seams: list[Path]) -> Iterator[Path]:
    """The lines between the stretches of all panels, counter-clockwise: closed darts, and seams between
    panels."""
    for index, panel in enumerate(panels):
        darts, stretches = panel.opened
        for dart, stretch in zip(darts, stretches, strict=False):
            leg = panel.laid.piece.edge(dart.first_leg).path
            yield _carried_on(leg).transformed(panel.motion(stretch[-1].name))
        if index < len(seams):
            yield seams[index]


def _carried_on(leg: Path) -> Path:
    return leg.joined(Path.line(leg.end, leg.end + leg.tangent_at(leg.length) * _BEYOND))


def _panels(
    runs: tuple[FacedRun, ...], panels: list[_Under], parts: list[Path], depths: list[float]
) -> Iterator[PanelFaced]:
    """The parts of the free edge laid back on their panels."""
    at = 0
    for panel in panels:
        is_first, is_last = panel is panels[0], panel is panels[-1]
        darts, stretches = panel.opened
        stop = at + len(darts)
        free = tuple(
            part.transformed(panel.motion(stretch[0].name).inverse())
            for part, stretch in zip(parts[at : stop + 1], stretches, strict=True)
        )
        before, after = panel.reach
        piece = panel.laid.piece
        yield PanelFaced(
            piece,
            panel.names,
            (*panel.before, *panel.after),
            (
                runs[0].start if is_first else piece.edge(panel.span[0]).end,
                runs[-1].end if is_last else piece.edge(panel.span[1]).start,
            ),
            darts,
            free,
            panel.span,
            (depths[at - 1] if before is None else before, depths[stop] if after is None else after),
            tuple(depths[at:stop]),
        )
        at = stop + 1
