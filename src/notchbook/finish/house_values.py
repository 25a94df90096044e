"""What values a house table may hold."""

import math
from collections.abc import Mapping

from notchbook.errors import InputError
from notchbook.finish.row import Row

WIDEST_ALLOWANCE = 200.0
"""mm; deeper than any hem of the trade (3 in = 76 mm), so a wider one is a slip (common sense, no source)."""

MARK_LIMITS: Mapping[str, tuple[float, float]] = {
    "notch_depth": (1.0, 15.0),
    "notch_least": (1.0, 15.0),
    "notch_clearance": (0.0, 15.0),
    "notch_spacing": (5.0, 30.0),
    "drill_before_point": (0.0, 50.0),
    "drill_inside_mouth": (0.0, 20.0),
    "drill_diameter": (0.5, 10.0),
    "corner_limit": (1.0, 10.0),
    "hem_excess_woven": (0.0, 100.0),
    "hem_excess_soft": (0.0, 100.0),
}
"""Least and most of each mark, in the unit of its row (common sense, no source: they catch slips)."""


def require_row(key: str, row: Row) -> None:
    """InputError ``house-value-unusable`` when the value is no number or outside its limits."""
    least, most = MARK_LIMITS.get(key, (0.0, WIDEST_ALLOWANCE))
    if not math.isfinite(row.value) or not least <= row.value <= most:
        raise InputError(
            "house-value-unusable", key=key, value=row.value, least=least, most=most, unit=row.unit
        )


def require_ordered_marks(marks: Mapping[str, Row]) -> None:
    """InputError ``house-marks-missing`` for a table without a mark, ``house-notch-order`` for a depth
    below the least depth."""
    missing = tuple(sorted(set(MARK_LIMITS) - set(marks)))
    if missing:
        raise InputError("house-marks-missing", keys=missing)
    depth, least = marks["notch_depth"].value, marks["notch_least"].value
    if depth < least:
        raise InputError("house-notch-order", depth=depth, least=least)
