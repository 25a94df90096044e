"""What is read off a finished bodice and sleeve by outside code: figures of shape, not closures."""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tests")]

from support.bodice_judge import BODICE, Points, UpperJudge, lay_gap
from support.skirt_judge import angle_between, length

BUST_DART = "bodice.front/bust_dart"


def figures(judge: UpperJudge) -> dict[str, float]:
    """Name -> mm or degrees; what the pattern has not is left out."""
    found = {"dart angle": _dart_angle(judge)}
    found |= _neck(judge)
    armholes = {which: judge.armhole(which) for which in BODICE}
    for which, armhole in armholes.items():
        found[f"armhole {which}"] = length(armhole)
        found[f"armhole hollow {which}"] = hollow_at(armhole)
        found[f"armhole {which} inflections"] = inflections(armhole)
    found["armhole width"] = sum(float(armhole[:, 0].max()) for armhole in armholes.values())
    if judge.has_sleeve:
        found |= _sleeve(judge, armholes)
    return found


def _dart_angle(judge: UpperJudge) -> float:
    """The angle between the ends of the bust dart's mouth, seen from the bust point; 0 without a dart."""
    for name, first, second in judge.darts(BODICE["front"]):
        if name == BUST_DART:
            point = judge.mark("bodice.front/bust_point")
            return angle_between(judge.edges[first][0] - point, judge.edges[second][-1] - point)
    return 0.0


def _neck(judge: UpperJudge) -> dict[str, float]:
    front = judge.point(BODICE["front"], "side_neck_point"), judge.point(BODICE["front"], "neck_pit")
    back = judge.point(BODICE["back"], "side_neck_point"), judge.point(BODICE["back"], "nape")
    return {
        "neck width": abs(float(back[0][0] - back[1][0])),
        "neck depth": float(front[0][1] - front[1][1]),
        "neck rise": float(back[0][1] - back[1][1]),
    }


def _sleeve(judge: UpperJudge, armholes: dict[str, Points]) -> dict[str, float]:
    piece = "sleeve.sleeve"
    top, front, back = (judge.point(piece, word) for word in ("cap_top", "underarm_front", "underarm_back"))
    height = float(top[1] - (front[1] + back[1]) / 2.0)
    whole = sum(length(armhole) for armhole in armholes.values())
    found = {
        "cap height": height,
        "cap to armhole": height / whole,
        "biceps": abs(float(front[0] - back[0])),
        "front share of biceps": abs(float(front[0] - top[0])) / abs(float(front[0] - back[0])),
    }
    for which, armhole in armholes.items():
        cap = judge.cap(which)
        found[f"lay gap {which}"] = lay_gap(cap, armhole)
        found[f"lay gap {which} to 75"] = lay_gap(cap, armhole, 75.0)
        found[f"cap hollow {which}"] = hollow(cap)
        found[f"cap {which} inflections"] = inflections(cap)
    return found


def hollow(run: Points) -> float:
    """How far a run dips below the straight line between its ends at most, mm."""
    chord = run[-1] - run[0]
    off = (run - run[0]) @ np.array([chord[1], -chord[0]]) / np.linalg.norm(chord)
    return float(max(off.max(), 0.0))


def hollow_at(armhole: Points) -> float:
    """At what share of its height an armhole leaves the straight line from underarm to shoulder farthest."""
    chord = armhole[-1] - armhole[0]
    off = (armhole - armhole[0]) @ np.array([chord[1], -chord[0]])
    return float((armhole[np.argmax(off), 1] - armhole[0, 1]) / chord[1])


def inflections(run: Points, seen: float = 0.25) -> int:
    """How often a run changes the side to which it bends, by stretches that turn at least ``seen`` deg."""
    steps = np.diff(run, axis=0)
    steps = steps[np.linalg.norm(steps, axis=1) > 1e-9]
    cross = steps[:-1, 0] * steps[1:, 1] - steps[:-1, 1] * steps[1:, 0]
    turns = np.degrees(np.arctan2(cross, (steps[:-1] * steps[1:]).sum(axis=1)))
    stretches = np.split(turns, np.flatnonzero(np.diff(np.sign(turns)) != 0) + 1)
    ways = [np.sign(stretch.sum()) for stretch in stretches if abs(stretch.sum()) > seen]
    return int((np.diff(ways) != 0).sum())
