"""A sleeve spread at its slashes, its middle strip still, its cap raised and its notches carried."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.geometry.solve import solve_rising
from notchbook.pattern import Edge, Pattern, Piece, spoken
from notchbook.style.fullness.notch_places import notches_carried
from notchbook.style.fullness.spread import CutEdge, SlashLine, spread, spread_keeping_hinges
from notchbook.style.sleeves.crossing import crosses
from notchbook.style.sleeves.found import FoundSleeve, line_of
from notchbook.units import TOLERANCES

_FAR = Point(0.0, 500.0)
"""mm up and down from the middle of the hem within which the hem is looked for."""

_MOST = 60.0
"""mm by which the crown of a hinged cap may come to lie higher or lower when it is drawn round."""

_LEVEL = 180.0
"""Degrees: the direction of the cap at its highest point, from front to back."""


@dataclass(frozen=True)
class OpenedSleeve:
    """The sleeve ``before`` and the ``pattern`` after it was spread; ``met`` says what became of each edge
    that slashes met, ``raised`` by how much the cap was made higher, mm."""

    before: FoundSleeve
    pattern: Pattern
    met: Mapping[str, CutEdge]
    raised: float

    @property
    def piece(self) -> Piece:
        """The sleeve as it is now."""
        return self.pattern.pieces[self.before.piece.name]

    @property
    def wider(self) -> dict[str, float]:
        """By how much each level of the sleeve is wider, mm."""
        now = {line.name: line.path.length for line in self.piece.lines}
        return {line.name: now[line.name] - line.path.length for line in self.before.piece.lines}

    @property
    def cap(self) -> tuple[Edge, ...]:
        """The edges of the cap as they are now."""
        return tuple(self.piece.edge(edge.name) for edge in self.before.cap)


def opened_sleeve(
    pattern: Pattern,
    sleeve: FoundSleeve,
    lines: Sequence[SlashLine],
    raised: float = 0.0,
    drawn: frozenset[str] = frozenset(),
) -> OpenedSleeve:
    """The sleeve spread, what lies between its two innermost slashes staying where it was.

    The cap is gathered or keeps its length: as sewn, its notches stand where they did. So do those of
    ``drawn``, edges that are gathered too; on others they go with their cloth. StepRefused as the slashes
    are, ``sleeve-cap-crosses`` where the raised cap crosses the sleeve.
    """
    is_hinged = not any(line.opened for line in lines)
    # A cap that is only hinged is drawn anew with its length; other hinges let out what truing takes.
    made = (spread if is_hinged else spread_keeping_hinges)(sleeve.piece, lines, True)
    still = made.motions[len(lines) // 2]
    piece = replace(made.piece.transformed(still.inverse()), grain=sleeve.piece.grain)
    piece = _length_kept(sleeve, piece)
    if raised:
        piece = _raised(sleeve, piece, raised)
        if crosses(piece, [edge.name for edge in sleeve.cap]):
            raise StepRefused("sleeve-cap-crosses", sleeve=spoken(piece.name), height=raised)
    elif is_hinged:
        piece = _rounded(sleeve, piece)
    after = pattern.with_pieces(piece)
    kept = drawn | {edge.name for edge in sleeve.cap}
    free = {name: met for name, met in made.edges.items() if name not in kept}
    return OpenedSleeve(
        sleeve, after.with_notches(*notches_carried(pattern, after, free)), made.edges, raised
    )


def _length_kept(sleeve: FoundSleeve, piece: Piece) -> Piece:
    """The hem led through its old middle again, where the fair line over the strips ran beside it, so that
    the sleeve stays as long as it was; it meets the seams as before."""
    middle, name = piece.points[sleeve.name("hem_middle")], sleeve.name("hem")
    if not piece.has_edge(name):
        return piece
    hem = piece.edge(name)
    met = hem.path.intersections(Path.line(middle - _FAR, middle + _FAR))
    if not met:
        return piece
    at, gap = met[0].at_self, middle.y - hem.path.point_at(met[0].at_self).y
    before = sleeve.piece.edge(name).path
    was = before.intersections(Path.line(*(_middle_of(sleeve) + way for way in (-_FAR, _FAR))))
    gap -= _middle_of(sleeve).y - before.point_at(was[0].at_self).y if was else 0.0
    if abs(gap) <= TOLERANCES.closure:
        return piece
    path, through = hem.path, hem.path.point_at(at) + Point(0.0, gap)
    level = (path.end - path.start).direction()
    begin, finish = path.tangent_at(0.0, "after").direction(), path.tangent_at(path.length).direction()
    drawn = Path.of(
        curve_between(path.start, begin, through, level, keep_convex=False),
        curve_between(through, level, path.end, finish, keep_convex=False),
    )
    return piece.with_edges(replace(hem, path=drawn))


def _middle_of(sleeve: FoundSleeve) -> Point:
    return sleeve.piece.points[sleeve.name("hem_middle")]


def _raised(sleeve: FoundSleeve, piece: Piece, amount: float) -> Piece:
    """The crown drawn anew, so much higher: from each balance notch one round line to its highest point."""
    edges = tuple(piece.edge(edge.name) for edge in sleeve.cap)
    line = line_of(edges)
    crown = _Crown(line, *_flat_ends(sleeve, line), piece.points[sleeve.name("crown")].x)
    drawn = crown.drawn(amount)
    top = piece.points[sleeve.name("cap_top")]
    highest = line.bounds().max_y + abs(amount)
    up = Path.line(Point(top.x, top.y - 2.0 * abs(amount) - 1.0), Point(top.x, highest + 1.0))
    meets = crown.begins + drawn.intersections(up)[0].at_self
    return piece.with_edges(*_parted(edges, crown.whole(drawn), (line.length, sleeve.name("cap_top")), meets))


def _rounded(sleeve: FoundSleeve, piece: Piece) -> Piece:
    """The crown of a cap that was hinged drawn anew as one round line, as long as it was, on both halves;
    StepRefused ``sleeve-cap-not-kept`` where no height of it does that."""
    edges = tuple(piece.edge(edge.name) for edge in sleeve.cap)
    line = line_of(edges)
    crown = _Crown(line, *_flat_ends(sleeve, line), piece.points[sleeve.name("crown")].x)
    wanted = sleeve.line.length - crown.begins - (line.length - crown.ends)
    try:
        amount = solve_rising(lambda more: crown.drawn(more).length - wanted, 0.0, 1.0, -_MOST, _MOST)
    except GeometryError as error:
        raise StepRefused("sleeve-cap-not-kept", sleeve=spoken(piece.name)) from error
    whole = crown.whole(crown.drawn(amount))
    meets = sleeve.top * whole.length / sleeve.line.length
    return piece.with_edges(*_parted(edges, whole, (line.length, sleeve.name("cap_top")), meets))


def _flat_ends(sleeve: FoundSleeve, line: Path) -> tuple[float, float]:
    """Where the balance notches stand on the cap as it is now: as far from the underarms as before, mm."""
    return sleeve.notches[0], line.length - (sleeve.line.length - sleeve.notches[1])


@dataclass(frozen=True, slots=True)
class _Crown:
    """The cap ``line`` between the places at which it stays (mm along it), and the x of its highest point."""

    line: Path
    begins: float
    ends: float
    x: float

    def drawn(self, amount: float) -> Path:
        """The crown as two round lines that meet ``amount`` mm over the highest point of the line."""
        top = Point(self.x, self.line.bounds().max_y + amount)
        front, back = self.line.point_at(self.begins), self.line.point_at(self.ends)
        leaving, arriving = (self.line.tangent_at(place).direction() for place in (self.begins, self.ends))
        return Path.of(curve_between(front, leaving, top, _LEVEL), curve_between(top, _LEVEL, back, arriving))

    def whole(self, crown: Path) -> Path:
        """The whole cap with this crown."""
        lower = self.line.between(0.0, self.begins), self.line.between(self.ends, self.line.length)
        return lower[0].joined(crown).joined(lower[1])


def _parted(edges: tuple[Edge, ...], whole: Path, old: tuple[float, str], meets: float) -> Iterator[Edge]:
    """The edges of a cap on its new line. Edges end where they did under the arm, counted from there, and at
    ``meets`` where the cap meets the shoulder seam."""
    length, top = old
    begun, travelled, past = 0.0, 0.0, False
    for edge in edges:
        travelled += edge.length
        past = past or edge.end == top
        ends = meets if edge.end == top else travelled + (whole.length - length if past else 0.0)
        yield replace(edge, path=whole.between(begun, min(ends, whole.length)))
        begun = ends
