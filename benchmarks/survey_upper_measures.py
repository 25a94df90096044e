"""Whether the draft names the right measures when two of the upper body contradict each other.

Wrong values are planted into surveyed bodies. Run by `make survey`; writes docs/survey/upper-measures.md and
docs/survey/upper-measures.json. `--sample N` takes N rows of each population and prints only.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any, Final

import numpy as np

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks")]

from notchbook.blocks.upper_measures import UpperMeasures, look_at_upper
from notchbook.blocks.upper_measures.agreement_table import pairs
from notchbook.blocks.upper_measures.limits import FIGURES
from notchbook.body import POPULATIONS, PopulationName, measure_entry
from notchbook.body.population import population
from notchbook.body.population.evidence import Frame
from notchbook.body.population.system import make_system
from survey_rows import build_rows, held_back_rows
from upper_bodies import LENGTHS, UpperBody, upper_bodies
from upper_measures_page import page

SEED: Final = 85592
"""Of what is drawn by chance: number of the standard of body measures, for want of a better one."""

DRAWN: Final = 5
"""How often what the survey did not take is drawn anew for each body."""

FOUR: Final = ("height", "bust_girth", "waist_girth")
"""Beside these the one measure of a pair lets expect the other."""

PLANTED: Final = (20.0, 50.0)
"""mm; how far off a value is planted, both ways."""

PLANTED_ANGLE: Final = (8.0, 12.0)
"""Degrees, for the slope of the shoulder."""

Planted = tuple[UpperBody, UpperMeasures]
"""A body, and its measures with an error in them."""

NAVEL: Final[dict[str, tuple[str, ...]]] = {
    "back length": LENGTHS[:1],
    "front length": LENGTHS[1:2],
    "center front length": LENGTHS[2:],
    "both front lengths": LENGTHS[1:],
    "all three lengths": LENGTHS,
}


def report(count: int = 0) -> dict[str, Any]:
    """The figures of both populations; ``count`` rows of each, or all."""
    return {name: _population(name, count) for name in POPULATIONS}


def _population(name: PopulationName, count: int) -> dict[str, Any]:
    built = _bodies(name, build_rows(name)[: count or None], SEED)
    held = _bodies(name, held_back_rows(name)[: count or None], SEED + 1)
    keys = tuple(held[0].measures.taken)
    return {
        "words": population(name).words,
        "rows": len(held) // DRAWN,
        "clean": {
            "rows it was made from": _alarms([body.measures for body in built]),
            "held back": _alarms([body.measures for body in held]),
            "held back, nobody's": _alarms([replace(one.measures, population=None) for one in held]),
        },
        "navel": {
            words: _named([(one, one.at_the_navel(off)) for one in held], off)
            for words, off in _navel(keys).items()
        },
        "all at the navel, dart": _dart_change(held) if name == "women" else None,
        "slips": {key: _slips(held, key) for key in keys},
        "pairs": _pair_figures(name, keys),
        "limits": _limit_figures(built),
    }


def _bodies(name: PopulationName, rows: Sequence[Any], seed: int) -> list[UpperBody]:
    return [body for time in range(DRAWN) for body in upper_bodies(name, rows, seed + 100 * time)]


def _navel(keys: Sequence[str]) -> dict[str, tuple[str, ...]]:
    """What goes to the navel, where all of it is among the measures, each choice once."""
    found: dict[str, tuple[str, ...]] = {}
    for words, off in NAVEL.items():
        here = tuple(key for key in off if key in keys)
        if here == off or (off == LENGTHS and len(here) > 1):
            found[words if here == off else "both lengths"] = here
    return found


def _alarms(bodies: Sequence[UpperMeasures]) -> dict[str, float]:
    """Shares of clean bodies of which something is said."""
    looked = [look_at_upper(one) for one in bodies]
    return {
        "asked": _share(bool(one.disagreements) for one in looked),
        "lost dart": _share(any(said.kind == "lost-dart" for said in one.disagreements) for one in looked),
        "replaced": _share(bool(one.substitutes) for one in looked),
    }


def _named(planted: Sequence[Planted], keys: Sequence[str]) -> dict[str, float]:
    """How often the planted error is asked about, and how often its measure is the first one named.

    ``nearly``: it is named first or as what would explain it nearly as well. ``off`` is the middle of how far
    the explaining value lies from the true one, mm or degrees, where it is rightly named.
    """
    asked = right = nearly = question = 0
    errors = []
    for body, measures in planted:
        found = look_at_upper(measures).disagreements
        asked += bool(found)
        if not found:
            continue
        first = found[0]
        is_right = set(first.keys) == set(keys)
        right += is_right
        nearly += is_right or first.other in keys
        question += first.asks_waist
        if is_right:
            errors.append(abs(first.explaining - body.measures.taken[first.key]))
    return {
        "asked": round(asked / len(planted), 4),
        "right": round(right / asked, 4) if asked else 0.0,
        "nearly": round(nearly / asked, 4) if asked else 0.0,
        "question": round(question / asked, 4) if asked else 0.0,
        "off": round(float(np.median(errors)), 1) if errors else 0.0,
    }


def _slips(bodies: Sequence[UpperBody], key: str) -> dict[str, dict[str, float]]:
    sizes = PLANTED_ANGLE if measure_entry(key).kind == "angle" else PLANTED
    return {
        f"{size:+.0f}": _named([(one, one.off({key: size})) for one in bodies], (key,))
        for much in sizes
        for size in (-much, much)
    }


def _dart_change(bodies: Sequence[UpperBody]) -> dict[str, float]:
    """The bust dart, in the middle, as the lengths are and with the back length at the navel, degrees."""
    darts = {
        "clean": [look_at_upper(one.measures).dart for one in bodies],
        "back length at the navel": [look_at_upper(one.at_the_navel(LENGTHS[:1])).dart for one in bodies],
        "all at the navel": [look_at_upper(one.at_the_navel(LENGTHS)).dart for one in bodies],
    }
    return {
        words: round(float(np.median([dart.angle for dart in found if dart is not None])), 1)
        for words, found in darts.items()
    }


def _pair_figures(name: PopulationName, keys: Sequence[str]) -> dict[str, dict[str, float]]:
    """First less second of each pair, and how far the first scatters given the second and the girths."""
    model = population(name).model
    found = {}
    for pair in pairs():
        if pair.first not in keys or pair.second not in keys:
            continue
        both = (pair.first, pair.second)
        given = (*both, *(key for key in FOUR if key not in both))
        system = make_system(model, Frame("book", "natural", False), given)
        across = system.read[0, 0] + system.read[1, 1] - 2.0 * system.read[0, 1]
        found[f"{pair.first}, {pair.second}"] = {
            "difference": round(float(system.mean[0] - system.mean[1]), 1),
            "deviation": round(float(np.sqrt(across)), 1),
            "given": round(float(system.sd_given_rest[0]), 1),
        }
    return found


def _limit_figures(bodies: Sequence[UpperBody]) -> dict[str, list[float]]:
    """What the figures of the limits are on clean bodies: 0.1, 5, 50, 95 and 99.9 %."""
    found = {}
    for name, figure in FIGURES.items():
        values = [value for body in bodies if (value := figure(body.measures.find)) is not None]
        if values:
            shares = np.percentile(values, [0.1, 5, 50, 95, 99.9])
            found[name] = [round(float(value), 3) for value in shares]
    return found


def _share(told: Any) -> float:
    return round(float(np.mean(list(told))), 4)


def main(words: list[str]) -> int:
    """Write the page and its figures, or print those of a sample."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--sample", type=int, default=0, help="so many rows of each population, printed only")
    count: int = parser.parse_args(words).sample
    found = report(count)
    if count:
        print(page(found))
        return 0
    folder = ROOT / "docs" / "survey"
    text = json.dumps(found, indent=1) + "\n"
    (folder / "upper-measures.json").write_text(text, encoding="utf-8")
    (folder / "upper-measures.md").write_text(page(found), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
