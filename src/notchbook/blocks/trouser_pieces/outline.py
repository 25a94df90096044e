"""The names of a trouser panel: its edges, points, darts, levels and the crease."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks._waist_edges import waist_edges
from notchbook.blocks.legs.shapes import TrouserPanel
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge, EdgeKind, Group, InternalLine, Mark, Piece

_ACROSS = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))

_BEYOND = 10.0
"""mm by which a line is drawn beyond the outline to find where it meets it."""

HIP_SIDE, HIP_CENTER = "hip_side", "hip_center"
"""Where the hip line meets the side seam and the straight center, drawn on: measured between, not marked. The
crotch curve may begin above the hip; the cloth then reaches farther than the center, and so does the line."""


@dataclass(frozen=True, slots=True)
class DrawnPanel:
    """A piece, the name of its waist and those of the waist's parts in the direction of the outline (empty:
    one edge)."""

    piece: Piece
    waist: str
    waist_parts: tuple[str, ...]

    def groups(self, step: str) -> dict[str, Group]:
        """The waist as a group of its parts between the darts."""
        return {self.waist: Group(self.waist_parts, step)} if self.waist_parts else {}


def draw_panel(names: PanelNames, which: str, panel: TrouserPanel, least_mouth: float) -> DrawnPanel:
    """The panel of the wearer's right leg, face up, cut as a pair; its crease at x = 0.

    The side seam of the front lies toward -x, that of the back toward +x. The crease ends at a dart that is
    at least ``least_mouth`` wide, mm, and runs past any other.
    """
    waist = waist_edges(names.piece(which), panel.waist, tuple(dart.point for dart in panel.waist_darts))
    piece = Piece(
        name=names.piece(which),
        title=names.title(which),
        outline=(*_edges(names, which, panel), *waist.edges),
        intakes=waist.intakes,
        lines=tuple(_lines(names, which, panel, least_mouth)),
        marks=(
            Mark(names.at(which, HIP_SIDE), panel.hip_side, "datum"),
            Mark(names.at(which, HIP_CENTER), panel.hip_center, "datum"),
        ),
        cut="pair",
    )
    if which == "back":
        return DrawnPanel(piece, names.at(which, "waist"), waist.parts)
    return DrawnPanel(piece.transformed(_ACROSS), names.at(which, "waist"), waist.parts[::-1])


def _edges(names: PanelNames, which: str, panel: TrouserPanel) -> Iterator[Edge]:
    """Crotch seam, inseam, hem and side seam, counter-clockwise from the waist at the center."""

    def edge(word: str, path: Path, start: str, end: str, kind: EdgeKind = "seam") -> Edge:
        return Edge(names.at(which, word), path, names.at(which, start), names.at(which, end), kind)

    yield edge("crotch_seam", panel.crotch, "waist_center", "crotch_point")
    yield edge("inseam", panel.inseam, "crotch_point", "hem_inseam")
    yield edge("hem", panel.hem.reversed(), "hem_inseam", "hem_side", "hem")
    yield edge("side_seam", panel.side.reversed(), "hem_side", "waist_side")


def _lines(names: PanelNames, which: str, panel: TrouserPanel, least_mouth: float) -> Iterator[InternalLine]:
    """The levels, each from the crotch seam or the inseam to the side, and the crease."""
    hip = Path.line(_on_level(panel.crotch, panel.hip) or panel.hip_center, panel.hip_side)
    yield InternalLine(names.at(which, "hip_line"), hip)
    crotch = Path.line(_on_level(panel.crotch, 0.0) or panel.crotch_point, panel.crotch_side)
    yield InternalLine(names.at(which, "crotch_line"), crotch)
    if panel.knee_inseam is not None and panel.knee_side is not None:
        yield InternalLine(names.at(which, "knee_line"), Path.line(panel.knee_inseam, panel.knee_side))
    yield InternalLine(names.at(which, "crease_line"), _crease(panel, least_mouth), "placement")


def _on_level(path: Path, level: float) -> Point | None:
    """Where the path first meets a level; None where it does not."""
    box = path.bounds()
    across = Path.line(Point(box.min_x - _BEYOND, level), Point(box.max_x + _BEYOND, level))
    return next((crossing.point for crossing in path.intersections(across)), None)


def _crease(panel: TrouserPanel, least_mouth: float) -> Path:
    """From the hem straight up along the grain to the waist, or to the dart that stands there."""
    top = max(part.bounds().max_y for part in panel.waist) + _BEYOND
    bottom = panel.hem.bounds().min_y - _BEYOND
    upright = Path.line(Point(0.0, bottom), Point(0.0, top))
    hem = [crossing.point.y for crossing in panel.hem.intersections(upright)]
    met = (*panel.waist, *_legs(panel, least_mouth))
    above = [crossing.point.y for path in met for crossing in path.intersections(upright)]
    return Path.line(Point(0.0, max(hem, default=bottom)), Point(0.0, min(above, default=panel.hip)))


def _legs(panel: TrouserPanel, least_mouth: float) -> Iterator[Path]:
    for dart, mouth in zip(panel.waist_darts, panel.intakes, strict=True):
        if mouth >= least_mouth:
            yield Path.line(dart.first, dart.point)
            yield Path.line(dart.point, dart.second)
