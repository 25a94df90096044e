"""Ties: strips sewn into an edge or seam at one end, to be knotted."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated, Literal

from pydantic import Field

from notchbook.pattern import (
    Allowance,
    CutInstruction,
    Notch,
    Pattern,
    locate,
    part_name,
    piece_name,
)
from notchbook.pattern.names import last_word, split_side, with_side
from notchbook.pattern.operation import Operation
from notchbook.recipe import (
    AmountText,
    Change,
    PlaceParameters,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.closures.cord_cautions import tie_cautions
from notchbook.style.closures.neck_zone import lies_at_neck
from notchbook.style.closures.strip import plain_strip
from notchbook.style.closures.within_trade import told_unusual


class TieParameters(StepParameters):
    """How long and wide the ties are, how many, and where they are caught."""

    length: AmountText = "60 cm"
    """Finished length of each."""
    width: AmountText = "20 mm"
    """Finished width; it is folded along its middle."""
    number: Annotated[int, Field(ge=1, le=40)] = 2
    """How many are cut for the garment."""
    grain: Literal["straight", "bias"] = "straight"
    """Cut along the grain; or on the bias, which knots softer."""
    places: tuple[PlaceParameters, ...] = ()
    """Where they are caught in an edge; left and right of a pair are one place."""


def run(pattern: Pattern, context: StepContext, parameters: TieParameters) -> Change:
    """Draw the tie, and notch where it is caught."""
    length = context.positive(parameters.length, "length", "both")
    width = context.positive(parameters.width, "width", "both")
    name = piece_name(context.slug, "tie")
    materials = (CutInstruction("self", parameters.number),)
    grain = 0.0 if parameters.grain == "straight" else 45.0
    piece = plain_strip(name, "Tie", (length, 2.0 * width), materials=materials, grain=grain)
    edges = dict.fromkeys((edge.name for edge in piece.outline), Allowance("facing_edge"))
    edges[part_name(name, "left_end")] = Allowance("plain")
    after = pattern.with_pieces(replace(piece, rule=context.slug)).with_allowances(edges)
    after = after.with_notches(*_notches(pattern, context, parameters))
    after = after.with_operations(*_operations(context.slug, parameters))
    caught = [locate(pattern, context.place(pattern, one)) for one in parameters.places]
    at_neck = any(lies_at_neck(pattern, one) for one in caught)
    notes = (
        *tie_cautions(name, context, length, at_neck=at_neck),
        *told_unusual(name, "tie", {"length": length, "width": width}),
    )
    return Change(after, notes=notes)


def _notches(pattern: Pattern, context: StepContext, parameters: TieParameters) -> Iterator[Notch]:
    for number, one in enumerate(parameters.places, 1):
        place = context.place(pattern, one)
        base, side = split_side(locate(pattern, place).piece)
        owner = with_side(piece_name(context.slug, last_word(base)), side)
        yield Notch(part_name(owner, f"tie_notch_{number}"), place, purpose="tie")


def _operations(slug: str, parameters: TieParameters) -> Iterator[Operation]:
    name = piece_name(slug, "tie")
    sewn = part_name(slug, "tie")
    text = "Fold the ties right sides together, sew along and across one end, turn and press."
    yield Operation(sewn, "prepare", text, (name,))
    if parameters.places:
        text = "Lay the open ends of the ties at their notches and baste them before the edge is sewn."
        edges = tuple(dict.fromkeys(one.edge for one in parameters.places))
        yield Operation(part_name(slug, "tie_caught"), "prepare", text, edges, (sewn,))
    else:
        text = "Sew the open ends of the ties on where they are knotted, looked at on the body."
        yield Operation(part_name(slug, "tie_sewn_on"), "finish", text, (name,), (sewn,))


STEP = StepDefinition(
    operation="tie",
    version=1,
    kind="style",
    phase="derived",
    title="Ties",
    sentence="{number} ties {length} long, {width} wide, {grain}",
    parameters=TieParameters,
    run=run,
)
