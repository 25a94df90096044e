"""The values that a rule speaks of, per side where the sides differ."""

from collections.abc import Iterator

from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.quantity_words import said_key
from notchbook.body.sides import Side, sided_key


def known_values(measures: MeasureSet, keys: tuple[str, ...]) -> Iterator[tuple[Side, tuple[float, ...]]]:
    """The values of these measures, per side where sides differ, where all of them were taken.

    Estimates contradict nothing: they follow from what was taken, or no longer do.
    """
    sides: tuple[Side, ...] = ("left", "right") if measures.sides_differ(keys) else ("both",)
    for side in sides:
        found = [measures.find(key, side) for key in keys]
        values = tuple(one.value for one in found if one is not None and one.status != "estimated")
        if len(values) == len(keys):
            yield side, values


def sided_keys(keys: tuple[str, ...], side: Side) -> tuple[str, ...]:
    """The keys with this side."""
    return tuple(sided_key(key, side) for key in keys)


def side_words(side: Side) -> str:
    """`` on the left``, or nothing for both."""
    return "" if side == "both" else f" on the {side}"


def label_of(key: str, side: Side = "both") -> str:
    """What the measure is called, with its side."""
    return measure_entry(key).label + side_words(side)


def said_of(key: str, side: Side = "both") -> str:
    """The same within a sentence."""
    return said_key(key) + side_words(side)
