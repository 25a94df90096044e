"""What stretch blocks were asked to measure: measures, and the rows of reductions and shares, as written.

Not taken from the promises of the draft. A place may measure otherwise only by what a finding names.
"""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any, Final

import numpy as np

from notchbook.body import MeasureSet
from notchbook.recipe import Replay
from notchbook.units import parse_length, parse_stretch

BLOCKS: Final = Path(__file__).parents[2] / "src" / "notchbook" / "blocks"

STILL_OVER_THE_BODY: Final = 1.1
"""A pattern must stretch to so much of the body's girth (common practice)."""

WHOLE_EASE_FROM: Final = 840.0
"""mm of bust from which a T-shirt has its whole ease (own judgment of the block)."""

TORSO_PLACES: Final = {
    "bust_girth": "bust",
    "waist_girth": "waist",
    "hip_girth": "hip",
    "scye_depth": "scye",
    "back_waist_length": "trunk",
}
SLEEVE_PLACES: Final = {
    "across_back": "across",
    "shoulder_length": "shoulder",
    "upper_arm_girth": "upper_arm",
}
"""Where there is a sleeve: cut in for a strap, the armhole sets its own."""

SUIT_PLACES: Final = {"crotch_length": "crotch", "thigh_girth": "leg_opening"}

LEG_PLACES: Final = {
    "waist_girth": "waist",
    "hip_girth": "hip",
    "thigh_girth": "thigh",
    "knee_girth": "knee",
    "calf_girth": "calf",
    "ankle_girth": "ankle",
    "crotch_length": "crotch",
}
"""Which place of the shares a measure lies at."""

BELOW_THE_KNEE: Final = ("knee_girth", "calf_girth", "ankle_girth")
"""Of leggings that are cut off, these may be gone."""

SAID_OF_STRETCH: Final = {
    "stretch-bust-changed": "bust_girth",
    "stretch-across-changed": "across_back",
    "stretch-shoulder-changed": "shoulder_length",
    "stretch-underarm-lowered": "scye_depth",
    "stretch-sleeve-widened": "upper_arm_girth",
    "stretch-front-room": "crotch_length",
    "stretch-front-lowered": "crotch_length",
    "stretch-waist-loosened": "waist_girth",
    "stretch-side-leans": "waist_girth",
    "leggings-waist-wide": "waist_girth",
    "leggings-waist-wide-at-side": "waist_girth",
    "leggings-hem-widened": "ankle_girth",
    "leggings-thigh-narrowed": "thigh_girth",
    "leggings-knee-widened": "knee_girth",
    "leggings-calf-narrowed": "calf_girth",
}
"""Findings that name by how much a place gave way."""


def asked_of_stretch(run: Replay) -> dict[str, float]:
    """Measure and reduction or ease, mm, by measure key, whatever the draft made of them."""
    step = run.recipe.steps[0]
    chosen, measures = step.parameters, run.measures
    places = _places(step.operation, chosen, {note.code for note in run.notes})
    asked = {
        key: _pattern(measures, key, place, chosen, _use(step.operation, chosen))
        for key, place in places.items()
        if measures.has(key)
    }
    if "shoulder_length" in asked:
        asked["shoulder_length"] *= 1.0 - _table("stretch_pieces/cuts")["neck_wider"][chosen["neck"]]["value"]
    if "scye_depth" in asked:
        lowered = _table("stretch_pieces/cuts")["armhole"][_use(step.operation, chosen)]["value"]
        asked["scye_depth"] += _size(measures, _use(step.operation, chosen)) * lowered
        asked["scye_depth"] += _mm(chosen["armhole_lowered"])
    if _falls(step.operation, chosen, asked):
        del asked["waist_girth"]
    return asked


def _use(block: str, chosen: Mapping[str, Any]) -> str:
    use: str = {"stretch_torso": chosen.get("fit"), "bodysuit": chosen.get("use")}.get(block) or block
    return use


def _places(block: str, chosen: Mapping[str, Any], said: set[str]) -> dict[str, str]:
    """The places that are asked for with these settings; an opening that can not be had is told instead."""
    if block == "leggings":
        cut_off = chosen["own_length"] is not None
        return {key: place for key, place in LEG_PLACES.items() if not (cut_off and key in BELOW_THE_KNEE)}
    places = dict(TORSO_PLACES)
    if chosen["sleeve"] != "none":
        places |= SLEEVE_PLACES
    if chosen["back"] not in ("base", "high") or chosen["own_back_neck"] is not None:
        places.pop("across_back", None)  # the neck may be cut below that level
    if chosen["own_neck_wider"] is not None:
        places.pop("shoulder_length", None)
    if block == "stretch_torso":
        if chosen["length"] == "waist":
            del places["hip_girth"]
        return places
    solved = chosen["leg"] == "classic" and chosen["own_leg_opening"] is None
    suit = dict(SUIT_PLACES)
    if not solved or "leg-opening-not-reached" in said:
        del suit["thigh_girth"]
    del places["hip_girth"]  # the leg opening may cut the hip line
    return places | suit


def _pattern(measures: MeasureSet, key: str, place: str, chosen: Mapping[str, Any], use: str) -> float:
    """What the pattern has for a measure, mm."""
    body = measures.value(key)
    own = chosen.get(f"{key.removesuffix('_girth')}_ease")
    if own is not None:
        return body + _mm(own)
    share = _table("stretch_fabric/shares")[place]
    row = _table("stretch_fabric/reductions")[use][share["direction"]]
    across, along = (_stretch(chosen[way]) for way in ("across", "along"))
    is_width = share["direction"] == "width"
    if "ease" in row:
        wished = body + _size(measures, use) * float(row["ease"]) * float(share["loose"])
    else:
        stretches, reductions = zip(*row["points"], strict=True)
        by = float(np.interp(across if is_width else along, stretches, reductions))
        wished = body * (1.0 - by * float(share["value"]))
    return max(wished, STILL_OVER_THE_BODY * body / (1.0 + across)) if is_width else wished


def _size(measures: MeasureSet, use: str) -> float:
    """How much of a T-shirt's ease this body gets."""
    return min(measures.value("bust_girth") / WHOLE_EASE_FROM, 1.0) if use == "t_shirt" else 1.0


def _falls(block: str, chosen: Mapping[str, Any], asked: Mapping[str, float]) -> bool:
    """Whether a T-shirt hangs past the waist, which is asked for nothing then."""
    if block != "stretch_torso" or chosen["fit"] != "t_shirt" or chosen["waist_ease"] is not None:
        return False
    hip = asked.get("hip_girth", asked["bust_girth"])
    return asked["waist_girth"] <= min(asked["bust_girth"], hip)


@cache
def _table(name: str) -> dict[str, Any]:
    return tomllib.loads((BLOCKS / f"{name}.toml").read_text(encoding="utf-8"))


def _stretch(text: str | None) -> float:
    return 0.0 if text is None else parse_stretch(text).stretch


def _mm(text: str) -> float:
    return parse_length(text, "mm", allow_negative=True)
