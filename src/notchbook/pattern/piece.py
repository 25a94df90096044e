"""A piece: a closed outline of named edges on the sew line, and all that is drawn on it."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Literal

from notchbook.errors import HouseFault
from notchbook.geometry import Box, Path, Point, Transform, direction
from notchbook.pattern.names import Side
from notchbook.units import TOLERANCES

EdgeKind = Literal["seam", "fold", "hem", "leg", "plain"]
"""What happens at an edge: sewn to another, lies on the fold, turned up, dart leg, none of these."""

CutAs = Literal["fold", "pair", "single"]
"""``fold``: half of a whole piece, drawn to its fold; ``pair``: left and right are reflections of
each other; ``single``: as drawn, once."""

LineKind = Literal[
    "level",
    "fold_line",
    "placement",
    "match",
    "dart_leg",
    "buttonhole",
    "stitch_line",
    "roll_line",
    "cut_line",
]
"""``buttonhole`` from its end toward the edge to the other, ``stitch_line`` where stitches show or hold (the
J of a fly), ``roll_line`` where a lapel turns back, ``cut_line`` a slash inside the piece (a welt pocket)."""

PartKind = Literal["piece", "edge", "point", "intake", "inner_dart", "line", "mark"]
"""What a name that lives on a piece can name."""

MarkKind = Literal["point", "drill", "datum", "button"]
"""``button`` is where a button is sewn on: its middle."""

IntakeKind = Literal["dart", "tuck", "pleat", "gather", "ease"]
"""How cloth is taken up: sewn to a point, folded and stitched down, folded at the edge, drawn in to small
folds, drawn in without any."""


@dataclass(frozen=True, slots=True)
class Edge:
    """One named side of a piece on the sew line, running counter-clockwise round it.

    ``start`` and ``end`` are the names of the points at its ends; neighbouring edges share them.
    """

    name: str
    path: Path
    start: str
    end: str
    kind: EdgeKind = "seam"

    @property
    def length(self) -> float:
        """Length along the sew line, mm."""
        return self.path.length

    def transformed(self, motion: Transform) -> "Edge":
        """The edge moved by a motion; the names and the direction of travel stay."""
        return replace(self, path=self.path.transformed(motion))

    def reversed(self) -> "Edge":
        """The edge run the other way; its ends change places."""
        return Edge(self.name, self.path.reversed(), self.end, self.start, self.kind)


@dataclass(frozen=True, slots=True)
class Intake:
    """Cloth taken up when sewn. ``mouth`` is the edge or group that it is taken up from.

    A *dart* has two legs: ``first_leg`` runs from the mouth to the point, ``second_leg`` back, both
    counter-clockwise in the outline; sewn, they lie on each other. A *tuck* or *pleat* has two legs as well,
    which are the edge in the fold, up to the inner fold (``point``) and back; ``first_line`` and
    ``second_line`` are internal lines from the start of the first and from the end of the second leg into the
    piece, and closed the second line lies on the first. It is ``stitched`` down so far from the mouth, mm.
    ``fold_toward`` is the leg on whose side the folded cloth lies.

    A *gather* and an *ease* have no legs: ``edge`` is a part of the mouth that is ``amount`` mm shorter when
    sewn, drawn in evenly from end to end.

    An intake of 0 keeps all its names.
    """

    name: str
    mouth: str
    first_leg: str = ""
    second_leg: str = ""
    point: str = ""
    fold_toward: Literal["first_leg", "second_leg"] = "second_leg"
    kind: IntakeKind = "dart"
    first_line: str = ""
    second_line: str = ""
    stitched: float = 0.0
    edge: str = ""
    amount: float = 0.0

    @property
    def has_legs(self) -> bool:
        """Whether the outline goes in and out again: a dart, tuck or pleat."""
        return self.kind in ("dart", "tuck", "pleat")

    @property
    def is_folded(self) -> bool:
        """Whether it lies in a fold between two lines: a tuck or pleat."""
        return self.kind in ("tuck", "pleat")

    @property
    def is_drawn_in(self) -> bool:
        """Whether an edge is drawn in: a gather or an ease."""
        return self.kind in ("gather", "ease")

    def relined(self, renamed: Mapping[str, str]) -> "Intake":
        """The intake with the names that its fold lines have now: a line that was cut goes on under the name
        of its part beside the mouth."""
        first, second = (renamed.get(line, line) for line in (self.first_line, self.second_line))
        return replace(self, first_line=first, second_line=second)

    def renamed(self, rename: Callable[[str], str]) -> "Intake":
        """The intake with every name passed through ``rename``."""

        def named(name: str) -> str:
            return rename(name) if name else ""

        return replace(
            self,
            name=named(self.name),
            mouth=named(self.mouth),
            first_leg=named(self.first_leg),
            second_leg=named(self.second_leg),
            point=named(self.point),
            first_line=named(self.first_line),
            second_line=named(self.second_line),
            edge=named(self.edge),
        )


@dataclass(frozen=True, slots=True)
class InnerDart:
    """A dart with two points that lies wholly inside the piece, widest at the waist.

    ``center_leg`` and ``side_leg`` name internal lines of kind ``dart_leg``, each running from the upper
    point over the mouth to the lower point; they are sewn to each other. ``upper_point`` and
    ``lower_point`` name marks. A dart that takes up nothing keeps all its names.
    """

    name: str
    center_leg: str
    side_leg: str
    upper_point: str
    lower_point: str
    fold_toward: Literal["center_leg", "side_leg"] = "center_leg"


@dataclass(frozen=True, slots=True)
class InternalLine:
    """A line drawn inside the piece: a level (hip line), a fold line, a placement, a leg of an inner dart, a
    buttonhole."""

    name: str
    path: Path
    kind: LineKind = "level"


@dataclass(frozen=True, slots=True)
class Mark:
    """A named point of the piece; ``drill`` is marked by a hole when cut, a ``datum`` is measured from
    and not marked at all."""

    name: str
    position: Point
    kind: MarkKind = "point"


@dataclass(frozen=True, slots=True)
class Grain:
    """Direction of the warp in the frame of the piece, degrees; 90 is along +y."""

    degrees: float = 90.0
    one_way: bool = False


@dataclass(frozen=True, slots=True)
class CutInstruction:
    """In which material the piece is cut, and how many times the piece (or pair) is taken."""

    material: str = "self"
    times: int = 1


@dataclass(frozen=True)
class Piece:
    """A pattern piece on the sew line.

    The outline is closed and runs counter-clockwise; the piece has its own frame (mm, y up, grain
    along +y, from a landmark of its own). ``rule`` names the derived rule that made it, if any;
    ``stretches`` is said of a piece that was drafted for cloth that gives.
    """

    name: str
    title: str
    outline: tuple[Edge, ...]
    intakes: tuple[Intake, ...] = ()
    lines: tuple[InternalLine, ...] = ()
    marks: tuple[Mark, ...] = ()
    inner_darts: tuple[InnerDart, ...] = ()
    grain: Grain = field(default_factory=Grain)
    cut: CutAs = "single"
    side: Side = "both"
    instructions: tuple[CutInstruction, ...] = (CutInstruction(),)
    rule: str | None = None
    stretches: bool = False

    def __post_init__(self) -> None:
        if not self.outline:
            raise HouseFault("outline-empty", piece=self.name)
        for edge, following in zip(self.outline, (*self.outline[1:], self.outline[0]), strict=True):
            gap = edge.path.end.distance_to(following.path.start)
            if edge.end != following.start or gap > TOLERANCES.join:
                raise HouseFault(
                    "outline-open", piece=self.name, first=edge.name, second=following.name, gap=gap
                )

    @cached_property
    def _by_name(self) -> dict[str, Edge]:
        return {edge.name: edge for edge in self.outline}

    @cached_property
    def sew_line(self) -> Path:
        """The whole outline as one closed path."""
        return Path(tuple(segment for edge in self.outline for segment in edge.path.segments))

    @property
    def bounds(self) -> Box:
        """The box round the sew line."""
        return self.sew_line.bounds()

    @cached_property
    def points(self) -> dict[str, Point]:
        """Every named point: corners of the outline and marks."""
        found = {edge.start: edge.path.start for edge in self.outline}
        found.update({mark.name: mark.position for mark in self.marks})
        return found

    def has_edge(self, name: str) -> bool:
        """Whether the outline has the edge."""
        return name in self._by_name

    def edge(self, name: str) -> Edge:
        """The edge with this name; KeyError when the outline has none."""
        return self._by_name[name]

    def intake(self, name: str) -> Intake:
        """The intake with this name; KeyError when there is none."""
        return {found.name: found for found in self.intakes}[name]

    def line(self, name: str) -> InternalLine:
        """The internal line with this name; KeyError when there is none."""
        return {found.name: found for found in self.lines}[name]

    @property
    def darts(self) -> tuple[Intake, ...]:
        """The intakes that are darts."""
        return tuple(intake for intake in self.intakes if intake.kind == "dart")

    def edge_index(self, name: str) -> int:
        """Where the edge stands in the outline (for walking round it, never to be stored)."""
        return next(index for index, edge in enumerate(self.outline) if edge.name == name)

    def edge_before(self, name: str) -> Edge:
        """The edge that ends where this one begins."""
        return self.outline[self.edge_index(name) - 1]

    def edge_after(self, name: str) -> Edge:
        """The edge that begins where this one ends."""
        return self.outline[(self.edge_index(name) + 1) % len(self.outline)]

    def with_edges(self, *edges: Edge) -> "Piece":
        """The piece with these edges in place of its own of the same names."""
        drawn = {edge.name: edge for edge in edges}
        return replace(self, outline=tuple(drawn.get(edge.name, edge) for edge in self.outline))

    def with_intake(self, intake: Intake) -> "Piece":
        """The piece with this intake in place of its own of the same name."""
        return replace(
            self, intakes=tuple(intake if one.name == intake.name else one for one in self.intakes)
        )

    @cached_property
    def named(self) -> tuple[tuple[str, PartKind], ...]:
        """Every name that lives on this piece and what it names, the piece's own first."""
        found: list[tuple[str, PartKind]] = [(self.name, "piece")]
        for edge in self.outline:
            found += ((edge.name, "edge"), (edge.start, "point"))
        found += ((intake.name, "intake") for intake in self.intakes)
        found += ((line.name, "line") for line in self.lines)
        found += ((mark.name, "mark") for mark in self.marks)
        found += ((dart.name, "inner_dart") for dart in self.inner_darts)
        return tuple(found)

    def names(self) -> Iterator[str]:
        """Every name that lives on this piece, the piece's own first."""
        return (name for name, _ in self.named)

    def transformed(self, motion: Transform) -> "Piece":
        """The piece moved rigidly; a reflection keeps the outline counter-clockwise."""
        outline = tuple(edge.transformed(motion) for edge in self.outline)
        intakes = self.intakes
        if motion.is_reflection:
            outline = tuple(edge.reversed() for edge in reversed(outline))
            intakes = tuple(_reversed_intake(intake) for intake in self.intakes)
        return replace(
            self,
            outline=outline,
            intakes=intakes,
            lines=tuple(replace(line, path=line.path.transformed(motion)) for line in self.lines),
            marks=tuple(replace(mark, position=motion.apply(mark.position)) for mark in self.marks),
            grain=replace(self.grain, degrees=_turned(self.grain.degrees, motion)),
        )

    def renamed(self, rename: Callable[[str], str]) -> "Piece":
        """The piece with every name passed through ``rename`` (used when a side is added)."""
        return replace(
            self,
            name=rename(self.name),
            outline=tuple(
                Edge(rename(e.name), e.path, rename(e.start), rename(e.end), e.kind) for e in self.outline
            ),
            intakes=tuple(intake.renamed(rename) for intake in self.intakes),
            lines=tuple(replace(line, name=rename(line.name)) for line in self.lines),
            marks=tuple(replace(mark, name=rename(mark.name)) for mark in self.marks),
            inner_darts=tuple(
                InnerDart(
                    rename(dart.name),
                    rename(dart.center_leg),
                    rename(dart.side_leg),
                    rename(dart.upper_point),
                    rename(dart.lower_point),
                    dart.fold_toward,
                )
                for dart in self.inner_darts
            ),
        )


def _reversed_intake(intake: Intake) -> Intake:
    other: Literal["first_leg", "second_leg"] = (
        "first_leg" if intake.fold_toward == "second_leg" else "second_leg"
    )
    if not intake.has_legs:
        return intake
    return replace(
        intake,
        first_leg=intake.second_leg,
        second_leg=intake.first_leg,
        first_line=intake.second_line,
        second_line=intake.first_line,
        fold_toward=other,
    )


def _turned(degrees: float, motion: Transform) -> float:
    """The grain direction after a motion, degrees in (-180, 180]."""
    along = motion.apply(direction(degrees)) - motion.apply(Point(0.0, 0.0))
    return along.direction()
