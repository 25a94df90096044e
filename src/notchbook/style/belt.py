"""A belt: two layers of cloth and one stiffened between them, pointed at its end, with holes for a buckle."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Point
from notchbook.pattern import Allowance, CutInstruction, Mark, Pattern, Piece, part_name, piece_name
from notchbook.pattern.operation import Operation
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.style.closures.figures import BELT_BEYOND, BELT_HOLES_APART
from notchbook.style.closures.pointed_end import with_point
from notchbook.style.closures.strip import plain_strip
from notchbook.style.closures.within_trade import told_unusual


class BeltParameters(StepParameters):
    """The ``girth`` that the belt goes round, what it is longer, its width, its end and its holes."""

    girth: AmountText = "waist"
    """The girth round which it is buckled, such as the waist and its ease."""
    beyond: AmountText = BELT_BEYOND.amount
    """How much longer than that the belt is."""
    width: AmountText = "40 mm"
    """Finished width."""
    end: Literal["pointed", "square"] = "pointed"
    """The free end."""
    holes: Annotated[int, Field(ge=0, le=11)] = 5
    """How many holes, the middle one at the girth; 0 for a buckle without a prong."""
    apart: AmountText = BELT_HOLES_APART.amount
    """How far apart the holes are."""


def run(pattern: Pattern, context: StepContext, parameters: BeltParameters) -> Change:
    """Draw the belt from the buckle to its free end, and mark the holes."""
    girth = context.positive(parameters.girth, "girth")
    width = context.positive(parameters.width, "width")
    beyond = context.positive(parameters.beyond, "beyond")
    apart = context.positive(parameters.apart, "apart")
    reach = (parameters.holes - 1) / 2.0 * apart
    if parameters.holes and reach + width > beyond:
        raise StepRefused("belt-holes-beyond", holes=parameters.holes, beyond=beyond, least=reach + width)
    name = piece_name(context.slug, "belt")
    materials = (CutInstruction("self", 2), CutInstruction("fusible"))
    piece = plain_strip(name, "Belt", (girth + beyond, width), materials=materials, folded=False)
    if parameters.end == "pointed":
        piece = with_point(piece)
    piece = replace(piece, marks=tuple(_holes(piece, girth, width, parameters.holes, apart)))
    after = pattern.with_pieces(piece).with_materials({"fusible": "fusible"})
    edges = dict.fromkeys((edge.name for edge in piece.outline), Allowance("facing_edge"))
    after = after.with_allowances(edges).with_operations(*_operations(context.slug, parameters.holes))
    amounts = {"beyond": beyond, "width": width, "apart": apart}
    return Change(after, notes=tuple(told_unusual(name, "belt", amounts)))


def _holes(piece: Piece, girth: float, width: float, number: int, apart: float) -> Iterator[Mark]:
    for index in range(number):
        along = girth + (index - (number - 1) / 2.0) * apart
        yield Mark(part_name(piece.name, f"hole_{index + 1}"), Point(along, width / 2.0), "drill")


def _operations(slug: str, holes: int) -> Iterator[Operation]:
    name = piece_name(slug, "belt")
    sewn = part_name(slug, "belt")
    text = "Sew the two layers of the belt right sides together but for a gap, turn, press and topstitch."
    yield Operation(sewn, "prepare", text, (name,))
    punched = f"punch {holes} holes and set their eyelets" if holes else "set the clasp"
    buckle = part_name(slug, "buckle")
    yield Operation(buckle, "finish", f"Sew the buckle to the square end; {punched}.", (name,), (sewn,))


STEP = StepDefinition(
    operation="belt",
    version=1,
    kind="style",
    phase="whole",
    title="Belt",
    sentence="{width} wide, {girth} and {beyond}, {holes} holes, {end}",
    parameters=BeltParameters,
    run=run,
)
