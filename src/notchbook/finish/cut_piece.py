"""A cut piece: everything that is drawn on the paper pattern of one piece."""

from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from notchbook.finish.chain import chained
from notchbook.geometry import Box, Path, Point, Transform
from notchbook.pattern import CutAs, Finding, InternalLine, Mark, NotchKind, Side


@dataclass(frozen=True, slots=True)
class CutEdge:
    """One edge on both lines. ``name`` is the edge's, with a side added on the two halves of a whole
    piece; ``source`` is its name on the pattern. ``cut`` is the part of the cut line that the edge
    answers for, corners left out; None where the edge is swallowed by its neighbors' allowance.
    ``width`` is the allowance, mm.
    """

    name: str
    source: str
    kind: str
    allowance_class: str
    width: float
    sew: Path
    cut: Path | None


@dataclass(frozen=True, slots=True)
class CutNotch:
    """A notch: its place on the sew line and where it is slit into the cut line.

    ``direction`` is the unit vector from the cut line into the allowance, ``depth`` the length of the
    slit, mm; 0 where the allowance is too narrow to be slit: then the place is marked by a pencil line
    across the allowance. ``double`` notches are two slits, ``spacing`` apart, centered on the place.
    """

    name: str
    edge: str
    kind: NotchKind
    sew_position: Point
    cut_positions: tuple[Point, ...]
    direction: Point
    depth: float
    purpose: str = ""


@dataclass(frozen=True, slots=True)
class DrillHole:
    """A hole drilled through the plies: its center and diameter, mm."""

    name: str
    position: Point
    diameter: float


@dataclass(frozen=True, slots=True)
class DartLines:
    """The stitching lines of one dart: first leg to the point and second leg back; and its fold.

    In a double-ended dart the first leg runs from the upper point down to the lower, the second back.
    """

    name: str
    first_leg: Path
    second_leg: Path
    fold: Path


@dataclass(frozen=True, slots=True)
class FoldLines:
    """How one tuck or pleat is laid: an arrow from its fold line to its placement line, and the lines along
    which it is stitched down (none for a pleat held at the edge alone). ``placement`` names the line on which
    the fold is laid."""

    name: str
    arrow: Path
    stitches: tuple[Path, ...]
    placement: str


@dataclass(frozen=True, slots=True)
class GrainLine:
    """The grain line; ``one_way`` has one arrow head (at ``end``), else two."""

    start: Point
    end: Point
    one_way: bool

    @property
    def degrees(self) -> float:
        """The direction of the grain in the frame of the piece."""
        return (self.end - self.start).direction()


@dataclass(frozen=True, slots=True)
class FoldLine:
    """Where the piece is folded: ``on_fold`` when this line lies on the fold of the cloth (bracket);
    else it is the center line of a piece supplied whole. ``name`` is the fold edge's."""

    name: str
    path: Path
    on_fold: bool


@dataclass(frozen=True, slots=True)
class LabelBox:
    """Free room for the label: ``length`` along the reading direction, ``height`` across it, mm, centered
    on ``center`` and turned by ``degrees`` (90 reads upward). ``is_clear`` is False where no room was
    free of other lines."""

    center: Point
    length: float
    height: float
    degrees: float
    is_clear: bool

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """The corners, from the lower left of the words round counter-clockwise."""
        along = Point(self.length / 2.0, 0.0).rotated(self.degrees)
        up = Point(0.0, self.height / 2.0).rotated(self.degrees)
        middle = self.center
        return middle - along - up, middle + along - up, middle + along + up, middle - along + up


@dataclass(frozen=True, slots=True)
class Quantity:
    """How often the piece is cut in one material: the words for the cutter and the count of panels."""

    material: str
    text: str
    panels: int


@dataclass(frozen=True)
class CutPiece:
    """A cut-ready piece in its own frame (mm, y up). ``cut_line`` is closed, counter-clockwise.

    ``number`` counts from 1 to ``of``. ``findings`` say what finishing could not do as asked. ``tag`` is room
    on the paper outside the cut line for what the label has no room for; the papers set it aside.
    """

    name: str
    title: str
    number: int
    of: int
    side: Side
    cut_as: CutAs
    supplied: Literal["whole", "on fold", "as drawn"]
    edges: tuple[CutEdge, ...]
    cut_line: Path
    notches: tuple[CutNotch, ...]
    drills: tuple[DrillHole, ...]
    darts: tuple[DartLines, ...]
    grain: GrainLine
    fold: FoldLine | None
    lines: tuple[InternalLine, ...]
    marks: tuple[Mark, ...]
    label: LabelBox
    quantities: tuple[Quantity, ...]
    findings: tuple[Finding, ...] = ()
    folds: tuple[FoldLines, ...] = ()
    tag: LabelBox | None = None

    @cached_property
    def sew_line(self) -> Path:
        """The sew line with the dart legs left out of it: where two lines of stitches do not meet at a
        dart mouth, a straight line crosses it."""
        return chained((edge.sew for edge in self.edges), closed=True)

    @cached_property
    def bounds(self) -> Box:
        """The box round the cut line."""
        return self.cut_line.bounds()

    def drawn_bounds(self, motion: Transform | None = None) -> Box:
        """The box round the cut line and the tag beside it, moved by a motion."""
        motion = motion or Transform.identity()
        corners = () if self.tag is None else self.tag.corners
        box = self.cut_line.transformed(motion).bounds()
        return Box.around(
            (Point(box.min_x, box.min_y), Point(box.max_x, box.max_y), *map(motion.apply, corners))
        )

    @property
    def panels(self) -> int:
        """How many panels of cloth are cut from this piece, all materials together."""
        return sum(quantity.panels for quantity in self.quantities)

    def edge(self, name: str) -> CutEdge:
        """The edge with this name, or the first one that comes from it; KeyError when there is none."""
        for edge in self.edges:
            if name in (edge.name, edge.source):
                return edge
        raise KeyError(name)
