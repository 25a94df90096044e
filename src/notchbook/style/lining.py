"""A lining: whole pieces derived in lining, with room where the body moves, less the facings that stand.

It is derived: it is made anew after the last shaping step, so that it can never go stale. The usual changes:
a pleat at the center back, the armhole a little higher and its sleeve with it, the hem shorter.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Allowance,
    EdgeUse,
    Finding,
    Measured,
    Operation,
    Pattern,
    Seam,
    Severity,
    part_name,
    require,
    require_one,
    spoken,
    walk_seam,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.pattern.zip_openings import zip_opening
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
from notchbook.style.sleeves.hems import hem_class
from notchbook.style.traced.allowance_of import allowance_of
from notchbook.style.traced.center_pleat import with_center_pleat
from notchbook.style.traced.copied import Copies, Copying, copied
from notchbook.style.traced.facing_ends import FacingEnd, with_facing_ends
from notchbook.style.traced.figures import ARMHOLE_RAISED, CENTER_BACK_PLEAT, HEM_SHORTER, SLEEVE_RAISED
from notchbook.style.traced.less_facing import less_facing
from notchbook.style.traced.raised_caps import raised_caps
from notchbook.style.traced.traced_names import end_word
from notchbook.style.traced.zip_lined import with_lined_zips

_SLEEVE_HEM = "hem_sleeve"
_FOLDED = "Fold the pleat of the lining along its line and baste it at both ends."


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
    sleeve_raised: AmountText = SLEEVE_RAISED.amount
    """How much higher the underarm of a lined sleeve lies, where its armhole does."""
    caught: tuple[EdgeName, ...] = ()
    """The edges whose lining is sewn in with them: a back neck under its collar, a waist under its band."""
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
    higher = _raised(copies, context, parameters)
    shortened = _shortened(higher.pattern, copies, context, parameters)
    after = shortened.pattern
    splits, ends = dict[str, tuple[str, ...]](), list[FacingEnd]()
    for free_edge in parameters.facings:
        less = less_facing(after, copies.names, free_edge, context.slug, context.step)
        after, splits, ends = less.pattern, {**splits, **less.splits}, [*ends, *less.ends]
    after = with_facing_ends(after, copies.seams, ends)
    centers = [_own(copies, require_one(pattern, center)) for center in parameters.centers]
    pleat = context.not_negative(parameters.pleat, "pleat")
    after = _pleated(after, centers, pleat, context.slug)
    after = after.with_seams(*(_caught(after, copies, edge, context.slug) for edge in parameters.caught))
    after = with_lined_zips(after, copies.names, copies.pieces, context.slug)
    zipped = _pleats_at_zips(pattern, parameters.centers) if pleat > 0.0 else ()
    # What was said of a hem that a facing then took away is no longer so.
    hemmed = [note for note in shortened.notes if all(name in after.index for name in note.names)]
    return Change(after, splits=splits, notes=(*higher.notes, *hemmed, *zipped))


def _pleats_at_zips(pattern: Pattern, centers: Sequence[str]) -> Iterator[Finding]:
    """Each pleat along a center that a zip opens: a lining that is sewn to its tape cannot be laid in it."""
    for center in centers:
        edge = pattern.edges[require_one(pattern, center)]
        if any(zip_opening(pattern, edge, corner) > 0.0 for corner in (edge.start, edge.end)):
            yield worded(
                STEP.operation,
                "lining-pleat-at-zip",
                Severity.LOOK,
                piece=pattern.carriers[edge.name],
                where=edge.name,
                names=(edge.name,),
                edge=spoken(edge.name),
            )


def _pleated(pattern: Pattern, centers: list[str], pleat: float, slug: str) -> Pattern:
    """The centers with their pleats, and that these are folded before anything is sewn."""
    if pleat <= 0.0 or not centers:
        return pattern
    for center in centers:
        pattern = with_center_pleat(pattern, center, pleat)
    lines = tuple(part_name(pattern.carriers[center], "pleat_line") for center in centers)
    return pattern.with_operations(Operation(part_name(slug, "pleat"), "prepare", _FOLDED, lines))


def _caught(pattern: Pattern, copies: Copies, edge: str, slug: str) -> Seam:
    """The edge of the lining sewn in with that of the piece, whose allowance it has."""
    own = _own(copies, edge)
    outer, inner = (pattern.edges[require(pattern, name)[0]] for name in (edge, own))
    allowance = allowance_of(pattern, outer.name)
    seam = Seam(
        part_name(slug, f"{last_word(pattern.carriers[inner.name])}_{end_word(inner.name)}"),
        (EdgeUse(own, inner.start),),
        (EdgeUse(edge, outer.start),),
        allowance_class="plain" if allowance is None else allowance.allowance_class,
        seam_class=TURNED_SEAM,
    )
    return replace(seam, ease=walk_seam(pattern, seam).misfit)


def _own(copies: Copies, name: str) -> str:
    """The name on the lining; StepRefused ``lining-elsewhere`` where the piece is not lined."""
    if name not in copies.names:
        raise StepRefused("lining-elsewhere", name=spoken(name))
    return copies.names[name]


def _raised(copies: Copies, context: StepContext, parameters: LiningParameters) -> Change:
    """The armholes drawn higher at the side, as the step for armholes does it, and the sleeves with them."""
    raised = context.not_negative(parameters.raised, "raised")
    asked_up = context.not_negative(parameters.sleeve_raised, "sleeve_raised")
    if raised == 0.0 or not parameters.armholes:
        return Change(copies.pattern)
    asked = {
        "armholes": [
            {"edge": _own(copies, one.edge), "underarm": _own(copies, one.underarm)}
            for one in parameters.armholes
        ],
        "lower": -raised,
        "gape": "0 mm",
    }
    step = change_armhole.STEP
    after = step.run(copies.pattern, context, step.parameters.model_validate(asked)).pattern
    armholes = [(_own(copies, one.edge), _own(copies, one.underarm)) for one in parameters.armholes]
    caps = raised_caps(copies.pattern, after, copies.seams, armholes, asked_up)
    if caps.by is None or caps.by >= asked_up:
        return Change(caps.pattern)
    less = worded(STEP.operation, "lining-sleeve-raised-less", Severity.NOTE, Measured(caps.by, asked_up))
    return Change(caps.pattern, notes=(less,))


def _shortened(
    pattern: Pattern, copies: Copies, context: StepContext, parameters: LiningParameters
) -> Change:
    """The hems moved up, as the step for lengths does it and with what it says, and turned as hems of
    lining."""
    if not parameters.hems:
        return Change(pattern)
    hems = [_own(copies, hem) for hem in parameters.hems]
    step = change_length.STEP
    shorter = context.not_negative(parameters.shorter, "shorter")
    asked = step.parameters.model_validate({"hems": hems, "amount": -shorter})
    done = step.run(pattern, context, asked)
    turned: dict[str, Allowance] = {}
    for hem in hems:
        members = require(done.pattern, hem)
        turned |= dict.fromkeys(members, Allowance(_hem_class(done.pattern, members)))
    return Change(done.pattern.with_allowances(turned), notes=done.notes)


def _hem_class(pattern: Pattern, members: Sequence[str]) -> str:
    """One for all parts of a hem. A sleeve's hem of which a part bends is turned narrower, in lining too, so
    that its raw edge lies flat."""
    owned = [allowance_of(pattern, member) for member in members]
    if any(own is None or not own.allowance_class.startswith(_SLEEVE_HEM) for own in owned):
        return "hem_lining"
    bent = hem_class(*(pattern.edges[member].path for member in members))
    return "hem_lining" if bent == _SLEEVE_HEM else bent


STEP = StepDefinition(
    operation="lining",
    version=4,
    kind="style",
    phase="derived",
    title="Lining",
    sentence="{pieces}",
    parameters=LiningParameters,
    run=run,
    upcasters={1: dict, 2: dict, 3: dict},
)
