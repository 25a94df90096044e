"""The names of a bodice panel: its edges, points, darts and levels."""

from dataclasses import dataclass

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice_pieces.panel import LEG_ROLES, PART_ROLES, InnerOpening, Opening, PanelShape, Run
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import (
    CutAs,
    Edge,
    EdgeKind,
    Group,
    InnerDart,
    Intake,
    InternalLine,
    Mark,
    Piece,
    part_name,
)

_ACROSS = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))

_MEASURED_FROM = ("waist_center",)
"""Points that promises are measured from and that nobody needs on paper: the waist line shows them."""

_LEVEL_ROLES: dict[int, tuple[str, ...]] = {2: ("center", "side"), 3: ("center", "middle", "side")}


@dataclass(frozen=True, slots=True)
class DrawnPiece:
    """A piece, and its edges that are now several: name -> parts in the direction of the outline."""

    piece: Piece
    parts: dict[str, tuple[str, ...]]

    def groups(self, step: str) -> dict[str, Group]:
        """The edges that darts divide, as groups of their parts."""
        return {name: Group(members, step) for name, members in self.parts.items()}


def draw_piece(names: PanelNames, shape: PanelShape, *, center_is_seam: bool = False) -> DrawnPiece:
    """The panel with its names; a front is reflected, so that the wearer's right lies toward -x."""
    bottom = shape.runs[0].edge
    namer = _Namer(names.piece(shape.which), shape.which, bottom, center_is_seam)
    outline: list[Edge] = []
    intakes: list[Intake] = []
    parts: dict[str, tuple[str, ...]] = {}
    for run in shape.runs:
        edges, darts = namer.edges(run)
        outline.extend(edges)
        intakes.extend(darts)
        if run.openings:
            parts[namer.edge(run.edge)] = namer.parts(run)
    cut: CutAs = "pair" if center_is_seam else "fold"
    piece = Piece(
        name=namer.piece,
        title=names.title(shape.which),
        outline=tuple(outline),
        intakes=tuple(intakes),
        lines=namer.lines(shape),
        marks=namer.marks(shape),
        cut=cut,
        inner_darts=tuple(namer.inner_dart(dart.dart) for dart in shape.inner_darts),
    )
    if shape.which == "back":
        return DrawnPiece(piece, parts)
    return DrawnPiece(piece.transformed(_ACROSS), {name: members[::-1] for name, members in parts.items()})


class _Namer:
    """Gives the names of one panel."""

    def __init__(self, piece: str, which: str, bottom: str, center_is_seam: bool) -> None:
        self.piece = piece
        self._center = f"center_{which}"
        self._kinds: dict[str, EdgeKind] = {"center": "seam" if center_is_seam else "fold", "hem": "hem"}
        self._ends = {
            "waist": ("waist_center", "waist_side"),
            "hem": ("hem_center", "hem_side"),
            "side_seam": (f"{bottom}_side", "underarm"),
            "armhole": ("underarm", "shoulder_point"),
            "shoulder": ("shoulder_point", "side_neck_point"),
            "neck": ("side_neck_point", "neck_pit" if which == "front" else "nape"),
            "center": ("neck_pit" if which == "front" else "nape", f"{bottom}_center"),
        }

    def named(self, *words: str) -> str:
        return part_name(self.piece, *words)

    def edge(self, edge: str) -> str:
        return self.named(self._center if edge == "center" else edge)

    def parts(self, run: Run) -> tuple[str, ...]:
        """The names of the parts of a run."""
        whole = self.edge(run.edge)
        if not run.openings:
            return (whole,)
        return tuple(part_name(whole, role) for role in PART_ROLES[run.edge][len(run.openings)])

    def edges(self, run: Run) -> tuple[list[Edge], list[Intake]]:
        """The edges of a run with the legs of its darts, and the darts."""
        start, end = (self.named(word) for word in self._ends[run.edge])
        kind = self._kinds.get(run.edge, "seam")
        names = self.parts(run)
        first_role, second_role = LEG_ROLES.get(run.edge, ("", ""))
        edges: list[Edge] = []
        intakes: list[Intake] = []
        for index, (name, path) in enumerate(zip(names, run.parts, strict=True)):
            opening = run.openings[index] if index < len(run.openings) else None
            stop = end if opening is None else self.named(opening.dart, f"{first_role}_mouth")
            edges.append(Edge(name, path, start, stop, kind))
            if opening is not None:
                start = self.named(opening.dart, f"{second_role}_mouth")
                legs, intake = self._dart(run.edge, opening, stop, start)
                edges.extend(legs)
                intakes.append(intake)
        return edges, intakes

    def _dart(self, edge: str, opening: Opening, first: str, second: str) -> tuple[tuple[Edge, Edge], Intake]:
        roles = LEG_ROLES[edge]
        names = [self.named(opening.dart, f"{role}_leg") for role in roles]
        point = self.named(opening.dart, "point")
        legs = (
            Edge(names[0], Path.line(opening.first, opening.point), first, point, "leg"),
            Edge(names[1], Path.line(opening.point, opening.second), point, second, "leg"),
        )
        # Upright darts are pressed toward the center, the others down.
        toward_first = roles[0] in ("center", "lower")
        intake = Intake(
            self.named(opening.dart),
            self.edge(edge),
            names[0],
            names[1],
            point,
            "first_leg" if toward_first else "second_leg",
        )
        return legs, intake

    def lines(self, shape: PanelShape) -> tuple[InternalLine, ...]:
        """The levels and the legs of the inner darts."""
        levels = [line for level in shape.levels for line in self._level(level.word, level.parts)]
        legs = [leg for dart in shape.inner_darts for leg in self._inner_legs(dart)]
        return (*levels, *legs)

    def marks(self, shape: PanelShape) -> tuple[Mark, ...]:
        """The named points inside, and those of the inner darts."""
        inner = [
            (f"{dart.dart}/{word}", point)
            for dart in shape.inner_darts
            for word, point in (
                ("upper_point", dart.upper),
                ("lower_point", dart.lower),
                ("center_mouth", dart.first),
            )
        ]
        return tuple(
            Mark(self.named(word), point, "datum" if word in _MEASURED_FROM else "point")
            for word, point in (*shape.marks, *inner)
        )

    def inner_dart(self, dart: str) -> InnerDart:
        """A dart with two points, by the names of its legs and points."""
        return InnerDart(
            self.named(dart),
            self.named(dart, "center_leg"),
            self.named(dart, "side_leg"),
            self.named(dart, "upper_point"),
            self.named(dart, "lower_point"),
        )

    def _inner_legs(self, dart: InnerOpening) -> list[InternalLine]:
        return [
            InternalLine(
                self.named(dart.dart, f"{role}_leg"),
                Path.polyline([dart.upper, mouth, dart.lower]),
                "dart_leg",
            )
            for role, mouth in (("center", dart.first), ("side", dart.second))
        ]

    def _level(self, word: str, parts: tuple[Path, ...]) -> list[InternalLine]:
        """A level line, or its parts from the center outward."""
        name = self.named(word)
        if len(parts) == 1:
            return [InternalLine(name, parts[0])]
        return [
            InternalLine(part_name(name, role), part)
            for role, part in zip(_LEVEL_ROLES[len(parts)], parts, strict=True)
        ]
