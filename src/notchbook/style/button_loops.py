"""Loops at the edge of an opening, and the buttons that they go over: edge to edge, without a stand.

Derived: the loops follow the finished edge. The seam that joins the two sides is left open behind them.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.pattern import (
    Allowance,
    Mark,
    Notch,
    Pattern,
    Piece,
    Place,
    part_name,
    piece_name,
)
from notchbook.pattern.operation import Operation
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.closures.divided import all_divided, beside, owner_on
from notchbook.style.closures.figures import BUTTON_LOOPS_APART
from notchbook.style.closures.not_on_fold import require_not_on_fold
from notchbook.style.closures.notches_left import notches_left
from notchbook.style.closures.sewn_below import StillSewn, still_sewn
from notchbook.style.closures.straight_center import StraightCenter, seams_to_itself, straight_center
from notchbook.style.closures.strip import plain_strip
from notchbook.style.closures.within_trade import told_outside, told_unusual
from notchbook.units import TOLERANCES


class ButtonLoopsParameters(StepParameters):
    """The straight ``edge`` that opens, its upper end, how far the loops go down, and the button."""

    edge: EdgeName
    """The straight edge of the opening, such as a center back seam."""
    top: PointName
    """Its upper end."""
    length: AmountText = "12 cm"
    """How far down the opening goes."""
    button: AmountText = "10 mm"
    """Diameter of the button."""
    thickness: AmountText = "6 mm"
    """How thick the button is: a ball is as thick as wide."""
    cord: AmountText = "4 mm"
    """How thick the finished loop is."""
    number: Annotated[int, Field(ge=1, le=80)] | None = None
    """How many loops; empty: counted when the step is added, about 25 mm apart."""
    over: Literal["right", "left"] = "right"
    """The wearer's side that has the loops."""


def run(pattern: Pattern, context: StepContext, parameters: ButtonLoopsParameters) -> Change:
    """Mark loops and buttons evenly down the opening, leave its seam open, and draw the loops' strip."""
    require_not_on_fold(pattern, parameters.edge)
    center = straight_center(pattern, parameters.edge, parameters.top)
    length = context.positive(parameters.length, "length")
    button = context.positive(parameters.button, "button")
    thick, cord = (context.positive(getattr(parameters, word), word) for word in ("thickness", "cord"))
    if length > center.length + 1e-6:
        raise StepRefused("loops-past-edge", length=length, most=center.length)
    if parameters.number is None:
        raise InputError("buttons-uncounted")
    places = _places(length, button, parameters.number)
    owner = owner_on(context.slug, center.piece.name)
    opened = _opened(pattern, context.slug, center, (parameters.edge, parameters.top, length))
    piece = opened.pattern.pieces[center.piece.name]
    marked = replace(piece, marks=(*piece.marks, *_marks(center, owner, places)))
    strip = loop_strip(context.slug, parameters.number, (button, thick, cord))
    tube, plain = Allowance("facing_edge"), Allowance("plain")
    edges = {edge.name: tube if edge.name.endswith(("lower", "upper")) else plain for edge in strip.outline}
    after = opened.pattern.with_pieces(marked, strip).with_allowances(edges)
    after = after.with_notches(*_notches(owner, parameters, places))
    after = after.with_operations(*_operations(context.slug, parameters))
    apart = places[1] - places[0] if len(places) > 1 else BUTTON_LOOPS_APART.value
    amounts = {"button": button, "thickness": thick, "cord": cord}
    notes = (
        *told_unusual(strip.name, "button_loops", amounts),
        *told_outside(strip.name, "from loop to loop", apart, BUTTON_LOOPS_APART),
    )
    return Change(after, splits=opened.splits, removals=opened.removals, notes=notes)


@dataclass(frozen=True, slots=True)
class _Opened:
    """The pattern with the seam open behind the loops, the edges that were divided, and what is gone."""

    pattern: Pattern
    splits: Mapping[str, tuple[str, ...]]
    removals: Mapping[str, str]


def _opened(pattern: Pattern, slug: str, center: StraightCenter, at: tuple[str, str, float]) -> _Opened:
    """The seam between the two sides open from the top down, mm; an edge that is sewn to nothing is open.

    StepRefused ``closure-sewn-elsewhere`` where the edge is sewn to another.
    """
    edge, top, length = at
    own = seams_to_itself(pattern, [edge])
    if not own:
        return _Opened(pattern, {}, {})
    if length >= center.length - TOLERANCES.sew_length:
        lone = notches_left(pattern, {center.edge.name: (top, center.length)})
        after = pattern.with_notches(*lone).with_seams(without=own)
        return _Opened(after, {}, dict.fromkeys(own, "the sides are closed by the loops from end to end"))
    after, (cut,) = all_divided(pattern, [at], ("opening", "seam", "opening_end"), slug)
    stays = {cut.edge: StillSewn(cut.far, top, cut.point)}
    after = after.with_seams(*(still_sewn(pattern, pattern.seams[name], stays) for name in own))
    lower = Notch(beside(cut.point, "notch"), Place(cut.far, cut.point, 0.0), purpose="end of opening")
    after = after.with_notches(*notches_left(pattern, {cut.edge: (top, length)}), lower)
    beside_it = Allowance(pattern.seams[own[0]].allowance_class)  # so that the cut edge runs on
    after = after.with_allowances({cut.near: beside_it})
    return _Opened(after, {cut.edge: cut.parts}, {})


def settle(
    pattern: Pattern, context: StepContext, parameters: ButtonLoopsParameters
) -> ButtonLoopsParameters:
    """So many loops that they lie about as far apart as is usual."""
    length, button = (
        context.positive(parameters.length, "length"),
        context.positive(parameters.button, "button"),
    )
    number = max(1, round((length - button) / BUTTON_LOOPS_APART.value) + 1)
    return parameters.model_copy(update={"number": number})


def loop_length(button: float, thickness: float, cord: float) -> float:
    """The free length of a loop, mm: with the edge that it is sewn to it lets the button through on edge.

    Loop and edge together are as long as twice diameter and thickness; the edge gives the diameter. The cord
    lies inside its own middle by half its thickness all round (closed form).
    """
    return button + 2.0 * thickness + 2.0 * cord


def loop_strip(slug: str, number: int, sizes: tuple[float, float, float]) -> Piece:
    """The bias strip for all loops, their ends caught in the seam; ``sizes``: button, thickness, cord."""
    each = loop_length(*sizes) + 2.0 * _CAUGHT
    strip = plain_strip(
        piece_name(slug, "loops"), "Button loops", (number * each, 2.0 * sizes[2]), grain=45.0
    )
    return replace(strip, rule=slug)


_CAUGHT = 12.0
"""mm of each end of a loop that are caught in the seam: 1/2 in, common practice."""


def _places(length: float, button: float, number: int) -> list[float]:
    """The middles of the loops, mm down from the top. StepRefused ``loops-too-many``."""
    first, last = button / 2.0, length - button / 2.0
    if last < first or (number > 1 and (last - first) / (number - 1) < button):
        raise StepRefused("loops-too-many", number=number, length=length, button=button)
    if number == 1:
        return [first]
    return [first + (last - first) * index / (number - 1) for index in range(number)]


def _marks(center: StraightCenter, owner: str, places: list[float]) -> Iterator[Mark]:
    for number, at in enumerate(places, 1):
        yield Mark(part_name(owner, f"button_{number}"), center.at(at), "button")


def _notches(owner: str, parameters: ButtonLoopsParameters, places: list[float]) -> Iterator[Notch]:
    """One at the middle of each loop."""
    for number, at in enumerate(places, 1):
        place = Place(parameters.edge, parameters.top, at)
        yield Notch(part_name(owner, f"loop_notch_{number}"), place, purpose="button loop")


def _operations(slug: str, parameters: ButtonLoopsParameters) -> Iterator[Operation]:
    under = "left" if parameters.over == "right" else "right"
    loops, caught = part_name(slug, "loops"), part_name(slug, "loops_caught")
    text = f"Sew the bias strip to a tube, turn it, and cut {parameters.number} loops."
    yield Operation(loops, "prepare", text, (piece_name(slug, "loops"),))
    text = (
        f"Baste the loops at their notches to the wearer's {parameters.over} edge, and face the opening; its "
        "seam is sewn below it only."
    )
    yield Operation(caught, "closures", text, (parameters.edge,), (loops,))
    text = f"Sew the buttons to the wearer's {under} edge."
    yield Operation(part_name(slug, "buttons"), "finish", text, (parameters.edge,), (caught,))


STEP = StepDefinition(
    operation="button_loops",
    version=2,
    kind="style",
    phase="derived",
    title="Button loops",
    sentence="{number} loops for buttons of {button} along {edge}, {over} over",
    parameters=ButtonLoopsParameters,
    run=run,
    settle_on=settle,
    settles={"number": ("length", "button")},
    upcasters={1: dict},
)
