"""A step that might cure a finding; whether it does is tried."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from notchbook.pattern import Finding, Pattern


@dataclass(frozen=True, slots=True)
class Proposed:
    """A step by its operation and parameters, the order in words without its amount, and the amount (mm); or
    with the amount, as its text ``value``, within the order.

    Of steps with one ``ladder``, each larger than the last, the first that heals is offered and no other.
    """

    operation: str
    parameters: Mapping[str, Any]
    order: str
    amount: float | None = None
    value: str | None = None
    ladder: str = ""


Proposer = Callable[[Pattern, Finding], tuple[Proposed, ...]]
"""Gives the steps that might cure a finding of one kind, the usual one first."""
