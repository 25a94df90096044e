"""Judges stretch torso, bodysuit and leggings from a pattern's plain data with numpy and shapely alone."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any, Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import make_valid
from shapely.geometry import LineString

from support.bodice_judge import ANGLE, LENGTH, SIDE_ANGLE, Closure, Points, UpperJudge
from support.lower_judge import FAR, sharpest
from support.round_skirt_judge import pairs
from support.skirt_judge import length
from upper_figures import inflections

PANELS: Final = ("front", "back")

SEAT_COVER: Final = (10.0, 20.0)
"""mm that the back leg line lies below its chord, so that it covers the seat (a patternmaker's review)."""

POUCH: Final = 30.0
"""mm that an armhole may go farther toward the center than its shoulder point, at most. Own judgment."""

STRAY: Final = 1.0
"""mm that a leg line may stray over its chord to the wrong side. Own judgment."""

TURN_IN, AT_AN_END = 0.02, 0.2
"""In the first and the last fifth of its length the back leg line must turn in, to run straight on into the
front at side and crotch: by so much of its length at most. Own judgment."""

JUST_BELOW: Final = 1e-3
"""mm below a level at which the line across may touch the end of another edge."""


class StretchJudge(UpperJudge):
    """Reads a pattern whose pieces are ``<slug>.front`` and so on, each half of a garment or one of two."""

    def __init__(self, data: dict[str, Any], slug: str) -> None:
        super().__init__(data)
        self.slug = slug
        self.data = data

    def piece(self, word: str) -> str:
        """The whole name of a piece."""
        return f"{self.slug}.{word}"

    def edge(self, piece: str, word: str) -> Points:
        """All edges of this name as one run."""
        run, _ = self.run(self.piece(piece), word)
        return run

    def has(self, piece: str, line: str = "") -> bool:
        """Whether there is such a piece, and such a line on it."""
        name = self.piece(piece)
        return name in self.pieces and (not line or f"{name}/{line}" in self.lines)

    def level(self, piece: str, line: str) -> float:
        """The height of a level line."""
        return float(self.lines[f"{self.piece(piece)}/{line}"][:, 1].mean())

    def cut(self, piece: str, line: str) -> tuple[float, float]:
        """Between which x a piece lies at a level, cut out of its polygon, mm."""
        outline = make_valid(self.polygon(self.piece(piece)))
        level = self.level(piece, line)
        height = level + JUST_BELOW if self._is_hem(piece, level) else level - JUST_BELOW
        left, _, right, _ = outline.intersection(LineString([(-FAR, height), (FAR, height)])).bounds
        return float(left), float(right)

    def _is_hem(self, piece: str, level: float) -> bool:
        """Whether there is no cloth below this level at the side; a hem may lie lower at the center."""
        name = self.piece(piece)
        corners = {edge["start"] for edge in self.pieces[name]["outline"]}
        side = self.at(piece, "hem_side")[1] if f"{name}/hem_side" in corners else -np.inf
        return bool(level - JUST_BELOW < max(self.polygon(name).bounds[1], side))

    def width(self, piece: str, line: str) -> float:
        """How wide a piece is at a level, mm."""
        left, right = self.cut(piece, line)
        return right - left

    def half(self, which: str, line: str) -> float:
        """From the center (x = 0) to the side of a panel at a level, mm; a low neck does not count."""
        return max(abs(x) for x in self.cut(which, line))

    def at(self, piece: str, word: str) -> Points:
        """Where a point of the outline or a mark lies."""
        name = f"{self.piece(piece)}/{word}"
        return self.mark(name) if name in self.marks else self.point(self.piece(piece), word)

    def both(self, word: str) -> float:
        """The edges of this name on front and back together, mm."""
        return sum(length(self.edge(which, word)) for which in PANELS)

    @property
    def is_one_leg(self) -> bool:
        """Whether front and back of leggings are one piece, without a side seam."""
        return self.has("leg")

    def leg_edge(self, which: str, word: str) -> Points:
        """An edge of the front or the back of leggings."""
        return self.edge("leg", f"{which}_{word}") if self.is_one_leg else self.edge(which, word)

    def leg_whole(self, word: str) -> float:
        """Waist or hem of one leg, mm."""
        return length(self.edge("leg", word)) if self.is_one_leg else self.both(word)

    def leg_width(self, line: str) -> float:
        """One leg at a level, mm."""
        return sum(self.width(piece, line) for piece in (("leg",) if self.is_one_leg else PANELS))

    def leg_at(self, which: str, point: str) -> Points:
        """A point of the front or the back of leggings."""
        return self.at("leg", f"{point}_{which}") if self.is_one_leg else self.at(which, point)

    def leg_across(self, point: str, one_leg: str = "") -> float:
        """The angle that front and back of leggings make together at a point, degrees."""
        if not self.is_one_leg:
            return self.across(point)
        return sum(self.corner(self.piece("leg"), f"{one_leg or point}_{which}") for which in PANELS)

    def around(self, line: str) -> float:
        """The whole garment round at a level, mm."""
        return 2.0 * sum(self.half(which, line) for which in PANELS)

    def across(self, point: str) -> float:
        """The angle that front and back make together at a point, degrees."""
        return sum(self.corner(self.piece(which), point) for which in PANELS)


def torso_closures(judge: StretchJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    """What must agree on a stretch torso or a bodysuit; ``wanted`` in mm by the last word of a promise."""
    yield from _lengths(judge, wanted)
    yield from _angles(judge)
    if judge.has("sleeve"):
        yield from _sleeve(judge, wanted)
    if judge.has("lining"):
        yield from _crotch(judge, wanted)
    yield from pairs(judge, judge.data)
    yield from _whole(judge)


def _lengths(judge: StretchJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    nape, underarm = _neck_base(judge), judge.at("back", "underarm")
    measured = {
        "bust_girth": lambda: judge.around("bust_line"),
        "waist_girth": lambda: judge.around("waist_line"),
        "hip_girth": lambda: judge.around("hip_line"),
        "across_back": lambda: 2.0 * judge.half("back", "across_back_line"),
        "shoulder_length": lambda: length(judge.edge("front", "shoulder")),
        "scye_depth": lambda: float(nape[1] - underarm[1]),
        "back_waist_length": lambda: float(nape[1] - judge.level("back", "waist_line")),
    }
    for key, value in wanted.items():
        if key in measured:
            yield Closure(key, measured[key](), value, LENGTH)


def _neck_base(judge: StretchJudge) -> Points:
    """Where the nape of the body lies, whatever neck was cut."""
    return judge.at("back", "neck_base" if "neck_base" in _marks(judge, "back") else "nape")


def _marks(judge: StretchJudge, piece: str) -> set[str]:
    return {name.rpartition("/")[2] for name in judge.marks if name.startswith(f"{judge.piece(piece)}/")}


def _angles(judge: StretchJudge) -> Iterator[Closure]:
    for which, top in (("front", "neck_pit"), ("back", "nape")):
        yield Closure(f"{which} neck square", judge.corner(judge.piece(which), top), 90.0, ANGLE)
    places = [("side_neck_point", ANGLE), ("shoulder_point", ANGLE), ("underarm", SIDE_ANGLE)]
    places.append(("leg_side" if judge.has("lining") else "hem_side", SIDE_ANGLE))
    for point, within in places:
        yield Closure(f"across {point}", judge.across(point), 180.0, within)


def _sleeve(judge: StretchJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    for which in PANELS:
        cap, armhole = length(judge.edge("sleeve", f"cap_{which}")), length(judge.edge(which, "armhole"))
        yield Closure(f"{which} cap without ease", cap - armhole, 0.0, LENGTH)
    piece = judge.piece("sleeve")
    yield Closure("crown without a point", judge.corner(piece, "cap_top"), 180.0, ANGLE)
    for point in ("underarm", "hem"):
        closed = sum(judge.corner(piece, f"{point}_{which}") for which in PANELS)
        yield Closure(f"across sleeve {point}", closed, 180.0, SIDE_ANGLE)
    if "upper_arm_girth" in wanted:
        yield Closure("biceps", judge.width("sleeve", "biceps_line"), wanted["upper_arm_girth"], LENGTH)
    for key in ("hem_girth", "wrist_girth"):
        if key in wanted:
            yield Closure("sleeve hem", length(judge.edge("sleeve", "hem")), wanted[key], LENGTH)


def _crotch(judge: StretchJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    """The leg openings, the crotch join with its lining, the way from waist to waist."""
    joins = {which: length(judge.edge(which, "crotch")) for which in (*PANELS, "lining")}
    yield Closure("crotch join", joins["front"] - joins["back"], 0.0, LENGTH)
    yield Closure("lining at the crotch join", joins["lining"] - joins["front"], 0.0, LENGTH)
    yield Closure("across crotch_side", judge.across("crotch_side"), 180.0, ANGLE)
    for which in PANELS:
        yield Closure(
            f"{which} crotch square", judge.corner(judge.piece(which), "crotch_center"), 90.0, ANGLE
        )
    if "thigh_girth" in wanted:
        yield Closure("leg opening", judge.both("leg_opening"), wanted["thigh_girth"], LENGTH)
    if "crotch_length" in wanted:
        ways = (judge.level(w, "waist_line") - float(judge.at(w, "crotch_center")[1]) for w in PANELS)
        yield Closure("crotch_length", sum(ways), wanted["crotch_length"], LENGTH)
    front, lining = (make_valid(judge.polygon(judge.piece(w))) for w in ("front", "lining"))
    over = shapely.points(shapely.get_coordinates(lining.difference(front)))
    farthest = max(np.atleast_1d(shapely.distance(over, front)), default=0.0)
    yield Closure("lining lies on the front", float(farthest), 0.0, LENGTH)


def _whole(judge: StretchJudge) -> Iterator[Closure]:
    for name in judge.pieces:
        yield Closure(f"{name} in one piece", float(judge.polygon(name).is_valid), 1.0, 0.0)


def leggings_closures(judge: StretchJudge, wanted: Mapping[str, float]) -> Iterator[Closure]:
    """What must agree on leggings, one piece a leg or with a side seam."""
    measured: dict[str, Callable[[], float]] = {
        "waist_girth": lambda: 2.0 * judge.leg_whole("waist"),
        "hip_girth": lambda: 2.0 * judge.leg_width("hip_line"),
        "thigh_girth": lambda: judge.leg_width("thigh_line"),
        "knee_girth": lambda: judge.leg_width("knee_line"),
        "calf_girth": lambda: judge.leg_width("calf_line"),
        "ankle_girth": lambda: judge.leg_whole("hem"),
        "crotch_length": lambda: sum(length(seam) for seam in _crotch_seams(judge)),
    }
    for key, value in wanted.items():
        if key in measured:
            yield Closure(key, measured[key](), value, LENGTH)
    yield Closure("across crotch_point", judge.leg_across("crotch_point"), 180.0, ANGLE)
    yield Closure("across waist_center", judge.leg_across("waist_center"), 180.0, SIDE_ANGLE)
    yield Closure("across hem", judge.leg_across("hem_inseam", "hem"), 180.0, SIDE_ANGLE)
    if not judge.is_one_leg:
        for point in ("waist_side", "hem_side"):
            yield Closure(f"across {point}", judge.across(point), 180.0, SIDE_ANGLE)
    yield from pairs(judge, judge.data)
    yield from _whole(judge)


def _crotch_seams(judge: StretchJudge) -> tuple[Points, Points]:
    """Front and back."""
    return judge.leg_edge("front", "crotch_seam"), judge.leg_edge("back", "crotch_seam")


def torso_faults(judge: StretchJudge) -> list[str]:
    """What a patternmaker would send back though every length agrees."""
    found = []
    for which in PANELS:
        if (inside := armhole_inside(judge, which)) > POUCH:
            found.append(f"{which} armhole is a pouch {inside:.0f}")
        if count := inflections(judge.edge(which, "armhole")):
            found.append(f"{which} armhole bends both ways {count}")
        found += corners_in_edges(judge, judge.piece(which))
    if judge.has("sleeve"):
        bends = {which: inflections(judge.edge("sleeve", f"cap_{which}")) for which in PANELS}
        found += [f"{which} cap bends {count}" for which, count in bends.items() if count > 1]
    return [*found, *_leg_faults(judge)] if judge.has("lining") else found


def corners_in_edges(judge: UpperJudge, piece: str) -> list[str]:
    """The edges of a piece that do not run smoothly, with the sharpest turn in each, degrees."""
    turns = {edge["name"]: sharpest(judge.edges[edge["name"]]) for edge in judge.pieces[piece]["outline"]}
    return [f"{name} has a corner {turn:.1f}" for name, turn in turns.items() if turn > ANGLE]


def _leg_faults(judge: StretchJudge) -> Iterator[str]:
    outside = {which: leg_beyond_chord(judge, which) for which in PANELS}
    deepest = float(outside["back"].max())
    if not SEAT_COVER[0] - LENGTH <= deepest <= SEAT_COVER[1] + LENGTH:
        yield f"back leg below its chord {deepest:.0f}"
    run = judge.edge("back", "leg_opening")
    allowed = np.where(_near_an_end(run), TURN_IN * length(run), STRAY)
    scooped = -outside["back"] - allowed
    if scooped.max() > 0.0:
        yield f"back leg scooped {-outside['back'].min():.0f}"
    if outside["front"].max() > STRAY:
        yield f"front leg below its chord {outside['front'].max():.0f}"
    if count := inflections(judge.edge("front", "leg_opening")):
        yield f"front leg bends both ways {count}"


def _near_an_end(run: Points) -> NDArray[np.bool_]:
    """Which points of a run lie in its first or its last part."""
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(run, axis=0), axis=1))]) / length(run)
    found: NDArray[np.bool_] = np.minimum(along, 1.0 - along) < AT_AN_END
    return found


def armhole_inside(judge: StretchJudge, which: str) -> float:
    """How much nearer to the center an armhole comes than its shoulder point, mm."""
    inward = np.abs(judge.edge(which, "armhole")[:, 0])
    return float(abs(judge.at(which, "shoulder_point")[0]) - inward.min())


def leg_beyond_chord(judge: StretchJudge, which: str) -> Points:
    """How far each point of a leg line lies beyond the straight line between its ends: above 0 the piece
    covers more than to that line, mm."""
    run = judge.edge(which, "leg_opening")
    chord = run[-1] - run[0]
    off = (run - run[0]) @ np.array([chord[1], -chord[0]]) / np.linalg.norm(chord)
    inside = np.array(judge.edges[f"{judge.piece(which)}/armhole"].mean(axis=0))
    toward = (inside - run[0]) @ np.array([chord[1], -chord[0]])
    return np.asarray(-np.sign(toward) * off, dtype=np.float64)


def torso_figures(judge: StretchJudge) -> dict[str, float]:
    """Figures of shape by name, mm and shares."""
    found = {}
    for which in PANELS:
        armhole = judge.edge(which, "armhole")
        found[f"armhole {which}"] = length(armhole)
        found[f"armhole inside {which}"] = armhole_inside(judge, which)
    if judge.has("sleeve"):
        height = float(judge.at("sleeve", "cap_top")[1] - judge.level("sleeve", "biceps_line"))
        found["cap to armhole"] = height / (found["armhole front"] + found["armhole back"])
    if judge.has("lining"):
        found["leg opening"] = judge.both("leg_opening")
        found["seat cover"] = float(leg_beyond_chord(judge, "back").max())
        found["front scoop"] = -float(leg_beyond_chord(judge, "front").min())
    return found


def leggings_faults(judge: StretchJudge) -> list[str]:
    """What a patternmaker would send back though every length agrees."""
    front, back = _crotch_seams(judge)
    bends = {"front": inflections(front), "back": inflections(back)}
    found = [f"{which} crotch bends both ways {count}" for which, count in bends.items() if count]
    found += [fault for piece in judge.pieces for fault in corners_in_edges(judge, piece)]
    if length(back) <= length(front):
        found.append("the back crotch is not longer")
    if judge.leg_at("back", "waist_center")[1] <= judge.leg_at("front", "waist_center")[1]:
        found.append("the back waist is not higher")
    return found


def leggings_figures(judge: StretchJudge) -> dict[str, float]:
    """Figures of shape by name, mm."""
    found = dict(zip(("front crotch", "back crotch"), map(length, _crotch_seams(judge)), strict=True))
    tops = [float(judge.leg_at(which, "waist_center")[1]) for which in PANELS]
    found["back higher"] = tops[1] - tops[0]
    found["fork width"] = judge.leg_width("crotch_line")
    return found
