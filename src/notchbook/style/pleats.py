"""Pleats along an edge: knife, box or inverted, parallel or running to nothing at the edge across.

The edge in every fold is cut so that it lies even with the edge when the fold is closed: a curved or slanted
waist is then true with its pleats laid. A fold of depth ``d`` takes 2 d of the edge; what is sewn to the edge
meets it as before. The notches at the two lines of every fold follow from the fold.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Finding,
    Measured,
    Pattern,
    Piece,
    Severity,
    part_name,
    piece_name,
    require,
    sewn_length,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.fullness.fold_edge import pressed_across
from notchbook.style.fullness.fold_lines import ended_on_edge
from notchbook.style.fullness.folds import Folded, FoldsAt, folded
from notchbook.style.fullness.notch_places import notches_carried
from notchbook.style.fullness.on_parts import parts_met, require_parts
from notchbook.style.fullness.slash_lines import (
    Ends,
    LinesRun,
    Slashes,
    slashes_along_grain,
    slashes_by_share,
)

PleatKind = Literal["knife", "box", "inverted"]
MOST_PLEATS = 40
"""More pleats than this along one edge are pleated by machine and not drawn. Own judgment."""


class PleatsParameters(StepParameters):
    """How many pleats of which kind and depth lie where along the ``edge``, and the edge ``across`` that they
    run to. The part of the piece with the two named ends lies still."""

    edge: EdgeName
    """The edge that is laid in pleats."""
    from_point: PointName
    """The end of that edge from which places are counted; its side of the piece stays."""
    across: EdgeName
    """The edge that the pleats run to, such as the hem."""
    across_point: PointName
    """The end of the edge across on the same side of the piece."""
    kind: PleatKind = "knife"
    """Knife pleats lie one way; the folds of a box pleat turn apart, those of an inverted pleat meet."""
    number: Annotated[int, Field(ge=1, le=MOST_PLEATS)] = 1
    """How many pleats."""
    depth: AmountText = "3 cm"
    """How deep each fold is: it takes twice as much of the edge."""
    first_distance: AmountText = "6 cm"
    """Where the first pleat lies along the finished edge: the fold of a knife pleat, the middle of others."""
    spacing: AmountText = "6 cm"
    """From pleat to pleat along the finished edge."""
    laid: Literal["toward", "away"] = "away"
    """Whether knife pleats are laid toward the named end or away from it."""
    box: AmountText | None = None
    """Width of a box pleat between its two folds; empty: twice the depth, so that they meet beneath."""
    across_depth: AmountText | None = None
    """How deep a fold is at the edge across; empty: as deep; nothing: the pleat runs out there."""
    run: LinesRun = "grain"
    """Pleats along the grain, or from as far along one edge as along the other."""
    parts: tuple[EdgeName, ...] = ()
    """Where the edge has several parts: that on which each fold line lies, in order from the named end.
    Empty: as on the base measures, written down when the step is added."""
    stitched: AmountText = "0 mm"
    """How far from the edge the pleats are stitched down."""
    pressed: bool = False
    """Whether the pleats are pressed down to the edge across, which is then cut even in the folds too."""


@dataclass(frozen=True, slots=True)
class _Line:
    """A line with folds: where it lies along the finished edge, mm, the words of its folds' names in order
    from the named end, whether each is laid toward that end, and the role of the stretch that follows."""

    distance: float
    words: tuple[tuple[str, ...], ...]
    toward: tuple[bool, ...]
    after: str


def settle_on(pattern: Pattern, context: StepContext, parameters: PleatsParameters) -> PleatsParameters:
    """Written down on which part of the edge each fold line lies."""
    lines = _lines(context, parameters, context.positive(parameters.depth, "depth"))
    met = parts_met(pattern, parameters.edge, parameters.from_point, [line.distance for line in lines])
    return parameters.model_copy(update={"parts": met})


def run(pattern: Pattern, context: StepContext, parameters: PleatsParameters) -> Change:
    """Lay the edge in pleats."""
    ends = Ends(parameters.edge, parameters.from_point, parameters.across, parameters.across_point)
    depth = context.positive(parameters.depth, "depth")
    across = depth if parameters.across_depth is None else context.mm(parameters.across_depth)
    lines = tuple(_lines(context, parameters, depth))
    distances = [line.distance for line in lines]
    require_parts(pattern, ends.edge, ends.from_point, distances, parameters.parts)
    slashes = _slashes(pattern, parameters, ends, distances)
    owner = piece_name(context.slug, last_word(slashes.piece.name))
    folds = [
        FoldsAt(tuple(part_name(owner, *words) for words in line.words), line.toward, line.after)
        for line in lines
    ]
    made = folded(pattern, ends.edge, slashes, folds, (depth, across), context.mm(parameters.stitched))
    opened = {name: met for name, met in made.spread.edges.items() if name not in made.splits}
    piece = _pressed(pattern, parameters, slashes, made, folds)
    names = [name for fold in made.piece.intakes for name in (fold.first_line, fold.second_line)]
    piece = ended_on_edge(piece, names, require(pattern, ends.across))
    after = pattern.with_pieces(piece)
    after = after.with_notches(*notches_carried(pattern, after, opened))
    notes = _notes(pattern, parameters, made.piece, depth, context.mm(parameters.spacing))
    return Change(after, splits=made.splits, notes=tuple(notes))


def _pressed(
    pattern: Pattern,
    parameters: PleatsParameters,
    slashes: Slashes,
    made: Folded,
    folds: Sequence[FoldsAt],
) -> Piece:
    """The piece with the edge across in folds, where pleats that reach it are pressed."""
    piece = made.piece
    if not parameters.pressed or made.openings[0].at_end <= 0.0:
        return piece
    each = [(opening, at.toward) for opening, at in zip(made.openings, folds, strict=True)]
    paths = pressed_across(pattern, parameters.across, slashes, made.spread, each)
    outline = tuple(
        replace(edge, path=paths[edge.name].with_start(edge.path.start).with_end(edge.path.end))
        if edge.name in paths
        else edge
        for edge in piece.outline
    )
    return replace(piece, outline=outline)


def _lines(context: StepContext, parameters: PleatsParameters, depth: float) -> Iterator[_Line]:
    """Every line with folds, in order from the named end."""
    first, spacing = context.mm(parameters.first_distance), context.mm(parameters.spacing)
    half = depth if parameters.box is None else context.positive(parameters.box, "box") / 2.0
    if parameters.number > 1 and spacing <= 0.0:
        raise StepRefused("pleats-spacing", spacing=spacing)
    for number in range(1, parameters.number + 1):
        at = first + (number - 1) * spacing
        pleat, after = f"pleat_{number}", f"after_{number}"
        if parameters.kind == "knife":
            yield _Line(at, ((pleat,),), (parameters.laid == "toward",), after)
        elif parameters.kind == "box":
            yield _Line(at - half, ((pleat, "near"),), (True,), f"box_{number}")
            yield _Line(at + half, ((pleat, "far"),), (False,), after)
        else:
            yield _Line(at, ((pleat, "near"), (pleat, "far")), (False, True), after)


def _slashes(
    pattern: Pattern, parameters: PleatsParameters, ends: Ends, distances: Sequence[float]
) -> Slashes:
    whole = sewn_length(pattern, ends.edge)
    for before, after in pairwise(distances):
        if after <= before:
            raise StepRefused("slash-order", first=before, second=after)
    if distances[0] <= 0.0 or distances[-1] >= whole:
        raise StepRefused(
            "slash-bounds", edge=spoken(ends.edge), begin=distances[0], finish=distances[-1], length=whole
        )
    if parameters.run == "grain":
        return slashes_along_grain(pattern, ends, distances)
    scale = sewn_length(pattern, ends.across) / whole
    return slashes_by_share(pattern, ends, distances, [distance * scale for distance in distances])


def _notes(
    pattern: Pattern, parameters: PleatsParameters, piece: Piece, depth: float, spacing: float
) -> Iterator[Finding]:
    """What the edge is with its pleats open and laid; and pleats so deep that they lie on each other."""
    finished = sewn_length(pattern, parameters.edge)
    per_pleat = 2.0 if parameters.kind == "knife" else 4.0
    total = finished + parameters.number * per_pleat * depth
    yield worded(
        STEP.operation,
        "pleats-laid",
        Severity.NOTE,
        Measured(total, finished),
        piece=piece.name,
        where=parameters.edge,
        edge=f"{piece.title}, {spoken(parameters.edge).partition(', ')[2]}",
        total=total,
        finished=finished,
        number=parameters.number,
        each=per_pleat * depth,
    )
    room = spacing if parameters.kind == "knife" else spacing / 2.0
    if parameters.number > 1 and depth > room:
        yield worded(
            STEP.operation,
            "pleats-lie-double",
            Severity.LOOK,
            Measured(depth, room),
            piece=piece.name,
            where=parameters.edge,
            edge=spoken(parameters.edge),
            depth=depth,
            room=room,
        )


STEP = StepDefinition(
    operation="pleats",
    version=1,
    kind="style",
    title="Pleats",
    sentence="{number} {kind} along {edge}, {depth} deep, the first at {first_distance}, {spacing} apart",
    parameters=PleatsParameters,
    run=run,
    settle_on=settle_on,
    settles={"parts": ("edge", "from_point", "kind", "number", "depth", "first_distance", "spacing", "box")},
)
