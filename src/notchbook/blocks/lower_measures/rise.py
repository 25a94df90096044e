"""The rise of a body: three ways to take it, one of which is used.

Every garment with legs reads it here, so that trousers and leggings of one body hang from one rise.
"""

from collections.abc import Collection
from dataclasses import dataclass

from notchbook.blocks.lower_measures.limits import SITTING_LONGER
from notchbook.blocks.lower_measures.lower_measures import LowerMeasures
from notchbook.blocks.lower_measures.reading import read_lower
from notchbook.body import MeasureSet, RiseMethod, Side
from notchbook.errors import InputError
from notchbook.recipe import StepContext

_KEYS: dict[RiseMethod, tuple[str, ...]] = {
    "sitting": ("sitting_rise",),
    "standing": ("standing_rise",),
    "outside_minus_inside": ("outside_leg", "inside_leg"),
}
"""What each way needs, the usual one first."""


@dataclass(frozen=True, slots=True)
class Rise:
    """The rise as it was taken, mm, and how."""

    value: float
    method: RiseMethod

    @property
    def key(self) -> str:
        """The measure that says it."""
        return _KEYS[self.method][0]

    @property
    def is_sitting(self) -> bool:
        """Whether it was taken sitting."""
        return self.method == "sitting"

    @property
    def standing(self) -> float:
        """The rise as it would be standing, mm."""
        return self.value - SITTING_LONGER if self.is_sitting else self.value


def rise_method(
    there: Collection[str], taken: Collection[str], wanted: RiseMethod | None
) -> RiseMethod | None:
    """The way to the rise: as the set says it; else the first that was taken; else the first that is there;
    None where there is none.

    ``there`` are the measures that the set has, ``taken`` those of them that are no estimates.
    """
    order = ([wanted] if wanted else []) + [method for method in _KEYS if method != wanted]
    for known in (set(taken), set(there)):
        for method in order:
            if set(_KEYS[method]) <= known:
                return method
    return None


def known_rise_keys(measures: MeasureSet) -> tuple[str, ...] | None:
    """The measures by which a set tells the rise; None where nothing tells it."""
    there = {key for key in measures.measure_keys() if measures.find(key, "right")}
    taken = {key for key in there if measures.get(key, "right").status != "estimated"}
    method = rise_method(there, taken, measures.rise_method)
    return None if method is None else _KEYS[method]


def needed_rise_keys(measures: MeasureSet) -> tuple[str, ...]:
    """The measures that a garment with legs needs for the rise of this body: those that tell it, else those
    of the way that the set names, else the standing rise."""
    return known_rise_keys(measures) or _KEYS[measures.rise_method or "standing"]


def find_rise(measures: LowerMeasures, wanted: RiseMethod | None) -> Rise | None:
    """The rise of one side of a body; None where there is no way to it."""
    method = rise_method((*measures.taken, *measures.estimated), measures.taken, wanted)
    if method is None:
        return None
    first, *rest = (measures.find(key) or 0.0 for key in _KEYS[method])
    return Rise(first - sum(rest), method)


def read_rise(measures: LowerMeasures, wanted: RiseMethod | None, name: str) -> Rise:
    """The rise of a body; InputError ``measure-missing`` where there is no way to it."""
    found = find_rise(measures, wanted)
    if found is None:
        raise InputError("measure-missing", keys=_KEYS[wanted or "standing"], name=name)
    return found


def rise_of_side(context: StepContext, side: Side) -> Rise | None:
    """The rise that a step reads on one of the wearer's sides; None where there is no way to it."""
    return find_rise(read_lower(context, side), context.measures.rise_method)
