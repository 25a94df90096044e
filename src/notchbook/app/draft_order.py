"""An order to draft a block, and what came of it: estimates filled in, cures taken."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from notchbook.app.bodies.filling_estimates import Filled, fill_for_draft
from notchbook.app.contradictions import WaistAnswer
from notchbook.app.curing import draft_taking
from notchbook.app.offered_cure import OfferedCure
from notchbook.body import MeasureSet
from notchbook.recipe import Replay


@dataclass(frozen=True)
class DraftOrder:
    """What is to be drafted. ``parameters`` as :func:`notchbook.app.drafting.draft_recipe` takes them; with
    ``estimate`` what is missing is filled in; ``take`` are the words of cures to be taken. ``waist`` is the
    answer, should it be asked to which waist lengths were taken; None where nobody has given one."""

    block: str
    measures: MeasureSet
    parameters: Mapping[str, Any] = field(default_factory=dict)
    estimate: bool = False
    take: tuple[str, ...] = ()
    waist: WaistAnswer | None = None


@dataclass(frozen=True)
class Drafted:
    """What came of an order: the run, what was filled in (None where nothing was to be), cures taken."""

    run: Replay
    filled: Filled | None
    taken: tuple[OfferedCure, ...]


def carry_out(order: DraftOrder) -> Drafted:
    """Draft; refused as :func:`notchbook.app.curing.draft_taking` and, where measures are filled in, as
    :func:`notchbook.app.bodies.filling_estimates.fill`."""
    filled = fill_for_draft(order.measures, order.block, order.parameters) if order.estimate else None
    measures = order.measures if filled is None else filled.measures
    run, taken = draft_taking(order.block, measures, order.parameters, order.take)
    return Drafted(run, filled, taken)
