"""The pieces behind a slanted opening: under piece, facing, outer and inner bag."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notchbook.geometry import Path
from notchbook.pattern import CutInstruction, InternalLine, Piece, part_name
from notchbook.style._outlined import Side
from notchbook.style.pockets.corner_walks import CornerWalks
from notchbook.style.pockets.ring import ring_piece
from notchbook.style.pockets.slant_cut import SlantCut
from notchbook.style.pockets.slant_shape import SlantAsked, SlantShape, bowed, facing_below

_SELF = (CutInstruction(),)


@dataclass(frozen=True, slots=True)
class SlantPieces:
    """The four pieces: the cut-off corner as it goes on under the piece, and what lies behind it."""

    under: Piece
    facing: Piece
    outer_bag: Piece
    inner_bag: Piece

    @property
    def all_pieces(self) -> tuple[Piece, ...]:
        """In the order in which they are put into the pattern."""
        return (self.under, self.facing, self.outer_bag, self.inner_bag)


@dataclass(frozen=True, slots=True)
class _Work:
    walks: CornerWalks
    shape: SlantShape
    asked: SlantAsked
    owner: str
    material: str

    def piece(
        self,
        word: str,
        title: str,
        cut: tuple[CutInstruction, ...],
        sides: Sequence[Side],
        lines: tuple[InternalLine, ...] = (),
    ) -> Piece:
        """A piece of these sides, which run as the outline does where that comes along the waist to the
        side."""
        below = self.walks.piece
        return ring_piece(
            f"{self.owner}_{word}",
            (f"{below.title} {title}", cut),
            sides,
            below,
            clockwise=not self.walks.runs_to_side,
            lines=lines,
        )

    def waist(self, start: float, end: float) -> Path:
        """The waist from farther to nearer the side; mm from the corner, darts closed."""
        return self.walks.waist.between(end, start).reversed()

    def raised(self, start: float) -> Path:
        """The raised waist from so far from the corner to the opening."""
        return self.shape.raised.between(0.0, start - self.asked.along_waist).reversed()

    def side(self, start: float, end: float) -> Path:
        """The side from nearer to farther from the waist, mm from the corner."""
        return self.walks.side.between(start, end)


def slant_pieces(
    walks: CornerWalks, shape: SlantShape, asked: SlantAsked, cut: SlantCut, called: tuple[str, str]
) -> SlantPieces:
    """The pieces; ``called``: the owner of their names, and the material of the bags."""
    work = _Work(walks, shape, asked, *called)
    bags = (CutInstruction(called[1]),)
    return SlantPieces(
        _under(work, cut),
        work.piece("facing", "pocket facing", _SELF, _facing(work)),
        work.piece("outer_bag", "outer bag", bags, _outer_bag(work), _facing_line(work, "outer_bag")),
        work.piece("inner_bag", "inner bag", bags, _inner_bag(work), _under_line(work, "inner_bag")),
    )


def _ends(work: _Work) -> tuple[float, float]:
    """How far from the corner the facing ends: along the waist, and down the side."""
    asked = work.asked
    return asked.along_waist + asked.facing, asked.down_side + facing_below(asked)


def _free(work: _Work, top: Path) -> tuple[Path, Path]:
    """The lower end of the facing, from the side inward, and its free edge up to the waist at ``top``."""
    corner = work.shape.facing_corner
    lower = Path.line(work.walks.side.point_at(_ends(work)[1]), corner)
    edge = bowed(corner, top.start, work.asked.bow, away_from=work.walks.waist.start)
    return lower, edge


def _under(work: _Work, cut: SlantCut) -> Piece:
    """The corner, with what reaches on below the piece; its parts of waist and side keep their names."""
    asked, walks = work.asked, work.walks
    along, down = _ends(work)
    upper = work.waist(along, asked.along_waist)
    lower, edge = _free(work, upper)
    name = f"{work.owner}_under"
    sides = (
        Side("upper", "upper_inner", upper),
        Side("", "opening_top", work.waist(asked.along_waist, 0.0), keeps=cut.outer.name),
        Side("", "", work.side(0.0, asked.down_side), keeps=cut.above.name, from_point=walks.corner),
        Side("side", "opening_end", work.side(asked.down_side, down)),
        Side("lower", "lower_side", lower, "plain"),
        Side("edge", "lower_inner", edge, "plain"),
    )
    line = InternalLine(part_name(name, "opening_line"), work.shape.line, "placement")
    made = work.piece("under", "side piece", _SELF, sides, (line, *cut.lines))
    return replace(made, rule=None, marks=cut.marks)


def _facing(work: _Work) -> tuple[Side, ...]:
    along, down = _ends(work)
    upper = work.raised(along)
    lower, edge = _free(work, upper)
    return (
        Side("upper", "upper_inner", upper),
        Side("opening", "opening_top", work.shape.opening),
        Side("side", "opening_end", work.side(work.asked.down_side, down)),
        Side("lower", "lower_side", lower, "plain"),
        Side("edge", "lower_inner", edge, "plain"),
    )


def _outer_bag(work: _Work) -> tuple[Side, ...]:
    asked = work.asked
    return (
        Side("upper", "upper_inner", work.raised(asked.bag_width)),
        Side("opening", "opening_top", work.shape.opening),
        Side("side", "opening_end", work.side(asked.down_side, asked.down_side + asked.bag_below)),
        Side("bag", "bag_bottom", work.shape.bag),
    )


def _inner_bag(work: _Work) -> tuple[Side, ...]:
    asked = work.asked
    return (
        Side("upper", "upper_inner", work.waist(asked.bag_width, 0.0)),
        Side("side", "corner", work.side(0.0, asked.down_side + asked.bag_below)),
        Side("bag", "bag_bottom", work.shape.bag),
    )


def _facing_line(work: _Work, bag: str) -> tuple[InternalLine, ...]:
    """Where the free edge of the facing is sewn to the bag."""
    lower, edge = _free(work, work.raised(_ends(work)[0]))
    return (_line(work, bag, lower, edge),)


def _under_line(work: _Work, bag: str) -> tuple[InternalLine, ...]:
    """Where the free edge of the under piece is sewn to the bag."""
    lower, edge = _free(work, work.waist(_ends(work)[0], 0.0))
    return (_line(work, bag, lower, edge),)


def _line(work: _Work, bag: str, lower: Path, edge: Path) -> InternalLine:
    path = lower.joined(edge.with_start(lower.end))
    return InternalLine(part_name(f"{work.owner}_{bag}", "facing_line"), path, "placement")
