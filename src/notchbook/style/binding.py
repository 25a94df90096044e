"""A binding: a bias strip round a neck, an armhole or any other edge, in place of an allowance or a facing.

It is derived: it is cut to its edge as sewn after the last shaping step, so that it always fits.
"""

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeUse,
    Finding,
    Measured,
    Operation,
    Pattern,
    Severity,
    part_name,
    require,
    worded,
)
from notchbook.pattern.names import instance_of, last_word
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.recipe.parameters import Word
from notchbook.style._band_openings import ends_of
from notchbook.style._band_whole import OpeningWord, whole_opening
from notchbook.style.closures.within_trade import told_outside
from notchbook.style.collars.bound_run import BoundRun, bound_run
from notchbook.style.collars.figures import BINDING_DRAWS_IN, BINDING_LAYERS
from notchbook.style.collars.labels import called
from notchbook.style.collars.sewing import edges_sewn
from notchbook.style.collars.strip import Strip, square_side, with_strip

_CHECK = "binding"

_STAND_TOP, _FACING_TOP = "lap_top", "facing_top"
"""How the upper ends of a button stand and of its facing are called."""

Fold = Literal["double", "single"]


class BoundEdge(StepParameters):
    """One edge (or group) that is bound, and the end at which the binding comes to it."""

    edge: EdgeName
    """An edge that is bound."""
    starts_at: Annotated[PointName, called("comes to it at")]
    """The end at which the binding comes to it."""


class BindingParameters(StepParameters):
    """What is bound, by its word or edge after edge, and how wide the binding is when it is finished."""

    opening: Annotated[OpeningWord | None, called("round the whole")] = None
    """A whole opening by one word, or its edges one by one below."""
    edges: tuple[BoundEdge, ...] = ()
    """The edges that are bound, in order, on one side of the wearer."""
    width: AmountText = "8 mm"
    """How wide it is when finished."""
    fold: Annotated[Fold, called("fold of the strip")] = "double"
    """Double: cut four times as wide. Single: cut twice as wide."""
    draws_in: Annotated[Annotated[float, Field(ge=0.0, le=0.15)], called("shorter by a share")] = (
        BINDING_DRAWS_IN.value
    )
    """By which share of its edge the strip is cut shorter, so that a hollow edge lies close: 0.03 is 3 %."""
    material: Word = "self"
    """What it is cut in."""
    title: Annotated[str, Field(max_length=60), called("called")] = ""
    """What the strip is called; empty takes it from its first edge."""


def run(pattern: Pattern, context: StepContext, parameters: BindingParameters) -> Change:
    """Cut the strip to its edge, mark the quarters and tell how much bias strip it takes."""
    width = context.positive(parameters.width, "width", "both")
    bound = bound_run(pattern, _uses(pattern, parameters))
    length = bound.length * (1.0 - parameters.draws_in)
    layers = BINDING_LAYERS[parameters.fold]
    if length <= width * layers:
        raise StepRefused("binding-short", length=length, width=width * layers)
    members = {member for use in bound.uses for member in require(pattern, use.edge)}
    strip = Strip(context.slug, bound, length, width, layers, parameters.material, parameters.title.strip())
    after = with_strip(edges_sewn(pattern, members), strip).with_allowances(_facing_tops(pattern, bound))
    folded = Operation(
        part_name(context.slug, "folded"),
        "neck" if _is_neck(bound) else "armholes",
        f"Fold the {strip.title.lower()} over the raw edge and stitch it down in the groove of its first "
        "seam.",
        at=(strip.name,),
        after=(part_name(context.slug, "bound"),),
    )
    drawn_in = parameters.draws_in * bound.length
    notes = (
        _square_note(strip),
        *told_outside(strip.name, "draws_in", drawn_in, BINDING_DRAWS_IN, of=bound.length, check=_CHECK),
    )
    return Change(after.with_operations(folded), notes=notes, grains=(strip.name,))


def _uses(pattern: Pattern, parameters: BindingParameters) -> tuple[EdgeUse, ...]:
    """The edges; InputError ``binding-edges-unsaid`` where they are given in neither way or in both."""
    if (parameters.opening is None) == (not parameters.edges):
        raise InputError("binding-edges-unsaid")
    if parameters.opening is not None:
        return _to_the_edge(pattern, whole_opening(pattern, parameters.opening))
    return tuple(EdgeUse(one.edge, one.starts_at) for one in parameters.edges)


def _to_the_edge(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[EdgeUse, ...]:
    """The opening and the tops of the button stands that it ends at, out to the edge of the front."""
    first, last = ends_of(pattern, uses[0])[0], ends_of(pattern, uses[-1])[1]
    before = tuple(EdgeUse(edge.name, _other_end(edge, first)) for edge in _tops(pattern, first))
    return (*before, *uses, *(EdgeUse(edge.name, last) for edge in _tops(pattern, last)))


def _tops(pattern: Pattern, point: str) -> Iterator[Edge]:
    """The top of a button stand that begins or ends in a corner."""
    for piece in pattern.pieces.values():
        for edge in piece.outline:
            if last_word(edge.name) == _STAND_TOP and point in (edge.start, edge.end):
                yield edge


def _other_end(edge: Edge, point: str) -> str:
    return edge.end if edge.start == point else edge.start


def _facing_tops(pattern: Pattern, bound: BoundRun) -> dict[str, Allowance]:
    """The tops of the facings behind a bound button stand: the strip takes them in too."""
    stands = {instance_of(use.edge) for use in bound.uses if last_word(use.edge) == _STAND_TOP}
    tops = (name for name in pattern.edges if last_word(name) == _FACING_TOP)
    return {name: Allowance("bound") for name in tops if instance_of(name) in stands}


def _is_neck(bound: BoundRun) -> bool:
    return "neck" in bound.uses[0].edge.split("/")[1:]


def _square_note(strip: Strip) -> Finding:
    """How long a strip is needed for the whole garment, and the square of cloth that gives it."""
    length = 2.0 * strip.length
    width = strip.width * strip.layers
    return worded(
        _CHECK,
        "binding-strip",
        Severity.NOTE,
        Measured(length, None),
        piece=strip.name,
        length=length,
        width=width,
        square=square_side(length, width),
    )


STEP = StepDefinition(
    operation="binding",
    version=2,
    upcasters={1: dict},
    kind="style",
    phase="derived",
    title="Binding",
    sentence="{width} finished, {fold} fold, at {edges}, round the whole {opening}",
    parameters=BindingParameters,
    run=run,
)
"""The step."""
