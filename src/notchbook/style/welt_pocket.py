"""A welt pocket: a slit inside a piece, with one welt that fills it or two pipings, a facing and two bags.

It is derived: it is made anew after the last shaping step, so that it can never go stale. On the piece the
box of stitches is drawn with the slit and how it parts into the corners, and holes are drilled inside both
ends.
"""

from typing import Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Point
from notchbook.pattern import Allowance, Notch, Pattern, Piece, Place, Seam, part_name, piece_name
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import Operation
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition
from notchbook.recipe.parameters import MaterialWord
from notchbook.style._ranged_amount import ranged
from notchbook.style.pockets.bag_reach import require_reach
from notchbook.style.pockets.figures import BAG_BESIDE, SLIT_LEAST, WELT_DOUBLE, WELT_SINGLE
from notchbook.style.pockets.flap import FlapAsked, with_flap
from notchbook.style.pockets.hand import hand_note
from notchbook.style.pockets.inside import require_inside
from notchbook.style.pockets.parts import PartGrain, walked, with_drawn
from notchbook.style.pockets.placing import PlacedParameters, placed
from notchbook.style.pockets.shape import Bottom, Sizes
from notchbook.style.pockets.welt_lines import BOX, WeltBox, welt_lines, welt_marks
from notchbook.style.pockets.welt_pieces import WeltAsked, WeltPieces, welt_pieces
from notchbook.style.traced.figures import Weight, turn_of_cloth


class WeltPocketParameters(PlacedParameters):
    """Where the slit lies, how long it is, its welts, the bag, and its flap."""

    opening: AmountText = "14 cm"
    """How long the opening is."""
    welts: Literal["single", "double"] = "single"
    """single: one welt fills the opening from below; double: two pipings meet in its middle."""
    welt: AmountText | None = None
    """How wide each welt shows; empty for 12 mm of a single one, 6 mm of each of two."""
    grain: PartGrain = "along"
    """Of the welt. along: along the opening, firm; matched: as the piece, so that stripes meet; bias."""
    interfaced: bool = True
    """Whether the welt is cut in fusible too."""
    bag_depth: AmountText = "16 cm"
    """How far below the opening the bag reaches."""
    facing: AmountText = "7 cm"
    """How far below the opening the facing behind it reaches."""
    material: MaterialWord = "lining"
    """The material that the bags are cut in."""
    flap: bool = False
    """Whether a flap hangs out of the opening."""
    flap_depth: AmountText = "5 cm"
    """How deep the flap is."""
    flap_bottom: Bottom = "square"
    """The lower end of the flap."""
    flap_corner: AmountText = "2 cm"
    """The rounding of the flap, the part of each corner that is cut off, or how much higher its sides end."""
    flap_under: MaterialWord = "lining"
    """The material of its under side."""
    cloth: Weight = "medium"
    """How heavy the cloth is: by its turn the under side of the flap is smaller."""


def run(pattern: Pattern, context: StepContext, parameters: WeltPocketParameters) -> Change:
    """Draw the opening on its piece, and make its pieces; StepRefused ``pocket-opening-small``."""
    at = placed(pattern, context, parameters)
    asked = _asked(context, parameters)
    opening = context.positive(parameters.opening, "opening")
    if opening < SLIT_LEAST.value:
        raise StepRefused("pocket-opening-small", opening=opening, least=SLIT_LEAST.value)
    box = WeltBox(at, opening, asked.welts * asked.welt)
    require_inside(at.piece, box.outline)
    owner = piece_name(context.slug, last_word(at.piece.name))
    made = welt_pieces(box, asked, owner)
    for bag in (made.outer_bag, made.inner_bag):
        require_reach(at.piece, bag.sew_line)
    after = _with_pieces(pattern, context.slug, box, made, asked)
    after = after.with_operations(*_operations(context.slug, owner, made, flap=parameters.flap))
    if parameters.flap:
        after = with_flap(after, context.slug, at, _flap(context, parameters, box, owner)).pattern
    after = with_drawn(after, at.piece, welt_lines(box, owner), welt_marks(box, owner))
    notes = hand_note(context, at.piece, part_name(owner, "slit"), box.length)
    return Change(after, notes=notes)


def _asked(context: StepContext, parameters: WeltPocketParameters) -> WeltAsked:
    is_single = parameters.welts == "single"
    return WeltAsked(
        1 if is_single else 2,
        ranged(context, parameters.welt, WELT_SINGLE if is_single else WELT_DOUBLE, "welt"),
        parameters.grain,
        parameters.interfaced,
        context.positive(parameters.bag_depth, "bag_depth"),
        context.positive(parameters.facing, "facing"),
        parameters.material,
    )


_ROUND = ("near", "near_lower", "lower", "far_lower", "far")
"""The sides along which the bags are sewn to each other."""

_BAG_NOTCH = 0.3
"""Share of the way round the bags: off the middle, and elsewhere than at other pockets. Common practice."""


def _with_pieces(pattern: Pattern, slug: str, box: WeltBox, made: WeltPieces, asked: WeltAsked) -> Pattern:
    outer, inner = made.outer_bag, made.inner_bag
    role = last_word(outer.name).removesuffix("_outer_bag")
    seam = Seam(
        part_name(slug, f"{role}_bag"),
        walked(outer, _ROUND, "near_upper"),
        walked(inner, _ROUND, "near_top"),
        allowance_class="pocket_bag",
    )
    materials = {asked.material: asked.material, **({"fusible": "fusible"} if asked.interfaced else {})}
    after = pattern.with_pieces(*made.all_pieces).with_seams(seam).with_materials(materials)
    after = after.with_allowances(_allowances(made))
    notches = [note for bag in (outer, inner) for note in _opening_notches(bag, box)]
    place = _ROUND[0]
    for bag, start in ((outer, "near_upper"), (inner, "near_top")):
        distance = _BAG_NOTCH * bag.edge(part_name(bag.name, place)).length
        at = Place(part_name(bag.name, place), part_name(bag.name, start), distance)
        notches.append(Notch(part_name(bag.name, "balance_notch"), at, seam=seam.name, purpose="balance"))
    return after.with_notches(*notches)


def _allowances(made: WeltPieces) -> dict[str, Allowance]:
    """The bags all round as bags; the welt by its long edges and its ends; the facing neatened below."""
    given = {
        edge.name: Allowance("pocket_bag")
        for piece in (made.facing, made.outer_bag, made.inner_bag)
        for edge in piece.outline
    }
    given[part_name(made.facing.name, "lower")] = Allowance("neatened_edge")
    for edge in made.welt.outline:
        is_end = last_word(edge.name) in ("near", "far")
        given[edge.name] = Allowance("welt_end" if is_end else "welt")
    return given


def _opening_notches(bag: Piece, box: WeltBox) -> list[Notch]:
    """Where the opening begins and ends, on the upper edge of a bag."""
    edge, start, beside = part_name(bag.name, "opening"), part_name(bag.name, "near_upper"), BAG_BESIDE.value
    places = {"near": beside, "far": beside + box.length}
    return [
        Notch(part_name(bag.name, f"{word}_notch"), Place(edge, start, distance), purpose="pocket opening")
        for word, distance in places.items()
    ]


def _operations(slug: str, owner: str, made: WeltPieces, *, flap: bool) -> tuple[Operation, ...]:
    role = last_word(owner)
    flapped = (part_name(slug, "flap_sewn"),) if flap else ()
    prepared = Operation(
        part_name(slug, "welt_prepared"),
        "prepare",
        "Fold each welt along its line, right side out, and press it. Lay the facing on the inner bag, upper "
        "edges even, and stitch its neatened lower edge down along the line.",
        (made.welt.name, made.facing.name, part_name(made.inner_bag.name, "facing_line")),
    )
    opened = Operation(
        part_name(slug, "slit_opened"),
        "pockets",
        "Sew the welt to the long line of the box, its fold away from the slit (a second piping to the other "
        "line), from end to end exactly. Cut the slit and into the corners up to the last stitch, turn the "
        "welt through and sew the little triangles to its ends.",
        (made.welt.name, part_name(owner, BOX, "lower"), part_name(owner, "slit")),
        (prepared.name,),
    )
    hung = Operation(
        part_name(slug, "bags_hung"),
        "pockets",
        "Sew the outer bag to the allowance of the lower welt, and the inner bag with its facing to the "
        "allowance above the opening, between the notches.",
        (part_name(made.outer_bag.name, "opening"), part_name(made.inner_bag.name, "opening")),
        (opened.name, *flapped),
    )
    closed = Operation(
        part_name(slug, "welt_finished"),
        "pockets",
        "Stitch in the ditch of the opening, fasten its ends and press it from the wrong side.",
        (part_name(owner, BOX, "upper"),),
        (hung.name, part_name(slug, f"{role}_bag")),
    )
    return prepared, opened, hung, closed


_FLAP_ORDER = (
    "Slip the flap into the opening below its upper line, as deep as it shows, and sew it to the "
    "allowance there before the inner bag is sewn on."
)


def _flap(context: StepContext, parameters: WeltPocketParameters, box: WeltBox, owner: str) -> FlapAsked:
    depth = context.positive(parameters.flap_depth, "flap_depth")
    corner = context.positive(parameters.flap_corner, "flap_corner")
    sizes = Sizes(box.length, depth, parameters.flap_bottom, corner)
    turn = turn_of_cloth(context, parameters.cloth, None, depth)
    line, after = part_name(owner, BOX, "upper"), (part_name(context.slug, "slit_opened"),)
    begins = Point(0.0, -box.height / 2.0)
    under, interfaced = parameters.flap_under, parameters.interfaced
    return FlapAsked(sizes, begins, turn, under, interfaced, _FLAP_ORDER, line, after)


STEP = StepDefinition(
    operation="welt_pocket",
    version=1,
    kind="style",
    phase="derived",
    title="Welt pocket",
    sentence="{welts}, {opening} long, {down} below {below} and {inward} from {beside}",
    parameters=WeltPocketParameters,
    run=run,
)
