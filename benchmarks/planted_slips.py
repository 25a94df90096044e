"""Slips planted into measures, one at a time, and how often a rule notices them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

Array = npt.NDArray[np.float64]
Rule = Callable[[Array], Array]
"""From records (a line each, mm) to how unusual each value is; the largest of a line is the accused one."""

LEAST_SWAP = 30.0
"""mm; a swap of two digits that changes less is not counted."""


def shifted(by: float) -> Callable[[float], list[float]]:
    """A value read too large, and too small, by so many mm."""
    return lambda value: [value - by, value + by]


def in_the_other_unit(value: float) -> list[float]:
    """Inches typed as centimeters, and centimeters typed as inches."""
    return [value / 2.54, value * 2.54]


def swapped_whole(value: float) -> list[float]:
    """Two neighboring digits of the whole centimeters exchanged."""
    return _swapped(f"{value / 10:.0f}", 10.0, value)


def swapped_any(value: float) -> list[float]:
    """Two neighboring digits exchanged, the tenth of the centimeter too (93.5 typed as 95.3)."""
    return _swapped(f"{value:.0f}", 1.0, value)


def _swapped(digits: str, unit: float, value: float) -> list[float]:
    found = []
    for place in range(len(digits) - 1):
        pair = digits[place + 1] + digits[place]
        typed = float(digits[:place] + pair + digits[place + 2 :]) * unit
        if abs(typed - value) >= LEAST_SWAP:
            found.append(typed)
    return found


SLIPS: dict[str, Callable[[float], list[float]]] = {
    "inch and cm": in_the_other_unit,
    "swapped digits, whole cm": swapped_whole,
    "swapped digits, tenths too": swapped_any,
    "10 cm": shifted(100.0),
    "5 cm": shifted(50.0),
    "2 cm": shifted(20.0),
}


@dataclass(frozen=True)
class Noticed:
    """Shares of planted slips.

    ``share`` is what is noticed, ``low`` and ``high`` the limits within which the true share lies (95 %),
    ``right`` how often the right measure is named among the noticed, ``look_again`` how often the slipped
    value reaches its own lower limit. ``missed`` are slips not noticed: key, value, what was typed (mm).
    """

    share: float
    low: float
    high: float
    right: float
    look_again: float
    by_measure: dict[str, float]
    missed: list[tuple[str, float, float]]

    def data(self) -> dict[str, Any]:
        """As plain rounded data; the slips that were missed only where they are few."""
        figures = {name: round(getattr(self, name), 5) for name in ("share", "low", "high", "right")}
        by_measure = {key: round(value, 3) for key, value in self.by_measure.items()}
        missed = [[key, was, round(typed, 1)] for key, was, typed in self.missed]
        few = {"missed": missed} if len(missed) <= 20 else {}
        return figures | {"look_again": round(self.look_again, 5), "by_measure": by_measure} | few


@dataclass(frozen=True, eq=False)
class _Plants:
    """Records with one slip each: the lines, whose record, which place, and the value before."""

    lines: Array
    owners: npt.NDArray[np.intp]
    places: npt.NDArray[np.intp]


def _plants(records: Array, keys: Sequence[str], kind: str) -> _Plants:
    lines, owners, places = [], [], []
    for owner, record in enumerate(records):
        for place, key in enumerate(keys):
            # Weight stands beside the others and gets no slip.
            for typed in SLIPS[kind](float(record[place])) if key != "weight" else ():
                line = record.copy()
                line[place] = typed
                lines.append(line)
                owners.append(owner)
                places.append(place)
    return _Plants(np.array(lines), np.array(owners), np.array(places))


def plant(records: Array, keys: Sequence[str], rule: Rule, limits: tuple[float, float], kind: str) -> Noticed:
    """Plant the kind of slip into every length of every record, and ask the rule.

    ``limits`` are (look again, stop); a record is flagged when any of its values reaches ``stop``. A record
    and measure counts once, however many ways there are to slip.
    """
    plants = _plants(records, keys, kind)
    unusual = np.abs(rule(plants.lines))
    flagged = unusual.max(axis=1) >= limits[1]
    own = unusual[np.arange(len(unusual)), plants.places] >= limits[0]
    named = unusual.argmax(axis=1) == plants.places
    shape = (len(records), len(keys))
    shares, looks = _averages(plants, flagged, shape), _averages(plants, own, shape)
    by_record = np.nanmean(shares[~np.isnan(shares).all(axis=1)], axis=1)
    share = float(np.nanmean(shares))
    error = 1.96 * float(by_record.std(ddof=1)) / float(np.sqrt(len(by_record)))
    slipped = [place for place, key in enumerate(keys) if key != "weight"]
    missed = [
        (keys[place], float(records[owner, place]), float(line[place]))
        for line, owner, place, seen in zip(plants.lines, plants.owners, plants.places, flagged, strict=True)
        if not seen
    ]
    return Noticed(
        share,
        max(0.0, share - error),
        min(1.0, share + error),
        float(named[flagged].mean()) if flagged.any() else 0.0,
        float(np.nanmean(looks)),
        {keys[place]: float(np.nanmean(shares[:, place])) for place in slipped},
        missed,
    )


def _averages(plants: _Plants, hits: npt.NDArray[np.bool_], shape: tuple[int, int]) -> Array:
    """The share of hits for each record and measure; NaN where there was no such slip."""
    counts, sums = np.zeros(shape), np.zeros(shape)
    np.add.at(counts, (plants.owners, plants.places), 1.0)
    np.add.at(sums, (plants.owners, plants.places), hits)
    averages: Array = np.full(shape, np.nan)
    np.divide(sums, counts, out=averages, where=counts > 0)
    return averages
