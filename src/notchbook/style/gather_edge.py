"""Gather an edge: cloth is spread into the piece and drawn in again when sewn.

The stretch between two places becomes ``ratio`` times as long and is declared as a gather, so that the edge
is as long as before when sewn and every seam at it still agrees. Across, the piece opens as much (a gathered
skirt), or not at all (a puff), or by any share of it.
"""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import Finding, Measured, Pattern, Severity, require, sewn_length, spoken, worded
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.fullness.figures import GATHERED_CLOTH, GATHERS, Cloth, Fullness
from notchbook.style.fullness.notch_places import notches_carried
from notchbook.style.fullness.notes import opened_notes
from notchbook.style.fullness.on_parts import held_on_parts, parts_met
from notchbook.style.fullness.opening import even_shares
from notchbook.style.fullness.slash_lines import (
    MOST_SLASHES,
    Ends,
    LinesRun,
    Slashes,
    slashes_along_grain,
    slashes_by_share,
)
from notchbook.style.fullness.spread import SlashLine, Spread, spread_keeping_hinges
from notchbook.style.fullness.take_up import Stretch, TakeUp, taken_up
from notchbook.units import TOLERANCES

MOST_RATIO = 6.0
"""More cloth than this cannot be drawn in to one length. Own judgment."""


class GatherParameters(StepParameters):
    """The ``edge`` that is gathered between two places, and the edge ``across`` to which the piece is
    slashed. The part of the piece with the two named ends lies still.
    """

    edge: EdgeName
    """The edge that is gathered."""
    from_point: PointName
    """The end of that edge from which places are counted; its side of the piece stays."""
    across: EdgeName
    """The edge across, such as the hem."""
    across_point: PointName
    """The end of the edge across on the same side of the piece."""
    fullness: Fullness = "standard"
    """How full: light one and a half times, standard twice, full two and a half times."""
    ratio: Annotated[float, Field(gt=1.0, le=MOST_RATIO)] | None = None
    """Length of the cloth over what it is gathered to; empty: as ``fullness`` says."""
    cloth: Cloth = "medium"
    """What it is cut from: heavy cloth takes less, sheer cloth more."""
    from_distance: AmountText = "0 mm"
    """From where the edge is gathered, from its named end, as sewn."""
    to_distance: AmountText | None = None
    """Up to where it is gathered; empty: to the other end."""
    across_share: Annotated[float, Field(ge=0.0, le=1.0)] = 1.0
    """How much of it opens across: 1 as much, 0 nothing."""
    across_taken_up: TakeUp = "none"
    """Whether the edge across is drawn in too: gathered, as in a puff with a band, or eased."""
    number: Annotated[int, Field(ge=1, le=MOST_SLASHES)] = 8
    """At how many slashes the cloth is spread in."""
    run: LinesRun = "share"
    """Slashes evenly along both edges, or along the grain."""
    parts: tuple[EdgeName, ...] = ()
    """Where the edge has several parts: that on which each slash lies, in order from the named end. Empty: as
    on the base measures, written down when the step is added."""


def settle_on(pattern: Pattern, context: StepContext, parameters: GatherParameters) -> GatherParameters:
    """Written down on which part of the edge each slash lies."""
    distances = even_shares(parameters.number, *_bounds(pattern, context, parameters))
    met = parts_met(pattern, parameters.edge, parameters.from_point, distances)
    return parameters.model_copy(update={"parts": met})


def run(pattern: Pattern, context: StepContext, parameters: GatherParameters) -> Change:
    """Spread cloth in and declare it as a gather."""
    ends = Ends(parameters.edge, parameters.from_point, parameters.across, parameters.across_point)
    begin, finish = _bounds(pattern, context, parameters)
    ratio = parameters.ratio or GATHERS[parameters.fullness].value
    each = (ratio - 1.0) * (finish - begin) / parameters.number
    slashes = _slashes(pattern, parameters, ends, (begin, finish))
    lines = [SlashLine(start, end, each, each * parameters.across_share) for start, end in slashes.places]
    made = spread_keeping_hinges(slashes.piece, lines, slashes.forward)
    return _drawn_in(pattern, context, parameters, made, (begin, finish), ratio)


def _bounds(pattern: Pattern, context: StepContext, parameters: GatherParameters) -> tuple[float, float]:
    """From where to where the edge is gathered, mm as sewn; StepRefused ``slash-bounds``."""
    whole = sewn_length(pattern, parameters.edge)
    begin = context.mm(parameters.from_distance)
    finish = whole if parameters.to_distance is None else context.mm(parameters.to_distance)
    if not 0.0 <= begin < finish <= whole + TOLERANCES.sew_length:
        raise StepRefused(
            "slash-bounds", edge=spoken(parameters.edge), begin=begin, finish=finish, length=whole
        )
    return begin, min(finish, whole)


def _slashes(
    pattern: Pattern, parameters: GatherParameters, ends: Ends, bounds: tuple[float, float]
) -> Slashes:
    even = even_shares(parameters.number, *bounds)
    distances = held_on_parts(pattern, ends.edge, ends.from_point, even, parameters.parts, bounds)
    if parameters.run == "grain":
        return slashes_along_grain(pattern, ends, distances)
    scale = sewn_length(pattern, ends.across) / sewn_length(pattern, ends.edge)
    return slashes_by_share(pattern, ends, distances, [distance * scale for distance in distances])


def _drawn_in(
    pattern: Pattern,
    context: StepContext,
    parameters: GatherParameters,
    made: Spread,
    bounds: tuple[float, float],
    ratio: float,
) -> Change:
    """The gather declared, across too where asked, and what is to be told."""
    stretches = [Stretch(parameters.edge, parameters.from_point, *bounds, "gather")]
    drawn = set(require(pattern, parameters.edge))
    if parameters.across_taken_up != "none":
        length = sewn_length(pattern, parameters.across)
        stretches.append(
            Stretch(parameters.across, parameters.across_point, 0.0, length, parameters.across_taken_up)
        )
        drawn |= set(require(pattern, parameters.across))
    free = {name: met for name, met in made.edges.items() if name not in drawn}
    after = pattern.with_pieces(made.piece)
    after = after.with_notches(*notches_carried(pattern, after, free))
    splits: dict[str, tuple[str, ...]] = {}
    for stretch in stretches:
        taken = taken_up(pattern, after, context.slug, stretch)
        after = taken.pattern
        splits.update(taken.splits)
    said = (*opened_notes(pattern, STEP.operation, made, free), *_notes(parameters, made, bounds, ratio))
    return Change(after, splits=splits, notes=said)


def _notes(
    parameters: GatherParameters, made: Spread, bounds: tuple[float, float], ratio: float
) -> Iterator[Finding]:
    """How much is gathered to what, and a ratio that is unusual for the cloth."""
    sewn = bounds[1] - bounds[0]
    yield worded(
        STEP.operation,
        "gathers-drawn-in",
        Severity.NOTE,
        Measured(ratio * sewn, sewn),
        piece=made.piece.name,
        where=parameters.edge,
        edge=spoken(parameters.edge),
        cut=ratio * sewn,
        sewn=sewn,
        ratio=ratio,
    )
    usual = GATHERED_CLOTH[parameters.cloth]
    if not usual.least <= ratio <= usual.most:
        yield worded(
            STEP.operation,
            "gathers-unusual",
            Severity.LOOK,
            Measured(ratio, usual.most if ratio > usual.most else usual.least, ""),
            piece=made.piece.name,
            where=parameters.edge,
            edge=spoken(parameters.edge),
            ratio=ratio,
            cloth=parameters.cloth,
            least=usual.least,
            most=usual.most,
        )


STEP = StepDefinition(
    operation="gather_edge",
    version=1,
    kind="style",
    title="Gather an edge",
    sentence="{edge} {fullness}, {ratio} times, from {from_distance}, to {to_distance}, spread to {across}",
    parameters=GatherParameters,
    run=run,
    settle_on=settle_on,
    settles={"parts": ("edge", "from_point", "from_distance", "to_distance", "number")},
)
