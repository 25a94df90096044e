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


def likely_enough(repairs: Iterable[Repair]) -> tuple[Repair, ...]:
    """The likeliest repair and those about as likely; none when all else is likelier or they are many."""
    ranked = sorted(repairs, key=lambda one: -one.share)
    offered = tuple(one for one in ranked if one.share >= ABOUT_AS_LIKELY * ranked[0].share)
    sure = sum(one.share for one in offered) >= LEAST_SHARE and len(offered) <= MOST_REPAIRS
    return offered if sure else ()
