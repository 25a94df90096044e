"""Which repairs are likely enough to be offered."""

from collections.abc import Iterable
from typing import Final

from notchbook.body.doubts.doubt import Repair

LEAST_SHARE: Final = 0.5
"""Repairs are offered when together they are at least so likely among all that would explain the doubt."""

ABOUT_AS_LIKELY: Final = 0.5
"""A further repair is offered when it is at least so likely, measured by the likeliest."""

MOST_REPAIRS: Final = 3
"""More than these would be a guess."""

LEAST_SHARE_OF: Final = {"tape-by-ten": 0.65}
"""The same where the likeliest is this slip: a tape that lay elsewhere is easily taken for one
(chosen on the rows that the populations are made from)."""


def likely_enough(repairs: Iterable[Repair], least: float = LEAST_SHARE) -> tuple[Repair, ...]:
    """The likeliest repair and those about as likely; none when all else is likelier or they are many.

    ``least``: how likely they must be together.
    """
    ranked = sorted(repairs, key=lambda one: -one.share)
    offered = tuple(one for one in ranked if one.share >= ABOUT_AS_LIKELY * ranked[0].share)
    needed = max((least, *(LEAST_SHARE_OF.get(one.slip, 0.0) for one in offered[:1])))
    sure = sum(one.share for one in offered) >= needed and len(offered) <= MOST_REPAIRS
    return offered if sure else ()
