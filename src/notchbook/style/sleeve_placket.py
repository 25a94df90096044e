"""A placket in a sleeve: the slit from its hem, and the strips that finish it.

Bound, one strip is sewn along both edges of the slit; with a tower, the under edge gets a narrow strip and
the upper one a wider strip that ends in a point above the slit. The hem is divided where the slit meets it,
so that a cuff begins and ends there. It is derived: the slit lies in the finished shape of the sleeve.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, direction
from notchbook.pattern import (
    Allowance,
    Finding,
    InternalLine,
    Located,
    Pattern,
    Piece,
    Place,
    locate,
    part_name,
    piece_name,
    require,
    spoken,
)
from notchbook.pattern.names import child_name, last_word
from notchbook.pattern.operation import Operation
from notchbook.pattern.splitting import EdgeNames, cut_edge
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style._outlined import Corner, outlined, straight_sides
from notchbook.style._ranged_amount import told_outside
from notchbook.style.sleeves.figures import (
    PLACKET_LENGTH,
    PLACKET_PLACE,
    PLACKET_WIDTH,
    TOWER_POINT,
    TOWER_SEAM,
    TOWER_WIDTH,
)

PlacketKind = Literal["bound", "tower"]


class PlacketParameters(StepParameters):
    """The ``sleeve``, the ``kind`` of its placket, and how long, how wide and where it is."""

    sleeve: Word = "sleeve"
    """The sleeve that is slit."""
    kind: PlacketKind = "bound"
    """Bound with one strip, or a shirt placket with a strip below and a tower above."""
    length: AmountText = PLACKET_LENGTH.amount
    """How long the slit is."""
    place: Annotated[float, Field(ge=PLACKET_PLACE.least, le=PLACKET_PLACE.most)] = PLACKET_PLACE.value
    """Where along the hem from its back end, as a share: 0.25 is in line with the little finger."""
    strip_width: AmountText = PLACKET_WIDTH.amount
    """Finished width of the strip that binds the slit, or of the one below a tower."""
    tower_width: AmountText = TOWER_WIDTH.amount
    """Finished width of the tower."""


def run(pattern: Pattern, context: StepContext, parameters: PlacketParameters) -> Change:
    """Draw the slit, divide the hem there, cut the strips."""
    sleeve = part_name(piece_name(parameters.sleeve, "sleeve"), "hem")
    members = require(pattern, sleeve)
    edges = [pattern.edges[one] for one in members]
    # Parts with folds of pleats between them are one hem as sewn; parts that meet were divided before.
    if any(one.end == following.start for one, following in pairwise(edges)):
        raise StepRefused("placket-hem-parted", hem=spoken(sleeve), parts=[spoken(one) for one in members])
    length = context.positive(parameters.length, "length")
    place = locate(pattern, Place(sleeve, edges[0].start, parameters.place, "fraction"))
    piece, slit = _slit(pattern, context.slug, place, length)
    piece, parts = _parted(piece, context.slug, place)
    strips = _strips(context, parameters, length)
    after = pattern.with_pieces(piece, *strips)
    after = after.with_allowances(_allowances(parameters.kind, strips))
    after = after.with_operations(_order(context.slug, parameters.kind, slit))
    notes = tuple(_unusual(context, parameters, strips[-1].name, length))
    return Change(after, splits={place.edge.name: parts}, notes=notes)


def _unusual(
    context: StepContext, parameters: PlacketParameters, piece: str, length: float
) -> Iterator[Finding]:
    """Amounts outside of what is usual."""
    width = context.mm(parameters.strip_width)
    yield from told_outside(STEP.operation, piece, "length", length, PLACKET_LENGTH)
    yield from told_outside(STEP.operation, piece, "strip_width", width, PLACKET_WIDTH)
    if parameters.kind == "tower":
        tower = context.mm(parameters.tower_width)
        yield from told_outside(STEP.operation, piece, "tower_width", tower, TOWER_WIDTH)


def _slit(pattern: Pattern, slug: str, place: Located, length: float) -> tuple[Piece, str]:
    """The sleeve with the slit drawn up along the grain; StepRefused ``placket-too-long``."""
    piece = pattern.pieces[place.piece]
    top = place.position + direction(piece.grain.degrees) * length
    line = Path.line(place.position, top)
    crossed = [
        edge.name for edge in piece.outline if edge.name != place.edge.name and edge.path.intersections(line)
    ]
    if crossed or not piece.sew_line.contains(top):
        raise StepRefused("placket-too-long", sleeve=spoken(piece.name), length=length)
    name = part_name(piece_name(slug, "sleeve"), "slit")
    return replace(piece, lines=(*piece.lines, InternalLine(name, line, "cut_line"))), name


def _parted(piece: Piece, slug: str, place: Located) -> tuple[Piece, tuple[str, ...]]:
    """The sleeve with its hem divided at the slit."""
    name, foot = place.edge.name, part_name(piece_name(slug, "sleeve"), "slit_foot")
    names = EdgeNames(child_name(name, "near"), child_name(name, "far"), foot, foot)
    before, after = cut_edge(place.edge, place.distance, names)
    index = piece.edge_index(name)
    outline = (*piece.outline[:index], before, after, *piece.outline[index + 1 :])
    return replace(piece, outline=outline), (before.name, after.name)


def _strips(context: StepContext, parameters: PlacketParameters, length: float) -> tuple[Piece, ...]:
    """The strips that finish the slit, the tower last; StepRefused ``placket-tower-width``."""
    width = context.positive(parameters.strip_width, "strip_width")
    if parameters.kind == "bound":
        return (_strip(context.slug, "strip", "Placket strip", 2.0 * length, width),)
    tower = context.positive(parameters.tower_width, "tower_width")
    if not TOWER_SEAM.value < tower < 2.0 * TOWER_POINT.value:
        raise StepRefused(
            "placket-tower-width", width=tower, least=TOWER_SEAM.value, most=2.0 * TOWER_POINT.value
        )
    return (
        _strip(context.slug, "strip", "Placket underlap", length, width),
        _tower(context.slug, length, tower),
    )


def _allowances(kind: PlacketKind, strips: tuple[Piece, ...]) -> dict[str, Allowance]:
    """What ends at the hem is sewn into the cuff with it: both ends of a strip that binds the whole slit, the
    lower ends of a tower and of the strip below it."""
    at_hem = ("lower_end", "upper_end") if kind == "bound" else ("lower_end",)
    beside = Allowance("placket", None if kind == "bound" else TOWER_SEAM.value)
    return {
        edge.name: Allowance("cuff") if last_word(edge.name) in at_hem else beside
        for strip in strips
        for edge in strip.outline
    }


def _strip(slug: str, word: str, title: str, length: float, width: float) -> Piece:
    """A strip twice as wide as finished; its length along the grain. It is folded along its middle, where
    there is no room for a line."""
    name = piece_name(slug, word)
    corners = (
        Corner(Point(0.0, 0.0), "lower_left", "lower_end"),
        Corner(Point(2.0 * width, 0.0), "lower_right", "right_side"),
        Corner(Point(2.0 * width, length), "upper_right", "upper_end"),
        Corner(Point(0.0, length), "upper_left", "left_side"),
    )
    return Piece(name, title, outlined(name, straight_sides(corners)), cut="pair", rule=slug)


def _tower(slug: str, length: float, width: float) -> Piece:
    """The tower: its outer half ends in a point above the slit, its inner half just above it."""
    name = piece_name(slug, "tower")
    rise, point = TOWER_POINT.value, width / 2.0
    corners = (
        Corner(Point(0.0, 0.0), "lower_left", "lower_end"),
        Corner(Point(2.0 * width, 0.0), "lower_right", "right_side"),
        Corner(Point(2.0 * width, length + rise - point), "tower_outer", "outer_slope"),
        Corner(Point(1.5 * width, length + rise), "tower_point", "inner_slope"),
        Corner(Point(width, length + rise - point), "tower_inner", "inner_side"),
        Corner(Point(width, length), "tower_corner", "upper_end"),
        Corner(Point(0.0, length), "upper_left", "left_side"),
    )
    fold = Path.line(Point(width, 0.0), Point(width, length))
    box = Path.line(Point(width, length), Point(2.0 * width, length))
    lines = (
        InternalLine(part_name(name, "fold_line"), fold, "fold_line"),
        InternalLine(part_name(name, "stitch_line"), box, "stitch_line"),
    )
    return Piece(
        name, "Placket tower", outlined(name, straight_sides(corners)), lines=lines, cut="pair", rule=slug
    )


def _order(slug: str, kind: PlacketKind, slit: str) -> Operation:
    strip = piece_name(slug, "strip")
    if kind == "bound":
        text = (
            "Slit the sleeve, sew the strip along both edges of the slit with 3 mm at its top, turn it over "
            "the edges, stitch it down and tack its fold at the top."
        )
        return Operation(part_name(slug, "placket"), "closures", text, (slit, strip))
    text = (
        "Slit the sleeve, bind its back edge with the narrow strip and sew the tower to its front edge, both "
        "with 6 mm; turn the tower to the right side, and stitch round its point and across the top of the "
        "slit."
    )
    return Operation(part_name(slug, "placket"), "closures", text, (slit, strip, piece_name(slug, "tower")))


STEP = StepDefinition(
    operation="sleeve_placket",
    version=1,
    kind="style",
    phase="derived",
    title="Sleeve placket",
    sentence="{kind} in {sleeve}, {length} long, {strip_width} wide",
    parameters=PlacketParameters,
    run=run,
)
