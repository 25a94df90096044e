"""The straight skirt as pieces: outlines, names, seams and cut data of a drafted half."""

from collections.abc import Mapping
from dataclasses import dataclass

from notchbook.blocks._closed_waist import Panel
from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks._skirt_halves import Half
from notchbook.geometry import Line, Path, Point, Transform
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeKind,
    EdgeUse,
    Group,
    Intake,
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

DART_ROLES: dict[int, tuple[str, ...]] = {
    0: (),
    1: ("waist_dart",),
    2: ("waist_dart_center", "waist_dart_side"),
    3: ("waist_dart_center", "waist_dart_middle", "waist_dart_side"),
}
"""Darts are named by where they stand, never by a number."""

PART_ROLES: dict[int, tuple[str, ...]] = {
    0: (),
    1: ("center", "side"),
    2: ("center", "middle", "side"),
    3: ("center", "center_middle", "side_middle", "side"),
}
"""The parts of the waist between the darts, from the center outward."""

USUAL_WAIST_EASE = (13.0, 20.0)
USUAL_HIP_EASE = (50.0, 70.0)
"""mm of the whole girth. Source: published ease table for skirts (1/2 to 3/4 in; 2 to 2 3/4 in)."""

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


def back_piece(names: PanelNames, panel: Panel, hem: float, *, center_is_seam: bool = True) -> DraftedPiece:
    """The back: center at x = 0, the wearer's right side toward +x, hip line at y = 0."""
    return _piece(names, "back", panel, hem, center_is_seam=center_is_seam)


def front_piece(names: PanelNames, panel: Panel, hem: float) -> DraftedPiece:
    """The front: center on the fold at x = 0, the wearer's right side toward -x."""
    drawn = _piece(names, "front", panel, hem, center_is_seam=False)
    return DraftedPiece(drawn.piece.transformed(_ACROSS), drawn.waist, drawn.waist_parts[::-1])


def _piece(names: PanelNames, which: str, panel: Panel, hem: float, *, center_is_seam: bool) -> DraftedPiece:
    name = names.piece(which)
    center = Point(0.0, hem)
    side = Point(panel.side.start.x, hem)
    center_kind: EdgeKind = "seam" if center_is_seam else "fold"

    def at(word: str) -> str:
        return part_name(name, word)

    outline = [
        Edge(
            at(f"center_{which}"),
            Path.line(panel.parts[0].start, center),
            at("waist_center"),
            at("hem_center"),
            center_kind,
        ),
        Edge(at("hem"), Path.line(center, side), at("hem_center"), at("hem_side"), "hem"),
        Edge(
            at("side_seam"),
            Path.of(Line(side, panel.side.start), panel.side),
            at("hem_side"),
            at("waist_side"),
        ),
    ]
    edges, intakes, parts = _waist(name, panel)
    return DraftedPiece(
        Piece(
            name=name,
            title=names.title(which),
            outline=(*outline, *edges),
            intakes=intakes,
            lines=(InternalLine(at("hip_line"), Path.line(Point(0.0, 0.0), Point(side.x, 0.0)), "level"),),
            cut="pair" if center_is_seam else "fold",
        ),
        at("waist"),
        parts,
    )


def _waist(name: str, panel: Panel) -> tuple[tuple[Edge, ...], tuple[Intake, ...], tuple[str, ...]]:
    """The waist from the side to the center (counter-clockwise), darts included."""
    count = len(panel.points)
    waist = part_name(name, "waist")
    if count == 0:
        path = panel.parts[0].reversed()
        return (
            (Edge(waist, path, part_name(name, "waist_side"), part_name(name, "waist_center")),),
            (),
            (),
        )
    darts = [part_name(name, role) for role in DART_ROLES[count]]
    parts = [part_name(waist, role) for role in PART_ROLES[count]]
    ends = [
        part_name(name, "waist_center"),
        *(part_name(dart, mouth) for dart in darts for mouth in ("center_mouth", "side_mouth")),
        part_name(name, "waist_side"),
    ]
    edges: list[Edge] = []
    for index in range(count, -1, -1):
        path = panel.parts[index].reversed()
        edges.append(Edge(parts[index], path, ends[2 * index + 1], ends[2 * index]))
        if index > 0:
            edges.extend(_legs(darts[index - 1], panel, index))
    intakes = tuple(
        Intake(
            name=dart,
            mouth=waist,
            first_leg=part_name(dart, "side_leg"),
            second_leg=part_name(dart, "center_leg"),
            point=part_name(dart, "point"),
            fold_toward="second_leg",
        )
        for dart in darts
    )
    return tuple(edges), intakes, tuple(reversed(parts))


def _legs(dart: str, panel: Panel, index: int) -> tuple[Edge, Edge]:
    """The legs of the dart before waist part ``index``: side leg inward, center leg outward."""
    tip = panel.points[index - 1]
    point = part_name(dart, "point")
    return (
        Edge(
            part_name(dart, "side_leg"),
            Path.line(panel.parts[index].start, tip),
            part_name(dart, "side_mouth"),
            point,
            "leg",
        ),
        Edge(
            part_name(dart, "center_leg"),
            Path.line(tip, panel.parts[index - 1].end),
            point,
            part_name(dart, "center_mouth"),
            "leg",
        ),
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
            usual_ease=USUAL_WAIST_EASE,
        ),
        Expectation(
            part_name(slug, "hip_girth"),
            "hip_girth",
            (part_name(front, "hip_line"), part_name(back, "hip_line")),
            2,
            *hip,
            reason="the skirt must pass over the hip with its ease",
            usual_ease=USUAL_HIP_EASE,
        ),
    )
