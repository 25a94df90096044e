"""A shoulder strap: a strip on the bias or straight, as long as the way over the shoulder asks.

It is derived: it follows the places where it is caught, so that it can never go stale.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from notchbook.errors import InputError, StepRefused
from notchbook.geometry import Point
from notchbook.pattern import (
    Allowance,
    Notch,
    Pattern,
    locate,
    part_name,
    piece_name,
    require_one,
    split_side,
    spoken,
    with_side,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import Operation
from notchbook.recipe import (
    AmountText,
    Change,
    PlaceParameters,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.closures.figures import SIDE_NECK_ABOVE_NAPE, STRAP_TO_FIT
from notchbook.style.closures.strip import plain_strip
from notchbook.style.closures.within_trade import told_unusual


class StrapParameters(StepParameters):
    """Where the strap is caught in ``front`` and ``back``, how long and wide it is, and how it is cut.

    Its length follows from the body: down from the side of the neck to the bust point, and from there back up
    to where it is caught; behind as high above the place as the nape lies above the waist.
    """

    front: PlaceParameters
    """Where it is caught in front."""
    back: PlaceParameters
    """Where it is caught behind."""
    bust_point: PointName | None = None
    """The bust point on the front, for the length."""
    waist: PointName | None = None
    """The waist at the center back, for the length."""
    length: AmountText | None = None
    """Finished length between the two places, instead of from the body."""
    to_fit: AmountText = STRAP_TO_FIT.amount
    """What it is cut longer at the back, to be set on the body."""
    width: AmountText = "8 mm"
    """Finished width."""
    made: Literal["tube", "folded"] = "tube"
    """tube: sewn along and turned; folded: both raw edges folded in and stitched, four layers."""
    grain: Literal["bias", "straight"] = "bias"
    """On the bias, which lies round; or straight, which does not stretch."""


def run(pattern: Pattern, context: StepContext, parameters: StrapParameters) -> Change:
    """Draw the strap as a pair, and notch where it is caught."""
    width = context.positive(parameters.width, "width")
    to_fit = context.not_negative(parameters.to_fit, "to_fit")
    length = strap_length(pattern, context, parameters) + to_fit
    if length <= 4.0 * width:
        raise StepRefused("strap-too-short", length=length, width=width)
    name = piece_name(context.slug, "strap")
    layers = 2.0 if parameters.made == "tube" else 4.0
    piece = plain_strip(
        name,
        "Strap",
        (length, layers * width),
        grain=45.0 if parameters.grain == "bias" else 0.0,
        folded=False,
    )
    piece = replace(piece, cut="pair")
    long_edges = Allowance("tube" if parameters.made == "tube" else "bound")
    after = pattern.with_pieces(piece).with_allowances(
        {
            **{part_name(name, word): long_edges for word in ("lower", "upper")},
            **{part_name(name, word): Allowance("plain") for word in ("left_end", "right_end")},
        }
    )
    after = after.with_notches(*_notches(pattern, context, parameters))
    notes = told_unusual(name, "strap", {"to_fit": to_fit, "width": width})
    return Change(after.with_operations(*_operations(context.slug, parameters)), notes=tuple(notes))


def strap_length(pattern: Pattern, context: StepContext, parameters: StrapParameters) -> float:
    """The finished length between the two places, mm.

    InputError ``strap-length-unsaid`` where neither a length nor the two points are given.
    """
    if parameters.length is not None:
        return context.positive(parameters.length, "length")
    if parameters.bust_point is None or parameters.waist is None:
        raise InputError("strap-length-unsaid")
    caught, bust = _place_and_point(pattern, context, parameters.front, parameters.bust_point)
    front = context.measure("neck_to_bust_point") - caught.distance_to(bust)
    caught, waist = _place_and_point(pattern, context, parameters.back, parameters.waist)
    back = context.measure("back_waist_length") + SIDE_NECK_ABOVE_NAPE.value - (caught.y - waist.y)
    for part, place in ((front, parameters.front), (back, parameters.back)):
        if part <= 0.0:
            raise StepRefused("strap-above-shoulder", edge=spoken(place.edge))
    return front + back


def _place_and_point(
    pattern: Pattern, context: StepContext, one: PlaceParameters, point: str
) -> tuple[Point, Point]:
    """Where the place and the point of its piece lie. StepRefused ``strap-point-elsewhere``."""
    found = locate(pattern, context.place(pattern, one))
    name = require_one(pattern, point, "point")
    if pattern.carriers[name] != found.piece:
        raise StepRefused("strap-point-elsewhere", point=spoken(point), piece=spoken(found.piece))
    return found.position, pattern.pieces[found.piece].points[name]


def _notches(pattern: Pattern, context: StepContext, parameters: StrapParameters) -> Iterator[Notch]:
    for word, one in (("front", parameters.front), ("back", parameters.back)):
        place = context.place(pattern, one)
        base, side = split_side(locate(pattern, place).piece)
        owner = with_side(piece_name(context.slug, last_word(base)), side)
        yield Notch(part_name(owner, f"{word}_strap_notch"), place, purpose="strap")


def _operations(slug: str, parameters: StrapParameters) -> Iterator[Operation]:
    name = piece_name(slug, "strap")
    sewn = part_name(slug, "strap")
    text = (
        "Fold the straps right sides together, sew along, turn, and hang them wet with a weight to stretch."
        if parameters.made == "tube"
        else "Fold both raw edges of the straps to the middle, fold again, and stitch the open edge."
    )
    yield Operation(sewn, "prepare", text, (name,))
    edges = (parameters.front.edge, parameters.back.edge)
    text = "Catch the straps at the front notches."
    caught = part_name(slug, "strap_caught")
    yield Operation(caught, "neck", text, edges, (sewn,))
    text = "Pin the back ends of the straps at their notches, look at them on the body, and sew them on."
    yield Operation(part_name(slug, "strap_fitted"), "finish", text, (name,), (caught,))


STEP = StepDefinition(
    operation="strap",
    version=1,
    kind="style",
    phase="derived",
    title="Straps",
    sentence="{width} wide, {grain}, {length} from {front} to {back}",
    parameters=StrapParameters,
    run=run,
)
