"""What the checks allow: each limit with its reason, source and grade."""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, replace
from typing import Any, Final

from notchbook.errors import InputError
from notchbook.units import TOLERANCES


def _limit(amount: float, unit: str, reason: str, source: str, grade: str) -> Any:
    return field(default=amount, metadata={"unit": unit, "reason": reason, "source": source, "grade": grade})


_HOUSE = "tolerances of the house"
_COMMON = "no source"
_PRACTICE = "common practice"


@dataclass(frozen=True, slots=True)
class Limits:
    """How far off is still right, or worth a look. mm, degrees, or a share."""

    seam_walk: float = _limit(
        TOLERANCES.seam_walk, "mm", "Two sides of a seam agree within a pencil line.", _HOUSE, "house"
    )
    dart_legs: float = _limit(
        0.5, "mm", "Legs that differ more leave a step at the mouth.", "trade handbooks", "memory"
    )
    closure: float = _limit(
        TOLERANCES.closure, "mm", "A girth on the sew line is body plus ease.", _HOUSE, "house"
    )
    straightness: float = _limit(
        TOLERANCES.closure,
        "mm",
        "A fold is one straight line; what bends away from it is cut twice.",
        _HOUSE,
        "house",
    )
    shortest: float = _limit(
        TOLERANCES.closure,
        "mm",
        "A shorter segment cannot be drawn with the sharpest pencil.",
        _HOUSE,
        "house",
    )
    junction: float = _limit(
        TOLERANCES.side_junction,
        "deg",
        "Below this no corner shows across a seam.",
        _HOUSE,
        _PRACTICE,
    )
    square: float = _limit(
        TOLERANCES.angle, "deg", "A protractor on paper is not read closer.", _HOUSE, _PRACTICE
    )
    grain: float = _limit(
        TOLERANCES.angle,
        "deg",
        "Off grain by more than this, a panel twists visibly.",
        _HOUSE,
        _PRACTICE,
    )
    grain_share: float = _limit(
        1 / 3,
        "share",
        "A short grain line cannot be laid straight to the selvage.",
        _COMMON,
        _PRACTICE,
    )
    dart_angle: float = _limit(
        60.0,
        "deg",
        "A wider dart cannot be pressed flat; it is a seam or two darts.",
        _COMMON,
        _PRACTICE,
    )
    dart_room: float = _limit(
        10.0, "mm", "A dart that ends nearer to an edge runs into its allowance.", _COMMON, _PRACTICE
    )
    dart_smallest: float = _limit(
        8.0, "mm", "A smaller dart is hardly seen; the side seam can take it.", _COMMON, _PRACTICE
    )
    dart_largest: float = _limit(
        40.0,
        "mm",
        "A wider dart pokes at its end: handbooks take two from 4 to 5 cm on.",
        "trade handbooks",
        "memory",
    )
    kink: float = _limit(
        TOLERANCES.angle, "deg", "A smaller turn within a line is not seen.", _HOUSE, _PRACTICE
    )
    inflection: float = _limit(
        1.5,
        "deg",
        "A curve must turn this much each way before the eye sees an S.",
        _COMMON,
        _PRACTICE,
    )
    hem_flat: float = _limit(
        TOLERANCES.closure, "mm", "A turned hem lies on the piece it is turned to.", _HOUSE, "house"
    )

    def with_changes(self, changes: Mapping[str, float]) -> "Limits":
        """The limits with some changed; InputError ``limit-unknown`` or ``limit-unusable``."""
        known = tuple(item.name for item in fields(self))
        for name, value in changes.items():
            if name not in known:
                raise InputError("limit-unknown", name=name, known=known)
            if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0 <= value <= _MOST:
                raise InputError("limit-unusable", name=name, value=value)
        return replace(self, **dict(changes))


_MOST = 1000.0
"""No limit of a check, mm or degrees, can be larger: it would switch the check off unseen."""

LIMITS: Final = Limits()
"""The limits that hold unless a profile changes them."""
