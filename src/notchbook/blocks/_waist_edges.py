"""The waist of a skirt or trouser panel as named edges, with the darts that open in it."""

from dataclasses import dataclass

from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Intake, part_name

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


@dataclass(frozen=True, slots=True)
class WaistEdges:
    """The waist from the side to the center, counter-clockwise, darts included; and the names of its parts in
    that direction (empty where it is one edge)."""

    edges: tuple[Edge, ...]
    intakes: tuple[Intake, ...]
    parts: tuple[str, ...]


def waist_edges(name: str, parts: tuple[Path, ...], points: tuple[Point, ...]) -> WaistEdges:
    """The waist of the piece ``name``: its ``parts`` run from the center to the side, ``points`` are those of
    the darts between them."""
    count = len(points)
    waist = part_name(name, "waist")
    if count == 0:
        path = parts[0].reversed()
        return WaistEdges(
            (Edge(waist, path, part_name(name, "waist_side"), part_name(name, "waist_center")),), (), ()
        )
    darts = [part_name(name, role) for role in DART_ROLES[count]]
    roles = [part_name(waist, role) for role in PART_ROLES[count]]
    ends = [
        part_name(name, "waist_center"),
        *(part_name(dart, mouth) for dart in darts for mouth in ("center_mouth", "side_mouth")),
        part_name(name, "waist_side"),
    ]
    edges: list[Edge] = []
    for index in range(count, -1, -1):
        edges.append(Edge(roles[index], parts[index].reversed(), ends[2 * index + 1], ends[2 * index]))
        if index > 0:
            edges.extend(_legs(darts[index - 1], parts[index - 1 : index + 1], points[index - 1]))
    return WaistEdges(tuple(edges), tuple(_intake(waist, dart) for dart in darts), tuple(reversed(roles)))


def _legs(dart: str, parts: tuple[Path, ...], tip: Point) -> tuple[Edge, Edge]:
    """The legs of the dart between two parts of the waist: side leg inward, center leg outward."""
    point = part_name(dart, "point")
    return (
        Edge(
            part_name(dart, "side_leg"),
            Path.line(parts[1].start, tip),
            part_name(dart, "side_mouth"),
            point,
            "leg",
        ),
        Edge(
            part_name(dart, "center_leg"),
            Path.line(tip, parts[0].end),
            point,
            part_name(dart, "center_mouth"),
            "leg",
        ),
    )


def _intake(waist: str, dart: str) -> Intake:
    return Intake(
        name=dart,
        mouth=waist,
        first_leg=part_name(dart, "side_leg"),
        second_leg=part_name(dart, "center_leg"),
        point=part_name(dart, "point"),
        fold_toward="second_leg",
    )
