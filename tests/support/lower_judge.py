"""Judges trousers from a pattern's plain data with numpy and shapely alone.

Nothing here uses lengths, solvers or drafting of the project: curves become dense polylines, widths are cut
out of the outline's polygon, and each panel is laid the same way: side toward +x, crotch point toward -x.
"""

import csv
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final, Literal

import numpy as np
from shapely import affinity, make_valid
from shapely.geometry import LineString, Point, Polygon

from support.bodice_judge import ANGLE, LENGTH, SIDE_ANGLE, Closure, Points, UpperJudge
from support.skirt_judge import length
from upper_figures import inflections

Which = Literal["front", "back"]
PANELS: Final[tuple[Which, ...]] = ("front", "back")

CornerDepth = Mapping[str, tuple[float, float]]


def _corner_depths(size: str) -> CornerDepth:
    """Least and most by panel, mm, as the review has them."""
    path = Path(__file__).parents[1] / "reference" / "trousers" / "crotch_depths.csv"
    with path.open(encoding="utf-8", newline="") as stream:
        rows = [row for row in csv.DictReader(stream) if row["size"] == size]
    return {row["panel"]: (float(row["least"]), float(row["most"])) for row in rows}


CORNER_DEPTH: Final = _corner_depths("usual")
CORNER_DEPTH_PLUS: Final = _corner_depths("plus")
"""mm at 45 degrees, least and most, usual and for plus sizes (a patternmaker's review)."""

PLUS_HIP: Final = 1120.0
"""mm of the body's hip from which a size counts as plus: class L ends at 112 (EN 13402-3, from memory)."""

FRONT_DARTS: Final = 20.0
"""mm that the darts of a front take up together at most (the same review)."""

THINNER_BELOW: Final = 15.0
"""mm by which the body's thigh is smaller 5 cm below the crotch: common practice, no source."""

FAR: Final = 4000.0
"""mm; longer than any piece."""


@dataclass(frozen=True)
class LegPanel:
    """One panel laid with its side toward +x. Runs are polylines: ``waist`` from the center to the side with
    its darts closed, ``crotch`` from the waist to the crotch point, ``inseam`` from there to the hem,
    ``side`` from the waist to the hem."""

    waist: Points
    crotch: Points
    inseam: Points
    side: Points
    hem: Points
    hip_line: Points
    levels: Mapping[str, float]
    polygon: Polygon

    def width(self, height: float) -> float:
        """How wide the panel is at a height, cut out of its polygon, mm."""
        cut = make_valid(self.polygon).intersection(LineString([(-FAR, height), (FAR, height)]))
        return float(cut.length)

    @property
    def crotch_point(self) -> Points:
        """Where crotch seam and inseam meet."""
        found: Points = self.crotch[-1]
        return found

    @property
    def foot(self) -> Points:
        """Where the straight center, drawn on, meets the crotch level."""
        start, ahead = self.crotch[0], self.crotch[1]
        share = (self.levels["crotch_line"] - start[1]) / (ahead[1] - start[1])
        found: Points = start + share * (ahead - start)
        return found

    @property
    def hip_width(self) -> float:
        """From the straight center, drawn on, along the hip level to the side, mm. The cloth may reach
        farther, where the crotch curve begins above the hip."""
        start, ahead = self.crotch[0], self.crotch[1]
        share = (self.levels["hip_line"] - start[1]) / (ahead[1] - start[1])
        center = start + share * (ahead - start)
        return float(self.hip_line[:, 0].max() - center[0])

    @property
    def corner_depth(self) -> float:
        """From the foot of the center at 45 degrees toward the inseam and up, to the crotch seam, mm."""
        ray = LineString([self.foot, self.foot + FAR * np.array([-1.0, 1.0])])
        met = ray.intersection(LineString(self.crotch))
        return (
            float("nan") if met.is_empty else float(np.hypot(*(np.array(met.centroid.coords[0]) - self.foot)))
        )

    @property
    def extension(self) -> float:
        """From the foot of the center along the crotch level to the crotch point, mm."""
        return float(self.foot[0] - self.crotch_point[0])

    @property
    def slant(self) -> float:
        """How far the center leans in at the waist against the grain, degrees."""
        way = self.crotch[0] - self.crotch[1]
        return float(np.degrees(np.arctan2(way[0], way[1])))


class LowerJudge(UpperJudge):
    """Reads the data of a pattern with the panels ``<slug>.front`` and ``<slug>.back`` of a leg."""

    def __init__(self, data: dict[str, Any], slug: str = "trousers", side: str = "") -> None:
        super().__init__(data)
        self.names: dict[Which, str] = {which: f"{slug}.{which}{side}" for which in PANELS}
        self.panels = {which: self._panel(self.names[which]) for which in PANELS}

    @property
    def front(self) -> LegPanel:
        """The front panel."""
        return self.panels["front"]

    @property
    def back(self) -> LegPanel:
        """The back panel."""
        return self.panels["back"]

    @property
    def hip_cloth(self) -> float:
        """The cloth round the hip: where the crotch curve has begun there, it is more than the frame's."""
        return 2.0 * self.at_level("hip_line")

    def _panel(self, piece: str) -> LegPanel:
        way = np.sign(self.point(piece, "hem_side")[0] - self.point(piece, "hem_inseam")[0])
        mirror = np.array([way, 1.0])

        def run_from(word: str, start: str) -> Points:
            run, _ = self.run(piece, word)
            place = self.point(piece, start)
            ends = np.linalg.norm(run[[0, -1]] - place, axis=1)
            found: Points = (run if ends[0] <= ends[1] else run[::-1]) * mirror
            return found

        levels = {
            name.rpartition("/")[2]: float(points[:, 1].mean())
            for name, points in self.lines.items()
            if name.startswith(f"{piece}/") and name.endswith(("hip_line", "crotch_line", "knee_line"))
        }
        return LegPanel(
            waist=run_from("waist", "waist_center"),
            crotch=run_from("crotch_seam", "waist_center"),
            inseam=run_from("inseam", "crotch_point"),
            side=run_from("side_seam", "waist_side"),
            hem=run_from("hem", "hem_side"),
            hip_line=self.lines[f"{piece}/hip_line"] * mirror,
            levels=levels,
            polygon=affinity.scale(self.polygon(piece), xfact=float(way), yfact=1.0, origin=(0.0, 0.0)),
        )

    def both(self, word: str) -> float:
        """The length of front and back edges of this name together, mm."""
        return sum(self.length(*self.named(piece, word)) for piece in self.names.values())

    def mouths(self, which: Which) -> list[float]:
        """How wide each dart of a panel opens, mm."""
        return [
            float(np.linalg.norm(self.edges[first][0] - self.edges[second][-1]))
            for _, first, second in self.darts(self.names[which])
        ]

    def at_level(self, line: str, below: float = 0.0) -> float:
        """Front and back together as wide as they are at a level, or so many mm below it."""
        return sum(panel.width(panel.levels[line] - below) for panel in self.panels.values())

    def below_fork(self, below: float) -> float:
        """Front and back together, each as wide as it is so many mm below its own crotch point."""
        return sum(
            panel.width(float(panel.crotch_point[1]) - max(below, 0.01)) for panel in self.panels.values()
        )


def trousers_closures(judge: LowerJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    """What must agree on one leg. ``wanted`` holds what it was to come to, mm with ease, by measure key (and
    ``hem_girth``): those that are missing are not asked for. The thigh may be more."""
    yield from _lengths(judge, wanted)
    yield from _pairs(judge)
    yield from _angles(judge)
    yield from _lines(judge)


def _lengths(judge: LowerJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    front, back = judge.front, judge.back
    measured: dict[str, Callable[[], float]] = {
        "waist_girth": lambda: 2.0 * judge.both("waist"),
        "hip_girth": lambda: 2.0 * sum(panel.hip_width for panel in judge.panels.values()),
        "crotch_length": lambda: judge.both("crotch_seam"),
        "front_crotch_length": lambda: length(front.crotch),
        "back_crotch_length": lambda: length(back.crotch),
        "hip_to_crotch": lambda: front.levels["hip_line"] - float(front.crotch_point[1]),
        "outside_leg": lambda: length(front.side),
        "knee_girth": lambda: judge.at_level("knee_line"),
        "hem_girth": lambda: sum(float(np.linalg.norm(p.hem[-1] - p.hem[0])) for p in (front, back)),
    }
    for key, value in wanted.items():
        if key in measured:
            yield Closure(key, measured[key](), value, LENGTH)
    if "thigh_girth" in wanted:
        for word, below, smaller in (("thigh", 0.0, 0.0), ("thigh 50 below", 50.0, THINNER_BELOW)):
            asked = wanted["thigh_girth"] - smaller
            least = min(0.0, judge.below_fork(below) - asked)
            yield Closure(f"{word} at least", least, 0.0, LENGTH)


def _pairs(judge: LowerJudge) -> Iterator[Closure]:
    """The two long seams, and the legs of every dart."""
    for word, name in (("side_seam", "side_seam"), ("inseam", "inseam")):
        seam = next(one for key, one in judge.seams.items() if key.startswith("trousers/") and name in key)
        front_first = seam["first"][0]["edge"].startswith(judge.names["front"])
        longer = length(_of(judge.back, word)) - length(_of(judge.front, word))
        yield Closure(f"{word} pair", longer if front_first else -longer, seam["ease"], LENGTH)
    for which, piece in judge.names.items():
        for name, first, second in judge.darts(piece):
            yield Closure(f"{name} legs", judge.length(first) - judge.length(second), 0.0, LENGTH)
        for turn in judge.run(piece, "waist")[1]:
            yield Closure(f"{which} waist across a dart", turn, 0.0, ANGLE)


def _of(panel: LegPanel, word: str) -> Points:
    found: Points = {"side_seam": panel.side, "inseam": panel.inseam, "crotch_seam": panel.crotch}[word]
    return found


def _angles(judge: LowerJudge) -> Iterator[Closure]:
    for which, piece in judge.names.items():
        yield Closure(f"{which} waist square", judge.corner(piece, "waist_center"), 90.0, ANGLE)
    for point, within in (("crotch_point", ANGLE), ("waist_side", SIDE_ANGLE)):
        yield Closure(f"across {point}", _across(judge, point), 180.0, within)
    for point in ("hem_side", "hem_inseam"):
        yield Closure(f"across {point}", _across(judge, point), 180.0, SIDE_ANGLE)


def _across(judge: LowerJudge, point: str) -> float:
    return sum(judge.corner(piece, point) for piece in judge.names.values())


def _lines(judge: LowerJudge) -> Iterator[Closure]:
    """The crease on the grain, in the middle of hem and knee; each outline in one piece."""
    for which, piece in judge.names.items():
        crease = judge.lines[f"{piece}/crease_line"]
        lean = np.ptp(crease[:, 0])
        yield Closure(f"{which} crease on the grain", float(lean), 0.0, LENGTH)
        for word in ("hem", "knee_line"):
            ends = judge.edges.get(f"{piece}/{word}", judge.lines.get(f"{piece}/{word}"))
            if ends is not None:
                middle = float(ends[[0, -1], 0].mean() - crease[:, 0].mean())
                yield Closure(f"{which} crease in the middle of the {word}", middle, 0.0, LENGTH)
        panel = judge.panels[which]
        ends = panel.hip_line[np.argsort(panel.hip_line[:, 0])]
        off = LineString(panel.side).distance(Point(ends[-1]))
        yield Closure(f"{which} hip line from the side seam", float(off), 0.0, LENGTH)
        off = LineString(panel.crotch).distance(Point(ends[0]))
        yield Closure(f"{which} hip line from the crotch seam", float(off), 0.0, LENGTH)
        valid = judge.polygon(piece).is_valid
        yield Closure(f"{which} in one piece", float(valid), 1.0, 0.0)


def shape_faults(judge: LowerJudge, corner_depth: CornerDepth | None) -> list[str]:
    """What a patternmaker would send back though every length agrees: words, empty when all is well. The
    corner's depth is not asked for where no range is given (wide legs, children)."""
    found = []
    for which, panel in judge.panels.items():
        least, most = (corner_depth or {}).get(which, (0.0, FAR))
        if not least <= panel.corner_depth <= most:
            found.append(f"{which} corner depth {panel.corner_depth:.0f}")
        for word in ("crotch_seam", "inseam", "side_seam"):
            corner = sharpest(_of(panel, word))
            if corner > ANGLE:
                found.append(f"{which} {word} has a corner {corner:.1f}")
        found += _wrong_bends(which, panel)
    front, back = (judge.mouths(which) for which in PANELS)
    if sum(front) > FRONT_DARTS + LENGTH:
        found.append(f"front darts together {sum(front):.0f}")
    if front and max(front) > max(back, default=0.0) + LENGTH:
        found.append(f"front has the larger dart {max(front) - max(back, default=0.0):.0f}")
    if length(judge.back.crotch) <= length(judge.front.crotch):
        found.append("the back crotch is not longer")
    if judge.back.crotch_point[1] > judge.front.crotch_point[1] + LENGTH:
        found.append("the back crotch point lies higher")
    return found


def _wrong_bends(which: Which, panel: LegPanel) -> Iterator[str]:
    """A crotch and a hip that bend both ways, an inseam that does so below the fork."""
    hip = panel.side[panel.side[:, 1] >= panel.levels["hip_line"]]
    for word, run in (("crotch", panel.crotch), ("hip", hip), ("inseam", panel.inseam)):
        if (count := inflections(run)) > 0:
            yield f"{which} {word} bends both ways {count}"


def sharpest(run: Points) -> float:
    """The sharpest turn between two chords of a run, degrees: a curve of 400 chords has hardly any."""
    steps = np.diff(run, axis=0)
    steps = steps[np.linalg.norm(steps, axis=1) > 1e-6]
    cross = steps[:-1, 0] * steps[1:, 1] - steps[:-1, 1] * steps[1:, 0]
    turns = np.abs(np.degrees(np.arctan2(cross, (steps[:-1] * steps[1:]).sum(axis=1))))
    return float(turns.max(initial=0.0))


def leg_figures(judge: LowerJudge) -> dict[str, float]:
    """Figures of shape by name, mm or degrees or shares of the pattern's hip."""
    found: dict[str, float] = {}
    hip = 2.0 * sum(panel.hip_width for panel in judge.panels.values())
    for which, panel in judge.panels.items():
        found[f"{which} crotch"] = length(panel.crotch)
        found[f"{which} corner depth"] = panel.corner_depth
        found[f"{which} extension % hip"] = 100.0 * panel.extension / hip
        found[f"{which} slant"] = panel.slant
        found[f"{which} darts together"] = sum(judge.mouths(which))
        found[f"{which} side rise"] = float(panel.side[0, 1] - panel.crotch[0, 1])
        at_hip = float(np.interp(-panel.levels["hip_line"], -panel.side[:, 1], panel.side[:, 0]))
        found[f"{which} side take-in"] = at_hip - float(panel.side[0, 0])
        found[f"{which} side beyond hip"] = float(panel.side[:, 0].max()) - at_hip
    found["hip cloth beyond frame"] = judge.hip_cloth - hip
    found["back drop"] = float(judge.front.crotch_point[1] - judge.back.crotch_point[1])
    found["thigh"] = judge.at_level("crotch_line")
    found["thigh 50 below"] = judge.at_level("crotch_line", 50.0)
    return found


def lower_misses(data: dict[str, Any], wanted: Mapping[str, float]) -> list[str]:
    """What does not agree on trousers, with by how much."""
    found = trousers_closures(LowerJudge(data), wanted)
    return [f"{one.name} {one.miss:+.3f}" for one in found if not one.holds]
