"""Seams at corners: whether two edges are sewn to each other from one corner on."""

from notchbook.pattern import EdgeUse, Found, Pattern, Seam, resolve, run_of


def seam_at(pattern: Pattern, first: tuple[str, str], second: tuple[str, str]) -> Seam | None:
    """The seam between two edges of which both points are the same end; each is an edge and its point."""
    if first[0] == second[0]:
        return None
    for seam in pattern.seams.values():
        runs = tuple(_ends_of(pattern, uses) for uses in (seam.first, seam.second))
        for one, other in (runs, runs[::-1]):
            meet_at_start = (first, second) == (one[0], other[0])
            if meet_at_start or (first, second) == (one[1], other[1]):
                return seam
    return None


def _ends_of(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[tuple[str, str], tuple[str, str]]:
    """The edge and the point at both ends of a seam's run; of nothing where the run is lost."""
    if not all(isinstance(resolve(pattern, use.edge), Found) for use in uses):
        return ("", ""), ("", "")
    steps = run_of(pattern, uses)
    last = steps[-1].edge
    return (steps[0].edge.name, steps[0].start), (last.name, last.end if steps[-1].forward else last.start)
