"""One thing that may have gone wrong with a set, and what is known about the set besides its values."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from notchbook.body.doubts.slips.waist_taken import WaistTaken
from notchbook.body.doubts.standing import Standing
from notchbook.units import Unit


@dataclass(frozen=True, slots=True)
class Hypothesis:
    """One thing that may have gone wrong.

    ``keys`` are the values that it explains, ``changes`` what they were meant to be (empty where that cannot
    be said), ``weight`` the logarithm of how much better it explains the set, its prior included. ``fit`` is
    how many standard deviations the worst repaired value lies off (0 where nothing is repaired).
    """

    slip: str
    question: str
    keys: tuple[str, ...]
    changes: tuple[tuple[str, float], ...]
    weight: float
    fit: float = 0.0


@dataclass(frozen=True, slots=True)
class Question:
    """What is known about a set besides its values.

    ``unit`` is the one in which lengths were typed; ``waist`` to which other waist a length may have been
    taken (None: no such question), ``drop`` how far its waist lies below the natural one, mm. ``sides`` are
    the measures of which a side was given: key -> (key as it was given, value) of each. Each is judged on its
    own; for the others of the set their mean speaks, or the plain value where there is one.
    ``may_exchange``: two values may stand in each other's line; of a body far outside of its population that
    cannot be told.
    """

    unit: Unit
    waist: WaistTaken | None = None
    drop: float = 0.0
    sides: Mapping[str, tuple[tuple[str, float], ...]] = field(default_factory=dict)
    may_exchange: bool = True

    def each_given(self, one: Standing) -> tuple[Standing, ...]:
        """The standing of the value itself, or of each value that was given of left and right."""
        if one.key not in self.sides:
            return (one,)
        return tuple(
            Standing(text_key, value, one.expected, one.sd, (value - one.expected) / one.sd)
            for text_key, value in self.sides[one.key]
        )

    def as_given(self, one: Standing) -> Standing:
        """The standing of the value itself; of left and right the one that lies further off."""
        return max(self.each_given(one), key=lambda given: abs(given.z))
