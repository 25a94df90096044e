"""Slash a piece from one edge to another and spread it: flare, a puff, parallel fullness.

The piece is cut into strips, the strips are moved apart, and a fair line is drawn over each of the two edges.
Where the edge across stays shut the strips turn about it and the edge keeps its length, but for what truing
takes off; where both open alike the strips move square to the slashes. What is sewn to an edge that opened no
longer agrees: that is told, unless the fullness is declared as gathers or ease.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Annotated

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.pattern import Pattern, require, sewn_length, spoken
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.fullness.notch_places import notches_carried
from notchbook.style.fullness.notes import opened_notes
from notchbook.style.fullness.on_parts import held_on_parts, parts_met, require_parts
from notchbook.style.fullness.opening import even_shares, opened_by_angle
from notchbook.style.fullness.slash_lines import (
    MOST_SLASHES,
    Ends,
    LinesRun,
    Slashes,
    slashes_along_grain,
    slashes_by_share,
)
from notchbook.style.fullness.spread import SlashLine, spread_keeping_hinges
from notchbook.style.fullness.take_up import Stretch, TakeUp, taken_up
from notchbook.units import TOLERANCES


class SlashAt(StepParameters):
    """One slash at a place of its own, and what it opens where that differs from the others."""

    distance: AmountText
    """How far from the named end it starts, as sewn."""
    across_distance: AmountText | None = None
    """How far from the named end of the edge across it arrives; empty: at the same share, or on the grain."""
    opens: AmountText | None = None
    """What it opens at its start; empty: as much as the others."""
    across_opens: AmountText | None = None
    """What it opens across; empty: as much as the others."""


class SpreadParameters(StepParameters):
    """The ``edge`` that opens, the edge ``across``, how many slashes between them, and what each opens.

    The part of the piece with the two named ends lies still. Slashes lie evenly between ``from_distance``
    and ``to_distance``, or at ``places`` of their own.
    """

    edge: EdgeName
    """The edge that opens: a hem, the head of a puff sleeve."""
    from_point: PointName
    """The end of that edge that stays, and from which places are counted."""
    across: EdgeName
    """The edge that the slashes run to."""
    across_point: PointName
    """The end of the edge across on the same side of the piece."""
    number: Annotated[int, Field(ge=1, le=MOST_SLASHES)] = 5
    """How many slashes, evenly."""
    opens: AmountText = "2 cm"
    """What each slash opens at the edge."""
    across_opens: AmountText = "0 mm"
    """What each slash opens across; nothing: the strips turn about that edge; the same: parallel fullness."""
    angle: Annotated[float, Field(gt=0.0, le=180.0)] | None = None
    """Instead of an amount: degrees by which all slashes together turn the piece, hinged across."""
    from_distance: AmountText = "0 mm"
    """From where on slashes lie, along the edge from its named end."""
    to_distance: AmountText | None = None
    """Up to where they lie; empty: to the other end."""
    run: LinesRun = "share"
    """Evenly along both edges, or along the grain."""
    places: tuple[SlashAt, ...] = ()
    """Slashes at places of their own, in order from the named end, instead of evenly."""
    parts: tuple[EdgeName, ...] = ()
    """Where the edge has several parts: that on which each slash lies, in order from the named end. Empty: as
    on the base measures, written down when the step is added."""
    taken_up: TakeUp = "none"
    """Whether what the edge opened is taken up again when sewn: not at all, gathered, or eased."""
    across_taken_up: TakeUp = "none"
    """The same for the edge across."""


def settle_on(pattern: Pattern, context: StepContext, parameters: SpreadParameters) -> SpreadParameters:
    """Written down on which part of the edge each slash lies."""
    bounds = _bounds(context, parameters, sewn_length(pattern, parameters.edge))
    even = even_shares(parameters.number, *bounds)
    distances = [context.mm(place.distance) for place in parameters.places] or even
    met = parts_met(pattern, parameters.edge, parameters.from_point, distances)
    return parameters.model_copy(update={"parts": met})


def run(pattern: Pattern, context: StepContext, parameters: SpreadParameters) -> Change:
    """Slash, spread and true; then take up what is to be taken up."""
    ends = Ends(parameters.edge, parameters.from_point, parameters.across, parameters.across_point)
    slashes = _slashes(pattern, context, parameters, ends)
    lines = [line for line in _lines(context, parameters, slashes) if line.opened or line.opened_across]
    if not lines:
        return Change(pattern)
    made = spread_keeping_hinges(slashes.piece, lines, slashes.forward)
    after = pattern.with_pieces(made.piece)
    takes = ((ends.edge, parameters.taken_up), (ends.across, parameters.across_taken_up))
    drawn = {name for edge, take in takes if take != "none" for name in require(pattern, edge)}
    free = {name: met for name, met in made.edges.items() if name not in drawn}
    after = after.with_notches(*notches_carried(pattern, after, free))
    splits: dict[str, tuple[str, ...]] = {}
    for stretch in _stretches(pattern, context, parameters, ends):
        taken = taken_up(pattern, after, context.slug, stretch)
        after = taken.pattern
        splits.update(taken.splits)
    asked = {name: met.opened for name, met in free.items() if met.opened > TOLERANCES.seam_walk}
    notes = opened_notes(pattern, STEP.operation, made, free)
    return Change(after, splits=splits, notes=notes, asked=asked)


def _slashes(pattern: Pattern, context: StepContext, parameters: SpreadParameters, ends: Ends) -> Slashes:
    whole = sewn_length(pattern, ends.edge)
    begin, finish = _bounds(context, parameters, whole)
    if parameters.places:
        distances = [context.mm(place.distance) for place in parameters.places]
        _require_order(distances)
        require_parts(pattern, ends.edge, ends.from_point, distances, parameters.parts)
    else:
        even = even_shares(parameters.number, begin, finish)
        bounds = (begin, finish)
        distances = held_on_parts(pattern, ends.edge, ends.from_point, even, parameters.parts, bounds)
    if parameters.run == "grain":
        return slashes_along_grain(pattern, ends, distances)
    scale = sewn_length(pattern, ends.across) / whole
    own = [place.across_distance for place in parameters.places] or [None] * len(distances)
    across = [
        distance * scale if place is None else context.mm(place)
        for distance, place in zip(distances, own, strict=True)
    ]
    return slashes_by_share(pattern, ends, distances, across)


def _bounds(context: StepContext, parameters: SpreadParameters, whole: float) -> tuple[float, float]:
    """From where to where slashes lie along the edge, mm as sewn."""
    begin = context.mm(parameters.from_distance)
    finish = whole if parameters.to_distance is None else context.mm(parameters.to_distance)
    if not 0.0 <= begin < finish <= whole + TOLERANCES.sew_length:
        raise StepRefused(
            "slash-bounds", edge=spoken(parameters.edge), begin=begin, finish=finish, length=whole
        )
    return begin, min(finish, whole)


def _require_order(distances: Sequence[float]) -> None:
    for before, after in pairwise(distances):
        if after <= before:
            raise StepRefused("slash-order", first=before, second=after)


def _lines(context: StepContext, parameters: SpreadParameters, slashes: Slashes) -> tuple[SlashLine, ...]:
    """The slashes with what each opens at both ends."""
    count = len(slashes.places)
    opens = [_opening(context, parameters.opens, "opens")] * count
    across = [_opening(context, parameters.across_opens, "across_opens")] * count
    if parameters.angle is not None:
        lengths = [start.position.distance_to(end.position) for start, end in slashes.places]
        opens, across = list(opened_by_angle(lengths, parameters.angle)), [0.0] * count
    for index, place in enumerate(parameters.places):
        if place.opens is not None:
            opens[index] = _opening(context, place.opens, "opens")
        if place.across_opens is not None:
            across[index] = _opening(context, place.across_opens, "across_opens")
    return tuple(
        SlashLine(start, end, opens[index], across[index])
        for index, (start, end) in enumerate(slashes.places)
    )


def _opening(context: StepContext, amount: str, field: str) -> float:
    """What a slash opens, mm: nothing or more; cloth is added here and never taken away."""
    value = context.mm(amount)
    if value < 0.0:
        raise InputError("amount-not-positive", field=field, amount=amount, value=value)
    return value


def _stretches(
    pattern: Pattern, context: StepContext, parameters: SpreadParameters, ends: Ends
) -> Iterator[Stretch]:
    """The stretches of both edges that are taken up again: between the same shares of the two."""
    whole, other = sewn_length(pattern, ends.edge), sewn_length(pattern, ends.across)
    begin, finish = (0.0, whole) if parameters.places else _bounds(context, parameters, whole)
    if parameters.taken_up != "none":
        yield Stretch(ends.edge, ends.from_point, begin, finish, parameters.taken_up)
    if parameters.across_taken_up != "none":
        scale = other / whole
        low, high = (begin * scale, finish * scale) if parameters.run == "share" else (0.0, other)
        yield Stretch(ends.across, ends.across_point, low, high, parameters.across_taken_up)


STEP = StepDefinition(
    operation="slash_and_spread",
    version=1,
    kind="style",
    title="Slash and spread",
    sentence=("{number} slashes from {edge} to {across}, {opens} each, {across_opens} across"),
    parameters=SpreadParameters,
    run=run,
    settle_on=settle_on,
    settles={"parts": ("edge", "from_point", "number", "from_distance", "to_distance", "places")},
)
