"""Makes bodies for trousers, skirts and stretch blocks from data/survey/ansur, in three ways, at two waists.

``measured``: what the survey took, brought to the book's definitions; what it did not take is estimated.
``split``: the same with the crotch length taken in its two parts too. ``estimated``: height, bust, waist and
hip alone were taken, the rest is estimated. The survey took every measure of the legs, so that there is
nothing to scatter. The rise is taken standing (waist height less crotch height); nobody took it sitting.

At the natural waist girth and lengths are estimates (see make_bodies.py); the crotch length is taken longer
by twice what the waist is higher, once in front and once behind (own reasoning, not measured).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, Literal, get_args

from make_bodies import Group, Level
from make_upper_bodies import FOUR_KEYS, UPPER_KEYS, taken_set, with_chest
from notchbook.body import MeasureSet
from notchbook.body.estimating import with_estimates
from notchbook.body.population import population
from survey_rows import Row

LowerMode = Literal["measured", "split", "estimated"]
LOWER_MODES: Final[tuple[LowerMode, ...]] = get_args(LowerMode)

PARTS_OF_CROTCH: Final = ("front_crotch_length", "back_crotch_length")

LOWER_KEYS: Final = (
    "height",
    "bust_girth",
    "waist_girth",
    "hip_girth",
    "hip_depth",
    "knee_depth",
    "outside_leg",
    "standing_rise",
    "inside_leg",
    "thigh_girth",
    "knee_girth",
    "calf_girth",
    "ankle_girth",
    "heel_girth",
    "crotch_length",
)
"""What trousers and skirts read, but for the parts of the crotch."""

STRETCH_KEYS: Final = (
    *UPPER_KEYS,
    *(key for key in LOWER_KEYS if key not in UPPER_KEYS),
    *PARTS_OF_CROTCH,
    "trunk_loop",
    "head_girth",
    "hand_girth",
)
"""What stretch torso, bodysuit and leggings read."""


@dataclass(frozen=True)
class LowerBody:
    """One row of the survey as a set of measures, made in one way at one waist."""

    id: str
    group: Group
    level: Level
    mode: LowerMode
    measures: MeasureSet


def lower_body(row: Row, level: Level, mode: LowerMode, group: Group) -> LowerBody:
    """One row of the survey for trousers and skirts; refused as the program refuses to estimate."""
    keys = (*LOWER_KEYS, *PARTS_OF_CROTCH) if mode == "split" else LOWER_KEYS
    return _body(row, level, mode, group, keys)


def stretch_body(row: Row, level: Level, mode: LowerMode, group: Group) -> LowerBody:
    """One row of the survey for the stretch blocks; refused as the program refuses to estimate."""
    return _body(row, level, mode, group, STRETCH_KEYS)


def _body(row: Row, level: Level, mode: LowerMode, group: Group, keys: tuple[str, ...]) -> LowerBody:
    name = f"{group[0]}{row['row']:.0f}"
    taken = replace(with_chest(taken_set(name, row, level, group, keys)), rise_method="standing")
    if mode == "estimated":
        taken = replace(taken, values={key: taken.get(key) for key in FOUR_KEYS})
    known = population(group).keys
    missing = tuple(key for key in keys if key in known and not taken.has(key))
    return LowerBody(name, group, level, mode, with_chest(with_estimates(taken, missing)))
