"""A slanted pocket: its opening cuts a corner off the piece, which goes on as an under piece of the cloth.

It is derived: it is made anew after the last shaping step, so that it can never go stale. Waist and side keep
their names: what is sewn to them runs over both pieces. Behind the opening hang two bags, the outer one sewn
to it with a facing of the cloth, the inner one below the under piece. The edge of the opening is a little
longer than the line on which it lies, so that the pocket does not gape when one sits.
"""

from notchbook.pattern import (
    Allowance,
    EdgeUse,
    Notch,
    Pattern,
    Place,
    Seam,
    part_name,
    piece_name,
    require,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import Operation
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.recipe import AmountText, Change, EdgeName, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import MaterialWord
from notchbook.style._ranged_amount import ranged
from notchbook.style.lines.fullness import require_no_fullness
from notchbook.style.pockets.bag_reach import require_reach
from notchbook.style.pockets.corner_walks import CornerWalks, corner_walks
from notchbook.style.pockets.figures import OPENING_EASE
from notchbook.style.pockets.hand import hand_note
from notchbook.style.pockets.mate_place import mate_of
from notchbook.style.pockets.slant_cut import slant_cut
from notchbook.style.pockets.slant_pieces import SlantPieces, slant_pieces
from notchbook.style.pockets.slant_shape import SlantAsked, off_joints, slant_shape
from notchbook.style.traced.allowance_of import allowance_of


class SlantPocketParameters(StepParameters):
    """The ``waist`` and the ``side`` of the piece, where the opening cuts its corner off, and the bag."""

    waist: EdgeName
    """The waist of the piece."""
    side: EdgeName
    """Its side seam, which meets the waist in the corner that is cut off."""
    along_waist: AmountText = "4.5 cm"
    """How far from the side the opening begins on the waist."""
    down_side: AmountText = "17 cm"
    """How far below the waist it ends on the side seam."""
    bow: AmountText = "0 cm"
    """How far the opening bows away from the side: nothing for a straight one, 2 to 3 cm scooped."""
    ease: AmountText | None = None
    """By how much the edge of the opening is longer than the line below it; empty for 4 mm."""
    facing: AmountText = "6 cm"
    """How far the facing and the under piece reach behind the edge of the opening."""
    bag_width: AmountText = "14 cm"
    """How far from the side the bag reaches along the waist."""
    bag_depth: AmountText = "28 cm"
    """How far below the waist the bag reaches."""
    bag_below: AmountText = "5 cm"
    """How far below the opening the bag ends in the side seam."""
    material: MaterialWord = "lining"
    """The material that the bags are cut in."""


def run(pattern: Pattern, context: StepContext, parameters: SlantPocketParameters) -> Change:
    """Cut the corner off, and make the under piece, the facing and the bags."""
    walks = corner_walks(pattern, parameters.waist, parameters.side)
    require_no_fullness(pattern, walks.piece, walks.waist_edge.name, walks.side_edge.name)
    asked = off_joints(walks, _asked(context, parameters))
    shape = slant_shape(walks, asked)
    side = require(pattern, parameters.side)
    require_reach(walks.piece, shape.bag, {*walks.waist_parts, *side})
    owner = piece_name(context.slug, last_word(walks.piece.name))
    cut = slant_cut(walks, shape, asked, owner, f"{owner}_under")
    made = slant_pieces(walks, shape, asked, cut, (owner, parameters.material))
    after = pattern.with_pieces(cut.piece, *made.all_pieces)
    after = after.with_seams(*_seams(context.slug, owner, made))
    after = after.with_allowances(_allowances(pattern, walks, owner, made))
    after = after.with_notches(*_notches(pattern, walks, asked, owner, made))
    after = after.with_operations(*_operations(context.slug, owner, made))
    after = after.with_materials({parameters.material: parameters.material})
    opening = part_name(owner, "opening")
    notes = hand_note(context, cut.piece, opening, shape.opening.length)
    return Change(after, splits=cut.splits, notes=notes)


def _asked(context: StepContext, parameters: SlantPocketParameters) -> SlantAsked:
    return SlantAsked(
        context.positive(parameters.along_waist, "along_waist"),
        context.positive(parameters.down_side, "down_side"),
        context.not_negative(parameters.bow, "bow"),
        ranged(context, parameters.ease, OPENING_EASE, "ease"),
        context.positive(parameters.facing, "facing"),
        context.positive(parameters.bag_width, "bag_width"),
        context.positive(parameters.bag_depth, "bag_depth"),
        context.positive(parameters.bag_below, "bag_below"),
    )


def _seams(slug: str, owner: str, made: SlantPieces) -> tuple[Seam, Seam]:
    """The outer bag to the opening, and the two bags to each other."""
    outer, inner = made.outer_bag.name, made.inner_bag.name
    role = last_word(owner)
    opening = Seam(
        part_name(slug, f"{role}_opening"),
        (EdgeUse(part_name(outer, "opening"), part_name(outer, "opening_top")),),
        (EdgeUse(part_name(owner, "opening"), part_name(owner, "opening_top")),),
        allowance_class="pocket_opening",
        seam_class=TURNED_SEAM,
    )
    bag = Seam(
        part_name(slug, f"{role}_bag"),
        (EdgeUse(part_name(outer, "bag"), part_name(outer, "bag_bottom")),),
        (EdgeUse(part_name(inner, "bag"), part_name(inner, "bag_bottom")),),
        allowance_class="pocket_bag",
    )
    return opening, bag


def _allowances(pattern: Pattern, walks: CornerWalks, owner: str, made: SlantPieces) -> dict[str, Allowance]:
    """What is caught in the waist and in the side gets their allowances, free edges are neatened."""
    waist = allowance_of(pattern, walks.waist_edge.name) or Allowance("waist")
    side = allowance_of(pattern, walks.side_edge.name) or Allowance("side")
    by_word = {
        "upper": waist,
        "side": side,
        "opening": Allowance("pocket_opening"),
        "bag": Allowance("pocket_bag"),
        "lower": Allowance("neatened_edge"),
        "edge": Allowance("neatened_edge"),
    }
    given = {
        edge.name: by_word[last_word(edge.name)]
        for piece in made.all_pieces
        for edge in piece.outline
        if edge.name.startswith(f"{piece.name}/")
    }
    return {**given, part_name(owner, "opening"): Allowance("pocket_opening")}


_BAG_NOTCH = 0.4
"""Share of the way round the bags, from the side: off the middle. Common practice, no source."""


def _notches(
    pattern: Pattern, walks: CornerWalks, asked: SlantAsked, owner: str, made: SlantPieces
) -> list[Notch]:
    """The ends of the opening on what lies under it and across the side seam, and one round the bags."""
    under, waist, side = made.under.name, walks.waist_edge, walks.side_edge
    top = Place(waist.name, walks.corner, asked.along_waist)
    found = [Notch(part_name(under, "opening_top_notch"), top, purpose="pocket opening")]
    end = Place(side.name, walks.corner, asked.down_side)
    mate = mate_of(pattern, side.name, walks.corner, asked.down_side)
    seam = None if mate is None else mate.seam.name
    found.append(Notch(part_name(owner, "slant_notch"), end, seam=seam, purpose="pocket opening"))
    if mate is not None:
        name = part_name(piece_name(owner.split(".", 1)[0], last_word(mate.piece)), "slant_notch")
        found.append(Notch(name, mate.place, seam=seam, purpose="pocket opening"))
    bag = part_name(owner.split(".", 1)[0], f"{last_word(owner)}_bag")
    for piece in (made.outer_bag, made.inner_bag):
        place = Place(
            part_name(piece.name, "bag"), part_name(piece.name, "bag_bottom"), _BAG_NOTCH, "fraction"
        )
        found.append(Notch(part_name(piece.name, "balance_notch"), place, seam=bag, purpose="balance"))
    return found


_ENDS = ("opening_top", "opening_end")
"""The ends of the opening, on the piece and on what lies under it."""


def _operations(slug: str, owner: str, made: SlantPieces) -> tuple[Operation, ...]:
    role = last_word(owner)
    faced = Operation(
        part_name(slug, "bags_faced"),
        "prepare",
        "Lay the facing on the outer bag and the side piece on the inner bag, right sides up, and stitch "
        "their neatened free edges down along the lines.",
        (made.facing.name, made.under.name, part_name(made.outer_bag.name, "facing_line")),
    )
    turned = Operation(
        part_name(slug, "opening_turned"),
        "pockets",
        "Stay the edge of the opening with a straight tape, trim and turn it, press it and topstitch it.",
        (part_name(owner, "opening"),),
        (part_name(slug, f"{role}_opening"),),
    )
    laid = Operation(
        part_name(slug, "opening_laid"),
        "pockets",
        "Lay the edge of the opening on its line on the side piece, notch to notch, its ease between them, "
        "and baste all layers together at the waist and at the side.",
        (
            part_name(owner, "opening"),
            part_name(made.under.name, "opening_line"),
            *(part_name(one, word) for word in _ENDS for one in (made.under.name, owner)),
        ),
        (part_name(slug, f"{role}_bag"), turned.name),
    )
    return faced, turned, laid


STEP = StepDefinition(
    operation="slant_pocket",
    version=1,
    kind="style",
    phase="derived",
    title="Slant pocket",
    sentence="from {along_waist} along {waist} to {down_side} down {side}",
    parameters=SlantPocketParameters,
    run=run,
)
