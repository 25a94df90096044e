"""What a draft promises: a length on the sew line that must come out at body plus ease."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Expectation:
    """A closure of a draft, to be measured from the finished outline by other code than the draft's.

    ``names`` are edges, groups or internal lines whose lengths as sewn, added and taken ``times``,
    must be ``body + ease`` mm. ``kept`` says that styles are expected to keep it too; else it holds
    for the block alone. ``measure`` is the key of the measure that it comes from, ``usual_ease`` the
    range of ease that is usual for it, mm.
    """

    name: str
    measure: str
    names: tuple[str, ...]
    times: int
    body: float
    ease: float
    reason: str
    kept: bool = False
    usual_ease: tuple[float, float] | None = None

    @property
    def wanted(self) -> float:
        """The length that must come out, mm."""
        return self.body + self.ease
