"""A strip of the cloth along the opening of a pocket in a seam, laid on its bag so that no lining shows."""

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform, curve_between
from notchbook.pattern import CutInstruction, InternalLine, Piece, part_name, spoken
from notchbook.style._outlined import Side
from notchbook.style.pockets.figures import FACING_LEAST
from notchbook.style.pockets.ring import ring_piece
from notchbook.style.traced.opening_cut import Opening


def bag_facing(cut: Opening, bag: Piece, width: float) -> tuple[Piece, InternalLine]:
    """The strip, so wide (mm), and the line on the bag along which its free edge is stitched down.

    StepRefused ``pocket-facing-narrow``; ``pocket-facing-wide`` where it would not lie on the bag.
    """
    if width < FACING_LEAST.value:
        raise StepRefused("pocket-facing-narrow", width=width, least=FACING_LEAST.value)
    upper = bag.edge(part_name(bag.name, "upper")).path
    upper = upper if upper.start == cut.down.start else upper.reversed()
    end = cut.down.end + cut.inward * width
    if width >= upper.length or not bag.sew_line.contains(end):
        raise StepRefused("pocket-facing-wide", bag=spoken(bag.name), width=width)
    free = _beside(cut.down, upper.point_at(width), end)
    sides = (
        Side("opening", "opening_top", cut.down),
        Side("lower", "opening_end", Path.line(cut.down.end, free.end), "plain"),
        Side("edge", "lower_inner", free.reversed(), "plain"),
        Side("upper", "upper_inner", upper.split_at(width)[0].reversed(), "plain"),
    )
    called = f"{cut.piece.title} pocket facing", (CutInstruction(),)
    name = f"{bag.name}_facing"
    piece = ring_piece(name, called, sides, cut.piece, clockwise=not cut.runs_down)
    return piece, InternalLine(part_name(bag.name, "facing_line"), free, "placement")


def _beside(opening: Path, start: Point, end: Point) -> Path:
    """A line between two other places, bent as the opening is."""
    moved = opening.transformed(Transform.carrying(opening.start, opening.end, start, end))
    leaving, arriving = moved.tangent_at(0.0), moved.tangent_at(moved.length)
    return Path.of(curve_between(start, leaving.direction(), end, arriving.direction()))
