"""What is to be asked about a set of measures."""

from dataclasses import dataclass
from typing import Literal

from notchbook.errors import InputError

DoubtLevel = Literal["stop", "check"]


@dataclass(frozen=True, slots=True)
class Doubt:
    """One thing to look at again.

    ``stop``: no body can be so, the set must not be used. ``check``: possible but unusual, ask again.
    ``problem`` carries the words; it is raised for a stop, shown for a check.
    """

    level: DoubtLevel
    keys: tuple[str, ...]
    problem: InputError

    @property
    def code(self) -> str:
        """The code of the message."""
        return self.problem.code
