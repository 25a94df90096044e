"""A casing for an elastic at a waist: cut on and turned over, or a strip of its own.

Derived: it follows the finished waist. That the waist itself goes over the hips is looked at by the check of
the openings.
"""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import (
    EdgeUse,
    Elastic,
    Measured,
    Pattern,
    Severity,
    part_name,
    require,
    spoken,
    worded,
)
from notchbook.pattern.finding import Finding
from notchbook.pattern.resolve import expand
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.style._band_openings import Opening, opening_of
from notchbook.style._band_whole import whole_opening
from notchbook.style.closures.casing_made import CasingSize, cut_on, of_its_own
from notchbook.style.closures.figures import CASING_EASE, CASING_TURNED, ELASTIC_SHARE
from notchbook.style.closures.half_waist import BandedEdge
from notchbook.style.closures.within_trade import told_outside, told_unusual

CHECK = "elastic-casing"


class ElasticCasingParameters(StepParameters):
    """The waist, how its casing is made, and the elastic in it.

    The elastic is so much shorter than the body's waist; the garment's own waist stays, so that it passes the
    hips.
    """

    edges: tuple[BandedEdge, ...] = ()
    """The waist from center to center of one side; empty: the whole waist."""
    made: Literal["cut_on", "separate"] = "cut_on"
    """Cut on at the waist and turned over; or a strip of its own, folded."""
    elastic: AmountText = "25 mm"
    """How wide the elastic is."""
    ease: AmountText = CASING_EASE.amount
    """What the casing is wider than the elastic."""
    turned: AmountText = CASING_TURNED.amount
    """What is turned under at the raw edge of a casing cut on."""
    girth: AmountText = "waist"
    """The girth that the elastic goes round."""
    share: Annotated[float, Field(gt=0.4, le=1.1)] = ELASTIC_SHARE.value
    """Length of the closed elastic over that girth."""


def run(pattern: Pattern, context: StepContext, parameters: ElasticCasingParameters) -> Change:
    """Make the casing, and write the elastic down."""
    elastic = context.positive(parameters.elastic, "elastic", "both")
    ease = context.not_negative(parameters.ease, "ease", "both")
    turned = context.not_negative(parameters.turned, "turned", "both")
    girth = context.positive(parameters.girth, "girth", "both")
    uses = tuple(EdgeUse(one.edge, one.starts_at) for one in parameters.edges)
    opening = opening_of(pattern, uses or whole_opening(pattern, "waist"))
    _require_free(pattern, opening)
    size = CasingSize(elastic + ease, turned)
    after = (cut_on if parameters.made == "cut_on" else of_its_own)(pattern, context.slug, opening, size)
    ring = Elastic(
        part_name(context.slug, "elastic"),
        "Waist elastic",
        tuple(use.edge for use in opening.uses),
        parameters.share,
        elastic,
        "body",
        girth,
    )
    piece = pattern.carriers[require(pattern, opening.uses[0].edge)[0]]
    length = parameters.share * girth
    notes = (
        *_notes(pattern, opening, parameters, girth),
        *told_unusual(piece, "elastic_casing", {"elastic": elastic, "turned": turned}),
        *told_outside(piece, "ease", ease, CASING_EASE),
        *told_outside(piece, "length of the elastic", length, ELASTIC_SHARE, of=girth),
    )
    return Change(after.with_elastics(ring), notes=notes)


def _require_free(pattern: Pattern, opening: Opening) -> None:
    """StepRefused ``casing-sewn`` where the waist is sewn to something already."""
    names = {member for use in opening.uses for member in require(pattern, use.edge)}
    for seam in pattern.seams.values():
        used = {name for use in (*seam.first, *seam.second) for name in expand(pattern, use.edge)[0]}
        if used & names:
            raise StepRefused("casing-sewn", edge=spoken(opening.uses[0].edge), seam=spoken(seam.name))


def _notes(
    pattern: Pattern, opening: Opening, parameters: ElasticCasingParameters, girth: float
) -> list[Finding]:
    """Darts that open in the casing, and a waist that the elastic does not draw in."""
    found: list[Finding] = []
    where = opening.uses[0].edge
    piece = pattern.carriers[require(pattern, where)[0]]
    names = {member for use in opening.uses for member in (use.edge, *require(pattern, use.edge))}
    darts = [(one.name, dart) for one in pattern.pieces.values() for dart in one.darts if dart.mouth in names]
    if darts:
        on, first = darts[0]
        told = tuple(dart.name for _, dart in darts)
        found.append(
            worded(
                CHECK,
                "casing-darts",
                Severity.LOOK,
                piece=on,
                where=first.mouth,
                names=told,
                dart=spoken(first.name),
            )
        )
    ring = parameters.share * girth
    if ring > opening.girth:
        amounts = Measured(ring, opening.girth)
        slack = worded(
            CHECK,
            "casing-slack",
            Severity.LOOK,
            amounts,
            piece=piece,
            where=where,
            elastic=ring,
            waist=opening.girth,
        )
        found.append(slack)
    return found


STEP = StepDefinition(
    operation="elastic_casing",
    version=1,
    kind="style",
    phase="derived",
    title="Elastic casing",
    sentence="{made}, elastic {elastic} wide, {share} of {girth}",
    parameters=ElasticCasingParameters,
    run=run,
)
