"""Reading one side of the body as a garment of this cloth has it."""

from dataclasses import replace

from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.blocks.stretch_fabric.reductions import Reduced, Use, reduced
from notchbook.body import Side
from notchbook.errors import DraftRefused
from notchbook.recipe import StepContext
from notchbook.units import TOLERANCES

FULL_EASE_FROM = 840.0
"""mm of bust from which a loose garment has its whole ease; a child's grows with it (own judgment)."""


class StretchReader:
    """Reads measures of one of the wearer's sides and what the pattern has instead, and remembers both."""

    def __init__(self, context: StepContext, side: Side, use: Use, cloth: Cloth) -> None:
        self.context = context
        self.side = side
        self.use = use
        self.cloth = cloth
        self.taken: dict[str, Reduced] = {}
        """By the key of the measure."""
        self.wider: dict[str, float] = {}
        """By how much an edge was widened for what must pass it, mm, by the key of that measure."""

    @property
    def size(self) -> float:
        """How much of a grown-up's ease in mm this body gets: all, or less where its bust is small."""
        return min(self.whole("bust_girth") / FULL_EASE_FROM, 1.0) if self.is_loose else 1.0

    @property
    def is_loose(self) -> bool:
        """Whether the garment has eases in mm."""
        return self.use == "t_shirt"

    def body(self, key: str) -> float:
        """The measure as it was taken, mm or degrees."""
        return self.context.measure(key, self.side)

    def find(self, key: str) -> float | None:
        """The measure, or None where it was not taken."""
        return self.context.find(key, self.side)

    def pattern(self, key: str, place: str, ease: str | None = None) -> float:
        """What the pattern has for a measure that is needed, mm; ``ease`` is the wearer's own choice.

        DraftRefused ``stretch-ease-too-small`` where nothing would be left of the measure.
        """
        return self._reduced(key, place, self.body(key), ease)

    def found(self, key: str, place: str, ease: str | None = None) -> float | None:
        """What the pattern has for a measure, None where it was not taken."""
        value = self.find(key)
        return None if value is None else self._reduced(key, place, value, ease)

    def widened(self, key: str, by: float) -> float:
        """Remember that an edge was widened by so many mm for what this measure tells."""
        self.wider[key] = by
        return by

    def whole(self, key: str) -> float:
        """A measure of the center, which belongs to both sides: the mean of what they have, mm."""
        return sum(self.context.measure(key, side) for side in ("right", "left")) / 2.0

    def shared(self, key: str, place: str, estimated: float | None = None) -> float:
        """What the pattern has for a measure of the center, mm; ``estimated`` stands for one not taken."""
        body = self.whole(key) if estimated is None else estimated
        return self._reduced(key, place, body, None)

    def _reduced(self, key: str, place: str, body: float, ease: str | None) -> float:
        taken = reduced(body, self.use, place, self.cloth, self.size)
        if ease is not None:
            own = body + self.context.mm(ease, self.side)
            taken = replace(taken, pattern=own, wished=own)
        if taken.pattern <= TOLERANCES.closure:
            raise DraftRefused("stretch-ease-too-small", measure=key, body=body, ease=taken.ease)
        self.taken[key] = taken
        return taken.pattern
