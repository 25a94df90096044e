"""The opening that a band goes round: edges in a row, round a limb or from center to center."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, Place, run_length, run_of, spoken
from notchbook.pattern.names import last_word
from notchbook.pattern.sewn import shared_by_sides
from notchbook.units import TOLERANCES


@dataclass(frozen=True)
class Opening:
    """A run of edges and its length as sewn, mm; ``is_half`` where it goes from center to center of the body,
    so that the other half is on the wearer's other side."""

    uses: tuple[EdgeUse, ...]
    length: float
    is_half: bool

    @property
    def girth(self) -> float:
        """The length of the whole opening, mm."""
        return 2.0 * self.length if self.is_half else self.length

    @property
    def word(self) -> str:
        """What its first edge is called."""
        return last_word(self.uses[0].edge)


def opening_of(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> Opening:
    """The opening of these edges.

    NameLost where an edge is gone; StepRefused ``band-opening-broken`` where one does not go on where the one
    before it ends, ``band-opening-half-closed`` where it begins at a center and does not end at one.
    """
    ends = [ends_of(pattern, use) for use in uses]
    for (_, end), (start, _), use in zip(ends, ends[1:], uses[1:], strict=False):
        if not meet(pattern, end, start):
            raise StepRefused("band-opening-broken", edge=spoken(use.edge), point=spoken(start))
    first, last = ends[0][0], ends[-1][1]
    central = [at_center(pattern, point, uses) for point in (first, last)]
    if central[0] != central[1]:
        raise StepRefused("band-opening-half-closed", start=spoken(first), end=spoken(last))
    if not central[0] and not meet(pattern, last, first):
        raise StepRefused("band-opening-half-closed", start=spoken(first), end=spoken(last))
    return Opening(uses, run_length(pattern, uses), all(central))


def place_along(pattern: Pattern, opening: Opening, distance: float) -> Place:
    """The place so far along the run, mm, on the edge where it lies."""
    rest = distance
    for use in opening.uses:
        length = run_length(pattern, (use,))
        if rest <= length + TOLERANCES.sew_length or use is opening.uses[-1]:
            return Place(use.edge, use.starts_at, min(rest, length))
        rest -= length
    raise StepRefused("band-opening-broken", edge=spoken(opening.uses[0].edge), point="")


def ends_of(pattern: Pattern, use: EdgeUse) -> tuple[str, str]:
    """The points where an edge is entered and left on the walk."""
    walk = run_of(pattern, (use,))
    last = walk[-1]
    return walk[0].start, last.edge.end if last.forward else last.edge.start


def meet(pattern: Pattern, one: str, other: str) -> bool:
    """Whether two corners come together: they are the same, or a seam joins the edges that end there."""
    if one == other:
        return True
    return any({one, other} <= {*pair} for pair in _joined_corners(pattern))


def _joined_corners(pattern: Pattern) -> Iterator[tuple[str, str]]:
    """Corners that the seams lay on each other, at both ends of each."""
    for seam in pattern.seams.values():
        first, second = run_of(pattern, seam.first), run_of(pattern, seam.second)
        yield first[0].start, second[0].start
        yield (
            first[-1].edge.end if first[-1].forward else first[-1].edge.start,
            second[-1].edge.end if second[-1].forward else second[-1].edge.start,
        )


def at_center(pattern: Pattern, point: str, uses: tuple[EdgeUse, ...]) -> bool:
    """Whether an edge that belongs to both of the wearer's sides ends in this corner."""
    run = {step.edge.name for step in run_of(pattern, uses)}
    return any(
        shared_by_sides(pattern, edge.name)
        for piece in pattern.pieces.values()
        for edge in piece.outline
        if point in (edge.start, edge.end) and edge.name not in run
    )
