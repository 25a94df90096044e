"""Where a collar begins on a neck that goes on into a button stand, and how far it goes beyond the center."""

from dataclasses import dataclass
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, run_of, spoken
from notchbook.style.collars.neck_walk import SAME_PLACE, Corner, corner_near, corners_of
from notchbook.units import TOLERANCES

Begins = Literal["end", "corner", "cut", "beyond"]
"""``end``: at the front end of the neck as it is named; ``corner``: at a corner of it, the center; ``cut``:
within an edge, which is cut there; ``beyond``: it goes on beyond the front end."""


@dataclass(frozen=True, slots=True)
class Beginning:
    """mm: how much of the neck lies before the center (``extension``), how far the collar goes beyond the
    center as drawn (``overlap``), and how it ``begins``."""

    extension: float
    overlap: float
    begins: Begins

    @property
    def at(self) -> float:
        """Where it begins, from the front end of the neck."""
        return max(0.0, self.extension - self.overlap)

    @property
    def sewn(self) -> float:
        """How much of the overlap is sewn to the garment."""
        return min(self.overlap, self.extension)

    @property
    def beyond(self) -> float:
        """How far it goes on beyond the front end of the neck."""
        return max(0.0, self.overlap - self.extension) if self.begins == "beyond" else 0.0


def begun(pattern: Pattern, uses: tuple[EdgeUse, ...], extension: float, overlap: float) -> Beginning:
    """How a collar with this overlap begins on this body: what is written down when the step is added."""
    if overlap > extension + SAME_PLACE:
        return Beginning(extension, overlap, "beyond")
    if overlap >= extension - SAME_PLACE:
        return Beginning(extension, extension, "end")
    corner = corner_near(corners_of(pattern, uses), extension - overlap)
    return Beginning(extension, overlap, "cut" if corner is None else "corner")


def begun_as(
    pattern: Pattern, uses: tuple[EdgeUse, ...], lengths: tuple[float, float], begins: Begins | None
) -> Beginning:
    """The same as it was written down; ``lengths``: extension and overlap, mm. A collar that begins at the
    end goes as far as the neck does, whatever its overlap says. None, as in recipes from before it was
    written down: as on this body.

    StepRefused ``collar-begins-elsewhere`` where it cannot go beyond.
    """
    extension, overlap = lengths
    if begins is None:
        return begun(pattern, uses, extension, overlap)
    if begins == "end":
        return Beginning(extension, extension, "end")
    if begins == "beyond" and overlap <= extension + TOLERANCES.closure:
        place = extension - overlap
        raise StepRefused("collar-begins-elsewhere", edge=spoken(uses[0].edge), place=place, begins=begins)
    return Beginning(extension, overlap, begins)


def center_of(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> Corner | None:
    """The center on the neck of a front with a button stand: the corner at which the line of the old center
    ends, on the piece where the neck begins. None where there is none."""
    walk = run_of(pattern, uses)
    owner = pattern.carriers[walk[0].edge.name]
    centers = [line.path for line in pattern.pieces[owner].lines if line.kind == "match"]
    straight = [path for path in centers if path.length - path.start.distance_to(path.end) <= TOLERANCES.join]
    ends = [end for path in straight for end in (path.start, path.end)]
    for corner, before in zip(corners_of(pattern, uses)[1:], walk, strict=False):
        if pattern.carriers[before.edge.name] != owner:
            return None
        if any(before.path.end.distance_to(end) <= TOLERANCES.join for end in ends):
            return corner
    return None


def named_center(pattern: Pattern, uses: tuple[EdgeUse, ...], point: str) -> Corner:
    """The corner of the neck with this name; StepRefused ``collar-center-elsewhere``."""
    for corner in corners_of(pattern, uses):
        if point in corner.names:
            return corner
    raise StepRefused("collar-center-elsewhere", point=spoken(point), edge=spoken(uses[0].edge))
