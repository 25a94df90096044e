"""What bodice and sleeve were asked to measure: measures, the rows of the ease tables, and what is said.

Not taken from the promises of the draft. The eases are read from their tables; a length may be another one
only by the amount that a finding of the draft names.
"""

import tomllib
from functools import cache
from math import radians, sin
from pathlib import Path
from typing import Any

from notchbook.body import MeasureSet, measure_entry
from notchbook.pattern import Finding
from notchbook.recipe import Replay
from notchbook.units import parse_length

_BLOCKS = Path(__file__).parents[2] / "src" / "notchbook" / "blocks"

UNSAID = {"across_back": 0.5, "across_chest": 0.5, "shoulder_length": 0.5, "center_front_length": 0.5}
"""mm by which the draft may give way without a word: far less than a reading of these measures errs."""

SLEEVE_UNSAID = 1.0
"""mm that the girths of the sleeve may give way without a word."""

_EASED = {
    "bust_girth": "bust",
    "waist_girth": "waist",
    "neck_base_girth": "neck",
    "across_back": "across_back",
    "across_chest": "across_chest",
    "scye_depth": "scye",
}
_AS_MEASURED = ("back_waist_length", "shoulder_length")
_OF_THE_BUST = ("center_front_length", "neck_to_bust_point")
_GAVE_WAY = {
    "across_back_line": "across_back",
    "across_chest_line": "across_chest",
    "shoulder": "shoulder_length",
}
_NECK = {
    "front-neck-raised": 1.0,
    "front-neck-with-dart": 1.0,
    "front-neck-too-deep": 1.0,
    "front-neck-lowered": -1.0,
}
_REPLACED = ("measured-value-replaced", "estimate-yields")
_SLEEVE_SAID = {
    "sleeve-widened": "upper_arm_girth",
    "sleeve-arm-ease-gave-way": "upper_arm_girth",
    "sleeve-hem-widened": "wrist_girth",
    "sleeve-hem-narrowed": "wrist_girth",
}


def asked_of(run: Replay) -> dict[str, float]:
    """What each length was asked to come to, mm with ease, by measure key; of a bodice that ends at the waist
    and of its sleeve."""
    bodice = next(step.parameters for step in run.recipe.steps if step.operation == "bodice")
    asked = _bodice(run, bodice)
    for step in run.recipe.steps:
        if step.operation == "sleeve":
            asked |= _sleeve(run, step.parameters)
    return asked


def _bodice(run: Replay, parameters: dict[str, Any]) -> dict[str, float]:
    body, said = _trusted(run), _said(run)
    eases = _table("bodice_pieces")[parameters["wearer"]][parameters["silhouette"]]
    asked = {key: body[key] for key in _AS_MEASURED}
    for key, of in _EASED.items():
        written = parameters[f"{of}_ease"]
        asked[key] = body[key] + (float(eases[of]["value"]) if written is None else _mm(written))
    asked["scye_depth"] += _mm(parameters["armhole_lowered"]) + _by_slope(run.measures, body)
    is_shaped = parameters["bust_shaping"] == "dart"
    for key in _OF_THE_BUST:
        if is_shaped or (key == "center_front_length" and _was_taken(run.measures, key)):
            asked[key] = body[key]
    if not is_shaped and asked["waist_girth"] <= asked["bust_girth"]:
        asked["waist_girth"] = body["waist_girth"] + said["waist_girth"]
    for key in UNSAID.keys() & asked.keys():
        asked[key] = _given_way(run, key, asked[key] + said.get(key, 0.0), said, UNSAID[key])
    return asked


def _sleeve(run: Replay, parameters: dict[str, Any]) -> dict[str, float]:
    # The sleeve takes the arm as it stands in the set, also where the bodice trusts another upper arm.
    body, said, asked = run.measures, _said(run), {}
    if parameters["keep"] == "biceps":
        asked["upper_arm_girth"] = body.value("upper_arm_girth") + _mm(parameters["upper_arm_ease"])
    if parameters["length"] == "long" and parameters["own_length"] is None:
        asked["arm_length"] = body.value("arm_length")
        hem = parameters["own_hem"]
        asked["wrist_girth"] = (
            _mm(hem) if hem is not None else body.value("wrist_girth") + _mm(parameters["wrist_ease"])
        )
    for key in ("upper_arm_girth", "wrist_girth"):
        if key in asked:
            asked[key] = _given_way(run, key, asked[key] + said.get(key, 0.0), said, SLEEVE_UNSAID)
    return asked


def _given_way(run: Replay, key: str, asked: float, said: dict[str, float], unsaid: float) -> float:
    """What was asked; where nothing is said, as much more or less as may go without a word."""
    promise = next((one.wanted for one in run.expectations if one.measure == key), asked)
    return asked if key in said else asked + min(max(promise - asked, -unsaid), unsaid)


def _said(run: Replay) -> dict[str, float]:
    """By how much each length is said to be another than asked, mm; the waist: its surplus over the body."""
    found: dict[str, float] = {}
    for note in run.notes:
        amount = note.measured or 0.0
        word = (note.where or "").rpartition("/")[2]
        if note.code == "measure-gave-way":
            found[_GAVE_WAY[word]] = amount
        elif note.code in _NECK:
            found["center_front_length"] = _NECK[note.code] * amount
        elif note.code == "waist-left-as-it-falls":
            found["waist_girth"] = amount
        elif note.code in _SLEEVE_SAID:
            found[_SLEEVE_SAID[note.code]] = amount - (note.wanted or 0.0)
    return found


def _trusted(run: Replay) -> dict[str, float]:
    """The measures, those that the draft says it replaced with what it says it used."""
    body = {key: run.measures.value(key) for key in run.measures.measure_keys()}
    used = {_label(note): note.wanted for note in run.notes if note.code in _REPLACED}
    for key in body:
        value = used.get(measure_entry(key).label_for(run.measures.population))
        body[key] = body[key] if value is None else value
    return body


def _label(note: Finding) -> str:
    return str(dict(note.facts)["label"])


def _was_taken(measures: MeasureSet, key: str) -> bool:
    found = measures.find(key)
    return found is not None and found.status != "estimated"


def _by_slope(measures: MeasureSet, body: dict[str, float]) -> float:
    """An estimated scye depth follows a measured slope as the shoulder point does (fitting practice), mm."""
    if _was_taken(measures, "scye_depth") or not _was_taken(measures, "shoulder_slope"):
        return 0.0
    usual = 24.3  # median of a published sample of 600 women
    return body["shoulder_length"] * (sin(radians(body["shoulder_slope"])) - sin(radians(usual)))


def _mm(text: str) -> float:
    return parse_length(text, "mm", allow_negative=True)


@cache
def _table(package: str) -> dict[str, Any]:
    return tomllib.loads((_BLOCKS / package / "eases.toml").read_text(encoding="utf-8"))
