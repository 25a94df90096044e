"""One thing to look at again in a size chart."""

from dataclasses import dataclass

from notchbook.body.doubts.doubt import DoubtLevel
from notchbook.errors import InputError


@dataclass(frozen=True, slots=True)
class ChartDoubt:
    """Where it is (``keys`` of rows, labels of ``sizes``; none means all) and the words (``problem``).

    ``stop``: no body is so, or the values cannot all be in one unit. ``check``: possible, ask again.
    ``expected`` is what a single cell would be if it followed its row, mm (degrees, kg); offered, never put
    in.
    """

    level: DoubtLevel
    keys: tuple[str, ...]
    sizes: tuple[str, ...]
    problem: InputError
    expected: float | None = None

    @property
    def code(self) -> str:
        """The code of the message."""
        return self.problem.code

    def covers(self, key: str, label: str) -> bool:
        """Whether this cell is among those that are asked about."""
        return (not self.keys or key in self.keys) and (not self.sizes or label in self.sizes)
