"""Judges a drafted skirt from its plain data with numpy and shapely alone, not with the code that drew it."""

from copy import deepcopy
from typing import Any

import numpy as np
from numpy.typing import NDArray
from shapely.geometry import Polygon

Points = NDArray[np.float64]
Rows = list[list[Any]]

STEPS = 400
"""Chords to a curve: on a waist of 100 mm the sum of chords is short by less than 1e-5 mm."""


def polyline(rows: Rows) -> Points:
    """The rows of a path ("M", "L", "C" as in SVG) as one dense row of points."""
    found: list[Points] = [np.array([rows[0][1:3]], dtype=float)]
    for row in rows[1:]:
        start = found[-1][-1]
        corners = np.array(row[1:], dtype=float).reshape(-1, 2)
        if row[0] == "L":
            found.append(corners)
            continue
        t = np.linspace(0.0, 1.0, STEPS + 1)[1:, None]
        found.append(
            (1 - t) ** 3 * start
            + 3 * t * (1 - t) ** 2 * corners[0]
            + 3 * t**2 * (1 - t) * corners[1]
            + t**3 * corners[2]
        )
    return np.concatenate(found)


def length(points: Points) -> float:
    """The sum of the chords."""
    return float(np.linalg.norm(np.diff(points, axis=0), axis=1).sum())


def angle_between(first: Points, second: Points) -> float:
    """The angle between two directions, degrees in [0, 180]."""
    return float(np.degrees(np.arctan2(abs(first[0] * second[1] - first[1] * second[0]), first @ second)))


class Judge:
    """Reads a pattern's data; everything is measured from the outlines."""

    def __init__(self, data: dict[str, Any]) -> None:
        self.pieces = {piece["name"]: piece for piece in data["pieces"]}
        self.edges = {
            edge["name"]: polyline(edge["path"]) for piece in data["pieces"] for edge in piece["outline"]
        }
        self.lines = {
            line["name"]: polyline(line["path"]) for piece in data["pieces"] for line in piece["lines"]
        }

    def named(self, piece: str, word: str) -> list[str]:
        """The edges of a piece whose name is the word or begins with it."""
        whole = f"{piece}/{word}"
        return [
            edge["name"]
            for edge in self.pieces[piece]["outline"]
            if edge["name"] == whole or edge["name"].startswith(f"{whole}/")
        ]

    def length(self, *names: str) -> float:
        """The lengths of these edges or lines together."""
        return sum(length(self.edges[name] if name in self.edges else self.lines[name]) for name in names)

    def corner(self, piece: str, point: str) -> float:
        """The inside angle (below 180) between the two edges that meet at a point of the outline."""
        outline = self.pieces[piece]["outline"]
        before = next(edge["name"] for edge in outline if edge["end"] == f"{piece}/{point}")
        after = next(edge["name"] for edge in outline if edge["start"] == f"{piece}/{point}")
        into, out = self.edges[before], self.edges[after]
        return angle_between(into[-2] - into[-1], out[1] - out[0])

    def polygon(self, piece: str) -> Polygon:
        """The outline of a piece as a polygon of shapely, the slits of empty darts left out."""
        slits = {
            leg
            for _, first, second in self.darts(piece)
            if np.linalg.norm(self.edges[first][0] - self.edges[second][-1]) < 1e-3
            for leg in (first, second)
        }
        names = [edge["name"] for edge in self.pieces[piece]["outline"] if edge["name"] not in slits]
        points = np.concatenate([self.edges[name] for name in names])
        ahead = np.linalg.norm(np.roll(points, -1, axis=0) - points, axis=1)
        return Polygon(points[ahead > 1e-6])  # edges meet within the joining tolerance of the house

    def point(self, piece: str, word: str) -> Points:
        """Where a point of the outline lies."""
        outline = self.pieces[piece]["outline"]
        name = next(edge["name"] for edge in outline if edge["start"] == f"{piece}/{word}")
        return np.asarray(self.edges[name][0], dtype=float)

    def darts(self, piece: str) -> list[tuple[str, str, str]]:
        """(name, first leg, second leg) of each dart or fold; a gather has none."""
        return [
            (i["name"], i["first_leg"], i["second_leg"])
            for i in self.pieces[piece]["intakes"]
            if i["first_leg"]
        ]

    def rise(self, piece: str) -> float:
        """How far the side of the waist lies above its center, mm."""
        return float(self.point(piece, "waist_side")[1] - self.point(piece, "waist_center")[1])


PANELS = ("skirt.front", "skirt.back")


def closures(data: dict[str, Any], waist: float, hip: float, hip_depth: float) -> dict[str, float]:
    """By how much each closure of a straight skirt misses, mm or degrees; ``waist`` and ``hip`` with ease."""
    judge = Judge(data)
    found = {
        "waist": 2.0 * judge.length(*(e for p in PANELS for e in judge.named(p, "waist"))) - waist,
        "hip": 2.0 * judge.length(*(f"{panel}/hip_line" for panel in PANELS)) - hip,
        "side seams": judge.length("skirt.front/side_seam") - judge.length("skirt.back/side_seam"),
        "across the side": sum(judge.corner(panel, "waist_side") for panel in PANELS) - 180.0,
    }
    for panel in PANELS:
        below = -judge.point(panel, "hem_side")[1]
        found[f"{panel} hip depth"] = judge.length(f"{panel}/side_seam") - below - hip_depth
        found[f"{panel} center square"] = judge.corner(panel, "waist_center") - 90.0
        for name, first, second in judge.darts(panel):
            found[f"{name} legs"] = judge.length(first) - judge.length(second)
    return found


ALLOWED = {"across the side": 3.0, "center square": 1.0}
"""Degrees (common practice, no source); every length closes within 0.1 mm."""


def misses(found: dict[str, float]) -> list[str]:
    """The closures that do not hold."""
    return [
        name
        for name, miss in found.items()
        if not abs(miss) <= next((most for word, most in ALLOWED.items() if word in name), 0.1)
    ]


def turns_both_ways(points: Points) -> bool:
    """Whether a line bends to the left somewhere and to the right elsewhere, by more than numeric noise."""
    steps = np.diff(points, axis=0)
    steps = steps[np.linalg.norm(steps, axis=1) > 1e-9]
    turns = steps[:-1, 0] * steps[1:, 1] - steps[:-1, 1] * steps[1:, 0]
    turns /= np.linalg.norm(steps[:-1], axis=1) * np.linalg.norm(steps[1:], axis=1)
    return bool(turns.max() > 1e-9 and turns.min() < -1e-9)


def moved_end(data: dict[str, Any], edge: str, dx: float, dy: float) -> dict[str, Any]:
    """A copy of the data in which the last point of one edge or line lies elsewhere: a planted fault."""
    copy = deepcopy(data)
    for piece in copy["pieces"]:
        for thing in (*piece["outline"], *piece["lines"]):
            if thing["name"] == edge:
                thing["path"][-1][-2] += dx
                thing["path"][-1][-1] += dy
                return copy
    raise KeyError(edge)
