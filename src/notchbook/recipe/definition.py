"""What a step is: an operation with a version, typed parameters and a pure function."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Generic, Literal, TypeVar

from notchbook.body import MeasureSet
from notchbook.pattern.expectation import Expectation
from notchbook.pattern.finding import Finding
from notchbook.pattern.pattern import Pattern
from notchbook.recipe.context import StepContext
from notchbook.recipe.measure_needs import MeasureNeeds
from notchbook.recipe.parameters import StepParameters
from notchbook.recipe.usual_ease import UsualEase

StepKind = Literal["block", "style", "cut"]
"""``block`` drafts from measures, ``style`` changes shapes, ``cut`` sets cut data only."""

Phase = Literal["shaping", "derived", "whole"]
"""``shaping`` steps run first; ``derived`` pieces follow the finished shapes and come after the last of
them; ``whole`` steps run when the wearer's two sides are laid together (a waistband)."""

PHASES: tuple[Phase, ...] = ("shaping", "derived", "whole")
"""In the order in which they run."""

ParametersT = TypeVar("ParametersT", bound=StepParameters)

Upcaster = Callable[[dict[str, Any]], dict[str, Any]]
"""Turns the stored parameters of one version of a step into those of the next."""

REDRAWN: Upcaster = dict
"""The parameters stay as they are, and the newer version draws them otherwise: whoever opens an older recipe
is told. An upcaster of its own keeps the lines."""


@dataclass(frozen=True, slots=True)
class Change:
    """What a step returns: the new pattern, and an account of every name that is gone.

    ``splits``: old name -> its parts in order along the old direction. ``merges``: old name -> what
    it became a part of. ``removals``: old name -> why. What was created and modified the engine
    finds by itself. ``asked`` tells by how much (mm) the step was asked to make an edge longer, or with a
    minus shorter: what a draft promised of it grows by as much. ``waves`` tells how often an edge was asked
    to change the side to which it bends, ``grains`` of which pieces the grain was asked to run off the
    center. ``expectations`` are the closures of a draft, ``notes`` what the step has to say.
    """

    pattern: Pattern
    splits: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    merges: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    removals: Mapping[str, str] = field(default_factory=dict)
    asked: Mapping[str, float] = field(default_factory=dict)
    waves: Mapping[str, int] = field(default_factory=dict)
    grains: tuple[str, ...] = ()
    expectations: tuple[Expectation, ...] = ()
    notes: tuple[Finding, ...] = ()


@dataclass(frozen=True)
class StepDefinition(Generic[ParametersT]):
    """One operation. ``run`` is pure: the same pattern, parameters and measures give the same bytes.

    ``version`` rises when the result moves by more than 0.01 mm; ``upcasters`` then lead the stored
    parameters from each older version to the next. ``settle`` turns ``auto`` into a written number
    when the step is added, on the base measures; ``settle_on`` does so on the pattern that the base measures
    give it, for the fields ``settles`` where they are left empty: under each field those that it hangs on,
    for it is settled anew when one of these is changed, and else stays as written. ``sentence`` tells the
    step as a written order, with parameter names in braces.

    ``needs`` is what the block needs of a body as it comes; ``needs_for`` says it for these parameters and
    this body, where it depends on them. ``drafted_with`` names the blocks that must stand before it (a
    sleeve needs a bodice); a parameter of such a block's name holds the slug of the one it is drafted for.
    ``stands_for`` names the blocks in whose place this one may be taken there (a sleeve goes into a dress as
    into a bodice).
    ``eases`` gives the block's ease table, ``refuses`` the codes with which it refuses a body.
    ``superseded_by`` names the step that serves in the place of an older one: recipes that have the older one
    open for ever, and it is no longer offered.
    """

    operation: str
    version: int
    kind: StepKind
    title: str
    sentence: str
    parameters: type[ParametersT]
    run: Callable[[Pattern, StepContext, ParametersT], Change]
    phase: Phase = "shaping"
    needs: MeasureNeeds = field(default_factory=MeasureNeeds)
    settle: Callable[[StepContext, ParametersT], ParametersT] | None = None
    settle_on: Callable[[Pattern, StepContext, ParametersT], ParametersT] | None = None
    settles: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    upcasters: Mapping[int, Upcaster] = field(default_factory=dict)
    needs_for: Callable[[ParametersT, MeasureSet], MeasureNeeds] | None = None
    drafted_with: tuple[str, ...] = ()
    stands_for: tuple[str, ...] = ()
    eases: Callable[[], tuple[UsualEase, ...]] | None = None
    refuses: tuple[str, ...] = ()
    superseded_by: str = ""

    @cached_property
    def form(self) -> Mapping[str, Any]:
        """The JSON schema of its parameters, made once; whoever reads it changes nothing in it."""
        return self.parameters.model_json_schema()

    def needs_of(self, parameters: ParametersT, measures: MeasureSet) -> MeasureNeeds:
        """What the step needs of this body with these parameters."""
        return self.needs if self.needs_for is None else self.needs_for(parameters, measures)
