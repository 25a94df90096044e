"""A patch pocket: laid on a piece at its marks and stitched on, its hem turned down, with a flap as wanted.

It is derived: it is made anew after the last shaping step, so that it can never go stale. It lies wholly on
one piece; over a dart, a pleat or a seam it is refused, for there the cloth below it is not flat.
"""

from dataclasses import dataclass

from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    InternalLine,
    Mark,
    Pattern,
    part_name,
    piece_name,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import Operation
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition
from notchbook.recipe.parameters import MaterialWord
from notchbook.style._outlined import Side
from notchbook.style._ranged_amount import ranged
from notchbook.style.pockets.figures import DRILL_INSIDE, FLAP_ABOVE, FLAP_WIDER
from notchbook.style.pockets.flap import FlapAsked, with_flap
from notchbook.style.pockets.hand import hand_note
from notchbook.style.pockets.inside import require_inside
from notchbook.style.pockets.parts import Made, PartGrain, drilled, part, with_drawn
from notchbook.style.pockets.placing import Placed, PlacedParameters, placed
from notchbook.style.pockets.shape import Bottom, Sizes, sides_of, whole_line
from notchbook.style.traced.figures import Weight, turn_of_cloth


class PatchPocketParameters(PlacedParameters):
    """Where the pocket is laid on, how large it is as finished, its shape and its flap."""

    width: AmountText = "14 cm"
    """How wide the pocket is at its opening."""
    depth: AmountText = "16 cm"
    """How deep it is, where it is deepest."""
    lower_width: AmountText | None = None
    """How wide it is at its lower end; empty for as wide as its opening."""
    bottom: Bottom = "round"
    """The lower end: square corners, rounded ones, a point in the middle, corners cut off."""
    corner: AmountText = "3 cm"
    """The rounding, the part of each corner that is cut off, or how much higher the sides of a point end."""
    hem: AmountText | None = None
    """How deep the hem is turned down; empty for the class of the house's table."""
    grain: PartGrain = "matched"
    """matched: as the piece below, so that stripes meet; own: square to its opening; along it; bias."""
    interfaced: bool = False
    """Whether it is cut in fusible too."""
    flap: bool = False
    """Whether a flap hangs over it."""
    flap_depth: AmountText = "5 cm"
    """How deep the flap is."""
    flap_bottom: Bottom = "square"
    """The lower end of the flap."""
    flap_corner: AmountText = "2 cm"
    """The rounding of the flap, the part of each corner that is cut off, or how much higher its sides end."""
    flap_above: AmountText | None = None
    """How far above the opening the flap is sewn on; empty for 15 mm."""
    flap_wider: AmountText | None = None
    """How much wider than the opening the flap is at each end; empty for 3 mm."""
    flap_under: MaterialWord = "self"
    """The material of its under side."""
    cloth: Weight = "medium"
    """How heavy the cloth is: by its turn the under side of the flap is smaller."""


@dataclass(frozen=True, slots=True)
class _Pocket:
    """The pocket as it lies on its piece."""

    owner: str
    placed: Placed
    sides: tuple[Side, ...]
    sizes: Sizes

    @property
    def line(self) -> InternalLine:
        """Where it is stitched on: round its sides and its lower end."""
        stitched = whole_line(self.sides[:-1])
        return InternalLine(part_name(self.owner, "pocket_line"), stitched, "placement")

    @property
    def marks(self) -> tuple[Mark, ...]:
        """Drill holes inside its corners."""
        return drilled(self.owner, self.sides, DRILL_INSIDE.value)


def run(pattern: Pattern, context: StepContext, parameters: PatchPocketParameters) -> Change:
    """Make the pocket, and mark on its piece where it is laid."""
    at = placed(pattern, context, parameters)
    lower_width = parameters.lower_width
    sizes = Sizes(
        context.positive(parameters.width, "width"),
        context.positive(parameters.depth, "depth"),
        parameters.bottom,
        context.positive(parameters.corner, "corner"),
        None if lower_width is None else context.positive(lower_width, "lower_width"),
    )
    pocket = _Pocket(piece_name(context.slug, last_word(at.piece.name)), at, sides_of(at, sizes), sizes)
    require_inside(at.piece, whole_line(pocket.sides))
    after = _with_pocket(pattern, context, parameters, pocket)
    lines, marks = [pocket.line], list(pocket.marks)
    if parameters.flap:
        made = with_flap(after, context.slug, at, _flap(context, parameters, pocket))
        require_inside(at.piece, _round(made.line.path, at))
        after, lines, marks = made.pattern, [*lines, made.line], [*marks, *made.marks]
    notes = hand_note(context, at.piece, part_name(pocket.owner, "opening"), sizes.width)
    return Change(with_drawn(after, at.piece, lines, marks), notes=notes)


def _with_pocket(
    pattern: Pattern, context: StepContext, parameters: PatchPocketParameters, pocket: _Pocket
) -> Pattern:
    cut = [CutInstruction("self"), *([CutInstruction("fusible")] if parameters.interfaced else [])]
    title = f"{pocket.placed.piece.title} patch pocket"
    called = Made(pocket.owner, title, tuple(cut), parameters.grain)
    made = part(pocket.placed, pocket.sides, {"opening": "hem"}, called)
    hem = None if parameters.hem is None else context.positive(parameters.hem, "hem")
    allowances = {edge.name: Allowance("pocket_edge") for edge in made.outline}
    allowances[part_name(pocket.owner, "opening")] = Allowance("hem_pocket", hem)
    after = pattern.with_pieces(made).with_allowances(allowances)
    after = after.with_operations(*_operations(context.slug, pocket))
    return after.with_materials({"fusible": "fusible"}) if parameters.interfaced else after


def _operations(slug: str, pocket: _Pocket) -> tuple[Operation, Operation]:
    hemmed = Operation(
        part_name(slug, "pocket_hemmed"),
        "prepare",
        "Neaten the upper edge of the pocket or turn it under, turn the hem to the wrong side at its fold "
        "and stitch it.",
        (part_name(pocket.owner, "opening"),),
    )
    sewn_on = Operation(
        part_name(slug, "pocket_sewn"),
        "pockets",
        "Press the allowances of the pocket under over a card of its finished shape, lay it over its "
        "marks and stitch it on near its edge; fasten both ends of the opening.",
        (pocket.owner, part_name(pocket.owner, "pocket_line")),
        (hemmed.name,),
    )
    return hemmed, sewn_on


_FLAP_ORDER = (
    "Lay the flap upward on its line, right side down, and sew it between the marks; fasten both ends, trim "
    "the allowance, fold the flap down and stitch it through."
)


def _flap(context: StepContext, parameters: PatchPocketParameters, pocket: _Pocket) -> FlapAsked:
    wider = ranged(context, parameters.flap_wider, FLAP_WIDER, "flap_wider")
    above = ranged(context, parameters.flap_above, FLAP_ABOVE, "flap_above")
    depth = context.positive(parameters.flap_depth, "flap_depth")
    sizes = Sizes(
        pocket.sizes.width + 2.0 * wider,
        depth,
        parameters.flap_bottom,
        context.positive(parameters.flap_corner, "flap_corner"),
    )
    turn = turn_of_cloth(context, parameters.cloth, None, depth)
    line, sewn = part_name(pocket.owner, "flap_line"), part_name(context.slug, "pocket_sewn")
    under, interfaced = parameters.flap_under, parameters.interfaced
    return FlapAsked(sizes, Point(-wider, -above), turn, under, interfaced, _FLAP_ORDER, line, (sewn,))


def _round(line: Path, at: Placed) -> Path:
    """A strip of a millimeter along the line: what must lie on the piece."""
    down = at.down
    return Path.polyline([line.start, line.start + down, line.end + down, line.end], closed=True)


STEP = StepDefinition(
    operation="patch_pocket",
    version=1,
    kind="style",
    phase="derived",
    title="Patch pocket",
    sentence="{width} wide, {depth} deep, {down} below {below} and {inward} from {beside}",
    parameters=PatchPocketParameters,
    run=run,
)
