"""Loops of a raw parallel: cut at its crossings, and dropped where they come too near to the source."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from notchbook.errors import GeometryError
from notchbook.geometry.crossings import Crossing
from notchbook.geometry.line import Line
from notchbook.geometry.offset_join import arc_segments
from notchbook.geometry.path import Path
from notchbook.geometry.tolerance import TOLERANCE

_SHARES = (0.5, 0.25, 0.75)
"""Where along a piece it is asked whether it keeps its distance; between crossings all agree."""


@dataclass(frozen=True, slots=True)
class _Judged:
    """A piece of the raw parallel, and which of its samples keep their distance from the source."""

    path: Path
    kept: tuple[bool, ...]

    @property
    def is_kept(self) -> bool:
        """Whether most samples keep their distance."""
        return sum(self.kept) * 2 > len(self.kept)

    @property
    def is_mixed(self) -> bool:
        """Whether the samples disagree."""
        return any(self.kept) and not all(self.kept)


def without_loops(raw: Path, source: Path, distance: float, other_side: Callable[[], Path | None]) -> Path:
    """The parts of a raw parallel that keep their distance from the source, as one path.

    ``other_side`` makes the raw parallel on the other side: an open path can come near to its own back,
    and its parallel is cut there too. GeometryErrors ``offset-vanishes`` and ``offset-in-pieces``.
    """
    if len(raw.segments) == len(source.segments) == 1 and isinstance(source.segments[0], Line):
        return raw
    crossings = raw.self_crossings()
    raw, crossings = _without_thin_loops(raw, crossings)
    cuts = sorted({place for found in crossings for place in (found.at_self, found.at_other)})
    pieces = _judged(raw, cuts, source, distance)
    if not source.is_closed and (_starts_too_near(raw, source, distance) or any(p.is_mixed for p in pieces)):
        cuts = sorted({*cuts, *_end_cuts(raw, source, distance, other_side())})
        pieces = _judged(raw, cuts, source, distance)
    kept = [piece.path for piece in pieces if piece.is_kept]
    if not kept:
        raise GeometryError("offset-vanishes", distance=distance)
    chains = _chains(kept)
    if source.is_closed:
        chains = [chain for chain in chains if _is_loop(chain)]
    else:
        chains = [chain for chain in chains if _goes_all_the_way(chain, raw)] or chains
    if len(chains) != 1:
        code = "offset-in-pieces" if chains else "offset-vanishes"
        raise GeometryError(code, distance=distance, count=len(chains))
    return chains[0]


def _is_loop(chain: Path) -> bool:
    """Whether a chain closes and holds more than the thin rest that the tolerances leave."""
    return chain.is_closed and not _is_thin(chain)


def _starts_too_near(raw: Path, source: Path, distance: float) -> bool:
    """Whether an open parallel starts or ends where it does not keep its distance."""
    floor = abs(distance) - TOLERANCE.join_mm
    return any(source.nearest(point).gap < floor for point in (raw.start, raw.end))


def _goes_all_the_way(chain: Path, raw: Path) -> bool:
    """Whether a chain leads from the start of an open parallel to its end; pockets beside it do not count."""
    return chain.start == raw.start and chain.end == raw.end


def _without_thin_loops(raw: Path, crossings: tuple[Crossing, ...]) -> tuple[Path, tuple[Crossing, ...]]:
    """The parallel without loops so thin that distances cannot tell them, and the crossings that are left."""
    for found in crossings:
        loop = raw.between(found.at_self, found.at_other)
        if _is_thin(loop):
            rest = raw.split_at(found.at_self)[0], raw.split_at(found.at_other)[1]
            return _again(_linked(*rest) if rest[0].length > TOLERANCE.sliver_mm else rest[1])
        if raw.is_closed and _is_thin(raw.between(found.at_other, found.at_self)):
            return _again(_closed(loop))
    return raw, crossings


def _again(shorter: Path) -> tuple[Path, tuple[Crossing, ...]]:
    return _without_thin_loops(shorter, shorter.self_crossings())


def _is_thin(loop: Path) -> bool:
    """Whether a loop encloses less than the strip that the tolerances leave open."""
    ring = loop.joined(Path.line(loop.end, loop.start)) if loop.start != loop.end else loop
    return not ring.is_closed or abs(ring.area()) <= TOLERANCE.offset_inside_mm * ring.length


def _judged(raw: Path, cuts: Sequence[float], source: Path, distance: float) -> list[_Judged]:
    floor = abs(distance) - TOLERANCE.offset_inside_mm
    judged = []
    for piece in _pieces(raw, cuts):
        samples = (piece.point_at(piece.length * share) for share in _SHARES)
        judged.append(_Judged(piece, tuple(source.nearest(point).gap >= floor for point in samples)))
    return judged


def _pieces(raw: Path, cuts: Sequence[float]) -> list[Path]:
    """The pieces between the cuts; on a closed path the last one runs on through the start."""
    inner = [cut for cut in cuts if TOLERANCE.sliver_mm < cut < raw.length - TOLERANCE.sliver_mm]
    if not inner:
        return [raw]
    if raw.is_closed and len(inner) == len(cuts):
        raw = raw.starting_at(inner[0])
        inner = [cut - inner[0] for cut in inner[1:]]
    stops = [0.0, *inner, raw.length]
    return [raw.between(low, high) for low, high in pairwise(stops) if high - low > TOLERANCE.sliver_mm]


def _end_cuts(raw: Path, source: Path, distance: float, other_side: Path | None) -> list[float]:
    """Where the raw parallel comes within the width of an end of the source or of its other side."""
    cuts: list[float] = []
    for place in (0.0, source.length):
        normal = source.tangent_at(place).perpendicular() * distance
        center = source.point_at(place)
        circle = Path(tuple(arc_segments(center, center + normal, 360.0)))
        cuts += [found.at_self for found in raw.intersections(circle)]
    if other_side is not None:
        cuts += [found.at_self for found in raw.intersections(other_side)]
    return cuts


def _chains(pieces: Sequence[Path]) -> list[Path]:
    """The pieces joined end to start as far as they meet."""
    waiting = list(pieces)
    chains: list[Path] = []
    while waiting:
        chain = waiting.pop(0)
        while not _meets(chain, chain):
            following = next((piece for piece in waiting if _meets(chain, piece)), None)
            if following is None:
                break
            waiting.remove(following)
            chain = _linked(chain, following)
        chains = _prepended(chains, _closed(chain))
    return chains


def _prepended(chains: list[Path], chain: Path) -> list[Path]:
    """The chains with one more, which may lead into an earlier one."""
    for index, other in enumerate(chains):
        if not other.is_closed and not chain.is_closed and _meets(chain, other):
            return [*chains[:index], _closed(_linked(chain, other)), *chains[index + 1 :]]
    return [*chains, chain]


def _meets(first: Path, second: Path) -> bool:
    return first.end.distance_to(second.start) <= 2.0 * TOLERANCE.sliver_mm


def _linked(first: Path, second: Path) -> Path:
    """Two chains that nearly meet, made to meet."""
    head = second.segments[0]
    return Path((*first.segments, head.with_ends(first.end, head.end), *second.segments[1:]))


def _closed(chain: Path) -> Path:
    """A chain that nearly meets its own start, made to meet it."""
    if len(chain.segments) < 2 or chain.start == chain.end or not _meets(chain, chain):
        return chain
    last = chain.segments[-1]
    return Path((*chain.segments[:-1], last.with_ends(last.start, chain.start)))
