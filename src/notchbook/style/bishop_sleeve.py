"""A bishop sleeve: fuller toward its hem, most at the back, and longer there over the bent elbow.

The cap keeps its length and lies lower, which is told. The hem is gathered to a cuff.
"""

from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.geometry import Point
from notchbook.pattern import Pattern, require, sewn_length
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style._ranged_amount import told_outside
from notchbook.style.edges.swelling import Swelling, swollen
from notchbook.style.fullness.figures import GATHERS, Fullness
from notchbook.style.sleeves.figures import BISHOP_BACK, BISHOP_DROP
from notchbook.style.sleeves.found import FoundSleeve, sleeve_found
from notchbook.style.sleeves.gathers import gathered_hem
from notchbook.style.sleeves.hems import hem_to, to_band
from notchbook.style.sleeves.opened import OpenedSleeve, opened_sleeve
from notchbook.style.sleeves.parameters import MOST_RATIO, MOST_SLASHES
from notchbook.style.sleeves.slashes import cap_places, to_hem
from notchbook.style.sleeves.told import gathers_told, height_told

_LOWEST = 0.25
"""Share of the hem from its back end at which it hangs lowest: in line with the elbow. Common practice."""


_JOINT = 10.0
"""mm beside a joint of the hem within which it hangs lowest at the joint, so that no sliver is cut."""

_FLAT = 1.0
"""mm at each end over which the hem stays as it was, so that it meets the seams squarely."""


class BishopParameters(StepParameters):
    """The ``sleeve``, how full its hem is, how much of that at the back, and how much longer it is there."""

    sleeve: Word = "sleeve"
    """The sleeve that is spread."""
    fullness: Fullness = "light"
    """How full the hem is over the sleeve as it was: light one and a half times, standard twice."""
    ratio: Annotated[float, Field(gt=1.0, le=MOST_RATIO)] | None = None
    """Hem of the cloth over the hem as it was; empty: as ``fullness`` says."""
    back_share: Annotated[float, Field(ge=BISHOP_BACK.least, le=BISHOP_BACK.most)] = BISHOP_BACK.value
    """How much of the fullness lies in the back half: 0.6, a little more than half."""
    drop: AmountText = BISHOP_DROP.amount
    """How much lower the hem hangs at the back, in line with the elbow."""
    hem_length: AmountText | None = None
    """How long the hem is when gathered to its cuff; empty: the wrist with its ease, else as it was."""
    slashes: Annotated[int, Field(ge=2, le=MOST_SLASHES)] = 4
    """At how many slashes each half is spread."""


def run(pattern: Pattern, context: StepContext, parameters: BishopParameters) -> Change:
    """Spread the sleeve at its hem, let it down at the back, gather it."""
    sleeve = sleeve_found(pattern, parameters.sleeve)
    ratio = parameters.ratio or GATHERS[parameters.fullness].value
    added = sewn_length(pattern, sleeve.name("hem")) * (ratio - 1.0)
    drop = context.not_negative(parameters.drop, "drop")
    opened = _let_down(_opened(pattern, parameters, sleeve, added), drop)
    taken = gathered_hem(
        pattern, context.slug, opened, hem_to(pattern, context, sleeve, parameters.hem_length)
    )
    notes = (
        *told_outside(STEP.operation, sleeve.piece.name, "drop", drop, BISHOP_DROP),
        *height_told(STEP.operation, opened),
        *gathers_told(STEP.operation, opened, taken, "hem"),
    )
    after = to_band(taken.pattern, sleeve.name("hem"))
    return Change(
        after,
        splits=taken.splits,
        asked={**opened.wider, **taken.asked},
        waves={sleeve.name("hem"): 2},
        notes=notes,
    )


def _opened(
    pattern: Pattern, parameters: BishopParameters, sleeve: FoundSleeve, added: float
) -> OpenedSleeve:
    places = cap_places(sleeve, parameters.slashes)
    shares = {True: 1.0 - parameters.back_share, False: parameters.back_share}
    opened = [(0.0, added * shares[place.is_front] / parameters.slashes) for place in places]
    drawn = frozenset(require(pattern, sleeve.name("hem")))
    return opened_sleeve(pattern, sleeve, to_hem(pattern, sleeve, places, opened), drawn=drawn)


def _let_down(opened: OpenedSleeve, drop: float) -> OpenedSleeve:
    """The hem lower at the back, to nothing at both seams."""
    hem = opened.piece.edge(opened.before.name("hem"))
    lowest = min(hem.path.distances, key=lambda place: abs(place - hem.length * _LOWEST))
    if abs(lowest - hem.length * _LOWEST) > _JOINT:
        lowest = hem.length * _LOWEST
    swelling = Swelling(hem.length, drop, lowest, (_FLAT, hem.length - _FLAT))
    path = swollen(hem.path, 0.0, swelling, Point(0.0, -1.0))
    piece = opened.piece.with_edges(replace(hem, path=path))
    return replace(opened, pattern=opened.pattern.with_pieces(piece))


STEP = StepDefinition(
    operation="bishop_sleeve",
    version=1,
    kind="style",
    title="Bishop sleeve",
    sentence="{sleeve} {fullness}, {ratio} times, {drop} lower behind",
    parameters=BishopParameters,
    run=run,
)
