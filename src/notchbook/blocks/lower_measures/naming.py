"""What a population says about crotch length and rise, thigh and hip. Loads the numbers of the population."""

import math
from collections.abc import Iterator
from typing import Final

from notchbook.blocks.lower_measures.agreement_table import asks_from, other_waist
from notchbook.blocks.lower_measures.disagreement import LowerDisagreement
from notchbook.blocks.lower_measures.limits import rise_key
from notchbook.blocks.lower_measures.lower_measures import LowerMeasures
from notchbook.blocks.upper_measures.common_body import common_body
from notchbook.body import PopulationName
from notchbook.body.doubts.slips.waist_taken import NAVEL_DROP
from notchbook.body.doubts.together import Together

_PARTS: Final = ("front_crotch_length", "back_crotch_length")

SURE_PENALTY: Final = 3.0
"""Logarithm of how much less likely a slip is in a value that was read twice (own judgment)."""


def named_disagreements(measures: LowerMeasures) -> list[LowerDisagreement]:
    """What the population holds for unlikely, named as a pair; the crotch first."""
    body = common_body(measures)
    if body is None or measures.population is None:
        return []
    whole = body.keeping(_PARTS)
    return [*_crotch(measures, whole, measures.population), *_thigh(measures, whole)]


def _crotch(
    measures: LowerMeasures, body: Together, population: PopulationName
) -> Iterator[LowerDisagreement]:
    rise = rise_key(measures)
    if rise is None or "crotch_length" not in body.keys:
        return
    standings = body.standings()
    if abs(standings["crotch_length"].z) <= asks_from("crotch"):
        return
    slips = {key: _slip_gain(measures, body, key) for key in ("crotch_length", rise)}
    key = max(slips, key=lambda one: slips[one])
    drop, spread = _other_waist(measures, population)
    shift = body.gain_of_shift({"crotch_length": -2.0}, drop, spread) + other_waist("likelier")
    is_waist = shift > slips[key]
    if is_waist:
        key = "crotch_length"
    yield LowerDisagreement(
        kind="other-waist" if is_waist else "crotch",
        first="crotch_length",
        second=rise,
        key=key,
        given=measures.taken[key],
        explaining=standings[key].expected,
        deviations=abs(standings[key].z),
        lower=drop > 0.0,
        is_sure=key in measures.sure,
    )


def _other_waist(measures: LowerMeasures, population: PopulationName) -> tuple[float, float]:
    """How far below the waist of the set another would lie that the tape went to (negative: above), ±; mm."""
    size, _ = NAVEL_DROP[population]
    if measures.waist_level != "natural":
        size = -(measures.waist_drop or size)
    return size, other_waist("spread")


def _slip_gain(measures: LowerMeasures, body: Together, key: str) -> float:
    """Logarithm of how much better the rest agrees where this one value is wrong."""
    place = body.keys.index(key)
    spread = other_waist("slip") ** 2
    own = float(body.precision[place, place])
    share = 1.0 + spread * own
    pull = float(body.precision[place] @ body.off)
    gain = 0.5 * (spread * pull**2 / share - math.log(share))
    return gain - (SURE_PENALTY if key in measures.sure else 0.0)


def _thigh(measures: LowerMeasures, body: Together) -> Iterator[LowerDisagreement]:
    if not {"thigh_girth", "hip_girth"} <= set(body.keys):
        return
    standing = body.standings()["thigh_girth"]
    if abs(standing.z) <= asks_from("thigh"):
        return
    yield LowerDisagreement(
        kind="thigh",
        first="thigh_girth",
        second="hip_girth",
        key="thigh_girth",
        given=standing.value,
        explaining=standing.expected,
        deviations=abs(standing.z),
        is_sure="thigh_girth" in measures.sure,
    )
