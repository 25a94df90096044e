"""The cut line of one piece: strips of allowance joined at corners and dart mouths."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.finish.allowance import RUNS_DOWN_TO, Given
from notchbook.finish.chain import chained, merged
from notchbook.finish.corner import Corner, ended_square, folded_back, mitred
from notchbook.finish.dart_cap import capped, is_open
from notchbook.finish.strip import Strip, strip_of
from notchbook.finish.turned_corner import turned_in
from notchbook.geometry import Path
from notchbook.pattern import CornerStyle, Edge, Intake, Piece, spoken
from notchbook.units import TOLERANCES

_LEAST_TAIL = 60.0
"""mm; tails must reach the corners of narrow allowances at leaning sides too."""


@dataclass(frozen=True, slots=True)
class CutOutline:
    """The closed cut line, its strips with the part of the line of each (None: swallowed), and the points
    whose tips were blunted."""

    path: Path
    strips: tuple[Strip, ...]
    parts: tuple[Path | None, ...]
    blunted: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CornerRules:
    """What decides over corners: the styles asked for by point name, the mitre limit, and how early a
    seam is sewn (by edge name; smaller is earlier)."""

    styles: Mapping[str, CornerStyle]
    limit: float
    sewing_order: Mapping[str, int]


def cut_outline(piece: Piece, given: Callable[[Edge], Given], rules: CornerRules) -> CutOutline:
    """The cut line of a piece; StepRefused ``allowance-impossible`` or ``allowance-swallows``."""
    legs = {leg for intake in piece.darts for leg in (intake.first_leg, intake.second_leg)} | _slashes(piece)
    edges = [edge for edge in piece.outline if edge.name not in legs and edge.length > TOLERANCES.sew_length]
    widths = _run_down(edges, given)
    tail = max(_LEAST_TAIL, 2.0 * rules.limit * max(found.width for found in widths.values()))
    strips = [strip_of(edge, widths[edge.name], tail, rules.limit) for edge in edges]
    corners, dropped = _joined(piece, strips, rules)
    return _assembled(strips, corners, dropped)


def _run_down(edges: Sequence[Edge], given: Callable[[Edge], Given]) -> dict[str, Given]:
    """The allowance of each edge; a straight one that runs down to that of its neighbor with both widths."""
    found = [given(edge) for edge in edges]
    widths = {edge.name: one for edge, one in zip(edges, found, strict=True)}
    for index, (edge, one) in enumerate(zip(edges, found, strict=True)):
        before, after = found[index - 1], found[(index + 1) % len(found)]
        meets = [other.allowance_class == RUNS_DOWN_TO.get(one.allowance_class) for other in (before, after)]
        if any(meets) and _is_straight(edge.path):
            ends = (before.width if meets[0] else one.width, after.width if meets[1] else one.width)
            widths[edge.name] = replace(one, ends=ends)
    return widths


def _is_straight(path: Path) -> bool:
    return path.length - path.start.distance_to(path.end) <= TOLERANCES.sew_length


def _slashes(piece: Piece) -> set[str]:
    """Legs that belong to no intake: the sides of a slash; the piece is cut on over it until it is sewn."""
    taken = {leg for intake in piece.intakes for leg in (intake.first_leg, intake.second_leg)}
    return {edge.name for edge in piece.outline if edge.kind == "leg" and edge.name not in taken}


def _joined(
    piece: Piece, strips: list[Strip], rules: CornerRules
) -> tuple[dict[int, tuple[int, Corner]], set[int]]:
    """For each strip that stays: the next one and the corner to it. A strip whose corners cross each
    other is swallowed by its neighbors' allowance and left out."""
    staying = list(range(len(strips)))
    while True:
        corners = {
            index: (following, _corner(piece, strips[index], strips[following], rules))
            for index, following in zip(staying, (*staying[1:], staying[0]), strict=True)
        }
        enters = {following: corner.enter for following, corner in corners.values()}
        swallowed = [
            index for index in staying if corners[index][1].leave < enters[index] - TOLERANCES.sew_length
        ]
        if not swallowed:
            return corners, set(range(len(strips))) - set(staying)
        shortest = min(swallowed, key=lambda index: strips[index].edge.length)
        if len(staying) <= 3:
            name = spoken(strips[shortest].edge.name)
            raise StepRefused("allowance-swallows", edge=name, width=strips[shortest].width)
        staying.remove(shortest)


def _corner(piece: Piece, first: Strip, second: Strip, rules: CornerRules) -> Corner:
    intake = _intake_between(piece, first.edge, second.edge)
    if intake is not None and is_open(piece, intake):
        cap = capped(first, second, piece, intake)
        if cap is not None:
            return cap
    style = rules.styles.get(first.edge.end)
    hems = [strip for strip in (first, second) if strip.edge.kind == "hem"]
    if style == "folded" or (style is None and len(hems) == 1):
        hem = hems[0] if hems else max(first, second, key=lambda strip: strip.width)
        return folded_back(first, second, hem, rules.limit)
    if style == "turned":
        return turned_in(first, second, rules.limit)
    if style == "square":
        order = rules.sewing_order
        late = len(order)
        early = order.get(first.edge.name, late) <= order.get(second.edge.name, late)
        return ended_square(first, second, first if early else second, rules.limit)
    return mitred(first, second, rules.limit)


def _intake_between(piece: Piece, first: Edge, second: Edge) -> Intake | None:
    """The dart whose legs lie between two edges that follow each other when legs are left out."""
    following = piece.edge_after(first.name)
    for intake in piece.darts:
        if intake.first_leg == following.name and piece.edge(intake.second_leg).end == second.start:
            return intake
    return None


def _assembled(strips: list[Strip], corners: dict[int, tuple[int, Corner]], dropped: set[int]) -> CutOutline:
    enters = {following: corner.enter for following, corner in corners.values()}
    parts: list[Path | None] = []
    pieces: list[Path] = []
    blunted: list[str] = []
    for index, strip in enumerate(strips):
        if index in dropped:
            parts.append(None)
            continue
        corner = corners[index][1]
        part = merged(strip.line.between(enters[index], max(corner.leave, enters[index])))
        parts.append(part)
        pieces.append(part)
        if corner.bridge is not None:
            pieces.append(corner.bridge)
        if corner.blunted:
            blunted.append(strip.edge.end)
    path = chained(pieces, closed=True)
    return CutOutline(path, tuple(strips), tuple(parts), tuple(blunted))
