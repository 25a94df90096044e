"""A fly in the front seam of trousers: the opening, its facing, the shield behind the zip, the J stitches.

It is made when the wearer's two sides are laid together, for the two differ here: one lies over. The fronts
keep their shape; the waistband comes after it, with an underlap as wide as the shield.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Literal

from notchbook.errors import InputError
from notchbook.pattern import (
    Allowance,
    EdgeUse,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
    split_side,
    with_side,
)
from notchbook.pattern.names import last_word
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
from notchbook.recipe.parameters import NotchName
from notchbook.style.closures.figures import FLY_WIDTH, SHIELD_MORE, STITCH_INSIDE, ZIP_STOP_ABOVE
from notchbook.style.closures.fly_cut import FlyCut, FlySide, fly_cut, notch_depth
from notchbook.style.closures.fly_pieces import fly_facing, fly_shield
from notchbook.style.closures.fly_shape import j_line, walked_down
from notchbook.style.closures.within_trade import told_outside
from notchbook.style.traced.opened_behind import opened_behind


class FlyParameters(StepParameters):
    """The front ``edge`` that opens, how far down, and how wide facing and shield are."""

    edge: EdgeName
    """The front crotch seam, or a center front seam."""
    top: PointName
    """Its upper end, at the waist."""
    notch: NotchName | None = None
    """The notch where the crotch curve begins: the fly opens down to it."""
    length: AmountText | None = None
    """How far down the fly opens, instead of to a notch."""
    width: AmountText = FLY_WIDTH.amount
    """How wide the facing is."""
    shield_more: AmountText = SHIELD_MORE.amount
    """How much wider and longer than the facing the shield is."""
    stop_above: AmountText = ZIP_STOP_ABOVE.amount
    """How far above the lower end of the opening the zip stops."""
    over: Literal["left", "right"] = "left"
    """Which of the wearer's sides lies over: left for men; women have either."""


def run(pattern: Pattern, context: StepContext, parameters: FlyParameters) -> Change:
    """Open the seam, face the side that lies over, and put the shield behind the other."""
    width = context.positive(parameters.width, "width")
    more = context.positive(parameters.shield_more, "shield_more")
    stop = context.positive(parameters.stop_above, "stop_above")
    length = _length(pattern, context, parameters)
    if length <= 2.0 * width + stop:
        raise InputError("fly-too-short", length=length, least=2.0 * width + stop)
    cut = fly_cut(pattern, parameters.edge, parameters.top, length, context.slug)
    under = cut.sides["right" if parameters.over == "left" else "left"]
    shield = fly_shield(piece_name(context.slug, "shield"), under.side, length, (width + more, more))
    stitched = _with_stitches(cut, context.slug, width - STITCH_INSIDE.value)
    faced = _faced(replace(cut, pattern=stitched), context.slug, parameters.over, (width, length - stop))
    after = _with_shield(faced, shield)
    after = after.with_operations(*_operations(context.slug, parameters.over, cut.sewn_below))
    notes = (
        *told_outside(piece_name(context.slug, "facing"), "width", width, FLY_WIDTH),
        *told_outside(shield.name, "shield_more", more, SHIELD_MORE),
    )
    opened = opened_behind(after, context.slug, (part_name(context.slug, "zip_closed"),))
    return Change(opened.pattern, splits=cut.splits, removals=opened.removals, notes=notes)


def _with_shield(pattern: Pattern, shield: Piece) -> Pattern:
    given = {edge.name: Allowance("fly") for edge in shield.outline}
    given[part_name(shield.name, "upper")] = Allowance("waist")
    return pattern.with_pieces(shield).with_allowances(given)


def _faced(cut: FlyCut, slug: str, over: Literal["left", "right"], sizes: tuple[float, float]) -> Pattern:
    """The pattern with the facing of its own; facing and shield are sewn to the fronts and notched.

    ``sizes``: how wide the facing is, and where the zip stops below the waist, mm.
    """
    width, stop = sizes
    above, under = cut.sides[over], cut.sides["right" if over == "left" else "left"]
    facing = fly_facing(cut.pattern, above, piece_name(slug, "facing"), width)
    seams = {"facing": _seam(slug, "facing", above), "shield": _seam(slug, "shield", under)}
    after = cut.pattern.with_pieces(facing).with_seams(*seams.values())
    after = after.with_notches(*_notches(slug, cut, stop, seams))
    given = dict.fromkeys((above.edge, under.edge, part_name(facing.name, "opening")), Allowance("fly"))
    given[part_name(facing.name, "upper")] = Allowance("waist")
    given[part_name(facing.name, "edge")] = Allowance("neatened_edge")
    return after.with_allowances(given).with_materials({"fusible": "fusible"})


def _length(pattern: Pattern, context: StepContext, parameters: FlyParameters) -> float:
    """How far down the fly opens, mm. InputError ``fly-length-unsaid``."""
    if parameters.length is not None:
        return context.positive(parameters.length, "length")
    if parameters.notch is None:
        raise InputError("fly-length-unsaid")
    return notch_depth(pattern, parameters.edge, parameters.top, parameters.notch)


def _with_stitches(cut: FlyCut, slug: str, inside: float) -> Pattern:
    """The J on the fronts; where one piece serves both sides it stands on both, and one is stitched."""
    after = cut.pattern
    for one in dict.fromkeys(side.edge for side in cut.sides.values()):
        side = next(side for side in cut.sides.values() if side.edge == one)
        piece = after.pieces[side.piece]
        edge = piece.edge(side.edge)
        line = j_line(walked_down(edge, side.top), inside if edge.start == side.top else -inside)
        name = part_name(_owner(slug, side), "stitch_line")
        stitched = replace(piece, lines=(*piece.lines, InternalLine(name, line, "stitch_line")))
        after = after.with_pieces(stitched)
    return after


def _owner(slug: str, side: FlySide) -> str:
    base, of_side = split_side(side.piece)
    return with_side(piece_name(slug, last_word(base)), of_side)


def _seam(slug: str, word: str, side: FlySide) -> Seam:
    """The opening edge of facing or shield to that of its front."""
    own = piece_name(slug, word)
    side_of = side.side if split_side(side.edge)[1] == "both" else "both"
    start = "upper_center" if word == "facing" else "upper_outer"
    return Seam(
        part_name(slug, word),
        (EdgeUse(part_name(own, "opening"), part_name(own, start)),),
        (EdgeUse(side.edge, side.top, side_of),),
        allowance_class="fly",
    )


def _notches(slug: str, cut: FlyCut, stop: float, seams: Mapping[str, Seam]) -> Iterator[Notch]:
    """Where the zip stops, on both fronts, facing and shield.

    One front for both sides has one notch, which meets that of the facing.
    """
    met: set[str] = set()
    for word, seam in seams.items():
        use = seam.second[0]
        serves = None if use.edge in met else seam.name
        own = seam.first[0]
        name = part_name(piece_name(slug, word), "zip_notch")
        yield Notch(name, Place(own.edge, own.starts_at, stop), seam=serves, purpose="zip stop")
        if use.edge not in met:
            side = next(side for side in cut.sides.values() if side.edge == use.edge)
            name = part_name(_owner(slug, side), "zip_notch")
            yield Notch(name, Place(use.edge, use.starts_at, stop), seam=serves, purpose="zip stop")
        met.add(use.edge)


def _operations(slug: str, over: Literal["left", "right"], below: tuple[str, ...]) -> Iterator[Operation]:
    under = "right" if over == "left" else "left"
    facing, shield = part_name(slug, "facing"), part_name(slug, "shield")
    words = ("shield_folded", "zip", "zip_closed", "stitch_line")
    fold, zipped, closed, stitched = (part_name(slug, word) for word in words)
    text = "Fold the shield right sides together, sew its lower end, turn and neaten its raw edges together."
    at = (piece_name(slug, "shield"),)
    yield Operation(fold, "prepare", text, at)
    text = (
        f"Baste one tape of the zip to the sewn edge of the shield, its stop at the notch: it is caught when "
        f"the shield is sewn to the wearer's {under} front."
    )
    yield Operation(zipped, "prepare", text, at, (fold,))
    text = "Lay the fly closed and sew the other tape of the zip to the facing, the front kept clear."
    yield Operation(closed, "closures", text, (facing, shield), (facing, shield, zipped, *below))
    text = f"Stitch the J on the wearer's {over} front through the facing, the shield kept clear, and bar it."
    yield Operation(stitched, "closures", text, (facing,), (closed,))


STEP = StepDefinition(
    operation="fly",
    version=1,
    kind="style",
    phase="whole",
    title="Fly",
    sentence="{edge}, {over} over, facing {width}",
    parameters=FlyParameters,
    run=run,
)
