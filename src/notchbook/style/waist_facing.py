"""A facing that follows the waist, without turn of cloth. ``facing`` serves in its place.

It is kept as it was, names and all, so that recipes that have it open for ever; a new style takes ``facing``
along the waist, which is smaller by the turn of the cloth, carries the notches and lies over panels.
"""

from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Transform, curve_between, offset
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    Edge,
    EdgeKind,
    EdgeUse,
    Pattern,
    Piece,
    Seam,
    closed_motions,
    part_name,
    piece_name,
    require,
    spoken,
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


class FacedEdge(StepParameters):
    """One edge (or group) that is faced, and its end at the ``center``, where the grain is kept."""

    edge: EdgeName
    """The edge that is faced."""
    center: PointName
    """Its end at the center, where the grain of the piece is kept."""


class FacingParameters(StepParameters):
    """An older step, kept for recipes that have it: ``facing`` along the waist serves in its place.

    The edges that are faced, from piece to piece, and the ``depth`` of the facing.
    """

    edges: Annotated[tuple[FacedEdge, ...], Field(min_length=1)]
    """The edges that are faced, one for each piece."""
    depth: AmountText = "5 cm"
    """How deep the facing reaches below the waist."""


def run(pattern: Pattern, context: StepContext, parameters: FacingParameters) -> Change:
    """Trace a facing of every edge."""
    depth = context.positive(parameters.depth, "depth")
    after = pattern
    names: list[str] = []
    for faced in parameters.edges:
        piece, seam = _facing(pattern, context.slug, faced, depth)
        after = after.with_pieces(piece).with_seams(seam)
        after = after.with_allowances({part_name(piece.name, "lower"): Allowance("neatened_edge")})
        names.append(piece.name)
        if piece.edge(part_name(piece.name, "center")).kind == "seam":
            after = after.with_seams(_center_seam(context.slug, piece.name))
    if len(names) == 2:
        after = after.with_seams(_side_seam(context.slug, *names))
    return Change(after.with_materials({"fusible": "fusible"}))


def _side_seam(slug: str, first: str, second: str) -> Seam:
    uses = [EdgeUse(part_name(name, "side"), part_name(name, "upper_side")) for name in (first, second)]
    return Seam(part_name(slug, "side_seam"), (uses[0],), (uses[1],), allowance_class="side")


def _center_seam(slug: str, name: str) -> Seam:
    """Left and right of a facing that is not on the fold meet at the center, as the piece does."""
    edge, point = part_name(name, "center"), part_name(name, "upper_center")
    return Seam(
        part_name(slug, f"{last_word(name)}_center"),
        (EdgeUse(edge, point, "right"),),
        (EdgeUse(edge, point, "left"),),
        allowance_class="center_back",
    )


def _facing(pattern: Pattern, slug: str, faced: FacedEdge, depth: float) -> tuple[Piece, Seam]:
    members = require(pattern, faced.edge)
    owner = pattern.piece_of(members[0])
    motions = closed_motions(owner, members[0], members[-1])
    if set(members) - motions.keys():
        raise StepRefused("facing-edge-broken", edge=spoken(faced.edge), piece=spoken(owner.name))
    last_is_center = owner.edge(members[-1]).end == faced.center
    if not last_is_center and owner.edge(members[0]).start != faced.center:
        raise StepRefused("facing-center-elsewhere", edge=spoken(faced.edge), point=spoken(faced.center))
    home = motions[members[-1]].inverse() if last_is_center else Transform.identity()
    upper = Path(
        tuple(
            segment
            for member in members
            for segment in owner.edge(member).path.transformed(motions[member].then(home)).segments
        )
    )
    before = owner.outline[owner.edge_index(members[0]) - 1]
    after = owner.outline[(owner.edge_index(members[-1]) + 1) % len(owner.outline)]
    inner = _carried(offset(upper, depth), depth)
    first = _end_edge(before.path.reversed().transformed(home), inner, depth)
    last = _end_edge(after.path.transformed(motions[members[-1]].then(home)), inner, depth)
    lower = inner.between(inner.nearest(first.end).distance_along, inner.nearest(last.end).distance_along)
    if last_is_center:
        lower = _squared(lower.reversed(), first, depth).reversed()
    else:
        lower = _squared(lower, last, depth)
    role = last_word(faced.edge.split("/", 1)[0])
    name = piece_name(slug, role)
    return (
        _piece(
            name, owner, (upper, last, lower.reversed(), first.reversed()), (before, after), last_is_center
        ),
        Seam(
            part_name(slug, f"{role}_waist"),
            (EdgeUse(part_name(name, "upper"), part_name(name, "upper_center")),),
            (EdgeUse(faced.edge, faced.center),),
            allowance_class="waist",
        ),
    )


def _squared(lower: Path, side: Path, reach: float) -> Path:
    """The lower line with its last stretch bent to meet the side square, so that it runs on smoothly
    across the side seam."""
    kept, _ = lower.split_at(lower.length - min(reach, lower.length / 3.0))
    down = side.tangent_at(side.length)
    square = down.perpendicular()
    if square.dot(lower.tangent_at(lower.length)) < 0.0:
        square = -square
    bend = curve_between(kept.end, kept.tangent_at(kept.length).direction(), lower.end, square.direction())
    return kept.joined(Path.of(bend))


def _carried(inner: Path, amount: float) -> Path:
    """The path carried on straight at both ends, so that it reaches the edges beside it."""
    start = Path.line(inner.start - inner.tangent_at(0.0) * amount, inner.start)
    end = Path.line(inner.end, inner.end + inner.tangent_at(inner.length) * amount)
    return start.joined(inner).joined(end)


def _end_edge(side: Path, inner: Path, depth: float) -> Path:
    """The part of a neighbouring edge, from the faced edge down to the inner line of the facing."""
    crossings = side.intersections(inner)
    if not crossings:
        raise StepRefused("facing-too-deep", depth=depth, length=side.length)
    return side.between(0.0, crossings[0].at_self)


def _piece(
    name: str,
    owner: Piece,
    paths: tuple[Path, Path, Path, Path],
    beside: tuple[Edge, Edge],
    last_is_center: bool,
) -> Piece:
    """The facing as a piece: upper edge, end, lower edge, end, counter-clockwise."""
    first, last = ("side", "center") if last_is_center else ("center", "side")
    corners = (f"upper_{first}", f"upper_{last}", f"lower_{last}", f"lower_{first}")
    words = ("upper", last, "lower", first)
    kinds: list[EdgeKind] = ["seam", "seam", "plain", "seam"]
    kinds[1 if last_is_center else 3] = beside[1 if last_is_center else 0].kind
    outline = tuple(
        Edge(
            part_name(name, words[index]),
            paths[index] if index == 0 else paths[index].with_start(paths[index - 1].end),
            part_name(name, corners[index]),
            part_name(name, corners[(index + 1) % 4]),
            kinds[index],
        )
        for index in range(4)
    )
    closing = outline[3]
    outline = (*outline[:3], replace(closing, path=closing.path.with_end(paths[0].start)))
    return Piece(
        name=name,
        title=f"{owner.title} facing",
        outline=outline,
        grain=owner.grain,
        cut=owner.cut,
        instructions=(CutInstruction("self"), CutInstruction("fusible")),
        rule=name.split(".", 1)[0],
    )


STEP = StepDefinition(
    operation="waist_facing",
    version=1,
    kind="style",
    phase="derived",
    title="Waist facing",
    sentence="{edges:{edge}}: {depth} deep, follows the waist",
    parameters=FacingParameters,
    run=run,
    superseded_by="facing",
)
