"""A recipe: an ordered list of steps, data only."""

from dataclasses import dataclass, field, replace
from typing import Any

from notchbook.errors import InputError
from notchbook.pattern.names import Side
from notchbook.recipe.definition import PHASES, Phase

RECIPE_FORMAT = 1
"""Version of the stored form of a recipe."""


@dataclass(frozen=True, slots=True)
class Target:
    """The wish that a written number came from ("make it measure"); replay never solves it."""

    parameter: str
    wish: str
    value: float


@dataclass(frozen=True, slots=True)
class StepRecord:
    """One step as written in a recipe.

    ``id`` is the operation and a counter, never reused; ``slug`` names what the step makes and never
    changes; ``title`` may. ``side`` limits the step to the wearer's left or right. ``rebound`` lists
    (old name, new name) where she bound a lost reference anew.
    """

    id: str
    operation: str
    version: int
    slug: str
    parameters: dict[str, Any]
    title: str = ""
    side: Side = "both"
    phase: Phase = "shaping"
    note: str = ""
    targets: tuple[Target, ...] = ()
    rebound: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Recipe:
    """Steps in order. ``counters`` remembers the last number given to each operation, ``retired`` the
    slugs of removed steps: neither is given again, so that no old name can come to mean a new thing."""

    name: str
    number: str = ""
    steps: tuple[StepRecord, ...] = ()
    counters: dict[str, int] = field(default_factory=dict)
    retired: tuple[str, ...] = ()

    def step(self, step_id: str) -> StepRecord:
        """The step with this id; InputError ``step-unknown`` when there is none."""
        for record in self.steps:
            if record.id == step_id:
                return record
        raise InputError("step-unknown", step=step_id, known=tuple(record.id for record in self.steps))

    def ordered(self) -> tuple[StepRecord, ...]:
        """The steps in the order in which they run: phase by phase, as written within a phase."""
        return tuple(sorted(self.steps, key=lambda record: PHASES.index(record.phase)))

    def with_steps(self, steps: tuple[StepRecord, ...]) -> "Recipe":
        """The recipe with another list of steps."""
        return replace(self, steps=steps)
