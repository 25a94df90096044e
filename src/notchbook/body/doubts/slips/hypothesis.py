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
    taken (None: no such question). ``only_sides`` are measures given left and right alone: key -> (key with
    side, value) of each; what is judged of them is their mean.
    """

    unit: Unit
    waist: WaistTaken | None = None
    only_sides: Mapping[str, tuple[tuple[str, float], ...]] = field(default_factory=dict)

    def as_given(self, one: Standing) -> Standing:
        """The standing of the value itself; of left and right the one that lies further off."""
        sides = self.only_sides.get(one.key)
        if sides is None:
            return one
        text_key, value = max(sides, key=lambda side: abs(side[1] - one.expected))
        return Standing(text_key, value, one.expected, one.sd, (value - one.expected) / one.sd)
