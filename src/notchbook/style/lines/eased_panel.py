"""The side panel of a seam over the bust: the dart that shapes it closed, opened by the ease it takes."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from math import degrees

from notchbook.geometry import Point, Transform
from notchbook.pattern import Edge, Intake
from notchbook.pattern.closing import ClosedRun, close_run, darts_in, stretches_between
from notchbook.style.lines.bust_curve import OverBust
from notchbook.style.lines.through_seam import Panel


@dataclass(frozen=True, slots=True)
class Closed:
    """A panel with the darts closed that meet at its seam: its run and ways as they lie then, the point about
    which its upper part turns (None: it does not), and the account of the names."""

    panel: Panel
    closed: ClosedRun
    hinge: Point | None = None
    merges: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


def closed_panel(panel: Panel, dart: Intake | None, hinge: str | None) -> Closed:
    """The panel with the dart closed where it has it; the lower part stays.

    The upper part turns about the mouth of the closed dart, else about the corner ``hinge``.
    """
    darts = darts_in(panel.run, () if dart is None else (dart,))
    lower_first = not panel.is_right  # the left run comes up from the bottom of the seam
    stretches = stretches_between(panel.run, darts)
    still = 0 if lower_first else len(stretches) - 1
    closed = close_run(panel.run, darts, still)
    if darts:
        above = closed.motions[len(stretches) - 1 - still]
        (joint,) = {point for points in closed.merges.values() for point in points}
        ways = (panel.ways[0].transformed(above), *panel.ways[1:])
        return Closed(
            replace(panel, run=closed.edges, ways=ways), closed, _corner(closed.edges, joint), closed.merges
        )
    corner = None if hinge is None else _corner(panel.run, hinge)
    return Closed(panel, _parted(closed, hinge, lower_first=lower_first), corner)


def _parted(closed: ClosedRun, hinge: str | None, *, lower_first: bool) -> ClosedRun:
    """The run in two stretches at the hinge, nothing moved yet; one stretch without a hinge."""
    if hinge is None:
        return closed
    edges = closed.edges
    index = next((i for i, edge in enumerate(edges) if edge.end == hinge), len(edges) - 1) + 1
    if not 0 < index < len(edges):
        return closed
    stay = Transform.identity()
    return replace(closed, stretches=(edges[:index], edges[index:]), motions=(stay, stay))


def opened_about_hinge(done: Closed, turn: float) -> Closed:
    """The panel with its upper part turned about the hinge by so many degrees, counter-clockwise."""
    if done.hinge is None or len(done.closed.stretches) != 2:
        return done
    motion = Transform.rotation(turn, done.hinge)
    panel, closed = done.panel, done.closed
    upper = 1 if not panel.is_right else 0
    count = len(closed.stretches[0])
    edges = tuple(
        edge.transformed(motion) if (index >= count) == (upper == 1) else edge
        for index, edge in enumerate(closed.edges)
    )
    motions = tuple(one.then(motion) if index == upper else one for index, one in enumerate(closed.motions))
    return replace(
        done,
        panel=replace(panel, run=edges, ways=(panel.ways[0].transformed(motion), *panel.ways[1:])),
        closed=replace(closed, edges=edges, motions=motions),
    )


def over_bust(panel: Panel) -> OverBust:
    """The ways nearest to the bust point, above and below."""
    return OverBust(panel.ways[0], panel.ways[1])


def turn_for_1_mm(done: Closed, bust_point: Point) -> float:
    """The turn about the hinge, degrees with its sign, that opens the panel by 1 mm at the bust point."""
    if done.hinge is None:
        return 0.0
    arm = bust_point - done.hinge
    upward = done.panel.ways[0].start - bust_point
    sign = 1.0 if arm.perpendicular().dot(upward) > 0.0 else -1.0
    return sign * degrees(1.0 / arm.norm())


def _corner(run: tuple[Edge, ...], name: str) -> Point | None:
    found = [edge.path.end for edge in run if edge.end == name]
    return found[0] if found else None
