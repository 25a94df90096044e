"""What opens needs a seam: an edge on the fold goes on into the other half, and nothing can open there."""

from notchbook.errors import StepRefused
from notchbook.pattern import Pattern, require, spoken


def require_not_on_fold(pattern: Pattern, edge: str) -> None:
    """StepRefused ``opening-on-fold`` where a part of the edge or group lies on the fold."""
    if any(pattern.edges[name].kind == "fold" for name in require(pattern, edge)):
        raise StepRefused("opening-on-fold", edge=spoken(edge))
