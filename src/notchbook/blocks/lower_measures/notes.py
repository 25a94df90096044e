"""What the draft says about measures of the lower body that do not go together."""

from collections.abc import Iterator
from typing import Final

from notchbook.blocks.lower_measures.agreement_table import asks_from
from notchbook.blocks.lower_measures.disagreement import Kind, LowerDisagreement
from notchbook.body import PopulationName, measure_entry
from notchbook.body.quantity_words import said_key
from notchbook.pattern import Contradiction, Finding, Measured, Severity, worded

_CHECK: Final = "lower-measures"
"""The name under which the look at the measures speaks."""

_CODES: Final[dict[Kind, str]] = {
    "crotch": "crotch-length-contradicts",
    "other-waist": "crotch-length-to-other-waist",
    "parts": "crotch-parts-disagree",
    "thigh": "thigh-contradicts-hip",
    "ruled-out": "lower-measures-rule-each-other-out",
}

_QUESTION: Final = "measure-to-which-waist"
"""The code of the question to which waist a length was taken."""


def contradiction_notes(
    found: tuple[LowerDisagreement, ...], population: PopulationName | None
) -> Iterator[Finding]:
    """The findings about the measures of this body, mm."""
    for one in found:
        entry, other = measure_entry(one.key), one.second if one.key == one.first else one.first
        yield worded(
            _CHECK,
            _CODES[one.kind],
            _severity(one),
            Measured(one.given, one.explaining),
            contradiction=Contradiction(
                first=one.first,
                second=one.second,
                explains=one.key,
                value=one.explaining,
                by=one.amount,
                read_again=other if one.is_sure else one.key,
                question=_QUESTION if one.kind == "other-waist" else "",
            ),
            first=measure_entry(one.first).label_for(population),
            second=said_key(one.second, population),
            explains=entry.label_for(population),
            again=said_key(other if one.is_sure else one.key, population),
            how=entry.short_how,
            deviations=one.deviations or 0.0,
            longer="longer" if one.amount > 0.0 else "shorter",
            below="below" if one.lower else "above",
        )


def _severity(one: LowerDisagreement) -> Severity:
    """Cloth would be spoiled by a crotch so far off; a value that was read twice is asked about only."""
    is_far = one.deviations is not None and one.deviations > asks_from("stop")
    is_crotch = one.kind in ("crotch", "other-waist")
    return Severity.STOP if is_far and is_crotch and not one.is_sure else Severity.LOOK
