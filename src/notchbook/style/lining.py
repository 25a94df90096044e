"""A lining: whole pieces derived in lining, with room where the body moves, less the facings that stand.

It is derived: it is made anew after the last shaping step, so that it can never go stale. The usual changes:
a pleat at the center back, the armhole a little higher, the hem shorter.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import Allowance, Pattern, require, require_one, spoken
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PieceName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.recipe.parameters import MaterialWord
from notchbook.style import change_armhole, change_length
from notchbook.style.traced.center_pleat import with_center_pleat
from notchbook.style.traced.copied import Copies, Copying, copied
from notchbook.style.traced.figures import ARMHOLE_RAISED, CENTER_BACK_PLEAT, HEM_SHORTER
from notchbook.style.traced.less_facing import less_facing


class LinedArmhole(StepParameters):
    """An armhole, and its end at the underarm."""

    edge: EdgeName
    """The armhole of a lined piece."""
    underarm: PointName
    """Its end at the side seam."""


class LiningParameters(StepParameters):
    """The ``pieces`` that are lined, and what is changed in their lining. All edges are named as on the
    pieces themselves."""

    pieces: Annotated[tuple[PieceName, ...], Field(min_length=1)]
    """The pieces that are lined."""
    facings: tuple[EdgeName, ...] = ()
    """The free edges of the facings that the lining is sewn to."""
    centers: tuple[EdgeName, ...] = ()
    """The straight centers that get a pleat, as a rule the center back."""
    pleat: AmountText = CENTER_BACK_PLEAT.amount
    """How deep the pleat is in each half."""
    armholes: tuple[LinedArmhole, ...] = ()
    """The armholes that lie higher in the lining."""
    raised: AmountText = ARMHOLE_RAISED.amount
    """How much higher they lie at the side seam."""
    hems: tuple[EdgeName, ...] = ()
    """The hems that are shorter in the lining."""
    shorter: AmountText = HEM_SHORTER.amount
    """How much shorter they are."""
    material: MaterialWord = "lining"
    """The material that it is cut in."""


def run(pattern: Pattern, context: StepContext, parameters: LiningParameters) -> Change:
    """Copy the pieces in lining, then change the copies."""
    names = [require_one(pattern, piece, "piece") for piece in parameters.pieces]
    copies = copied(
        pattern, names, Copying(context.slug, context.step, "lining", parameters.material), sewn=True
    )
    shortened = _shortened(_raised(copies, context, parameters), copies, context, parameters)
    after = shortened.pattern
    for free_edge in parameters.facings:
        after = less_facing(after, copies.names, free_edge, context.slug, context.step)
    pleat = context.mm(parameters.pleat)
    for center in parameters.centers:
        after = with_center_pleat(after, _own(copies, require_one(pattern, center)), pleat)
    return Change(after, notes=shortened.notes)


def _own(copies: Copies, name: str) -> str:
    """The name on the lining; StepRefused ``lining-elsewhere`` where the piece is not lined."""
    if name not in copies.names:
        raise StepRefused("lining-elsewhere", name=spoken(name))
    return copies.names[name]


def _raised(copies: Copies, context: StepContext, parameters: LiningParameters) -> Pattern:
    """The armholes drawn higher at the side, as the step for armholes does it."""
    raised = context.mm(parameters.raised)
    if raised == 0.0 or not parameters.armholes:
        return copies.pattern
    asked = {
        "armholes": [
            {"edge": _own(copies, one.edge), "underarm": _own(copies, one.underarm)}
            for one in parameters.armholes
        ],
        "lower": -raised,
        "gape": "0 mm",
    }
    step = change_armhole.STEP
    return step.run(copies.pattern, context, step.parameters.model_validate(asked)).pattern


def _shortened(
    pattern: Pattern, copies: Copies, context: StepContext, parameters: LiningParameters
) -> Change:
    """The hems moved up, as the step for lengths does it and with what it says, and turned as hems of
    lining."""
    if not parameters.hems:
        return Change(pattern)
    hems = [_own(copies, hem) for hem in parameters.hems]
    step = change_length.STEP
    asked = step.parameters.model_validate({"hems": hems, "amount": -context.mm(parameters.shorter)})
    done = step.run(pattern, context, asked)
    members = [member for hem in hems for member in require(done.pattern, hem)]
    turned = done.pattern.with_allowances(dict.fromkeys(members, Allowance("hem_lining")))
    return Change(turned, notes=done.notes)


STEP = StepDefinition(
    operation="lining",
    version=3,
    kind="style",
    phase="derived",
    title="Lining",
    sentence="{pieces}",
    parameters=LiningParameters,
    run=run,
    upcasters={1: dict, 2: dict},
)
