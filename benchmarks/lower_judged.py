"""What outside code says of a drafted lower or stretch block: closures, faults of shape, figures."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT / "benchmarks")]

import numpy as np
from shapely.geometry import LineString, Point

from notchbook.pattern import pattern_to_data
from notchbook.recipe import Replay
from support.asked_of_lower import asked_of_lower
from support.bodice_judge import ANGLE, LENGTH, SIDE_ANGLE, Closure
from support.lower_judge import (
    CORNER_DEPTH,
    CORNER_DEPTH_PLUS,
    PLUS_HIP,
    LowerJudge,
    leg_figures,
    shape_faults,
    trousers_closures,
)
from support.round_skirt_judge import RingWanted, circle_closures, gore_closures, gore_faults
from support.skirt_judge import Judge
from support.skirt_judge import closures as straight_closures
from support.stretch_judge import (
    StretchJudge,
    leggings_closures,
    leggings_faults,
    leggings_figures,
    torso_closures,
    torso_faults,
    torso_figures,
)


@dataclass(frozen=True)
class Judged:
    """``closures`` that must hold, ``faults`` of shape in words, ``figures`` of shape."""

    closures: tuple[Closure, ...]
    faults: tuple[str, ...] = ()
    figures: Mapping[str, float] = field(default_factory=dict)

    @property
    def open(self) -> tuple[str, ...]:
        """The closures that do not hold, with by how much."""
        return tuple(f"{one.name} {one.miss:+.2f}" for one in self.closures if not one.holds)

    @property
    def worst(self) -> float:
        """The largest miss of a length that has the usual limit, mm."""
        return max((abs(one.miss) for one in self.closures if one.within == LENGTH), default=0.0)


def wanted_of(run: Replay) -> dict[str, float]:
    """What each girth and length was to come to, mm with its ease, by the last word of its promise; waist,
    hip and crotch by what was asked for, not by what the draft promises."""
    return {one.name.rpartition("/")[2]: one.wanted for one in run.expectations} | asked_of_lower(run)


def parameters_of(run: Replay, block: str) -> Mapping[str, Any]:
    """The parameters with which a block was drafted."""
    return next(step.parameters for step in run.recipe.steps if step.operation == block)


def judge_trousers(run: Replay) -> Judged:
    """Trousers, both panels of one leg."""
    judge = LowerJudge(pattern_to_data(run.pattern))
    depth = CORNER_DEPTH_PLUS if run.measures.value("hip_girth") > PLUS_HIP else CORNER_DEPTH
    is_wide = parameters_of(run, "trousers").get("silhouette") in ("wide", "culottes")
    faults = shape_faults(judge, None if is_wide or run.measures.population is None else depth)
    return Judged(tuple(trousers_closures(judge, wanted_of(run))), tuple(faults), leg_figures(judge))


def judge_skirt(run: Replay) -> Judged:
    """The straight skirt, flared or not."""
    data, wanted = pattern_to_data(run.pattern), wanted_of(run)
    judge = Judge(data)
    found = straight_closures(data, wanted["waist_girth"], wanted["hip_girth"], 0.0)
    closures = [
        Closure(name, miss, 0.0, next((most for word, most in _LIMITS.items() if word in name), LENGTH))
        for name, miss in found.items()
        if "hip depth" not in name
    ]
    for piece in judge.pieces:
        depth = hip_depth_along(judge, piece)
        closures.append(Closure(f"{piece} hip depth", depth, run.measures.value("hip_depth"), LENGTH))
        closures.append(Closure(f"{piece} hem square", judge.corner(piece, "hem_side"), 90.0, ANGLE))
        closures.append(Closure(f"{piece} in one piece", float(judge.polygon(piece).is_valid), 1.0, 0.0))
    if "hem_girth" in wanted:
        hems = sum(judge.length(*judge.named(piece, "hem")) for piece in judge.pieces)
        closures.append(Closure("hem", 2.0 * hems, wanted["hem_girth"], LENGTH))
    return Judged(tuple(closures), (), {"side rise": judge.rise("skirt.front")})


_LIMITS: Final = {"across the side": SIDE_ANGLE, "square": ANGLE}
"""Degrees, of the closures that are angles."""


def hip_depth_along(judge: Judge, piece: str) -> float:
    """From the waist along the side seam to the end of the hip line, mm."""
    side = LineString(judge.edges[f"{piece}/side_seam"])
    ends = judge.lines[f"{piece}/hip_line"][[0, -1]]
    at_hip = side.project(Point(ends[np.argmax(np.abs(ends[:, 0]))]))
    at_waist = side.project(Point(judge.point(piece, "waist_side")))
    return float(abs(at_waist - at_hip))


SHARES: Final = {"full": 1.0, "three_quarter": 0.75, "half": 0.5, "quarter": 0.25}


def judge_circle(run: Replay) -> Judged:
    """The circle skirt, by its closed forms."""
    wanted, chosen = wanted_of(run), parameters_of(run, "circle_skirt")
    ring = RingWanted(wanted["waist_girth"], SHARES[chosen["fullness"]], wanted["skirt_length"])
    found = circle_closures(pattern_to_data(run.pattern), ring)
    return Judged(tuple(found), (), {"hem": ring.hem, "waist radius": ring.radius})


def judge_gored(run: Replay) -> Judged:
    """The gored skirt."""
    data = pattern_to_data(run.pattern)
    return Judged(tuple(gore_closures(data, wanted_of(run))), tuple(gore_faults(data)))


def judge_torso(run: Replay) -> Judged:
    """The stretch torso or the bodysuit, with its sleeve where it has one."""
    block = run.recipe.steps[0].operation
    judge = StretchJudge(pattern_to_data(run.pattern), block)
    found = torso_closures(judge, wanted_of(run))
    return Judged(tuple(found), tuple(torso_faults(judge)), torso_figures(judge))


def judge_leggings(run: Replay) -> Judged:
    """Leggings, one leg."""
    judge = StretchJudge(pattern_to_data(run.pattern), "leggings")
    found = leggings_closures(judge, wanted_of(run))
    return Judged(tuple(found), tuple(leggings_faults(judge)), leggings_figures(judge))


JUDGES: Final[dict[str, Callable[[Replay], Judged]]] = {
    "trousers": judge_trousers,
    "skirt": judge_skirt,
    "circle_skirt": judge_circle,
    "gored_skirt": judge_gored,
    "stretch_torso": judge_torso,
    "bodysuit": judge_torso,
    "leggings": judge_leggings,
}
