"""What could be made to measure so that a finding is gone: a seam that agrees, a girth as it was promised."""

from dataclasses import dataclass
from typing import Final

from notchbook.errors import NotchbookError
from notchbook.pattern import Finding, Severity
from notchbook.recipe import Replay
from notchbook.recipe.targets import Quantity, measured

_SEAMS: Final = frozenset({"seam-second-longer", "seam-second-shorter"})
"""Findings about a seam whose sides differ."""

_GIRTHS: Final = frozenset({"closure-large", "closure-small", "girth-under-body", "girth-under-least-ease"})
"""Findings about a promised length that came out otherwise."""


@dataclass(frozen=True, slots=True)
class FindingWish:
    """What is to be measured, what it measures now, and what it would have to, mm."""

    quantity: Quantity
    now: float
    wanted: float


def wish_at(finding: Finding, run: Replay) -> FindingWish | None:
    """The wish that would heal a finding; None where it is a note, or where no length would.

    Whether a number can be found that makes it come true is not tried: that is her choice of the number.
    """
    if finding.severity is Severity.NOTE or finding.where is None:
        return None
    if finding.code in _SEAMS:
        quantity, wanted = Quantity("misfit", (finding.where,)), 0.0
    elif finding.code in _GIRTHS and finding.wanted is not None:
        quantity, wanted = Quantity("finished", (finding.where,)), finding.wanted
    else:
        return None
    try:
        return FindingWish(quantity, measured(run, quantity), wanted)
    except NotchbookError:
        return None  # a later step took a part of it, so that it cannot be measured
