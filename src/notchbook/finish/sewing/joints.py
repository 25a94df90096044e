"""Which seams join the parts of a run: where it passes from one piece to the next, a seam must be there."""

from collections import defaultdict, deque
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from notchbook.errors import NotchbookError
from notchbook.pattern import EdgeUse, Pattern, Seam, run_of
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.pattern.sewn import Directed


@dataclass(frozen=True, slots=True)
class Gap:
    """A run that passes from one point to another which no other seam joins to it."""

    seam: str
    ends_at: str
    goes_on_at: str


class Joints:
    """The points that seams lay on each other at their ends: for each, which others and by which seam.

    An operation lays the points that it names on each other too, two by two.
    """

    def __init__(self, pattern: Pattern) -> None:
        self._pattern = pattern
        self._next: dict[str, list[tuple[str, str]]] = defaultdict(list)
        for seam in pattern.seams.values():
            runs = [run for run in (steps(pattern, uses) for uses in (seam.first, seam.second)) if run]
            if len(runs) == 2:
                for first, second in zip(_ends(runs[0]), _ends(runs[1]), strict=True):
                    self._next[first].append((second, seam.name))
                    self._next[second].append((first, seam.name))

        self._operations = frozenset(pattern.operations)
        for one in pattern.operations.values():
            points = [name for name in one.at if pattern.index.get(name) == "point"]
            for first, second in zip(points[::2], points[1::2], strict=False):
                self._next[first].append((second, one.name))
                self._next[second].append((first, one.name))

    def before(self, seam: Seam) -> tuple[frozenset[str], tuple[Gap, ...]]:
        """The seams that must be sewn before this one, and where its runs are joined by none."""
        needed: set[str] = set()
        gaps: list[Gap] = []
        for uses in (seam.first, seam.second):
            for ends_at, goes_on_at in _passes(self._pattern, steps(self._pattern, uses)):
                by = self._way(ends_at, goes_on_at, seam.name)
                needed |= set(by or ())
                if by is None:
                    gaps.append(Gap(seam.name, ends_at, goes_on_at))
        return frozenset(needed), tuple(gaps)

    def at(self, point: str) -> frozenset[str]:
        """The seams that end at a point."""
        return frozenset(seam for _, seam in self._next.get(point, ()))

    def meets(self, point: str) -> frozenset[str]:
        """The points that seams lay on a point."""
        return frozenset(other for other, by in self._next.get(point, ()) if by not in self._operations)

    def ends_of(self, seam: Seam) -> frozenset[str]:
        """The seams that end where this one does, on pieces that it joins, and are not turned as it is. The
        bag of a pocket is closed after it is sewn to its opening."""
        turned = {
            one.name
            for one in self._pattern.seams.values()
            if one.seam_class == TURNED_SEAM or one.allowance_class == "pocket_bag"
        }
        runs = [run for run in (steps(self._pattern, uses) for uses in (seam.first, seam.second)) if run]
        return frozenset(name for run in runs for end in _ends(run) for name in self.at(end)) - (
            turned | self._operations
        )

    def _way(self, start: str, goal: str, but: str) -> tuple[str, ...] | None:
        """The seams that lead from one point to the other, fewest first; None where none do."""
        if start == goal:
            return tuple(seam for other, seam in self._next.get(start, ()) if other == start and seam != but)
        reached: dict[str, tuple[str, ...]] = {start: ()}
        waiting = deque([start])
        while waiting:
            here = waiting.popleft()
            for other, seam in self._next.get(here, ()):
                if seam != but and other not in reached:
                    reached[other] = (*reached[here], seam)
                    waiting.append(other)
        return reached.get(goal)


def steps(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[Directed, ...]:
    """The run edge by edge; empty where a name of it is gone, which another check tells."""
    try:
        return run_of(pattern, uses)
    except NotchbookError:
        return ()


def _ends(run: tuple[Directed, ...]) -> tuple[str, str]:
    return run[0].start, _end(run[-1])


def _end(step: Directed) -> str:
    return step.edge.end if step.forward else step.edge.start


def _passes(pattern: Pattern, run: tuple[Directed, ...]) -> Iterator[tuple[str, str]]:
    """Where the run passes to another piece, or to the same on the wearer's other side: the two points."""
    for one, following in pairwise(run):
        same = pattern.carriers[one.edge.name] == pattern.carriers[following.edge.name]
        if not same or one.edge.name == following.edge.name:
            yield _end(one), following.start
