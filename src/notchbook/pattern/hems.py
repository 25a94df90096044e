"""Edges that are hems because a step gave them the allowance of one."""

from notchbook.pattern.pattern import Pattern
from notchbook.pattern.resolve import expand

_NO_HEM = frozenset({"hem_slit", "hem_pocket"})
"""Classes of edges that are turned in as a hem is, by a line of their step."""


def given_hems(pattern: Pattern) -> frozenset[str]:
    """The edges to which a step gave the allowance of a hem, such as the waist of a shell."""
    return frozenset(
        edge
        for name, allowance in pattern.allowances.items()
        if allowance.allowance_class.split("_")[0] == "hem" and allowance.allowance_class not in _NO_HEM
        for edge in expand(pattern, name)[0]
    )
