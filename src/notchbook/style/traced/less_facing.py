"""A lining less the facing that stands before it: it ends at the facing's free edge and is sewn to it.

Where the facing lies over several panels each of them is cut back; where a dart was closed in it the dart is
open in the lining, and shorter, so that sewn the lining lies on the facing's edge.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeUse,
    Intake,
    Pattern,
    Piece,
    Seam,
    child_name,
    part_name,
    require_one,
    spoken,
    walk_seam,
)
from notchbook.pattern.names import last_word
from notchbook.style.edges.carried_edge import Carry, carried_edge
from notchbook.style.lines.truing import with_round_corners
from notchbook.style.traced.cut_back import CutBack, followed
from notchbook.style.traced.faced_in_place import faced_in_place
from notchbook.style.traced.facing_ends import FacingEnd
from notchbook.style.traced.inside_only import inside_only
from notchbook.style.traced.met_hem import Hanging, free_edge_parted, met_hem
from notchbook.style.traced.panels_faced import PanelFaced, panels_faced
from notchbook.style.traced.traced_names import end_word

_NEAR = 8.0
"""mm by which the ends of a part of a free edge may lie beside the panel: more than any turn of cloth at two
seams. Own judgment."""


@dataclass(frozen=True, slots=True)
class _Place:
    """A panel of the lining that is cut back: the panel under the facing, and what its names are here."""

    lining: Piece
    faced: PanelFaced
    names: Mapping[str, str]
    facing: str

    def own(self, name: str) -> Edge:
        """The edge of the lining that this one became."""
        return self.lining.edge(self.names[name])

    def beside(self, *, ahead: bool) -> tuple[Edge, float]:
        """The edge after what is taken (``ahead``), or before it, and how far the facing covers it, mm."""
        edge = self.own(self.faced.ends[1 if ahead else 0])
        reach = self.faced.reach[1 if ahead else 0]
        if not 0.0 < reach < edge.length - 1.0:
            raise StepRefused("lining-facing-shaped", facing=spoken(self.facing))
        return edge, reach


@dataclass(frozen=True, slots=True)
class LessFacing:
    """The pattern with the lining less a facing, what the free edge of the facing was parted into, and how
    the facing ends beside the lining."""

    pattern: Pattern
    splits: Mapping[str, tuple[str, ...]]
    ends: tuple[FacingEnd, ...]


def less_facing(
    pattern: Pattern, names: Mapping[str, str], free_edge: str, slug: str, step: str
) -> LessFacing:
    """The lining cut back to the free edge of a facing, and sewn to it.

    ``names``: the name on the lining for each name of what was lined. StepRefused ``lining-no-facing`` where
    the edge is not that of a facing of lined pieces, ``lining-facing-shaped`` where the lining cannot be cut
    along it.
    """
    free = pattern.edges[require_one(pattern, free_edge)]
    facing = pattern.piece_of(free.name)
    panels, hanging = _panels(pattern, names, facing, free)
    uses: list[EdgeUse] = []
    ends: list[FacingEnd] = []
    after = pattern
    for index, panel in enumerate(panels):
        is_first, is_last = index == 0, index == len(panels) - 1
        corners = (last_word(free.end) if is_first else None, last_word(free.start) if is_last else None)
        cut = _cut_back(_Place(after.pieces[names[panel.piece.name]], panel, names, facing.name), corners)
        after = followed(after, cut, step)
        uses += [EdgeUse(edge.name, edge.start) for edge in cut.made]
        if is_first:
            beside = facing.edge_after(free.name)
            ends.append(FacingEnd(cut.new.edge(cut.beside[0]).end, beside.name, beside.end, beside.start))
        if is_last:
            beside = facing.edge_before(free.name)
            ends.append(FacingEnd(cut.new.edge(cut.beside[1]).start, beside.name, beside.start, beside.end))
    parted = free_edge_parted(after, free, hanging, names[panels[0].piece.name])
    word = last_word(names[panels[0].piece.name]) if len(panels) == 1 else last_word(facing.name)
    run = EdgeUse(parted.sewn.name, parted.sewn.end)
    seam = Seam(part_name(slug, f"{word}_facing"), (run,), tuple(uses), allowance_class="lining")
    eased = replace(seam, ease=walk_seam(parted.pattern, seam).misfit)
    given = [use.edge for use in (run, *uses)]
    sewn = parted.pattern.with_seams(eased).with_allowances(dict.fromkeys(given, Allowance("lining")))
    return LessFacing(sewn, parted.splits, tuple(ends))


def _panels(
    pattern: Pattern, names: Mapping[str, str], facing: Piece, free: Edge
) -> tuple[tuple[PanelFaced, ...], Hanging]:
    """The panels under the facing, and how much of its free edge hangs below their lining."""
    drawn = faced_in_place(pattern, facing, free)
    panels = list(panels_faced(pattern, facing, free)) if drawn is None else [drawn]
    if any(name not in names for panel in panels for name in (panel.piece.name, *panel.gone)):
        raise StepRefused("lining-no-facing", edge=spoken(free.name))
    hangs = [Hanging(), Hanging()]
    for index in dict.fromkeys((0, len(panels) - 1)):
        lining = pattern.pieces[names[panels[index].piece.name]]
        panels[index], hangs[-1 if index else 0] = met_hem(lining, names, panels[index], facing.name)
    whole = hangs[0] if len(panels) == 1 else Hanging(hangs[0].at_end, hangs[-1].at_start)
    return tuple(panels), whole


def _cut_back(place: _Place, words: tuple[str | None, str | None]) -> CutBack:
    """The panel of the lining with the edges under the facing gone; ``words`` for its outer corners."""
    (before, covered), (after, covers) = place.beside(ahead=False), place.beside(ahead=True)
    corners = tuple(
        part_name(place.lining.name, word or f"edge_{end_word(edge.name)}")
        for word, edge in zip(words, (before, after), strict=True)
    )
    kept = (
        replace(before, path=before.path.split_at(before.length - covered)[0], end=corners[0]),
        replace(after, path=after.path.split_at(covers)[1], start=corners[1]),
    )
    between, darts, group = _facing_edges(place, kept)
    start = place.lining.edge_index(after.name)
    count = len(place.lining.outline)
    rest: list[Edge] = []
    for step in range(1, count):
        edge = place.lining.outline[(start + step) % count]
        if edge.name == before.name:
            break
        rest.append(edge)
    outline = (*rest, kept[0], *between, kept[1])
    closed = {dart.name for dart in place.faced.darts}
    intakes = tuple(
        intake for intake in place.lining.intakes if intake.name not in {place.names[one] for one in closed}
    )
    piece = replace(place.lining, outline=outline, intakes=(*intakes, *darts))
    made = tuple(edge for edge in between if edge.kind == "seam")
    piece = inside_only(piece, [edge.path for edge in made])
    shed = tuple(place.names[name] for name in place.faced.shed)
    first, last = (place.names[point] for point in place.faced.corners)
    return CutBack(place.lining, piece, (before.name, after.name), (first, last), shed, made, group)


def _facing_edges(place: _Place, kept: tuple[Edge, Edge]) -> tuple[list[Edge], list[Intake], str | None]:
    """The edges along the facing with the open darts between them, these darts, and what the edges are called
    together where there are several."""
    own = part_name(place.lining.name, "facing_edge")
    runs = _stretches(place)
    ends: list[Point] = [kept[0].path.end]
    legs: list[tuple[Edge, Edge]] = []
    for dart, depth in runs.darts:
        first, second = (place.own(name) for name in (dart.first_leg, dart.second_leg))
        pair = (
            replace(first, path=first.path.split_at(depth)[1]),
            replace(second, path=second.path.split_at(second.length - depth)[0]),
        )
        legs.append(pair)
        ends += [pair[0].path.start, pair[1].path.end]
    ends.append(kept[1].path.start)
    points = [kept[0].end, *(point for pair in legs for point in (pair[0].start, pair[1].end)), kept[1].start]
    edges: list[Edge] = []
    for index, path in enumerate(runs.paths):
        name = own if len(runs.paths) == 1 else child_name(own, runs.words[index])
        laid = _between(path, ends[2 * index], ends[2 * index + 1], place.facing)
        edges.append(Edge(name, laid, points[2 * index], points[2 * index + 1], "seam"))
        if index < len(legs):
            edges += legs[index]
    mouths = [replace(place.lining.intake(place.names[dart.name]), mouth=own) for dart, _ in runs.darts]
    return edges, mouths, own if len(runs.paths) > 1 else None


@dataclass(frozen=True, slots=True)
class _Stretches:
    """The parts of the free edge over a panel, the darts that stay open between them, each with how far along
    its legs the facing covers, mm, and a word for each part."""

    paths: tuple[Path, ...]
    darts: tuple[tuple[Intake, float], ...]
    words: tuple[str, ...]


def _stretches(place: _Place) -> _Stretches:
    """A dart whose point lies under the facing is gone: the parts beside it are drawn as one."""
    panel = place.faced
    paths, darts, words = [panel.free[0]], list[tuple[Intake, float]](), [_side_word(place, 0)]
    for index, (dart, depth) in enumerate(zip(panel.darts, panel.cuts, strict=True)):
        following = panel.free[index + 1]
        leg = panel.piece.edge(dart.first_leg)
        if depth < leg.length - 1.0:
            paths.append(following)
            darts.append((dart, depth))
            words.append(_side_word(place, index + 1))
            continue
        middle = (paths[-1].end + following.start) / 2.0
        one = _between(paths[-1], paths[-1].start, middle, place.facing)
        two = _between(following, middle, following.end, place.facing)
        paths[-1] = with_round_corners((one, two.with_start(one.end)))
    return _Stretches(tuple(paths), tuple(darts), tuple(words))


def _side_word(place: _Place, index: int) -> str:
    """The word of the first edge taken in a stretch: that of the cloth between two darts."""
    legs = [dart.second_leg for dart in place.faced.darts]
    name = (
        (*place.faced.gone, place.faced.ends[1])[0]
        if index == 0
        else place.faced.piece.edge_after(legs[index - 1]).name
    )
    return last_word(name)


def _between(path: Path, start: Point, end: Point, facing: str) -> Path:
    """A part of the free edge drawn between places of the lining, a turn of cloth away."""
    moves = start - path.start, end - path.end
    if max(move.norm() for move in moves) > _NEAR:
        raise StepRefused("lining-facing-shaped", facing=spoken(facing))
    return carried_edge(path, Carry(*moves, Point(0.0, 0.0))).with_start(start).with_end(end)
