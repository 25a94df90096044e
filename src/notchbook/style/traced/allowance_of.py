"""The allowance that an edge has by what the steps said, or by the seam that it is sewn in."""

from notchbook.pattern import Allowance, Pattern
from notchbook.pattern.resolve import expand


def allowance_of(pattern: Pattern, edge: str) -> Allowance | None:
    """What is said of the edge itself or of the smallest group that holds it; else the class of its seam.

    None where neither speaks of it: then its kind decides.
    """
    said = [
        (len(members), allowance)
        for name, allowance in pattern.allowances.items()
        if edge in (members := expand(pattern, name)[0])
    ]
    if said:
        return min(said, key=lambda pair: pair[0])[1]
    for seam in pattern.seams.values():
        for use in (*seam.first, *seam.second):
            if edge in expand(pattern, use.edge)[0]:
                return Allowance(seam.allowance_class)
    return None
