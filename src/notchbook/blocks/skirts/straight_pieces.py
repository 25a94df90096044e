"""The straight skirt as pieces: outlines, names, seams and cut data of a drafted half."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.blocks._closed_waist import Panel
from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks._waist_edges import waist_edges
from notchbook.blocks.skirts.figures import usual_skirt_ease
from notchbook.blocks.skirts.halves import Half
from notchbook.blocks.skirts.hem import PanelBelow, straight_below
from notchbook.blocks.skirts.yoke import yoke_lines
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeKind,
    EdgeUse,
    Group,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
)
from notchbook.pattern.expectation import Expectation

_ACROSS = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))


@dataclass(frozen=True, slots=True)
class DraftedPiece:
    """A piece and the names of its waist parts in the direction of the outline (empty: one edge)."""

    piece: Piece
    waist: str
    waist_parts: tuple[str, ...]

    def groups(self, step: str) -> dict[str, Group]:
        """The waist as a group of its parts between the darts."""
        return {self.waist: Group(self.waist_parts, step)} if self.waist_parts else {}

    def lifted(self, by: float) -> "DraftedPiece":
        """The piece moved up, mm: where the two hips lie at different heights, so do the halves."""
        if by == 0.0:
            return self
        return replace(self, piece=self.piece.transformed(Transform.translation(0.0, by)))


def back_piece(
    names: PanelNames,
    panel: Panel,
    hem: float,
    *,
    center_is_seam: bool = True,
    drawn: PanelBelow | None = None,
    yoke_depth: float | None = None,
) -> DraftedPiece:
    """The back: center at x = 0, the wearer's right side toward +x, hip line at y = 0.

    Below the hip it runs straight down to ``hem`` (y), or as it was ``drawn``. ``yoke_depth`` (mm below the
    waist) draws where a yoke would end.
    """
    below = drawn or straight_below(panel, hem)
    return _piece(names, "back", panel, below, yoke_depth, center_is_seam=center_is_seam)


def front_piece(
    names: PanelNames,
    panel: Panel,
    hem: float,
    *,
    drawn: PanelBelow | None = None,
    yoke_depth: float | None = None,
) -> DraftedPiece:
    """The front: center on the fold at x = 0, the wearer's right side toward -x; else as the back."""
    below = drawn or straight_below(panel, hem)
    front = _piece(names, "front", panel, below, yoke_depth, center_is_seam=False)
    return DraftedPiece(front.piece.transformed(_ACROSS), front.waist, front.waist_parts[::-1])


def _piece(
    names: PanelNames,
    which: str,
    panel: Panel,
    below: PanelBelow,
    yoke_depth: float | None,
    *,
    center_is_seam: bool,
) -> DraftedPiece:
    name = names.piece(which)
    center_kind: EdgeKind = "seam" if center_is_seam else "fold"

    def at(word: str) -> str:
        return part_name(name, word)

    outline = [
        Edge(
            at(f"center_{which}"),
            Path.line(panel.parts[0].start, below.hem.start),
            at("waist_center"),
            at("hem_center"),
            center_kind,
        ),
        Edge(at("hem"), below.hem, at("hem_center"), at("hem_side"), "hem"),
        Edge(at("side_seam"), Path((*below.side.segments, panel.side)), at("hem_side"), at("waist_side")),
    ]
    waist = waist_edges(name, panel.parts, panel.points)
    hip = Path.line(Point(0.0, 0.0), Point(panel.side.start.x, 0.0))
    return DraftedPiece(
        Piece(
            name=name,
            title=names.title(which),
            outline=(*outline, *waist.edges),
            intakes=waist.intakes,
            lines=(InternalLine(at("hip_line"), hip, "level"), *yoke_lines(name, panel, yoke_depth)),
            cut="pair" if center_is_seam else "fold",
        ),
        at("waist"),
        waist.parts,
    )


def seams(names: PanelNames) -> tuple[Seam, ...]:
    """The side seam, and the center back seam between the wearer's two sides."""
    center, top = names.at("back", "center_back"), names.at("back", "waist_center")
    return (
        side_seam(names),
        Seam(
            names.whole("center_back"),
            first=(EdgeUse(center, top, "right"),),
            second=(EdgeUse(center, top, "left"),),
            allowance_class="center_back",
        ),
    )


def side_seam(names: PanelNames) -> Seam:
    """The side seam, walked from the waist."""
    front, back = (
        EdgeUse(names.at(which, "side_seam"), names.at(which, "waist_side")) for which in ("front", "back")
    )
    return Seam(names.side_seam, first=(front,), second=(back,), allowance_class="side")


def cut_data(pattern: Pattern, names: PanelNames, half: Half, classes: Mapping[str, str]) -> Pattern:
    """The hip notches, and the allowance classes of the edges that no seam joins, by their words."""
    allowances = {
        names.at(which, edge): Allowance(allowance_class)
        for which in ("front", "back")
        for edge, allowance_class in classes.items()
    }
    notches = (
        Notch(
            names.at(which, "hip_notch"),
            Place(names.at(which, "side_seam"), names.at(which, "waist_side"), half.front.side.length),
            seam=names.side_seam,
            purpose="hip",
        )
        for which in ("front", "back")
    )
    return pattern.with_allowances(allowances).with_notches(*notches)


def expectations(slug: str, girths: Mapping[str, tuple[float, float]]) -> tuple[Expectation, ...]:
    """What the sew line must measure: waist as sewn and hip, each body plus ease."""
    front, back = piece_name(slug, "front"), piece_name(slug, "back")
    waist, hip = girths["waist"], girths["hip"]
    return (
        Expectation(
            part_name(slug, "waist_girth"),
            "waist_girth",
            (part_name(front, "waist"), part_name(back, "waist")),
            2,
            *waist,
            reason="the sewn waist sits on the band or facing",
            kept=True,
            usual_ease=usual_skirt_ease("waist"),
        ),
        Expectation(
            part_name(slug, "hip_girth"),
            "hip_girth",
            (part_name(front, "hip_line"), part_name(back, "hip_line")),
            2,
            *hip,
            reason="the skirt must pass over the hip with its ease",
            usual_ease=usual_skirt_ease("hip"),
        ),
    )
