"""A facing: traced off along the edges that it faces, its darts closed, smaller by the turn of the cloth.

It is derived: it is made anew after the last shaping step, so that it can never go stale. Along a neck, an
armhole, a front edge or a hem; edges that follow each other on one piece are faced in one, those of several
pieces each for itself, or laid together across the seams between them. An edge that a princess seam cut is
one edge still: its panels are laid together, and faced in one.
"""

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from notchbook.pattern import CutInstruction, Pattern
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.recipe.parameters import AllowanceClass
from notchbook.style.traced.faced_run import FacedRun
from notchbook.style.traced.faced_runs import faced_runs
from notchbook.style.traced.figures import Weight, turn_of_cloth
from notchbook.style.traced.laid import at_home, in_order, laid_together
from notchbook.style.traced.mates import End, Mates, closed_ends, keeps_last, mated_ends, meeting
from notchbook.style.traced.panel_run import Asked
from notchbook.style.traced.panels_open import panels_open
from notchbook.style.traced.traced_names import end_word
from notchbook.style.traced.traced_piece import Making, Traced
from notchbook.style.traced.tracing import seams_between, traced, with_traced


class FacedEdgeParameters(StepParameters):
    """One edge (or group) that is faced, and the end at which its walk begins."""

    edge: EdgeName
    """The edge that is faced."""
    starts_at: PointName
    """Its end where the walk round the garment begins. The grain is kept at the center, else here."""
    depth: AmountText | None = None
    """How deep the facing reaches from this edge; empty for the depth of the step."""


class FacingParameters(StepParameters):
    """The ``edges`` that are faced, in walking order round the garment, and how the facing is made."""

    edges: Annotated[tuple[FacedEdgeParameters, ...], Field(min_length=1)]
    """The edges that are faced, in the order in which they are walked."""
    depth: AmountText = "5 cm"
    """How deep the facing reaches from the edges."""
    joined: bool = False
    """Whether the facings of several pieces are laid together across their seams into one piece."""
    cloth: Weight = "medium"
    """How heavy the cloth is, for its turn: light 1 mm, medium 1/16 in, heavy 1/8 in at each seam."""
    turn: AmountText | None = None
    """The turn of the cloth at each seam; empty takes it from the table."""
    free_edge: AllowanceClass = "neatened_edge"
    """How the free edge is finished: a class of the house's allowance table."""
    interfaced: bool = True
    """Whether the facing is cut in fusible too."""


@dataclass(frozen=True, slots=True)
class _Work:
    """What is traced: the runs and how they are sewn to each other, by whom, and how."""

    pattern: Pattern
    slug: str
    runs: tuple[FacedRun, ...]
    mates: Mates
    parameters: FacingParameters
    turn: float


def run(pattern: Pattern, context: StepContext, parameters: FacingParameters) -> Change:
    """Trace the facings and sew them to what they face."""
    depth = context.positive(parameters.depth, "depth")
    asked = [
        Asked(one.edge, one.starts_at, depth if one.depth is None else context.positive(one.depth, "depth"))
        for one in parameters.edges
    ]
    runs = faced_runs(pattern, asked)
    mates = mated_ends(pattern, runs)
    turn = turn_of_cloth(context, parameters.cloth, parameters.turn, depth)
    work = _Work(pattern, context.slug, runs, mates, parameters, turn)
    ends = _in_one(work) if parameters.joined and len(runs) > 1 else _each_apart(work)
    made = tuple(dict.fromkeys(piece for piece, _ in ends.values()))
    after = with_traced(pattern, context.slug, made, parameters.free_edge)
    after = after.with_seams(*seams_between(context.slug, ends, closed_ends(pattern, runs, mates)))
    notes = panels_open(context.step, runs, depth)
    return Change(
        after.with_materials({"fusible": "fusible"}) if parameters.interfaced else after, notes=notes
    )


def _each_apart(work: _Work) -> dict[End, tuple[Traced, bool]]:
    """A facing for each run; for each end of a run its facing, and at which of its ends."""
    ends: dict[End, tuple[Traced, bool]] = {}
    roles = [one.word for one in work.runs]
    for index, one in enumerate(work.runs):
        word = roles[index]
        if roles.count(word) > 1:
            word = f"{word}_{end_word(one.faced[0].name)}"
        first, last = End(index, False), End(index, True)
        piece = _traced(work, (one,), (first, last), (word, f"{one.title} {_said((one,))} facing"))
        ends |= {first: (piece, False), last: (piece, True)}
    return ends


def _in_one(work: _Work) -> dict[End, tuple[Traced, bool]]:
    """One facing for all runs, laid together; the seams between them are gone."""
    ordered = in_order(work.runs, closed_ends(work.pattern, work.runs, work.mates))
    first, last = End(work.runs.index(ordered[0]), False), End(work.runs.index(ordered[-1]), True)
    laid = laid_together(ordered, work.turn)
    piece = _traced(work, laid, (first, last), ("joined", f"{_said(ordered).capitalize()} facing"))
    return {first: (piece, False), last: (piece, True)}


def _traced(work: _Work, runs: tuple[FacedRun, ...], ends: tuple[End, End], words: tuple[str, str]) -> Traced:
    materials = (CutInstruction("self"), *([CutInstruction("fusible")] if work.parameters.interfaced else []))
    at_last = keeps_last(work.pattern, runs)
    meets = meeting(work.runs, work.mates, ends[0]), meeting(work.runs, work.mates, ends[1])
    making = Making(work.slug, *words, materials, meets, at_last)
    return traced(at_home(runs, keeps_last=at_last), making, work.turn)


def _said(runs: tuple[FacedRun, ...]) -> str:
    """The traced edges in words: ``neck and center front``."""
    words = [end_word(one.name).replace("_", " ") for run in runs for one in run.faced]
    return " and ".join(dict.fromkeys(words))


STEP = StepDefinition(
    operation="facing",
    version=1,
    kind="style",
    phase="derived",
    title="Facing",
    sentence="{depth} deep along {edges}",
    parameters=FacingParameters,
    run=run,
)
