"""Invented bodies for trousers, mm, and trousers drafted from them."""

from functools import cache
from typing import Any

from notchbook.body import MeasureSet, PopulationName
from notchbook.recipe import Recipe, Replay, add_step, replay

WOMAN = {
    "height": 1680.0,
    "waist_girth": 720.0,
    "hip_girth": 960.0,
    "hip_depth": 205.0,
    "standing_rise": 270.0,
    "inside_leg": 780.0,
    "crotch_length": 700.0,
    "thigh_girth": 575.0,
    "knee_girth": 365.0,
    "knee_depth": 605.0,
}
"""An invented woman of 168 cm, hip 96."""

MAN = {
    "height": 1800.0,
    "waist_girth": 900.0,
    "hip_girth": 1020.0,
    "hip_depth": 200.0,
    "standing_rise": 265.0,
    "inside_leg": 830.0,
    "crotch_length": 700.0,
    "thigh_girth": 620.0,
    "knee_girth": 395.0,
    "knee_depth": 625.0,
}
"""An invented man of 180 cm, seat 102."""

CHILD = {
    "height": 1160.0,
    "waist_girth": 560.0,
    "hip_girth": 640.0,
    "hip_depth": 140.0,
    "sitting_rise": 205.0,
    "inside_leg": 520.0,
}
"""An invented child of 116 cm, of whom no crotch length was taken."""


def lower_body(
    values: dict[str, float] = WOMAN, population: PopulationName | None = "women", **more: float
) -> MeasureSet:
    """A body with some measures changed or added."""
    return MeasureSet.from_mm("Invented body", values | more, population=population)


def without(values: dict[str, float], *keys: str) -> dict[str, float]:
    """The measures but for these."""
    return {key: value for key, value in values.items() if key not in keys}


def trousers_run(measures: MeasureSet | None = None, **parameters: Any) -> Replay:
    """Trousers drafted from a body, choices settled on it."""
    body = lower_body() if measures is None else measures
    return replay(add_step(Recipe("Trousers"), "trousers", parameters, base=body), body)


@cache
def usual_run() -> Replay:
    """The trousers of the invented woman as they come, drafted once."""
    return trousers_run()
