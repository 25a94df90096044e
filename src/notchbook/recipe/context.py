"""What a step may ask for while it runs: measures and amounts; everything read is remembered."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from notchbook.body import MeasureSet
from notchbook.errors import InputError
from notchbook.pattern.names import Side
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.place import Place
from notchbook.pattern.sewn import shared_by_sides
from notchbook.recipe.parameters import PlaceParameters, read_amount


def taken_alike(measures: MeasureSet, keys: Iterable[str]) -> bool:
    """Whether none of these measures was taken on one of the wearer's sides and estimated on the other."""
    return all(_is_taken(measures, key, "left") == _is_taken(measures, key, "right") for key in keys)


def _is_taken(measures: MeasureSet, key: str, side: Side) -> bool:
    measure = measures.find(key, side)
    return measure is not None and measure.status != "estimated"


@dataclass
class StepContext:
    """The hands of one step: its names, its side of the body, its measures.

    ``slug`` is the instance under which the step names what it makes. ``side`` is the wearer's side
    that is being drafted. ``reads`` holds each measure that was asked for (mm, or None when the set
    has none), so that the engine knows when the step must run again.
    """

    measures: MeasureSet
    slug: str
    step: str
    side: Side = "right"
    reads: dict[tuple[str, Side], float | None] = field(default_factory=dict)

    def measure(self, key: str, side: Side | None = None) -> float:
        """The measure in mm (degrees, kg) on this side of the body; InputError when it is missing."""
        of_side = side or self.side
        value = self.find(key, of_side)
        if value is None:
            return self.measures.value(key, of_side)  # refuses in words, with what is missing
        return value

    def find(self, key: str, side: Side | None = None) -> float | None:
        """The measure, or None when the set does not have it."""
        of_side = side or self.side
        measure = self.measures.find(key, of_side)
        value = None if measure is None else measure.value
        self.reads[key, of_side] = value
        return value

    def sides_are_alike(self) -> bool:
        """Whether the wearer's other side has the same in every measure that was asked for of this one, taken
        or estimated alike: a draft trusts a measure more than an estimate.

        It counts as asked for too, so that the step runs again when the other side becomes another. A block
        asks this after drafting its side: only where the sides differ must it look at both.
        """
        other: Side = "left" if self.side == "right" else "right"
        asked = [key for key, side in self.reads if side == self.side]
        there = [self.find(key, other) for key in asked]
        here = [self.reads[key, self.side] for key in asked]
        return there == here and taken_alike(self.measures, asked)

    def mm(self, amount: str, side: Side | None = None) -> float:
        """An amount in the trade's notation as mm on this body."""
        return read_amount(amount).evaluate(lambda key: self.measure(key, side))

    def place(self, pattern: Pattern, parameters: PlaceParameters) -> Place:
        """The place that the parameters describe, on this body.

        On an edge that belongs to both of the wearer's sides the amount is that of both, so that the
        two sides meet.
        """
        if parameters.distance is None:
            return parameters.place(None)
        side: Side | None = "both" if shared_by_sides(pattern, parameters.edge) else None
        return parameters.place(self.mm(parameters.distance, side))

    def positive(self, amount: str, field_name: str, side: Side | None = None) -> float:
        """An amount that must come out above zero on this body."""
        value = self.mm(amount, side)
        if value <= 0.0:
            raise InputError("amount-not-positive", field=field_name, amount=amount, value=value)
        return value

    def not_negative(self, amount: str, field_name: str, side: Side | None = None) -> float:
        """An amount that must not come out below zero on this body."""
        value = self.mm(amount, side)
        if value < 0.0:
            raise InputError("amount-negative", field=field_name, amount=amount, value=value)
        return value
