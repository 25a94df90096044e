"""Lower and stretch blocks of the invented bodies of the sheets, drafted once."""

from functools import cache
from typing import Any

from lower_judged import wanted_of
from lower_sheets import KINDS, lower_bodies
from notchbook.app.drafting import draft
from notchbook.pattern import pattern_to_data
from notchbook.recipe import Replay


@cache
def drafted_lower(kind: str, name: str = "medium-92") -> Replay:
    """One of the blocks of the sheets, by the name of its sheets, for one of the invented bodies."""
    chosen = next(one for one in KINDS if one.name == kind)
    return draft(chosen.block, dict(lower_bodies())[name], chosen.settings)


@cache
def lower_data(kind: str, name: str = "medium-92") -> dict[str, Any]:
    """The pattern as plain data; nobody may write into it."""
    return pattern_to_data(drafted_lower(kind, name).pattern)


@cache
def lower_wanted(kind: str, name: str = "medium-92") -> dict[str, float]:
    """What each girth and length was to come to."""
    return wanted_of(drafted_lower(kind, name))
