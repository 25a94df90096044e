"""The pieces of a raglan: the bodice without its shoulders, and the two halves of the sleeve with them."""

from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.geometry import Path
from notchbook.pattern import Edge, InternalLine, Piece, child_name, part_name, piece_name
from notchbook.pattern.names import last_word
from notchbook.style.sleeves.found import FoundSleeve
from notchbook.style.sleeves.raglan.laid import Laid


@dataclass(frozen=True)
class Half:
    """One side of a raglan: the body, its half of the sleeve, and the names of the edges that were made; the
    line on the body first."""

    body: Piece
    sleeve: Piece
    lines: tuple[Edge, Edge]
    over: Edge


def half_of(slug: str, sleeve: FoundSleeve, laid: Laid) -> Half:
    """The two pieces of one side."""
    taken = laid.panel
    body_owner = piece_name(slug, last_word(taken.piece.name))
    owner = piece_name(slug, f"{taken.which}_sleeve")
    on_body = Edge(
        part_name(body_owner, "raglan_line"),
        laid.line,
        part_name(body_owner, "raglan_armhole"),
        part_name(body_owner, "raglan_neck"),
    )
    on_sleeve = Edge(
        part_name(owner, "raglan_line"),
        laid.line.transformed(laid.motion),
        part_name(owner, "raglan_armhole"),
        part_name(owner, "raglan_neck"),
    )
    foot = part_name(owner, "hem_center")
    over = Edge(part_name(owner, "overarm"), laid.over, laid.panel.tip_name, foot)
    return Half(
        _body(laid, on_body), _sleeve(sleeve, laid, owner, (on_sleeve, over)), (on_body, on_sleeve), over
    )


def with_dart(slug: str, sleeve: FoundSleeve, halves: tuple[Half, Half]) -> tuple[Piece, tuple[Half, Half]]:
    """The sleeve in one piece, its shoulder seam running out in it like a dart; and both halves with the
    sides of that dart, which end in one point, in place of the seam over the arm."""
    point = part_name(piece_name(slug, "sleeve"), "overarm_point")
    front, back = (
        replace(
            half,
            over=Edge(half.over.name, Path(half.over.path.segments[:-1]), half.over.start, point, "leg"),
        )
        for half in halves
    )
    hem = sleeve.piece.edge(sleeve.name("hem"))
    fore = [edge for edge in front.sleeve.outline if edge.name != front.over.name][1:]
    hind = [edge for edge in back.sleeve.outline if edge.name != back.over.name][1:]
    ordered = [hem, *fore, front.over, back.over.reversed(), *hind]
    stitched = tuple(
        InternalLine(
            part_name(piece_name(slug, f"{word}_sleeve"), "stitch_line"), half.over.path, "stitch_line"
        )
        for word, half in (("front", front), ("back", back))
    )
    whole = replace(sleeve.piece, outline=_closed(ordered), lines=(*sleeve.piece.lines, *stitched))
    return whole, (front, back)


def _armhole_at(laid: Laid) -> float:
    """How far along the armhole, in its own direction, the line leaves it, mm."""
    panel = laid.panel
    return panel.armhole.length - laid.up if panel.goes_down else laid.up


def _body(laid: Laid, line: Edge) -> Piece:
    """The panel below the line; its levels end there."""
    taken = laid.panel
    neck = _part(taken.neck, taken.neck_at, "center", line.end, keeps_start=taken.goes_down)
    armhole = _part(taken.armhole, _armhole_at(laid), "below", line.start, keeps_start=not taken.goes_down)
    cut = line.reversed() if taken.goes_down else line
    gone = {taken.shoulder.name, taken.armhole.name if taken.goes_down else taken.neck.name}
    first = taken.neck if taken.goes_down else taken.armhole
    new = [neck, cut, armhole] if taken.goes_down else [armhole, cut, neck]
    outline: list[Edge] = []
    for edge in taken.piece.outline:
        if edge.name == first.name:
            outline.extend(new)
        elif edge.name not in gone:
            outline.append(edge)
    below = replace(taken.piece, outline=tuple(outline))
    return replace(below, lines=tuple(_within(below, one) for one in taken.piece.lines))


def _part(edge: Edge, at: float, role: str, point: str, *, keeps_start: bool) -> Edge:
    """What stays of an edge that was cut at a place."""
    before, after = edge.path.split_at(at)
    name = child_name(edge.name, role)
    return (
        Edge(name, before, edge.start, point, edge.kind)
        if keeps_start
        else Edge(name, after, point, edge.end, edge.kind)
    )


def _within(piece: Piece, line: InternalLine) -> InternalLine:
    """A line as far as it lies in the piece that is left."""
    path = line.path
    places = sorted(met.at_self for edge in piece.outline for met in path.intersections(edge.path))
    inner = [place for place in places if 1.0 < place < path.length - 1.0]
    if not inner:
        return line
    stops = [0.0, *inner, path.length]
    parts = [
        path.between(begin, end)
        for begin, end in pairwise(stops)
        if piece.sew_line.contains(path.point_at((begin + end) / 2.0))
    ]
    return replace(line, path=max(parts, key=lambda part: part.length)) if parts else line


def _sleeve(sleeve: FoundSleeve, laid: Laid, name: str, new: tuple[Edge, Edge]) -> Piece:
    """Half of the sleeve with the shoulder laid to it."""
    line, over = new
    taken, is_front = laid.panel, laid.panel.which == "front"
    cap = sleeve.cap[0] if is_front else sleeve.cap[-1]
    at = laid.up if is_front else cap.length - laid.up
    lower = _part(cap, at, "below", line.start, keeps_start=is_front)
    hem = sleeve.piece.edge(sleeve.name("hem"))
    foot = hem.path.nearest(laid.over.end).distance_along
    hem_part = _part(hem, foot, taken.which, over.end, keeps_start=not is_front)
    neck = _part(taken.neck, taken.neck_at, "side", line.end, keeps_start=not taken.goes_down)
    neck = neck.transformed(laid.motion)
    outer = laid.shoulder if taken.goes_down else laid.shoulder.reversed()
    shoulder = replace(taken.shoulder, path=outer)
    seam = _seam_edges(sleeve, is_front=is_front)
    if is_front:
        ordered = [hem_part, *seam, lower, line, neck, shoulder, over]
    else:
        ordered = [hem_part, over.reversed(), shoulder, neck, line.reversed(), lower, *seam]
    return replace(
        sleeve.piece,
        name=name,
        title=f"{taken.which.capitalize()} sleeve",
        outline=_closed(ordered),
        intakes=() if is_front else sleeve.piece.intakes,
        lines=tuple(_half_line(one, laid.over, taken.which) for one in sleeve.piece.lines),
        marks=sleeve.piece.marks if is_front else (),
    )


def _seam_edges(sleeve: FoundSleeve, *, is_front: bool) -> tuple[Edge, ...]:
    """The edges of the underarm seam on one side, an elbow dart among them."""
    outline = sleeve.piece.outline
    hem, first = (sleeve.piece.edge_index(name) for name in (sleeve.name("hem"), sleeve.cap[0].name))
    count = len(outline)
    if is_front:
        return tuple(outline[(hem + step) % count] for step in range(1, (first - hem) % count))
    last = sleeve.piece.edge_index(sleeve.cap[-1].name)
    return tuple(outline[(last + step) % count] for step in range(1, (hem - last) % count))


def _closed(edges: list[Edge]) -> tuple[Edge, ...]:
    """The edges with ends that meet exactly."""
    found: list[Edge] = []
    for edge, following in zip(edges, [*edges[1:], edges[0]], strict=True):
        found.append(replace(edge, path=edge.path.with_end(following.path.start)))
    return tuple(found)


def _half_line(line: InternalLine, over: Path, role: str) -> InternalLine:
    """A level of the sleeve on one half: it runs from the back to the front."""
    met = line.path.intersections(over)
    at = met[0].at_self if met else line.path.length / 2.0
    before, after = line.path.split_at(at)
    return replace(line, name=child_name(line.name, role), path=after if role == "front" else before)
