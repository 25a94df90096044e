"""Contradictions that a named slip explains already: one slip is told once."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from notchbook.body.doubts.consistency import check_consistent
from notchbook.body.doubts.doubt import Doubt
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet
from notchbook.body.sides import plain_key
from notchbook.body.waist_drop import DROP_KEY
from notchbook.units import LengthStyle


def without_explained(
    arithmetic: Iterable[Doubt], named: Sequence[Doubt], measures: MeasureSet, style: LengthStyle
) -> list[Doubt]:
    """What is left of the doubts by arithmetic once the named values are put right for a try.

    A stop is left where what explains it is only a question.
    """
    left = list(arithmetic)
    for doubt in named:
        values = _put_right(doubt)
        if not values or not left:
            continue
        drop = values.pop(DROP_KEY).value if DROP_KEY in values else measures.waist_drop
        tried = replace(measures, values={**measures.values, **values}, waist_drop=drop)
        still = {(one.code, one.keys) for one in check_consistent(tried, style)}
        left = [
            one
            for one in left
            if (one.code, one.keys) in still
            or not set(one.keys) & _spoken_of(values)
            or (one.level == "stop" and doubt.level != "stop")
        ]
    return left


def _put_right(doubt: Doubt) -> dict[str, Measure]:
    """The values as they were probably meant, or as the rest lets expect them."""
    if doubt.repairs:
        return {key: Measure(value) for key, value in doubt.repairs[0].values}
    told = doubt.suspects[:1] if doubt.code == "one-of-two-unlike-rest" else doubt.suspects
    return {one.key: Measure(max(one.expected, 0.0)) for one in told}


def _spoken_of(values: Iterable[str]) -> set[str]:
    """The keys with their side and without: a contradiction may name either."""
    keys = set(values)
    plain = {plain_key(key) for key in keys}
    return keys | plain | {f"{key}@{side}" for key in plain for side in ("left", "right")}
