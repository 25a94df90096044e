"""What lower and stretch blocks were asked to measure: measures and the rows of the ease tables, as written.

Not taken from the promises of the draft. A girth may be another one only by the amount that a finding names.
"""

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

from notchbook.blocks.trouser_pieces.body_reader import wearer_of
from notchbook.blocks.trouser_pieces.parameters import TrousersParameters
from notchbook.recipe import Replay
from notchbook.units import parse_length
from support.asked_of_stretch import SAID_OF_STRETCH, asked_of_stretch

EASES: Final = Path(__file__).parents[2] / "src" / "notchbook" / "blocks" / "trouser_pieces" / "eases.toml"

SAID: Final = {
    "trousers-hip-widened": "hip_girth",
    "hip-ease-raised": "hip_girth",
    "trousers-thigh-close": "thigh_girth",
    "trousers-crotch-estimate-yields": "crotch_length",
    **SAID_OF_STRETCH,
}
"""Findings that name by how much a girth or a length gave way."""

UNSAID: Final = 0.5
"""mm by which a girth may give way without a word."""

_SKIRTS: Final = ("skirt", "circle_skirt", "gored_skirt")
_STRETCH: Final = ("stretch_torso", "bodysuit", "leggings")


def plainly_asked(run: Replay) -> dict[str, float]:
    """Measure and ease, mm, by measure key, whatever the draft made of them."""
    step = run.recipe.steps[0]
    if step.operation == "trousers":
        return _trousers(run, step.parameters)
    if step.operation in _SKIRTS:
        return _skirt(run, step.operation, step.parameters)
    return asked_of_stretch(run) if step.operation in _STRETCH else {}


def asked_of_lower(run: Replay) -> dict[str, float]:
    """Measure and ease, and what a girth gave way as a finding says, mm."""
    asked = plainly_asked(run)
    for note in run.notes:
        key = SAID.get(note.code, "")
        if key in asked and note.measured is not None:
            asked[key] += note.measured - (note.wanted or 0.0)
    return asked | _unsaid(run, asked)


def _unsaid(run: Replay, asked: Mapping[str, float]) -> dict[str, float]:
    """What a lever of a stretch block gave way by less than it says, as promised, mm."""
    if run.recipe.steps[0].operation not in _STRETCH:
        return {}
    promised = _promised(run)
    of_levers = set(SAID_OF_STRETCH.values()) & asked.keys() & promised.keys()
    return {key: promised[key] for key in of_levers if abs(promised[key] - asked[key]) <= UNSAID}


def not_as_told(run: Replay, least: float = UNSAID) -> dict[str, float]:
    """By how much each girth and length is promised otherwise than was asked for and told, mm."""
    return _off(_promised(run), asked_of_lower(run), least)


def gave_way(run: Replay, least: float = UNSAID) -> dict[str, float]:
    """By how much each girth and length is promised otherwise than it was asked for, mm."""
    return _off(_promised(run), plainly_asked(run), least)


def _promised(run: Replay) -> dict[str, float]:
    return {one.name.rpartition("/")[2]: one.wanted for one in run.expectations}


def _off(promised: Mapping[str, float], asked: Mapping[str, float], least: float) -> dict[str, float]:
    off = {key: promised[key] - value for key, value in asked.items() if key in promised}
    return {key: by for key, by in off.items() if abs(by) > least}


def _trousers(run: Replay, parameters: Mapping[str, Any]) -> dict[str, float]:
    measures = run.measures
    wearer = wearer_of(TrousersParameters(**parameters), measures)
    eases = _ease_rows(wearer, parameters["silhouette"])

    def ease(of: str) -> float:
        written = parameters[f"{of}_ease"]
        return float(eases[of]["value"]) if written is None else _mm(written)

    wanted = {"waist_girth": "waist", "hip_girth": "hip", "crotch_length": "crotch", "thigh_girth": "thigh"}
    if _mm(parameters["waist_drop"]) > 0.0:
        wanted = {"hip_girth": "hip", "thigh_girth": "thigh"}
    return {key: measures.value(key) + ease(of) for key, of in wanted.items() if measures.has(key)}


def _skirt(run: Replay, operation: str, parameters: Mapping[str, Any]) -> dict[str, float]:
    waist = run.measures.value("waist_girth") + _mm(parameters["waist_ease"])
    if operation == "circle_skirt":
        return {"waist_girth": waist - _mm(parameters["waist_stretch"])}
    return {"waist_girth": waist, "hip_girth": run.measures.value("hip_girth") + _mm(parameters["hip_ease"])}


def _ease_rows(wearer: str, silhouette: str) -> dict[str, Any]:
    table = tomllib.loads(EASES.read_text(encoding="utf-8"))
    rows: dict[str, Any] = table["everybody"][silhouette] | table.get(wearer, {}).get(silhouette, {})
    return rows


def _mm(text: str) -> float:
    return parse_length(text, "mm", allow_negative=True)
