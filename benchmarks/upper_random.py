"""Random bodies for the blocks: such as there are, and such as nobody has.

A plausible body is a point of the population's own normal distribution, given by one number of standard
deviations for each direction; an implausible one takes each measure at its own share of the mean, so that
nothing agrees with anything.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path
from typing import Final

import numpy as np

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools")]

from make_bodies import Group
from make_upper_bodies import CHEST_LESS_THAN_BACK, UPPER_KEYS
from notchbook.body import MeasureSet, measure_entry
from notchbook.body.population import population
from notchbook.body.population.evidence import Frame
from notchbook.body.population.model import Array
from notchbook.body.population.system import make_system

Keys = tuple[str, ...]

LEAST_SHARE: Final = 0.5
MOST_SHARE: Final = 1.7
"""Of the mean: between these lie the measures of implausible bodies."""

ODD_SHARES: Final = (0.85, 1.2)
"""The same of odd bodies: nothing agrees, yet few are refused before they are drafted."""

NATURAL: Final = Frame("book", "natural", False)


@cache
def keys_of(group: Group, wanted: Keys = UPPER_KEYS) -> Keys:
    """What is drawn for a body of this group of the ``wanted`` measures, in this order."""
    return tuple(key for key in wanted if key in population(group).keys)


@cache
def _distribution(group: Group, wanted: Keys) -> tuple[Array, Array]:
    """Means, and what turns numbers of standard deviations into measures that belong together."""
    system = make_system(population(group).model, NATURAL, keys_of(group, wanted))
    values, vectors = np.linalg.eigh(system.truth)
    return system.mean, vectors * np.sqrt(np.clip(values, 0.0, None))


def plausible_body(deviations: Sequence[float], group: Group, wanted: Keys = UPPER_KEYS) -> MeasureSet:
    """The body that lies so many standard deviations from the mean along each of the distribution's axes."""
    mean, spread = _distribution(group, wanted)
    return _body(mean + spread @ np.array(deviations), keys_of(group, wanted), group, "plausible")


def implausible_body(shares: Sequence[float], group: Group, wanted: Keys = UPPER_KEYS) -> MeasureSet:
    """The body whose every measure is its own share of the mean."""
    mean, _ = _distribution(group, wanted)
    return _body(mean * np.array(shares), keys_of(group, wanted), group, "implausible")


def _body(values: Array, keys: Keys, group: Group, name: str) -> MeasureSet:
    bounded = {
        key: min(max(float(value), _possible(key)[0]), _possible(key)[1])
        for key, value in zip(keys, values, strict=True)
    }
    if group == "men" and "across_back" in bounded:
        bounded["across_chest"] = max(
            bounded["across_back"] - CHEST_LESS_THAN_BACK, _possible("across_chest")[0]
        )
    return MeasureSet.from_mm(name, bounded, population=group)


def _possible(key: str) -> tuple[float, float]:
    return measure_entry(key).possible


def random_bodies(kind: str, count: int, seed: int, wanted: Keys = UPPER_KEYS) -> Iterator[MeasureSet]:
    """So many bodies of a kind ("plausible", "odd" or "implausible"), two women to a man."""
    draw = np.random.default_rng([seed, len(kind)])
    for number in range(count):
        group: Group = "men" if number % 3 == 2 else "women"
        size = len(keys_of(group, wanted))
        if kind == "plausible":
            yield plausible_body(draw.normal(size=size).tolist(), group, wanted)
        else:
            least, most = ODD_SHARES if kind == "odd" else (LEAST_SHARE, MOST_SHARE)
            yield implausible_body(draw.uniform(least, most, size=size).tolist(), group, wanted)
