"""The least that serves, sought by halving: how much something is changed before it does."""

from collections.abc import Callable
from typing import TypeVar

Found = TypeVar("Found")


def nearest_serving(
    trial: Callable[[float], Found | None], fails: float, serves: float, rounds: int
) -> Found | None:
    """What ``trial`` finds nearest to an amount with which it fails, before one with which it serves.

    ``trial`` gives None where the amount does not serve. None where no amount that was tried between the two
    does; ``rounds`` are tried, each in the middle of what is left.
    """
    found: Found | None = None
    for _ in range(rounds):
        middle = (fails + serves) / 2.0
        now = trial(middle)
        if now is None:
            fails = middle
        else:
            found, serves = now, middle
    return found
