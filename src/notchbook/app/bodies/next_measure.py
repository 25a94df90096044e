"""A measure to take next, and why, in words."""

from dataclasses import dataclass
from typing import Final, Literal

from notchbook.app.bodies.uncertainty import Moved
from notchbook.body import PopulationName
from notchbook.body.quantity_words import said_key
from notchbook.pattern import spoken
from notchbook.units import LengthStyle

Reason = Literal["needed", "moves", "tells", "helps", "knows"]
"""``needed``: without it the pattern is not drafted. ``moves``: the pattern rests on it or can use it.
``tells``: it says more about such a measure. ``helps``: the pattern can use it, and how much it would move
is not known. ``knows``: it says most about the whole body, where no garment is named."""

_WITHOUT: Final = dict.fromkeys(("front_waist_arc", "front_hip_arc"), "a usual share is taken")
"""What a draft does without a measure that would help it, where that can be said in a word."""


@dataclass(frozen=True, slots=True)
class NextMeasure:
    """A measure to take. ``moves`` is what would move most and by up to how much (mm), None where that is
    not known; ``before`` and ``after`` the ± of the pattern (mm; nine of ten) without and with it, after
    those that stand earlier in the list; None where no population can tell. ``is_first`` is false where
    others that tell more of the whole body stand before it; ``population`` gives the words."""

    key: str
    reason: Reason
    moves: Moved | None = None
    before: float | None = None
    after: float | None = None
    is_first: bool = True
    population: PopulationName | None = None

    @property
    def share(self) -> float:
        """The part of what was uncertain (as a variance) that it takes, 0 to 1; 0 where that is not known."""
        if not self.before or self.after is None:
            return 0.0
        return 1.0 - (self.after / self.before) ** 2

    def words(self, style: LengthStyle) -> str:
        """What is said to her: ``Take hip depth: it moves the side seam of the front by up to 1.4 cm.``"""
        said = f"Take {said_key(self.key, self.population)}"
        if self.reason == "needed" and self.moves is None:
            return f"{said}: the pattern cannot be drafted without it."
        if self.moves is not None:
            needed = "it is needed, and " if self.reason == "needed" else ""
            amount = style.text(self.moves.amount)
            return f"{said}: {needed}it moves {line_words(self.moves.name)} by up to {amount}."
        if self.reason == "knows":
            most = "tells most about the rest of this body" if self.is_first else "tells most of what is left"
            return f"{said}: it {most}."
        if self.before is not None and self.after is not None:
            return f"{said}: the pattern’s ± {style.text(self.before)} become ± {style.text(self.after)}."
        without = _WITHOUT.get(self.key)
        return f"{said}: the pattern can use it{f'; without it {without}' if without else ''}."


def line_words(name: str) -> str:
    """A line as a patternmaker sees it: ``the side seam of the front``; a whole piece by its name alone."""
    piece, comma, line = spoken(name).partition(", ")
    return f"the {line} of the {piece}" if comma else f"the {piece}"
