"""A cure: one parameter of one step that would heal what was found or refused. Offered, never applied."""

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Cure:
    """One parameter of one step, and the value that would heal.

    ``step`` is the slug of the step in its recipe (``bodice``), ``parameter`` the name of its parameter.
    ``value`` is what is to be written there. With ``added`` it is a length in mm by which the length that
    stands there is to be raised: for a step that cannot see what the other one states. ``words`` are the
    order in words, without the amount where ``added``: ``lower the armhole``.
    """

    step: str
    parameter: str
    value: Any
    words: str
    added: bool = False
