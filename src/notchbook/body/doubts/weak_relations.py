"""Values that may lie off the rest without being wrong: what a population knows too little of to stop."""

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Final

from notchbook.body.doubts.doubt import Suspect
from notchbook.body.doubts.orders import LEAST_HIP_TO_WAIST_SEEN
from notchbook.body.measure_set import MeasureSet

WEAKLY_KNOWN: Final = frozenset({"under_bust_girth", "upper_bust_girth", "top_hip_girth"})
"""Measures whose relation to the others comes from a size table or from own judgment (definitions.toml):
how far bodies scatter about it is not known."""

LEAST_BELLY: Final = 0.95
"""Waist over hip from which a belly is asked about (own judgment)."""

FULL_BUST: Final[Mapping[str, tuple[float, float]]] = MappingProxyType(
    {"under_bust_girth": (180.0, 350.0), "upper_bust_girth": (80.0, 200.0)}
)
"""mm by which the bust is larger than this where it is full, and as far as bodies go (common practice, no
source)."""


def weakly_known(measures: MeasureSet) -> frozenset[str]:
    """The measures of this set from which nothing is stopped.

    The waist is one where it may be a belly, the bust where it may be a full one: civilians have both, and
    soldiers hardly.
    """
    own = {"waist_girth"} if may_be_belly(measures) else set()
    return WEAKLY_KNOWN | own | ({"bust_girth"} if may_be_full_bust(measures) else set())


def may_be_belly(measures: MeasureSet) -> bool:
    """Whether the waist is about as large as the hip or larger, as far as bodies go."""
    waist, hip = measures.find("waist_girth"), measures.find("hip_girth")
    if waist is None or hip is None:
        return False
    return LEAST_BELLY * hip.value <= waist.value <= hip.value / LEAST_HIP_TO_WAIST_SEEN


def may_be_full_bust(measures: MeasureSet) -> bool:
    """Whether the bust is much larger than the body under or above it, as far as bodies go."""
    bust = measures.find("bust_girth")
    if bust is None or measures.population == "men":
        return False
    given = [
        low <= bust.value - found.value <= high
        for key, (low, high) in FULL_BUST.items()
        if (found := measures.find(key)) is not None and found.status != "estimated"
    ]
    return bool(given) and all(given)


def body_may_be_so(suspects: Sequence[Suspect], measures: MeasureSet) -> str:
    """A question whether the body is built so, with a blank behind it; empty where there is none."""
    off = {one.key: one.z for one in suspects}
    if (off.get("waist_girth", 0.0) > 0.0 or off.get("hip_girth", 0.0) < 0.0) and may_be_belly(measures):
        return "A belly? Then it is right. "
    under = [off[key] for key in FULL_BUST if key in off]
    if (off.get("bust_girth", 0.0) > 0.0 or any(z < 0.0 for z in under)) and may_be_full_bust(measures):
        return "A full bust? Then it is right. "
    return ""
