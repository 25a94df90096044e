"""Pocket bags behind an opening in a seam: one on each side of it, with the opening marked.

They are derived: they are made anew after the last shaping step, so that they can never go stale.
"""

from dataclasses import dataclass, replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import direction
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    EdgeUse,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    locate,
    part_name,
    piece_name,
    require,
    sewn_length,
    spoken,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import Operation
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.recipe.parameters import MaterialWord
from notchbook.style._outlined import Side
from notchbook.style.pockets.bag_facing import bag_facing
from notchbook.style.pockets.bag_reach import require_reach
from notchbook.style.pockets.hand import hand_note
from notchbook.style.pockets.ring import ring_piece
from notchbook.style.traced.allowance_of import allowance_of
from notchbook.style.traced.bag_shape import Hang, bag_shape, hang_of
from notchbook.style.traced.opening_cut import Opening, opening_cut


class PocketEdge(StepParameters):
    """An edge of the seam with the pocket, and its upper end."""

    edge: EdgeName
    """The edge in which the opening lies."""
    upper_end: PointName
    """Its upper end, from which the opening is counted."""


class PocketBagParameters(StepParameters):
    """The two ``edges`` of the seam with the pocket, where it opens, and how large its bag is."""

    edges: Annotated[tuple[PocketEdge, ...], Field(min_length=2, max_length=2)]
    """The edges of the seam, front and back."""
    distance: AmountText = "5 cm"
    """How far below the upper end the opening begins."""
    opening: AmountText = "16 cm"
    """How long the opening is."""
    depth: AmountText = "28 cm"
    """How far below the top of the opening the bag reaches."""
    width: AmountText = "15 cm"
    """How far the bag reaches into the piece."""
    material: MaterialWord = "lining"
    """The material that the bags are cut in."""
    facing: AmountText | None = None
    """How wide a strip of the cloth lies on each bag along the opening; empty for none."""


@dataclass(frozen=True, slots=True)
class _Sizes:
    distance: float
    opening: float
    depth: float
    width: float
    facing: float | None


def run(pattern: Pattern, context: StepContext, parameters: PocketBagParameters) -> Change:
    """Mark the opening in both edges, and make a bag for each."""
    sizes = _Sizes(
        context.positive(parameters.distance, "distance"),
        context.positive(parameters.opening, "opening"),
        context.positive(parameters.depth, "depth"),
        context.positive(parameters.width, "width"),
        None if parameters.facing is None else context.positive(parameters.facing, "facing"),
    )
    _require_room(pattern, parameters, sizes)
    seam = _seam_of(pattern, parameters)
    after, splits = pattern, dict[str, tuple[str, ...]]()
    owners = [_owner(pattern, context.slug, one, sizes.distance) for one in parameters.edges]
    cuts = [
        opening_cut(pattern, Place(one.edge, one.upper_end, sizes.distance), sizes.opening, owner)
        for one, owner in zip(parameters.edges, owners, strict=True)
    ]
    hang = hang_of([(cut.down, cut.inward) for cut in cuts], -direction(cuts[0].piece.grain.degrees))
    bags: list[Piece] = []
    for one, owner in zip(parameters.edges, owners, strict=True):
        cut = opening_cut(after, Place(one.edge, one.upper_end, sizes.distance), sizes.opening, owner)
        splits |= cut.splits
        bags.append(_bag(owner, cut, hang, sizes, parameters.material))
        bag_edge = bags[-1].edge(part_name(owner, "bag"))
        require_reach(cut.piece, bag_edge.path, {*cut.splits[cut.old_edge], *require(pattern, one.edge)})
        after = _sewn(pattern, cut.pattern.with_pieces(bags[-1]), context.slug, cut, bags[-1])
        after = _faced(pattern, after, cut, bags[-1], sizes)
        after = after.with_notches(*_notches(owner, one, seam, sizes))
    after = after.with_seams(*_bag_seams(context.slug, bags)).with_operations(_left_open(context.slug, bags))
    if sizes.facing is not None:
        after = after.with_operations(_facing_sewn(context.slug, bags))
    notes = hand_note(context, cuts[0].piece, cuts[0].edge, sizes.opening)
    return Change(
        after.with_materials({parameters.material: parameters.material}), splits=splits, notes=notes
    )


def _owner(pattern: Pattern, slug: str, one: PocketEdge, distance: float) -> str:
    """The name of the bag behind this edge: after the panel in which it opens."""
    return piece_name(slug, last_word(locate(pattern, Place(one.edge, one.upper_end, distance)).piece))


def _require_room(pattern: Pattern, parameters: PocketBagParameters, sizes: _Sizes) -> None:
    """The opening must end on the seam, and the bag reach below it."""
    if sizes.depth <= sizes.opening:
        raise StepRefused("pocket-too-shallow", depth=sizes.depth, opening=sizes.opening)
    for one in parameters.edges:
        length = sewn_length(pattern, one.edge)
        if sizes.distance + sizes.opening >= length:
            ends = sizes.distance + sizes.opening
            raise StepRefused("pocket-past-edge", edge=spoken(one.edge), length=length, ends=ends)


def _seam_of(pattern: Pattern, parameters: PocketBagParameters) -> str:
    """The seam of the two edges; StepRefused ``pocket-no-seam`` where they are not sewn to each other."""
    wanted = [set(require(pattern, one.edge)) for one in parameters.edges]
    for seam in pattern.seams.values():
        runs = [_members(pattern, uses) for uses in (seam.first, seam.second)]
        if any(wanted[0] <= one and wanted[1] <= other for one, other in (runs, runs[::-1])):
            return seam.name
    first, second = (spoken(one.edge) for one in parameters.edges)
    raise StepRefused("pocket-no-seam", first=first, second=second)


def _members(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> set[str]:
    return {member for use in uses for member in require(pattern, use.edge)}


def _bag(owner: str, cut: Opening, hang: Hang, sizes: _Sizes, material: str) -> Piece:
    """The bag as a piece: the opening, the edge round the bag, and its upper edge."""
    shape = bag_shape(cut.down, cut.inward, hang, (sizes.depth, sizes.width))
    sides = (
        Side("opening", "bag_top", shape.opening),
        Side("bag", "bag_bottom", shape.bag),
        Side("upper", "upper_inner", shape.upper),
    )
    called = f"{cut.piece.title} pocket bag", (CutInstruction(material),)
    return ring_piece(owner, called, sides, cut.piece, clockwise=not cut.runs_down)


def _sewn(before: Pattern, after: Pattern, slug: str, cut: Opening, bag: Piece) -> Pattern:
    """The opening of the bag to that of the piece, with the allowance of the seam there."""
    given = allowance_of(before, cut.old_edge)
    allowance = Allowance("plain") if given is None else given
    seam = Seam(
        part_name(slug, f"{last_word(bag.name)}_opening"),
        (EdgeUse(part_name(bag.name, "opening"), part_name(bag.name, "bag_top")),),
        (EdgeUse(cut.edge, cut.top),),
        allowance_class=allowance.allowance_class,
        seam_class=TURNED_SEAM,
    )
    return after.with_seams(seam).with_allowances(
        {
            part_name(bag.name, "opening"): allowance,
            part_name(bag.name, "bag"): Allowance("pocket_bag"),
            part_name(bag.name, "upper"): Allowance("pocket_bag"),
        }
    )


def _faced(before: Pattern, after: Pattern, cut: Opening, bag: Piece, sizes: _Sizes) -> Pattern:
    """The strip of cloth on the bag, where one is asked for."""
    if sizes.facing is None:
        return after
    strip, line = bag_facing(cut, bag, sizes.facing)
    given = {edge.name: Allowance("neatened_edge") for edge in strip.outline}
    given[part_name(strip.name, "opening")] = allowance_of(before, cut.old_edge) or Allowance("plain")
    given[part_name(strip.name, "upper")] = Allowance("pocket_bag")
    lined = replace(bag, lines=(*bag.lines, line))
    return after.with_pieces(lined, strip).with_allowances(given)


def _left_open(slug: str, bags: list[Piece]) -> Operation:
    return Operation(
        part_name(slug, "opening_left_open"),
        "pockets",
        "Turn the bags outward and press them: the seam in which they lie is sewn above and below the "
        "opening only.",
        tuple(part_name(bag.name, "opening") for bag in bags),
        tuple(part_name(slug, f"{last_word(bag.name)}_opening") for bag in bags),
    )


def _facing_sewn(slug: str, bags: list[Piece]) -> Operation:
    return Operation(
        part_name(slug, "bags_faced"),
        "prepare",
        "Lay the strips of cloth on the bags along their openings, right sides up, and stitch their neatened "
        "free edges down along the lines.",
        tuple(part_name(bag.name, "facing_line") for bag in bags),
    )


def _notches(owner: str, one: PocketEdge, seam: str, sizes: _Sizes) -> list[Notch]:
    """Both ends of the opening on the piece, in step with those of its mate."""
    places = (("opening_top_notch", sizes.distance), ("opening_end_notch", sizes.distance + sizes.opening))
    return [
        Notch(part_name(owner, word), Place(one.edge, one.upper_end, at), seam=seam, purpose="pocket opening")
        for word, at in places
    ]


def _bag_seams(slug: str, bags: list[Piece]) -> list[Seam]:
    """Bag to bag, all round but the opening."""
    seams: list[Seam] = []
    for word, point in (("bag", "bag_bottom"), ("upper", "bag_top")):
        first, second = (EdgeUse(part_name(bag.name, word), part_name(bag.name, point)) for bag in bags)
        seams.append(Seam(part_name(slug, word), (first,), (second,), allowance_class="pocket_bag"))
    return seams


STEP = StepDefinition(
    operation="pocket_bag",
    version=2,
    upcasters={1: dict},
    kind="style",
    phase="derived",
    title="Pocket bag",
    sentence="{opening} open, {distance} below {edges}",
    parameters=PocketBagParameters,
    run=run,
)
