"""What a draft promises: a length on the sew line that must come out at body plus ease."""

from dataclasses import dataclass
from typing import Literal

ExpectationKind = Literal["girth", "length"]
"""``girth``: a line round the body or the limb; ``length``: any other, widths among them."""

Reach = Literal["straight", "down", "across"]
"""How far two points are apart: straight, only along +y of the piece's frame, or only along x."""


@dataclass(frozen=True, slots=True)
class Expectation:
    """A closure of a draft, to be measured from the finished outline by other code than the draft's.

    ``names`` are edges, groups or internal lines; their lengths as sewn, together with the distances
    from point to point in each of ``chains`` (named points of one piece, taken as ``reach`` says), added
    and taken ``times``, must be ``body + ease`` mm. ``kept`` says that styles are expected to keep it
    too; else it holds for the block alone. ``measure`` is the key of the measure that it comes from
    ("" where it comes from no measure, as a sleeve cap that goes into an armhole), ``usual_ease`` the
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
    kind: ExpectationKind = "girth"
    chains: tuple[tuple[str, ...], ...] = ()
    reach: Reach = "straight"

    @property
    def wanted(self) -> float:
        """The length that must come out, mm."""
        return self.body + self.ease

    @property
    def parts(self) -> tuple[str, ...]:
        """Every name that it is measured by: edges, groups and lines, then points."""
        return (*self.names, *(point for chain in self.chains for point in chain))
