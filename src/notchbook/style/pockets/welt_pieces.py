"""The pieces of a welt pocket: welt, facing, outer and inner bag."""

from dataclasses import dataclass

from notchbook.geometry import Path, Point
from notchbook.pattern import CutInstruction, InternalLine, Piece, part_name
from notchbook.style._outlined import Side
from notchbook.style.pockets.figures import BAG_BESIDE
from notchbook.style.pockets.parts import Made, PartGrain, part
from notchbook.style.pockets.shape import Sizes, sides_of
from notchbook.style.pockets.welt_lines import WeltBox

ROUNDED = 30.0
"""mm by which the lower corners of a bag are rounded, so that nothing gathers in them. Common practice."""


@dataclass(frozen=True, slots=True)
class WeltAsked:
    """A welt pocket as asked for: how many welts, how wide each shows (mm), their grain, whether they are
    interfaced, how deep the bag hangs and the facing reaches below the slit (mm), and the material of the
    bags."""

    welts: int
    welt: float
    grain: PartGrain
    interfaced: bool
    bag_depth: float
    facing: float
    material: str


@dataclass(frozen=True, slots=True)
class WeltPieces:
    """The pieces, in the order in which they are put into the pattern."""

    welt: Piece
    facing: Piece
    outer_bag: Piece
    inner_bag: Piece

    @property
    def all_pieces(self) -> tuple[Piece, ...]:
        """In the order in which they are put into the pattern."""
        return (self.welt, self.facing, self.outer_bag, self.inner_bag)


def welt_pieces(box: WeltBox, asked: WeltAsked, owner: str) -> WeltPieces:
    """The pieces, each where it comes to lie; their names begin with that of ``owner``."""
    title = box.placed.piece.title
    bags = (CutInstruction(asked.material),)
    inner_sides = _inner_sides(box, asked)
    inner = part(
        box.placed,
        inner_sides,
        {side.word: "seam" for side in inner_sides},
        Made(f"{owner}_inner_bag", f"{title} inner bag", bags, lines=_facing_line(box, asked, owner)),
    )
    outer_sides = _bag_sides(box, asked, box.height / 2.0)
    outer = part(
        box.placed,
        outer_sides,
        {side.word: "seam" for side in outer_sides},
        Made(f"{owner}_outer_bag", f"{title} outer bag", bags),
    )
    called = Made(f"{owner}_facing", f"{title} pocket facing", (CutInstruction(),))
    facing = part(box.placed, _facing_sides(box, asked), {}, called)
    return WeltPieces(_welt(box, asked, owner, title), facing, outer, inner)


def _welt(box: WeltBox, asked: WeltAsked, owner: str, title: str) -> Piece:
    """A strip folded along its middle, its fold toward the other side of the box."""
    half, height = box.height / 2.0, asked.welt
    cut = [CutInstruction("self", asked.welts)]
    if asked.interfaced:
        cut.append(CutInstruction("fusible", asked.welts))
    name = f"{owner}_welt"
    folded = Path.line(box.at(0.0, half - height), box.at(box.length, half - height))
    fold = InternalLine(part_name(name, "fold_line"), folded, "fold_line")
    begins = Point(0.0, half - 2.0 * height)
    sides = sides_of(box.placed, Sizes(box.length, 2.0 * height), begins)
    return part(box.placed, sides, {}, Made(name, f"{title} welt", tuple(cut), asked.grain, (fold,)))


def _bag_sides(box: WeltBox, asked: WeltAsked, begins: float) -> tuple[Side, ...]:
    """The sides of a bag whose upper edge lies so far below the slit."""
    beside = BAG_BESIDE.value
    sizes = Sizes(
        box.length + 2.0 * beside,
        asked.bag_depth - begins,
        "round",
        min(ROUNDED, (box.length + 2.0 * beside) / 4.0),
    )
    return sides_of(box.placed, sizes, Point(-beside, begins))


def _inner_sides(box: WeltBox, asked: WeltAsked) -> tuple[Side, ...]:
    """As the outer bag, and above it a part as high as the box, which has no mate."""
    outer = {side.word: side for side in _bag_sides(box, asked, box.height / 2.0)}
    upper = {side.word: side for side in _bag_sides(box, asked, -box.height / 2.0)}
    near, far = outer["near"].path.start, outer["far"].path.end
    return (
        Side("near_above", "near_upper", Path.line(upper["near"].path.start, near)),
        Side("near", "near_top", outer["near"].path),
        *(outer[word] for word in ("near_lower", "lower", "far_lower", "far")),
        Side("far_above", "far_top", Path.line(far, upper["far"].path.end)),
        upper["opening"],
    )


def _facing_sides(box: WeltBox, asked: WeltAsked) -> tuple[Side, ...]:
    """A strip behind the opening, from the upper line of the box down, as wide as the bag."""
    beside, half = BAG_BESIDE.value, box.height / 2.0
    sizes = Sizes(box.length + 2.0 * beside, asked.facing + half)
    return sides_of(box.placed, sizes, Point(-beside, -half))


def _facing_line(box: WeltBox, asked: WeltAsked, owner: str) -> tuple[InternalLine, ...]:
    """Where the lower edge of the facing is sewn to the inner bag."""
    lower = next(side.path for side in _facing_sides(box, asked) if side.word == "lower")
    return (InternalLine(part_name(f"{owner}_inner_bag", "facing_line"), lower, "placement"),)
