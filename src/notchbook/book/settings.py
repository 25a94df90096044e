"""How a book is used: who acts, which clock, how long to wait for another writer."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime

Clock = Callable[[], datetime]
"""Tells the time of an event."""


def system_clock() -> datetime:
    """The time of this computer, in UTC."""
    return datetime.now(UTC)


@dataclass(frozen=True, slots=True)
class Settings:
    """Settings of one opened book.

    ``actor`` signs what is done without another name; ``busy_timeout_s`` is how long a writer waits for
    another one, in seconds; ``page_limit`` is the most pages (4096 bytes) that the file may have.
    """

    actor: str = "studio"
    clock: Clock = system_clock
    busy_timeout_s: float = 5.0
    page_limit: int | None = None


def time_text(moment: datetime) -> str:
    """A time as it is stored: UTC, ISO 8601, always of one width, so that its text sorts."""
    return moment.astimezone(UTC).isoformat(timespec="microseconds").replace("+00:00", "Z")


def time_of(text: str) -> datetime:
    """A stored time."""
    return datetime.fromisoformat(text)
