"""Judges bodice and sleeve from a pattern's plain data with numpy and shapely alone.

Nothing here uses lengths, solvers or drafting of the project: curves become dense polylines, darts are closed
by turning points about the dart's point, and the cap is laid on the armhole as on a table.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray
from shapely.geometry import LineString, Point

from support.skirt_judge import Judge, length

Points = NDArray[np.float64]

LENGTH = 0.1
"""mm by which a length may miss."""

ANGLE = 1.0
"""Degrees by which an angle may miss."""

SIDE_ANGLE = 3.0
"""Degrees at the ends of the side seam (common practice, no source)."""

LAID = 60.0
"""mm of the cap from the underarm that must lie on the armhole (a patternmaker's review: 60 to 75)."""

LAY_GAP = {"front": 3.0, "back": 4.0}
"""mm by which the laid part may stand off (the same review)."""

NOTCH = 1.0
"""mm by which the balance notches of cap and armhole may miss each other (the same review)."""

FREE_AT_CROWN = 20.0
"""mm before the shoulder seam without ease (the same review)."""

BODICE = {"front": "bodice.front", "back": "bodice.back"}
CENTER = {"front": ("center_front", "neck_pit"), "back": ("center_back", "nape")}


@dataclass(frozen=True)
class Closure:
    """One thing that must agree, mm or degrees."""

    name: str
    measured: float
    wanted: float
    within: float

    @property
    def miss(self) -> float:
        """By how much it is off."""
        return self.measured - self.wanted

    @property
    def holds(self) -> bool:
        """Whether it agrees; what is not a number does not."""
        return bool(abs(self.miss) <= self.within)


class UpperJudge(Judge):
    """Reads the data of a pattern with pieces ``bodice.front``, ``bodice.back`` and perhaps a sleeve."""

    def __init__(self, data: dict[str, Any]) -> None:
        super().__init__(data)
        self.seams = {seam["name"]: seam for seam in data["seams"]}
        self.notches = {notch["name"]: notch for notch in data["notches"]}
        self.marks = {mark["name"]: mark for piece in data["pieces"] for mark in piece["marks"]}

    @property
    def has_sleeve(self) -> bool:
        """Whether there is a sleeve."""
        return "sleeve.sleeve" in self.pieces

    def run(self, piece: str, word: str, still: str = "first") -> tuple[Points, list[float]]:
        """The edges of this name as one polyline with the darts closed, counter-clockwise, and by how many
        degrees it turns at each closed dart. The ``first`` or the ``last`` edge stays where it is drawn."""
        names = self.named(piece, word)
        legs = {self._start(leg_in): (leg_in, leg_out) for _, leg_in, leg_out in self.darts(piece)}
        found, turn, shift = self.edges[names[0]], np.eye(2), np.zeros(2)
        turns = []
        for before, after in pairwise(names):
            into, out = self.edges[before], self.edges[after]
            if self._end(before) in legs:
                point = self.edges[legs[self._end(before)][0]][-1]
                closing = _rotation(out[0] - point, into[-1] - point)
                shift = shift + turn @ (point - closing @ point)
                turn = turn @ closing
            moved = out @ turn.T + shift
            turns.append(_turn(found[-1] - found[-2], moved[1] - moved[0]))
            found = np.concatenate([found, moved[1:]])
        return (found if still == "first" else (found - shift) @ turn), turns

    def _start(self, edge: str) -> str:
        return str(self._outline_edge(edge)["start"])

    def _end(self, edge: str) -> str:
        return str(self._outline_edge(edge)["end"])

    def _outline_edge(self, name: str) -> dict[str, Any]:
        return next(e for piece in self.pieces.values() for e in piece["outline"] if e["name"] == name)

    def sewn(self, which: str, word: str) -> float:
        """The length of the edges of this name on front or back."""
        return self.length(*self.named(BODICE[which], word))

    def lines_named(self, piece: str, word: str) -> list[str]:
        """The lines of a piece whose name is the word or begins with it."""
        whole = f"{piece}/{word}"
        return [
            line["name"]
            for line in self.pieces[piece]["lines"]
            if line["name"] == whole or line["name"].startswith(f"{whole}/")
        ]

    def mark(self, name: str) -> Points:
        """Where a mark lies."""
        return np.array([self.marks[name]["x"], self.marks[name]["y"]])

    def armhole(self, which: str) -> Points:
        """The armhole from the underarm as it lies on the table: underarm at the origin, side seam along -y,
        the body toward +x."""
        piece = BODICE[which]
        underarm = f"{piece}/underarm"
        ends_there = self._end(self.named(piece, "armhole")[-1]) == underarm
        run, _ = self.run(piece, "armhole", "last" if ends_there else "first")
        side, _ = self.run(piece, "side_seam", "first" if ends_there else "last")
        return laid_out(run, side, self.point(piece, "underarm"))

    def cap(self, which: str) -> Points:
        """One half of the cap from the underarm, laid as :meth:`armhole`."""
        run, _ = self.run("sleeve.sleeve", f"cap_{which}")
        seam, _ = self.run("sleeve.sleeve", f"{which}_seam")
        return laid_out(run, seam, self.point("sleeve.sleeve", f"underarm_{which}"))

    def notch_from_underarm(self, word: str, edge: str, run: Points) -> float:
        """The distance of a notch from the underarm, along the run of the edge it lies on, mm."""
        place = next(
            notch["place"]
            for name, notch in self.notches.items()
            if name.rpartition("/")[2] == word and notch["place"]["edge"].startswith(edge)
        )
        whole = length(run)
        amount = place["amount"] * (whole if place["measure"] == "fraction" else 1.0)
        if place["notch"] is not None:
            raise ValueError(f"{word} on {edge} is counted from another notch")
        return float(amount if "underarm" in place["from_point"] else whole - amount)


def laid_out(run: Points, seam: Points, underarm: Points) -> Points:
    """A run that touches the underarm, moved so that the underarm is the origin, the seam that leaves it runs
    along -y there and the run goes up toward +x."""
    run, seam = _from(run, underarm), _from(seam, underarm)
    down = seam[1] - seam[0]
    turn = _rotation(down, np.array([0.0, -1.0]))
    moved: Points = (run - underarm) @ turn.T
    # Near the underarm: farther up an armhole that leans across the body may have come back.
    if moved[max(1, len(moved) // 20), 0] < 0.0:
        moved = moved * np.array([-1.0, 1.0])
    return moved


def lay_gap(cap: Points, armhole: Points, laid: float = LAID) -> float:
    """How far the first ``laid`` mm of the cap stand off the armhole at most, mm."""
    line = LineString(armhole)
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(cap, axis=0), axis=1))])
    steps = np.linspace(0.0, laid, 61)
    places = np.column_stack([np.interp(steps, along, cap[:, axis]) for axis in (0, 1)])
    return max(float(line.distance(Point(place))) for place in places)


def bodice_closures(judge: UpperJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    """What must agree on a bodice. ``wanted`` holds what it was to come to, mm with ease, by measure key:
    those that are missing are not asked for."""
    yield from _lengths(judge, wanted)
    yield from _angles(judge)
    for which, piece in BODICE.items():
        for name, first, second in judge.darts(piece):
            yield Closure(f"{name} legs", judge.length(first) - judge.length(second), 0.0, LENGTH)
        for word in ("neck", "shoulder", "armhole", "side_seam", "waist"):
            if judge.named(piece, word):
                turns = judge.run(piece, word)[1]
                yield from (Closure(f"{which} {word} across a dart", t, 0.0, ANGLE) for t in turns)


def _lengths(judge: UpperJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    def girth(word: str) -> float:
        return 2.0 * sum(judge.sewn(which, word) for which in BODICE)

    def level(which: str, word: str) -> float:
        return 2.0 * judge.length(*judge.lines_named(BODICE[which], word))

    neck = judge.point(BODICE["front"], "side_neck_point")
    nape, underarm = (judge.point(BODICE["back"], word) for word in ("nape", "underarm"))
    measured = {
        "neck_base_girth": lambda: girth("neck"),
        "shoulder_length": lambda: judge.sewn("front", "shoulder"),
        "bust_girth": lambda: level("front", "bust_line") + level("back", "bust_line"),
        "waist_girth": lambda: girth("waist"),
        "across_back": lambda: level("back", "across_back_line"),
        "across_chest": lambda: level("front", "across_chest_line"),
        "back_waist_length": lambda: judge.sewn("back", "center_back"),
        "center_front_length": lambda: judge.sewn("front", "center_front"),
        "scye_depth": lambda: float(nape[1] - underarm[1]),
        "neck_to_bust_point": lambda: float(np.linalg.norm(neck - judge.mark("bodice.front/bust_point"))),
    }
    for key, value in wanted.items():
        if key in measured:
            yield Closure(key, measured[key](), value, LENGTH)
    for word, seam in (("shoulder", "bodice/shoulder"), ("side_seam", "bodice/side_seam")):
        ease = judge.seams[seam]["ease"]
        front_first = judge.seams[seam]["first"][0]["edge"].startswith(BODICE["front"])
        longer = judge.sewn("back", word) - judge.sewn("front", word)
        yield Closure(f"{word} pair", longer if front_first else -longer, ease, LENGTH)


def _angles(judge: UpperJudge) -> Iterator[Closure]:
    for which, piece in BODICE.items():
        _, top = CENTER[which]
        yield Closure(f"{which} neck square", judge.corner(piece, top), 90.0, ANGLE)
        yield Closure(f"{which} waist square", judge.corner(piece, "waist_center"), 90.0, ANGLE)
    for point, within in (
        ("side_neck_point", ANGLE),
        ("shoulder_point", ANGLE),
        ("underarm", SIDE_ANGLE),
        ("waist_side", SIDE_ANGLE),
    ):
        closed = sum(judge.corner(piece, point) for piece in BODICE.values())
        yield Closure(f"across {point}", closed, 180.0, within)


def sleeve_closures(judge: UpperJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    """What must agree between sleeve and armhole, and on the sleeve itself."""
    for which in BODICE:
        armhole, cap = judge.armhole(which), judge.cap(which)
        ease = judge.seams[f"sleeve/{which}_armhole"]["ease"]
        more = length(cap) - length(armhole)
        yield Closure(f"{which} cap ease", more, ease, LENGTH)
        words = {"balance_notch": NOTCH} | ({"ease_notch": LENGTH} if ease else {})
        for word, within in words.items():
            on_armhole = judge.notch_from_underarm(word, f"{BODICE[which]}/armhole", armhole)
            on_cap = judge.notch_from_underarm(word, f"sleeve.sleeve/cap_{which}", cap)
            eased = ease_below(word, more)
            if word == "ease_notch":
                crown_free = length(armhole) - on_armhole
                yield Closure(f"{which} crown free of ease", crown_free, FREE_AT_CROWN, LENGTH)
            yield Closure(f"{which} {word} from the underarm", on_cap - on_armhole, eased, within)
        yield Closure(f"{which} cap laid in", lay_gap(cap, armhole), 0.0, LAY_GAP[which] + LENGTH)
    seams = [judge.length(*judge.named("sleeve.sleeve", f"{which}_seam")) for which in BODICE]
    seam = judge.seams["sleeve/sleeve_seam"]
    front_first = seam["first"][0]["edge"].startswith("sleeve.sleeve/front_seam")
    yield Closure(
        "sleeve seam pair",
        seams[1] - seams[0] if front_first else seams[0] - seams[1],
        seam["ease"],
        LENGTH,
    )
    crown = judge.corner("sleeve.sleeve", "cap_top")
    yield Closure("crown without a point", crown, 180.0, ANGLE)
    for point in ("underarm", "hem"):
        closed = sum(judge.corner("sleeve.sleeve", f"{point}_{which}") for which in BODICE)
        yield Closure(f"across sleeve {point}", closed, 180.0, SIDE_ANGLE)
    if "wrist_girth" in wanted:
        yield Closure("sleeve hem", judge.length("sleeve.sleeve/hem"), wanted["wrist_girth"], LENGTH)
    if "arm_length" in wanted:
        crown_mark, hem = (judge.mark(f"sleeve.sleeve/{word}") for word in ("crown", "hem_middle"))
        yield Closure("sleeve length", float(crown_mark[1] - hem[1]), wanted["arm_length"], LENGTH)
    if "upper_arm_girth" in wanted:
        biceps = judge.length(*judge.lines_named("sleeve.sleeve", "biceps_line"))
        yield Closure("biceps", biceps, wanted["upper_arm_girth"], LENGTH)


def ease_below(word: str, ease: float) -> float:
    """How much of the cap's ease lies between underarm and notch: none below the balance notch, all of it
    below the notch where the crown begins that has none."""
    return ease if word == "ease_notch" else 0.0


def closures(data: dict[str, Any], wanted: Mapping[str, float]) -> list[Closure]:
    """Everything that must agree in a pattern with a bodice, and with a sleeve where it has one."""
    judge = UpperJudge(data)
    found = list(bodice_closures(judge, wanted))
    return [*found, *sleeve_closures(judge, wanted)] if judge.has_sleeve else found


def misses(data: dict[str, Any], wanted: Mapping[str, float]) -> list[str]:
    """What does not agree, and outlines that cross themselves."""
    judge = UpperJudge(data)
    found = [f"{one.name}: {one.miss:+.3f}" for one in closures(data, wanted) if not one.holds]
    return found + [f"{piece} crosses itself" for piece in judge.pieces if not judge.polygon(piece).is_valid]


def _from(run: Points, start: Points) -> Points:
    """The run in the direction in which it begins at the start."""
    ends = np.linalg.norm(run[[0, -1]] - start, axis=1)
    return run if ends[0] <= ends[1] else run[::-1]


def _rotation(before: Points, after: Points) -> Points:
    """The rotation that takes one direction into another."""
    angle = np.arctan2(after[1], after[0]) - np.arctan2(before[1], before[0])
    return np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])


def _turn(before: Points, after: Points) -> float:
    """By how many degrees the direction turns, counter-clockwise."""
    cross = before[0] * after[1] - before[1] * after[0]
    return float(np.degrees(np.arctan2(cross, before @ after)))
