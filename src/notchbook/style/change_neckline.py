"""Draw a new neckline: deeper, wider or of another shape, on front and back together.

Front and back meet at the shoulder as one line: where both are curves they keep the angle at which the
sloper's neck met it, else each is square to it. A neck edge starts square to the center but for a V. What a
deeper front would gape by is closed into a dart before anything is traced from it.
"""

from dataclasses import dataclass, field, replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Point
from notchbook.pattern import (
    Edge,
    Finding,
    Group,
    Measured,
    Pattern,
    Piece,
    Severity,
    child_name,
    frozen_map,
    part_name,
    piece_name,
    sewn_length,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    IntakeName,
    PivotName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.darts.found import bust_point_of
from notchbook.style.edges.figures import DEEP_NECK_GAPE, NECK_GAPE, OVER_HEAD
from notchbook.style.edges.gape_choice import gape_closed, gape_goes, gape_left
from notchbook.style.edges.gapes import Gape, closed_gape
from notchbook.style.edges.kept_notches import kept_notches
from notchbook.style.edges.level_lines import followed_lines
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.edges.neck_edges import NeckEdges, corners_of, neck_edges, neck_slant, redrawn_neck
from notchbook.style.edges.neck_shapes import CURVED, NeckShape
from notchbook.style.edges.shared_amounts import side_of_amount
from notchbook.units import TOLERANCES

_CHECK = "change-neckline"


class NeckParameters(StepParameters):
    """A neck edge, its end at the center, the shape, and how much lower it lies at the center."""

    edge: EdgeName
    """The neck edge of the piece."""
    center: PointName
    """Its end at the center."""
    shape: NeckShape = "round"
    """The shape of the neckline on this piece."""
    depth: AmountText = "0 cm"
    """How much lower it lies at the center; with a minus higher."""


class NecklineParameters(StepParameters):
    """The ``necks`` of front and back, how much ``width`` is taken off the shoulder, and where the gape
    goes."""

    necks: Annotated[tuple[NeckParameters, ...], Field(min_length=1)]
    """The neck edges that are drawn anew, front and back."""
    width: AmountText = "0 cm"
    """How much shorter the shoulder seam becomes at the neck, on every piece alike."""
    gape_dart: IntakeName | None = None
    """The dart into which the gape of the front is closed; empty leaves it, and says how much there is. A
    neck with a dart of its own has its contour there, and nothing is closed."""
    gape_point: PivotName | None = None
    """The point to which the gape runs out; empty takes the bust point of the piece."""
    gape: AmountText | None = None
    """How much is closed on one half of the front; empty takes it from the table, by how deep the neck
    lies."""


@dataclass
class _Work:
    """What has been drawn so far."""

    pattern: Pattern
    splits: dict[str, tuple[str, ...]] = field(default_factory=dict)
    notes: list[Finding] = field(default_factory=list)
    corners: dict[str, tuple[Point, Point]] = field(default_factory=dict)


def run(pattern: Pattern, context: StepContext, parameters: NecklineParameters) -> Change:
    """Draw every neck edge; all or nothing."""
    width = context.mm(parameters.width)
    work = _Work(pattern)
    for neck in parameters.necks:
        _draw(work, context, parameters, neck, width)
    kept = kept_notches(pattern, work.pattern, lambda piece, point: _is_corner(work, piece, point))
    work.notes += _opening(pattern, kept.pattern, context, parameters)
    work.notes += seams_put_out(pattern, kept.pattern, _CHECK)
    # The old names of split necks stood for both parts while this step counted along them: the ledger adds
    # them for good.
    done = replace(kept.pattern, groups=pattern.groups)
    return Change(done, work.splits, removals=kept.removals, notes=tuple(work.notes))


def _draw(
    work: _Work, context: StepContext, parameters: NecklineParameters, neck: NeckParameters, width: float
) -> None:
    edges = neck_edges(work.pattern, neck.edge, neck.center)
    if last_word(edges.center.name) == last_word(edges.neck.edge.name):
        raise StepRefused("neckline-unfolded", piece=spoken(edges.piece.name))
    if edges.frame is not None and neck.shape == "square":
        raise StepRefused("neckline-square-dart", edge=spoken(neck.edge))
    depth = context.mm(neck.depth, side_of_amount(work.pattern, [edges.center.name]))
    if neck.shape == "round" and depth == 0.0 and width == 0.0:
        return
    name, piece = edges.neck.edge.name, edges.piece
    work.corners[piece.name] = corners_of(edges)
    curved = all(one.shape in CURVED for one in parameters.necks)
    slant = neck_slant(edges) if curved else 0.0
    drawn = redrawn_neck(edges, neck.shape, depth, width, slant)
    if edges.frame is None:
        drawn = _contoured(work, context, parameters, neck, edges, drawn)
    work.pattern = work.pattern.with_pieces(drawn)
    if neck.shape == "square":
        _split(work, context.slug, drawn, name, forward=edges.neck.forward)


def _is_corner(work: _Work, piece: str, point: Point) -> bool:
    """Whether the place was an end of the old neck edge, which moved along what it lies on."""
    return any(point.distance_to(one) <= TOLERANCES.closure for one in work.corners.get(piece, ()))


def _contoured(
    work: _Work,
    context: StepContext,
    parameters: NecklineParameters,
    neck: NeckParameters,
    edges: NeckEdges,
    drawn: Piece,
) -> Piece:
    """The piece with its gape closed, where it has the dart for it; else said how much there is."""
    name = edges.neck.edge.name
    goes = gape_goes(work.pattern, drawn, parameters.gape_dart, parameters.gape_point)
    pivot = bust_point_of(drawn) if goes is None else goes[1]
    if pivot is None:
        return drawn
    amount = _table_gape(edges, drawn, pivot)
    curved = all(one.shape in CURVED for one in parameters.necks)
    if goes is None:
        if parameters.gape_dart is None and amount > 0.0:
            work.notes.append(gape_left(_CHECK, "neckline-gape-left", drawn, name, amount))
        return drawn
    amount = amount if parameters.gape is None else context.mm(parameters.gape)
    if amount <= 0.0:
        return drawn
    dart, pivot = goes
    closed = closed_gape(drawn, Gape(name, amount, pivot, dart, edges.center.name))
    again = neck_edges(work.pattern.with_pieces(closed), name, neck.center)
    work.notes.append(gape_closed(_CHECK, "neckline-gape-closed", drawn, dart, amount))
    done = redrawn_neck(again, neck.shape, 0.0, 0.0, neck_slant(again) if curved else 0.0)
    return replace(done, lines=followed_lines(drawn, done))


def _table_gape(edges: NeckEdges, drawn: Piece, pivot: Point) -> float:
    """1/4 in at the neck base, 3/4 in at the level of the bust point, evenly between; nothing as drafted."""
    start = edges.neck.path.start
    now = drawn.edge(edges.neck.edge.name)
    lowered = start.distance_to((now.path if edges.neck.forward else now.path.reversed()).start)
    whole = abs((start - pivot).dot(edges.center_path.tangent_at(edges.center_path.length)))
    if lowered <= TOLERANCES.closure or whole <= TOLERANCES.closure:
        return 0.0
    share = min(lowered / whole, 1.0)
    return NECK_GAPE.value + (DEEP_NECK_GAPE.value - NECK_GAPE.value) * share


def _split(work: _Work, slug: str, drawn: Piece, name: str, *, forward: bool) -> None:
    """A square neckline is two edges with a corner between them; the old name stands for both in order."""
    edge = drawn.edge(name)
    path = edge.path if forward else edge.path.reversed()
    level, side = path.split_at(path.segments[0].length)
    corner = part_name(piece_name(slug, last_word(drawn.name)), "neck_corner")
    ends = (edge.start, edge.end) if forward else (edge.end, edge.start)
    parts = [
        Edge(child_name(name, "center"), level, ends[0], corner, edge.kind),
        Edge(child_name(name, "side"), side, corner, ends[1], edge.kind),
    ]
    if not forward:
        parts = [part.reversed() for part in reversed(parts)]
    index = drawn.edge_index(name)
    outline = (*drawn.outline[:index], *parts, *drawn.outline[index + 1 :])
    work.pattern = work.pattern.with_pieces(replace(drawn, outline=outline))
    names = tuple(part.name for part in parts)
    work.splits[name] = names
    groups = {**work.pattern.groups, name: Group(names, slug)}
    work.pattern = replace(work.pattern, groups=frozen_map(groups))


def _opening(
    before: Pattern, after: Pattern, context: StepContext, parameters: NecklineParameters
) -> list[Finding]:
    """What the neck opens to, where nothing at its centers opens: it must go over the head."""
    edges = [neck_edges(before, neck.edge, neck.center) for neck in parameters.necks]
    if len(edges) < 2 or any(one.center.kind != "fold" for one in edges):
        return []
    opening = 2.0 * sum(sewn_length(after, neck.edge) for neck in parameters.necks)
    head = context.find("head_girth")
    least = None if head is None else head + OVER_HEAD.value
    if least is not None and opening >= least:
        return []
    code = "neckline-no-head" if head is None else "neckline-under-head"
    severity = Severity.NOTE if head is None else Severity.LOOK
    names = tuple(neck.edge for neck in parameters.necks)
    return [
        worded(
            _CHECK, code, severity, Measured(opening, least), names=names, opening=opening, head=head or 0.0
        )
    ]


STEP = StepDefinition(
    operation="change_neckline",
    version=1,
    kind="style",
    title="Change neckline",
    sentence="{necks:{edge} {shape}, {depth|lower|higher}}, {width|wider|narrower}, gape into {gape_dart}",
    parameters=NecklineParameters,
    run=run,
)
