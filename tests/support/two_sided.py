"""Bodies whose sides differ, the blocks drafted for them, and how either side is judged from outside.

The bodies are invented. By how much the left differs is what a patternmaker meets: a shoulder 3 degrees
lower, an arm 12 mm longer (common practice, no source).
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from shapely.geometry import Polygon

from notchbook.body import MeasureSet, Side
from notchbook.pattern import pattern_to_data
from notchbook.recipe import Recipe, Replay, add_step, replay
from notchbook.recipe.track import Track
from support import (
    bodice_judge,
    joined_judge,
    lower_judge,
    round_skirt_judge,
    skirt_judge,
    stretch_judge,
)
from support.one_side import one_side
from support.sleeve_bodies import woman

Steps = tuple[tuple[str, dict[str, Any]], ...]
Wanted = Mapping[str, float]
JudgeOfHalf = Callable[[dict[str, Any], Wanted, MeasureSet, Side], list[str]]

LEFT: dict[str, float] = {
    "bust_girth": 20.0,
    "waist_girth": 20.0,
    "neck_base_girth": 10.0,
    "scye_depth": 8.0,
    "across_back": 10.0,
    "across_chest": 10.0,
    "shoulder_length": 8.0,
    "shoulder_slope": 3.0,
    "neck_to_bust_point": 8.0,
    "front_waist_length": 10.0,
    "bust_point_width": 10.0,
    "upper_arm_girth": 15.0,
    "elbow_girth": 10.0,
    "wrist_girth": 8.0,
    "elbow_length": 10.0,
    "arm_length": 12.0,
    "hip_girth": 25.0,
    "hip_depth": 12.0,
    "standing_rise": 8.0,
    "outside_leg": 12.0,
    "inside_leg": 10.0,
    "thigh_girth": 20.0,
    "knee_girth": 15.0,
    "calf_girth": 15.0,
    "ankle_girth": 10.0,
}
"""By how much the left may differ, mm or degrees."""


LEGS: dict[str, float] = {
    "standing_rise": 270.0,
    "outside_leg": 1060.0,
    "inside_leg": 780.0,
    "thigh_girth": 580.0,
    "knee_girth": 380.0,
    "calf_girth": 360.0,
    "ankle_girth": 230.0,
    "crotch_length": 680.0,
}
"""The legs of the woman of bust 92, invented."""


def with_legs() -> MeasureSet:
    """The woman of bust 92 with arms and legs."""
    return woman(**LEGS)


@dataclass(frozen=True)
class SidedBlock:
    """A block, or one drafted with another: its steps, sided measures that change it, its judge.

    ``body`` is whose block it is; ``girth`` begins the names of edges that are measured for the girths.
    """

    steps: Steps
    reads: tuple[str, ...]
    judge: JudgeOfHalf
    body: Callable[[], MeasureSet] = woman
    girth: str = "waist"


def _skirt(half: dict[str, Any], wanted: Wanted, measures: MeasureSet, side: Side) -> list[str]:
    """The judge counts from the hip line, which on the left may lie higher or lower than y = 0."""
    hip_line = next(line for line in half["pieces"][0]["lines"] if line["name"] == "skirt.front/hip_line")
    depth = measures.value("hip_depth", side) + hip_line["path"][0][2]
    return skirt_judge.misses(skirt_judge.closures(half, wanted["waist_girth"], wanted["hip_girth"], depth))


def _bodice(half: dict[str, Any], wanted: Wanted, measures: MeasureSet, side: Side) -> list[str]:
    return bodice_judge.misses(half, wanted)


def _joined(slug: str) -> JudgeOfHalf:
    def judge(half: dict[str, Any], wanted: Wanted, measures: MeasureSet, side: Side) -> list[str]:
        return joined_judge.open_closures(half, slug, wanted)

    return judge


def _trousers(half: dict[str, Any], wanted: Wanted, measures: MeasureSet, side: Side) -> list[str]:
    return lower_judge.lower_misses(half, wanted)


def _circle(half: dict[str, Any], wanted: Wanted, measures: MeasureSet, side: Side) -> list[str]:
    ring = round_skirt_judge.RingWanted(wanted["waist_girth"], 0.5, wanted["skirt_length"])
    found = round_skirt_judge.circle_closures(half, ring)
    return _open(_allowing_alike(found) if _alike(measures, "waist_girth") else found)


def _alike(measures: MeasureSet, key: str) -> bool:
    """Whether the sides differ by so little that one piece serves both."""
    apart = measures.value(key, "left") - measures.value(key, "right")
    return abs(apart) <= 4.0 * bodice_judge.LENGTH


def _allowing_alike(found: Iterable[bodice_judge.Closure]) -> Iterable[bodice_judge.Closure]:
    """One piece for two sides is the right one's: what is a closed form on one side is then held to the
    0.1 mm within which sides count as alike, an area to a thousandth."""
    within = {"waist": bodice_judge.LENGTH, "area": 1e-3}
    for one in found:
        loosest = bodice_judge.LENGTH if one.name.endswith((" radius", " round")) else one.within
        yield replace(one, within=max(one.within, within.get(one.name, loosest)))


def _gored(half: dict[str, Any], wanted: Wanted, measures: MeasureSet, side: Side) -> list[str]:
    return _open(round_skirt_judge.gore_closures(half, dict(wanted)))


def _stretch(slug: str) -> JudgeOfHalf:
    closures = stretch_judge.leggings_closures if slug == "leggings" else stretch_judge.torso_closures

    def judge(half: dict[str, Any], wanted: Wanted, measures: MeasureSet, side: Side) -> list[str]:
        return _open(closures(stretch_judge.StretchJudge(half, slug), wanted))

    return judge


def _open(found: Iterable[bodice_judge.Closure]) -> list[str]:
    return [f"{one.name} {one.miss:+.3f}" for one in found if not one.holds]


_UPPER = tuple(LEFT)[:11]
_HIP = ("hip_girth", "hip_depth")
_ARM = ("upper_arm_girth", "elbow_girth", "wrist_girth", "elbow_length", "arm_length")
_SLEEVE = {"fabric": "wool_dress"}
_KNIT = {"across": "10 cm to 15 cm", "along": "10 cm to 14 cm"}
_CLOSE = ("bust_girth", "shoulder_length", *_HIP)

BLOCKS: dict[str, SidedBlock] = {
    "skirt": SidedBlock((("skirt", {}),), ("waist_girth", *_HIP), _skirt),
    "bodice": SidedBlock((("bodice", {}),), _UPPER, _bodice),
    "bodice and sleeve": SidedBlock(
        (("bodice", {}), ("sleeve", _SLEEVE)), ("shoulder_slope", "across_chest", *_ARM), _bodice
    ),
    "torso": SidedBlock((("torso", {}),), (*_UPPER, *_HIP), _joined("torso")),
    "dress": SidedBlock((("dress", {}),), (*_UPPER, *_HIP), _joined("dress")),
    "dress in one": SidedBlock(
        (("dress", {"waist_seam": "none"}),), ("shoulder_slope", "bust_point_width", *_HIP), _joined("dress")
    ),
    "circle skirt": SidedBlock((("circle_skirt", {}),), ("waist_girth",), _circle),
    "gored skirt": SidedBlock((("gored_skirt", {}),), ("waist_girth", *_HIP), _gored),
    "trousers": SidedBlock(
        (("trousers", {}),),
        (
            "waist_girth",
            *_HIP,
            "standing_rise",
            "outside_leg",
            "inside_leg",
            "thigh_girth",
            "knee_girth",
        ),
        _trousers,
        with_legs,
    ),
    "stretch torso": SidedBlock(
        (("stretch_torso", _KNIT),),
        ("bust_girth", "shoulder_length", "across_back", *_HIP, "scye_depth", "upper_arm_girth"),
        _stretch("stretch_torso"),
        girth="shoulder",
    ),
    "bodysuit": SidedBlock(
        (("bodysuit", _KNIT),), (*_CLOSE, "thigh_girth"), _stretch("bodysuit"), with_legs, "leg_opening"
    ),
    "bodysuit with sleeve": SidedBlock(
        (("bodysuit", {**_KNIT, "sleeve": "short", "waist_ease": "-20 mm"}),),
        ("waist_girth",),  # without an ease of its own it gives way beside a round hip
        _stretch("bodysuit"),
        with_legs,
        "leg_opening",
    ),
    "leggings": SidedBlock(
        (("leggings", _KNIT),),
        (*_HIP, "inside_leg", "thigh_girth", "knee_girth", "calf_girth", "ankle_girth"),
        _stretch("leggings"),
        with_legs,
    ),
}
"""Every block of which a half can be judged."""

GRID = [(name, key) for name, block in BLOCKS.items() for key in block.reads]


def two_sided(name: str, *keys: str, turn: float = 1.0) -> MeasureSet:
    """The body of the block, its left differing in these measures; with ``turn`` -1 the other way."""
    measures = BLOCKS[name].body()
    for key in keys:
        measures = measures.with_value(key, measures.value(key) + turn * LEFT[key], "left")
    return measures


def replayed(name: str, measures: MeasureSet) -> Replay:
    """The block for this body; its choices are those of the body without its left side."""
    recipe = Recipe("Garment")
    for operation, parameters in BLOCKS[name].steps:
        recipe = add_step(recipe, operation, parameters, base=BLOCKS[name].body())
    return replay(recipe, measures)


def drafted(name: str, measures: MeasureSet) -> Replay:
    """The block drafted to its end."""
    done = replayed(name, measures)
    assert done.suspended is None, str(done.suspended.error)
    return done


def misses(name: str, done: Replay, data: dict[str, Any] | None = None) -> dict[str, list[str]]:
    """What does not agree on each side, by other code than the drafts'; ``data`` stands for the pattern's."""
    whole = pattern_to_data(done.pattern) if data is None else data
    tracks: tuple[tuple[Side, Track], ...] = (("right", done.right), ("left", done.left or done.right))
    judge = BLOCKS[name].judge
    return {side: judge(one_side(whole, side), _wanted(track), done.measures, side) for side, track in tracks}


def _wanted(track: Track) -> dict[str, float]:
    """What was asked of one side, mm with ease, by measure."""
    promises = (promise for state in track.states for promise in state.expectations)
    found: dict[str, float] = {}
    for promise in promises:
        found[promise.name.rpartition("/")[2]] = promise.wanted
        if promise.measure:
            found[promise.measure] = promise.wanted
    return found


def broken_outlines(data: dict[str, Any]) -> list[str]:
    """The pieces, whole as they are cut, whose outline crosses itself (by shapely)."""
    judge = skirt_judge.Judge(data)
    outlines: dict[str, Polygon] = {piece: judge.polygon(piece) for piece in judge.pieces}
    return [piece for piece, outline in outlines.items() if not outline.is_valid]
