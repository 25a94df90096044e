"""Reads one side of a body for trousers: measures, eases, and what is put in for a missing measure."""

from dataclasses import dataclass

from notchbook.blocks.lower_measures import read_lower, read_rise
from notchbook.blocks.trouser_pieces.eases import Wearer, ease_row
from notchbook.blocks.trouser_pieces.parameters import TrousersParameters
from notchbook.body import MeasureSet, Side
from notchbook.body.doubts.child import CHILD_GIRTHS, is_child
from notchbook.recipe import StepContext, UsualEase


def wearer_of(parameters: TrousersParameters, measures: MeasureSet) -> Wearer:
    """Whose eases and darts are taken: as written, else whose body the set says it is, else by its size."""
    if parameters.wearer != "auto":
        return parameters.wearer
    if is_child(measures):
        return "children"
    if measures.population is not None:
        return measures.population
    hip = measures.find("hip_girth")
    return "children" if hip is not None and hip.value < CHILD_GIRTHS["hip_girth"] else "women"


@dataclass(frozen=True, slots=True)
class Ease:
    """An ease that is really taken, mm, with its row in the table."""

    value: float
    row: UsualEase

    @property
    def usual(self) -> tuple[float, float]:
        """From least to most, mm."""
        return self.row.least or 0.0, self.row.most or 0.0


@dataclass(frozen=True, slots=True)
class Substitute:
    """A value taken for a measure that is missing, with its ± where one is known, mm."""

    key: str
    value: float
    error: float | None = None


class BodyReader:
    """Reads the measures of one of the wearer's sides with their eases, mm.

    ``body`` holds what was read or put in, by key; ``substitutes`` what was put in for a missing measure.
    """

    def __init__(self, context: StepContext, parameters: TrousersParameters, side: Side) -> None:
        self._context = context
        self.parameters = parameters
        self.side = side
        self.wearer = wearer_of(parameters, context.measures)
        self.lower = read_lower(context, side)
        self.rise = read_rise(self.lower, context.measures.rise_method, context.measures.name)
        self.body: dict[str, float] = {}
        self.substitutes: list[Substitute] = []

    def measure(self, key: str) -> float:
        """The measure; refused where it is missing."""
        self.body[key] = self._context.measure(key, self.side)
        return self.body[key]

    def find(self, key: str) -> float | None:
        """The measure, None where it is missing."""
        found = self._context.find(key, self.side)
        if found is not None:
            self.body[key] = found
        return found

    def taken(self, key: str) -> float | None:
        """The measure where somebody took it; an estimate of it would shape a line that nobody knows."""
        found = self._context.find(key, self.side)
        measure = self._context.measures.find(key, self.side)
        return None if found is None or measure is None or measure.status == "estimated" else self.find(key)

    def either(self, key: str, substitute: float, error: float | None = None) -> float:
        """The measure, else what is put in for it."""
        found = self.find(key)
        if found is not None:
            return found
        self.substitutes.append(Substitute(key, substitute, error))
        self.body[key] = substitute
        return substitute

    def ease(self, of: str) -> Ease:
        """The ease that the parameters give, else that of the silhouette."""
        row = ease_row(self.wearer, self.parameters.silhouette, of)
        written: str | None = getattr(self.parameters, f"{of}_ease")
        return Ease(row.drafted if written is None else self._context.mm(written, self.side), row)

    def mm(self, amount: str) -> float:
        """An amount in the notation of the trade, mm."""
        return self._context.mm(amount, self.side)

    def positive(self, name: str) -> float | None:
        """The amount of a parameter that may be empty, above zero, mm."""
        written: str | None = getattr(self.parameters, name)
        return None if written is None else self._context.positive(written, name, self.side)

    def not_negative(self, name: str) -> float | None:
        """The amount of a parameter that may be empty, 0 or above, mm."""
        written: str | None = getattr(self.parameters, name)
        return None if written is None else self._context.not_negative(written, name, self.side)
