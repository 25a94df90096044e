"""Which rise the trousers are drafted from: three ways to take it, each with its own ease."""

from collections.abc import Collection
from dataclasses import dataclass

from notchbook.blocks.lower_measures import LowerMeasures
from notchbook.blocks.trouser_pieces.eases import SITTING_LONGER
from notchbook.body import RiseMethod
from notchbook.errors import InputError

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


def rise_keys(method: RiseMethod) -> tuple[str, ...]:
    """The measures that this way to the rise needs."""
    return _KEYS[method]


def rise_method(there: Collection[str], taken: Collection[str], wanted: RiseMethod | None) -> RiseMethod:
    """The way to the rise: as the set says it; else the first that was taken; else the first that is there.

    ``there`` are the measures that the set has, ``taken`` those of them that are no estimates.
    """
    order = ([wanted] if wanted else []) + [method for method in _KEYS if method != wanted]
    for known in (set(taken), set(there)):
        for method in order:
            if set(_KEYS[method]) <= known:
                return method
    return wanted or "standing"


def read_rise(measures: LowerMeasures, wanted: RiseMethod | None, name: str) -> Rise:
    """The rise of a body; InputError ``measure-missing`` where there is no way to it."""
    there = (*measures.taken, *measures.estimated)
    method = rise_method(there, tuple(measures.taken), wanted)
    keys = _KEYS[method]
    if not set(keys) <= set(there):
        raise InputError("measure-missing", keys=keys, name=name)
    first, *rest = (measures.find(key) or 0.0 for key in keys)
    return Rise(first - sum(rest), method)
