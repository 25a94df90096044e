"""What bust dart the lengths will leave, before anything is drafted."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

BALANCE: Final = 0.13
"""Share of the way from the side-neck point to the underarm by which a front without bust is shorter than the
back. Calibrated on one published draft (from memory); 0.01 are about 0.9 degrees."""

NECK_SHARE: Final = 0.185
"""Half the width of the neck as a share of the girth of its base: 0.155 to 0.212 in drafts of surveyed women,
0.19 in handbooks."""

NECK_RISE: Final = 0.33
"""Rise of the back neck as a share of half its width (handbook practice: a third)."""

SIDE_SHARE: Final = 0.26
"""Half the width of the front at the underarm as a share of the bust with ease (drafts of surveyed women)."""

BUST_EASE: Final = 60.0
SCYE_EASE: Final = 20.0
"""mm; the eases of a fitted bodice, for which the forecast is made."""

LOST_BELOW: Final = 4.0
"""Degrees; a smaller dart is not sewn."""

EXPECTED_FROM: Final = 8.0
"""Degrees; where so much is to be expected, a bust dart that is not there is lost (own judgment)."""

Find = Callable[[str], float | None]
"""Gives a measure by its key, or None."""


@dataclass(frozen=True, slots=True)
class DartOutlook:
    """The angle that the lengths leave for the bust dart, and what such a body usually has, degrees."""

    angle: float
    expected: float

    @property
    def is_lost(self) -> bool:
        """Whether no dart is left on a body whose bust lets expect one."""
        return self.angle < LOST_BELOW and self.expected >= EXPECTED_FROM


def bust_dart_angle(find: Find) -> float | None:
    """The bust dart in degrees that these measures leave, None where one is lacking.

    A forecast: the side seam is taken where it usually lies, the waist as straight. Negative where the
    front is shorter than that of a body without bust.
    """
    lengths = _lengths(find)
    if lengths is None:
        return None
    bust, neck, back, front, to_point, width, scye = lengths
    bust, scye = bust + BUST_EASE, scye + SCYE_EASE
    half_neck = NECK_SHARE * neck
    point = (width / 2.0, front - to_point)
    rest = to_point**2 - (point[0] - half_neck) ** 2
    if rest <= 0.0:
        return None
    side_neck = point[1] + math.sqrt(rest)
    over_underarm = (1.0 - BALANCE) * (NECK_RISE * half_neck + scye)
    raised = side_neck - over_underarm - point[1]
    across, up = SIDE_SHARE * bust - point[0], back - scye - point[1]
    reach = math.hypot(across, up)
    if reach <= abs(raised):
        return math.copysign(90.0, raised)
    return math.degrees(math.asin(raised / reach) - math.atan2(up, across))


_KEYS: Final = (
    "bust_girth",
    "neck_base_girth",
    "back_waist_length",
    "front_waist_length",
    "neck_to_bust_point",
    "bust_point_width",
    "scye_depth",
)


def _lengths(find: Find) -> tuple[float, ...] | None:
    found = tuple(value for key in _KEYS if (value := find(key)) is not None)
    return found if len(found) == len(_KEYS) else None
