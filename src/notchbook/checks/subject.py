"""What checks look at."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from notchbook.body import Measure, PopulationName
from notchbook.checks.limits import LIMITS, Limits
from notchbook.pattern import Expectation, Pattern

if TYPE_CHECKING:
    from notchbook.finish import Cloth, CutPiece, HouseTable


@dataclass(frozen=True)
class Subject:
    """A pattern to be checked, with what was promised of it.

    ``body`` holds measures in mm by key, or by key and side where the sides differ
    (``shoulder_length@left``), when the pattern is to be compared with a body; ``estimates`` are those
    measures on which the pattern rests and that nobody took, ``stale`` what those among them would be
    now that no longer follow from the others (None: nothing is known any more).
    ``population`` gives the words for measures. ``waves`` are the edges that were asked to be drawn with a
    wave, and how often each may change the side to which it bends; ``grains`` the pieces whose grain was
    asked to run off the center.
    ``expectations`` are the closures that its draft promised; those that hold for the block alone are
    left out once its shapes were changed (``is_shaped``; None: unless ``is_block``, which says that nothing
    but drafts was run). ``house`` is the table by which it is
    made cut-ready (None: the one that comes with the book), ``cloth`` what it is cut from.
    """

    pattern: Pattern
    body: Mapping[str, float] | None = None
    expectations: tuple[Expectation, ...] = ()
    house: "HouseTable | None" = None
    cloth: "Cloth | None" = None
    is_block: bool = True
    is_shaped: bool | None = None
    estimates: Mapping[str, Measure] = field(default_factory=dict)
    stale: Mapping[str, Measure | None] = field(default_factory=dict)
    population: PopulationName | None = None
    waves: Mapping[str, int] = field(default_factory=dict)
    grains: frozenset[str] = frozenset()
    limits: Limits = field(default=LIMITS)

    @property
    def promises(self) -> tuple[Expectation, ...]:
        """The closures that must hold here: all of them in a block, those that are kept in a style."""
        shaped = not self.is_block if self.is_shaped is None else self.is_shaped
        return tuple(promise for promise in self.expectations if not shaped or promise.kept)

    @cached_property
    def house_table(self) -> "HouseTable":
        """The house table, or the one that comes with the book."""
        from notchbook.finish import production_table

        return self.house or production_table()

    @cached_property
    def cut_pieces(self) -> "tuple[CutPiece, ...]":
        """The pattern made cut-ready; worked out when the first check asks for it."""
        from notchbook.finish import finish

        return finish(self.pattern, self.house_table, self.cloth)
