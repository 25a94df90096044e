"""A pleat of ease along a center: the piece is carried on beyond it, and the old center is marked."""

from collections.abc import Mapping
from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeKind,
    EdgeUse,
    InternalLine,
    Pattern,
    Piece,
    part_name,
    spoken,
)
from notchbook.pattern.names import last_word
from notchbook.style.traced.allowance_of import allowance_of
from notchbook.units import TOLERANCES


def with_center_pleat(pattern: Pattern, center: str, amount: float) -> Pattern:
    """The pattern with the straight edge ``center`` moved outward, square to itself, by the amount, mm.

    The strip gets an edge of its own at both ends, which no seam takes in: sewn, it lies folded. The old
    center is a fold line. StepRefused ``lining-center-curved``.
    """
    if amount <= 0.0:
        return pattern
    piece = pattern.piece_of(center)
    edge = piece.edge(center)
    path = edge.path
    if path.start.distance_to(path.end) < path.length - TOLERANCES.sew_length:
        raise StepRefused("lining-center-curved", edge=spoken(center))
    outward = -(path.tangent_at(0.0).perpendicular() * amount)
    begin, end = path.start + outward, path.end + outward
    names = {point: part_name(piece.name, f"pleat_{last_word(point)}") for point in (edge.start, edge.end)}
    strips = {point: part_name(piece.name, f"pleat_{last_word(point)}_end") for point in names}
    index, count = piece.edge_index(center), len(piece.outline)
    beside = piece.outline[index - 1], piece.outline[(index + 1) % count]
    kinds = _kind(beside[0]), _kind(beside[1])
    put_in = (
        Edge(strips[edge.start], Path.line(path.start, begin), edge.start, names[edge.start], kinds[0]),
        replace(edge, path=Path.line(begin, end), start=names[edge.start], end=names[edge.end]),
        Edge(strips[edge.end], Path.line(end, path.end), names[edge.end], edge.end, kinds[1]),
    )
    line = InternalLine(part_name(piece.name, "pleat_line"), path, "fold_line")
    widened = replace(
        piece,
        outline=(*piece.outline[:index], *put_in, *piece.outline[index + 1 :]),
        lines=(*piece.lines, line),
    )
    return _finished(_counted_anew(pattern.with_pieces(widened), center, names), widened, strips, beside)


def _counted_anew(pattern: Pattern, center: str, names: Mapping[str, str]) -> Pattern:
    """A seam along the center begins at its new ends; so does what is counted along it."""

    def uses(run: tuple[EdgeUse, ...]) -> tuple[EdgeUse, ...]:
        return tuple(
            replace(use, starts_at=names.get(use.starts_at, use.starts_at)) if use.edge == center else use
            for use in run
        )

    seams = [
        replace(seam, first=uses(seam.first), second=uses(seam.second)) for seam in pattern.seams.values()
    ]
    notches = [
        replace(notch, place=replace(notch.place, from_point=names[notch.place.from_point]))
        for notch in pattern.notches.values()
        if notch.place.edge == center
    ]
    return pattern.with_seams(*seams).with_notches(*notches)


def _kind(beside: Edge) -> EdgeKind:
    """The strip is hemmed with the hem; at a seam it lies folded in it."""
    return "hem" if beside.kind == "hem" else "plain"


def _finished(pattern: Pattern, piece: Piece, strips: dict[str, str], beside: tuple[Edge, Edge]) -> Pattern:
    given: dict[str, Allowance] = {}
    for strip, neighbor in zip(strips.values(), beside, strict=True):
        allowance = allowance_of(pattern, neighbor.name)
        if allowance is not None:
            given[strip] = allowance
    return pattern.with_allowances(given)
