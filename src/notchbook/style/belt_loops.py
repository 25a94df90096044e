"""Belt loops round a waist: the strip that they are cut from, and where each of them stands.

They are laid out when the wearer's two sides are together, from the opening to the center opposite.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Annotated, Any

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    part_name,
    piece_name,
    split_side,
    with_side,
)
from notchbook.pattern.names import Side
from notchbook.pattern.operation import Operation
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.style.closures.figures import LOOP_OVER_BELT, LOOP_TURNED_IN, LOOPS_APART
from notchbook.style.closures.half_waist import (
    BandedEdge,
    HalfWaist,
    half_waist,
    place_on_half,
)
from notchbook.style.closures.loop_places import loop_places
from notchbook.style.closures.strip import plain_strip
from notchbook.style.closures.within_trade import told_outside, told_unusual


class BeltLoopsParameters(StepParameters):
    """The waist of one side from the opening to the center opposite, the belt, and the loops."""

    edges: Annotated[tuple[BandedEdge, ...], Field(min_length=1)]
    """The waist of one side, from the opening to the center opposite."""
    belt: AmountText = "40 mm"
    """How wide the belt is that goes through."""
    ease: AmountText = LOOP_OVER_BELT.amount
    """What the loop is longer than the belt is wide."""
    width: AmountText = "10 mm"
    """Finished width of a loop; cloth is cut twice as wide and its raw edges meet."""
    first: AmountText = "7 cm"
    """How far from the opening the first loop stands."""
    each_side: Annotated[int, Field(ge=1, le=8)] | None = None
    """How many on each side, without that at the center opposite; empty: counted when the step is added."""
    follow_waist: bool = True
    """Whether a wider waist gets more of them than are written, so that no two stand too far apart."""


def run(pattern: Pattern, context: StepContext, parameters: BeltLoopsParameters) -> Change:
    """Draw the strip, and notch the waist at every loop."""
    first = context.positive(parameters.first, "first")
    sides: tuple[Side, Side] = ("right", "left")
    halves = [half_waist(pattern, parameters.edges, side) for side in sides]
    shortest = min(half.length for half in halves)
    if first >= shortest:
        raise StepRefused("loops-past-center", first=first, length=shortest)
    if parameters.each_side is None:
        raise InputError("loops-uncounted")
    longest = max(half.length for half in halves) - first
    each_side = parameters.each_side
    if parameters.follow_waist:
        each_side = max(each_side, _count(longest, LOOPS_APART.most))
    number = 2 * each_side + 1
    piece = _strip(context, parameters, number)
    after = pattern.with_pieces(piece).with_notches(
        *_notches(pattern, context.slug, halves, first, each_side)
    )
    edges = {
        edge.name: Allowance("bound" if edge.name.endswith(("lower", "upper")) else "plain")
        for edge in piece.outline
    }
    after = after.with_allowances(edges).with_operations(*_operations(context.slug, number, halves))
    notes = (
        *told_unusual(
            piece.name, "belt_loops", {field: context.mm(getattr(parameters, field)) for field in _MADE}
        ),
        *told_outside(piece.name, "from loop to loop", longest / each_side, LOOPS_APART),
    )
    return Change(after, notes=notes)


_MADE = ("belt", "ease", "width")
"""The amounts of which a loop is made."""


def settle(pattern: Pattern, context: StepContext, parameters: BeltLoopsParameters) -> BeltLoopsParameters:
    """So many that no two are too far apart on this body."""
    first = context.positive(parameters.first, "first")
    length = half_waist(pattern, parameters.edges, context.side).length
    return parameters.model_copy(update={"each_side": _count(length - first, LOOPS_APART.value)})


def _count(length: float, apart: float) -> int:
    """How many loops stand on such a length from the first one on, mm, no farther than ``apart``."""
    return max(1, math.ceil(length / apart - 1e-9))


def _strip(context: StepContext, parameters: BeltLoopsParameters, number: int) -> Piece:
    """The strip that all loops are cut from, with a line where each is cut off."""
    belt, width = context.positive(parameters.belt, "belt"), context.positive(parameters.width, "width")
    loop = belt + context.not_negative(parameters.ease, "ease") + 2.0 * LOOP_TURNED_IN.value
    name = piece_name(context.slug, "loops")
    piece = plain_strip(name, "Belt loops", (number * loop, 2.0 * width), folded=False)
    middle = Path.line(Point(0.0, width), Point(number * loop, width))
    met = InternalLine(part_name(name, "placement_line"), middle, "placement")  # the raw edges meet on it
    cuts = tuple(
        InternalLine(
            part_name(name, f"cut_line_{index}"),
            Path.line(Point(index * loop, 0.0), Point(index * loop, 2.0 * width)),
            "cut_line",
        )
        for index in range(1, number)
    )
    return replace(piece, lines=(met, *cuts))


def _notches(
    pattern: Pattern, slug: str, halves: Sequence[HalfWaist], first: float, each_side: int
) -> Iterator[Notch]:
    """One at each loop; once where both sides are one edge."""
    seen: set[tuple[str, str, float]] = set()
    for half in halves:
        for number, at in enumerate(loop_places(pattern, half, first, each_side), 1):
            place = place_on_half(pattern, half, at)
            key = (place.edge, place.from_point, round(place.amount, 6))
            if key in seen:
                continue
            seen.add(key)
            side = split_side(place.edge)[1]
            name = with_side(part_name(piece_name(slug, "waist"), f"loop_notch_{number}"), side)
            yield Notch(name, place, purpose="belt loop")


def _operations(slug: str, number: int, halves: Sequence[HalfWaist]) -> Iterator[Operation]:
    name = piece_name(slug, "loops")
    sewn, caught = part_name(slug, "loops"), part_name(slug, "loops_caught")
    text = f"Fold the raw edges of the strip to the middle, stitch both long edges, and cut {number} loops."
    yield Operation(sewn, "prepare", text, (name,))
    edges = tuple(dict.fromkeys(use.edge for half in halves for use in half.uses))
    text = "Baste the loops to the waist at their notches before the band is sewn on."
    yield Operation(caught, "sides", text, edges, (sewn,))  # darts, pockets and side seams come before
    text = "Turn the upper ends of the loops in and stitch them to the band."
    yield Operation(part_name(slug, "loops_stitched"), "finish", text, (name,), (caught,))


def _as_many_as_written(parameters: dict[str, Any]) -> dict[str, Any]:
    """Loops of the first version were as many on every body."""
    return {**parameters, "follow_waist": False}


STEP = StepDefinition(
    operation="belt_loops",
    version=2,
    kind="style",
    phase="whole",
    title="Belt loops",
    sentence="{each_side} loops on each side and one at the center, for a belt {belt} wide",
    parameters=BeltLoopsParameters,
    run=run,
    settle_on=settle,
    settles={"each_side": ("edges", "first")},
    upcasters={1: _as_many_as_written},
)
