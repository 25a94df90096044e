"""An order to draft a block or to run a style, and what came of it: estimates filled in, cures taken."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from notchbook.app.bodies.filling_estimates import Filled, fill_for_draft, fill_for_recipe
from notchbook.app.contradictions import WaistAnswer
from notchbook.app.curing import draft_taking
from notchbook.app.offered_cure import OfferedCure
from notchbook.app.settings import with_step_settings
from notchbook.app.style_file import run_recipe_taking
from notchbook.body import MeasureSet
from notchbook.recipe import Recipe, Replay


@dataclass(frozen=True)
class DraftOrder:
    """What is to be drafted: the block ``garment``, or where ``recipe`` is given that style, which
    ``garment`` then names as it was typed.

    ``parameters`` as :func:`notchbook.app.drafting.draft_recipe` takes them, or those of steps as
    :func:`notchbook.app.settings.with_step_settings` does; with ``estimate`` what is missing is filled in;
    ``take`` are the words of cures to be taken. ``waist`` is the answer, should it be asked to which waist
    lengths were taken; None where nobody has given one."""

    garment: str
    measures: MeasureSet
    parameters: Mapping[str, Any] = field(default_factory=dict)
    estimate: bool = False
    take: tuple[str, ...] = ()
    waist: WaistAnswer | None = None
    recipe: Recipe | None = None


@dataclass(frozen=True)
class Drafted:
    """What came of an order: the run, what was filled in (None where nothing was to be), cures taken."""

    run: Replay
    filled: Filled | None
    taken: tuple[OfferedCure, ...]


def carry_out(order: DraftOrder) -> Drafted:
    """Draft or run; refused as :func:`notchbook.app.curing.draft_taking`, and where measures are filled in
    as :func:`notchbook.app.bodies.filling_estimates.fill`."""
    if order.recipe is not None:
        return _run(order, order.recipe)
    filled = fill_for_draft(order.measures, order.garment, order.parameters) if order.estimate else None
    measures = order.measures if filled is None else filled.measures
    run, taken = draft_taking(order.garment, measures, order.parameters, order.take)
    return Drafted(run, filled, taken)


def _run(order: DraftOrder, recipe: Recipe) -> Drafted:
    asked = _with_settings(order, recipe)
    filled = fill_for_recipe(order.measures, asked) if order.estimate else None
    measures = order.measures if filled is None else filled.measures
    run, taken = run_recipe_taking(asked, measures, order.take)
    return Drafted(run, filled, taken)


def _with_settings(order: DraftOrder, recipe: Recipe) -> Recipe:
    """What a step looks up on the body when it is set needs the measures filled in."""
    if not order.parameters:
        return recipe
    base = fill_for_recipe(order.measures, recipe).measures if order.estimate else order.measures
    return with_step_settings(recipe, order.parameters, base)
