"""What is to be asked about a set of measures, and what would explain it."""

from dataclasses import dataclass
from typing import Literal

from notchbook.errors import InputError

DoubtLevel = Literal["stop", "check"]


@dataclass(frozen=True, slots=True)
class Repair:
    """What somebody probably meant. Offered, never applied.

    ``slip`` is the kind of slip (``swapped-digits`` and the like, see ``slip_table.toml``), ``question`` asks
    about it, ``values`` are the measures that would change and to what (mm, degrees, kg). ``share`` is how
    likely it is among all that would explain the doubt, 0 to 1.
    """

    slip: str
    question: str
    values: tuple[tuple[str, float], ...]
    share: float


@dataclass(frozen=True, slots=True)
class Suspect:
    """One value that would explain a disagreement: without it the rest agrees.

    ``z`` is how many standard deviations the value lies from what the others let expect (``expected``);
    nine bodies of ten that are like it in all else lie from ``low`` to ``high``. Units as the measure's.
    ``share`` is how likely it is the one, 0 to 1.
    """

    key: str
    value: float
    expected: float
    low: float
    high: float
    z: float
    share: float


@dataclass(frozen=True, slots=True)
class Doubt:
    """One thing to look at again.

    ``stop``: no body is so, or hardly one of thousands: do not use the set before it is cleared up.
    ``check``: possible but unusual, ask again. ``problem`` carries the words; it is raised for a stop that
    needs no statistics, and shown for all others. ``suspects`` are the values that would explain it, the
    likeliest first; ``repairs`` what was probably meant.
    """

    level: DoubtLevel
    keys: tuple[str, ...]
    problem: InputError
    suspects: tuple[Suspect, ...] = ()
    repairs: tuple[Repair, ...] = ()

    @property
    def code(self) -> str:
        """The code of the message."""
        return self.problem.code
