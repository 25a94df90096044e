"""Everything that is to be asked about a set of measures before it is used."""

from typing import Final

from notchbook.body.doubts.agreement import agreement_doubts
from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.limits import limit_doubts
from notchbook.body.doubts.waist_drops import waist_drop_doubts
from notchbook.body.measure_set import MeasureSet
from notchbook.units import LengthStyle

_PLAIN_STYLE: Final = LengthStyle("cm")


def check_consistent(measures: MeasureSet, style: LengthStyle = _PLAIN_STYLE) -> tuple[Doubt, ...]:
    """All doubts, stops first; none when the measures are usual and agree.

    ``style`` is the unit of the person who typed the values: it decides which slips are likely.
    A slip of a few centimeters in bust, waist or hip cannot be seen here: measure those twice.
    """
    found = (
        *limit_doubts(measures, style),
        *waist_drop_doubts(measures, style),
        *agreement_doubts(measures, style),
    )
    return tuple(sorted(found, key=lambda doubt: doubt.level != "stop"))


def refuse_inconsistent(measures: MeasureSet, style: LengthStyle = _PLAIN_STYLE) -> None:
    """Raise the first stop among the doubts; checks pass."""
    for doubt in check_consistent(measures, style):
        if doubt.level == "stop":
            raise doubt.problem
