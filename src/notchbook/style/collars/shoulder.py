"""Where the neck passes over the shoulder: at the side-neck point, or from the front to the back."""

from collections.abc import Iterator

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, run_of, spoken
from notchbook.pattern.names import last_word
from notchbook.style.collars.neck_walk import SAME_PLACE, Corner, corners_of

_SIDE_NECK = "side_neck_point"


def shoulder_at(pattern: Pattern, uses: tuple[EdgeUse, ...], asked: str | None) -> Corner:
    """The shoulder on the neck; ``index`` is -1 where no edge begins there, 0 on a neck of the back alone.

    ``asked``: the point that was named. None: the side-neck point, as a corner of the neck or as a mark on
    it; else where the edges of the front give way to those of the back. StepRefused
    ``collar-shoulder-elsewhere`` where the named point does not lie on the neck, ``collar-shoulder-unclear``
    where nothing tells.
    """
    corners = corners_of(pattern, uses)
    if asked is not None:
        found = [one for one in corners if asked in one.names] or list(_marks(pattern, uses, {asked}))
        if not found:
            raise StepRefused("collar-shoulder-elsewhere", point=spoken(asked))
        return found[0]
    named = [one for one in corners if any(_is_side_neck(name) for name in one.names)]
    ways = (named, list(_marks(pattern, uses, None)), list(_passing(pattern, uses, corners)))
    for way in ways:
        if len(way) == 1:
            return way[0]
    raise StepRefused("collar-shoulder-unclear", edge=spoken(uses[0].edge))


def _is_side_neck(name: str) -> bool:
    return last_word(name) == _SIDE_NECK


def _marks(pattern: Pattern, uses: tuple[EdgeUse, ...], asked: set[str] | None) -> Iterator[Corner]:
    """Marks on the neck with one of these names, or of a side-neck point, away from its corners."""
    corners = corners_of(pattern, uses)
    for corner, step in zip(corners, run_of(pattern, uses), strict=True):
        piece = pattern.pieces[pattern.carriers[step.edge.name]]
        for mark in piece.marks:
            if mark.name not in asked if asked is not None else not _is_side_neck(mark.name):
                continue
            near = step.path.nearest(mark.position)
            if near.gap <= SAME_PLACE < near.distance_along < step.path.length - SAME_PLACE:
                yield Corner(corner.along + near.distance_along, frozenset({mark.name}), -1)


def _passing(pattern: Pattern, uses: tuple[EdgeUse, ...], corners: tuple[Corner, ...]) -> Iterator[Corner]:
    """Corners with an edge of the front before and one of the back behind."""
    sides = [_side_of(pattern, step.edge.name) for step in run_of(pattern, uses)]
    for corner in corners[1:]:
        if (sides[corner.index - 1], sides[corner.index]) == ("front", "back"):
            yield corner


def _side_of(pattern: Pattern, edge: str) -> str:
    """Whether an edge was drafted on the front or the back, else on which its piece is; empty: neither."""
    for owner in (edge.split("/")[0], pattern.carriers[edge]):
        words = {"front", "back"} & set(last_word(owner).split("_"))
        if len(words) == 1:
            return words.pop()
    return ""
