"""What is offered as a cure: one changed parameter, or one step to be added; and what else it does."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from notchbook.app.finding_words import message_in
from notchbook.pattern import Finding, spoken
from notchbook.recipe.parameters import read_amount
from notchbook.units import LengthStyle, length_in_words


@dataclass(frozen=True, slots=True)
class AddedStep:
    """A step ready to be added at the end of a recipe, by its operation."""

    operation: str
    parameters: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Disturbance:
    """What a cure does besides: findings that ``settle`` with it or ``appear``, edges that become longer (mm;
    with a minus shorter), as it was seen on a copy."""

    settle: tuple[Finding, ...] = ()
    appear: tuple[Finding, ...] = ()
    edges: tuple[tuple[str, float], ...] = ()

    def words(self, style: LengthStyle) -> tuple[str, ...]:
        """One line for each edge and finding, none twice."""
        lines = (
            *(_changed(edge, by, style) for edge, by in self.edges),
            *(f"Settles too: {message_in(one, style)}" for one in self.settle),
            *(f"Then to check: {message_in(one, style)}" for one in self.appear),
        )
        return tuple(dict.fromkeys(lines))


@dataclass(frozen=True, slots=True)
class OfferedCure:
    """A cure that is known to heal. ``step`` is the id of a step in the recipe, ``value`` what is to be
    written into its ``parameter``; ``raised_by`` is how much longer that is than now, or by how much an added
    step moves things, mm, None where it is no length. ``word`` takes it: the code of what it heals, with a
    number after the first.

    Where a step ``adds``, it is that step which heals, ``step`` is its operation and ``parameter`` empty;
    ``where`` is what the finding was about, and ``disturbs`` what else comes of it.
    """

    code: str
    word: str
    step: str
    parameter: str
    value: Any
    order: str
    raised_by: float | None
    adds: AddedStep | None = None
    where: str | None = None
    disturbs: Disturbance = Disturbance()

    def words(self, style: LengthStyle) -> str:
        """The order as it is said: ``Lower the armhole by 1.2 cm``, ``Give the upper arm 3 cm of ease``."""
        order = self.order
        if self.raised_by is not None:
            order = f"{order} by {length_in_words(self.raised_by, style)}"
        elif isinstance(self.value, str) and self.value.endswith(" mm") and self.value in order:
            mm = read_amount(self.value).evaluate(lambda _key: 0.0)
            order = order.replace(self.value, length_in_words(mm, style))
        return f"{order[:1].upper()}{order[1:]}"

    def data(self) -> dict[str, Any]:
        """JSON-ready; ``raised_by`` in mm. ``adds`` and ``disturbs`` stand only with a step to be added."""
        data = {
            "take": self.word,
            "step": self.step,
            "parameter": self.parameter,
            "value": self.value,
            "raised_by": self.raised_by,
            "words": self.words(LengthStyle("mm")),
        }
        if self.adds is not None:
            data["where"] = self.where
            data["adds"] = {"operation": self.adds.operation, "parameters": dict(self.adds.parameters)}
            data["disturbs"] = list(self.disturbs.words(LengthStyle("mm")))
        return data


def _changed(edge: str, by: float, style: LengthStyle) -> str:
    way = "longer" if by > 0.0 else "shorter"
    return f"{spoken(edge)} becomes {length_in_words(abs(by), style)} {way}".capitalize()
