"""What stands beside a refused crotch: the values that would agree, what to measure again, the cures."""

import math
from typing import Final, cast

from notchbook.blocks.lower_measures import look_at_lower
from notchbook.blocks.trouser_pieces.trouser_measures import TrouserMeasures
from notchbook.errors import DraftRefused
from notchbook.pattern import Contradiction, Cure

CROTCH_CODES: Final = ("trousers-crotch-short", "trousers-crotch-long")
"""The refusals of a crotch length that no lever reaches."""

_LEAST_EASE: Final = 0.0
_MOST_EASE: Final = 100.0
"""mm of ease of the crotch seam between which a cure is offered: less binds, more hangs. Own judgment."""


def explained(refused: DraftRefused, measures: TrouserMeasures, slug: str) -> DraftRefused:
    """The refusal of a crotch with its facts in full; any other as it is."""
    if refused.code not in CROTCH_CODES:
        return refused
    wanted, reached = _number(refused, "wanted"), reachable(refused)
    crotch, rise = measures.body["crotch_length"], measures.rise
    agrees = crotch + reached - wanted
    rise_agrees = _number(refused, "rise_agrees") + measures.drop
    facts = {
        **refused.facts,
        "crotch": crotch,
        "crotch_agrees": agrees,
        "rise": rise.value,
        "rise_agrees": rise_agrees,
        "hip": measures.body["hip_girth"],
        "contradiction": _contradiction(measures, crotch, agrees),
        "cures": cures_of(measures, slug, reached - wanted),
    }
    return DraftRefused(refused.code, **facts)


def reachable(refused: DraftRefused) -> float:
    """The crotch seam nearest to the wanted one that can be drafted, mm."""
    return _number(refused, "least" if refused.code == "trousers-crotch-short" else "most")


def cures_of(measures: TrouserMeasures, slug: str, by: float) -> tuple[Cure, ...]:
    """What the step offers; each is tried before it is offered.

    ``by`` is how much longer the seam that can be had is than the wanted one, mm.
    """
    found: list[Cure] = []
    if measures.given.crotch_limits == "usual":
        found.append(wider_shape(slug))
    ease = measures.eases["crotch"].value + by
    ease = math.ceil(ease) if by > 0.0 else math.floor(ease)
    if _LEAST_EASE <= ease <= _MOST_EASE:
        amount = f"{ease} mm"
        found.append(Cure(slug, "crotch_ease", amount, f"give the crotch seam {amount} of ease"))
    return tuple(found)


def wider_shape(slug: str) -> Cure:
    """Let the levers of the crotch go farther."""
    return Cure(slug, "crotch_limits", "wide", "let the crotch be drawn farther from its usual shape")


def _contradiction(measures: TrouserMeasures, crotch: float, agrees: float) -> Contradiction:
    """Crotch length and rise: what would explain both, by all that was measured; else the crotch length."""
    rise = measures.rise.key
    told = next((one for one in look_at_lower(measures.lower) if rise in (one.first, one.second)), None)
    if told is not None:
        other = told.second if told.key == told.first else told.first
        again = other if told.is_sure else told.key
        return Contradiction(told.first, told.second, told.key, told.explaining, told.amount, again)
    is_sure = "crotch_length" in measures.lower.sure and rise not in measures.lower.sure
    again = rise if is_sure else "crotch_length"
    return Contradiction("crotch_length", rise, "crotch_length", agrees, crotch - agrees, again)


def _number(refused: DraftRefused, name: str) -> float:
    """A fact of the refusal; KeyError where it has none: a seam of 0 mm must not be drafted instead."""
    return cast("float", refused.facts[name])
