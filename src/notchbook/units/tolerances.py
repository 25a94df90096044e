"""The house's tolerances, each with its reason; no other place holds a bare small number."""

from dataclasses import dataclass, field, fields
from typing import Any, Final


def _tolerance(amount: float, unit: str, reason: str, source: str, grade: str) -> Any:
    return field(default=amount, metadata={"unit": unit, "reason": reason, "source": source, "grade": grade})


_HOUSE = "house decision"


@dataclass(frozen=True, slots=True)
class Tolerances:
    """How far off is still right. Lengths in mm, angles in degrees."""

    join: float = _tolerance(
        1e-6,
        "mm",
        "Ends nearer than this are one point: far below any paper, far above the arithmetic on 2 m.",
        _HOUSE,
        "house",
    )
    sew_length: float = _tolerance(
        0.01, "mm", "Lengths along a sew line are exact; what remains is arithmetic.", _HOUSE, "house"
    )
    closure: float = _tolerance(
        0.1,
        "mm",
        "A draft closes when no line drawn with the sharpest pencil shows the gap.",
        _HOUSE,
        "house",
    )
    seam_walk: float = _tolerance(
        0.5,
        "mm",
        "Two sides of a seam must agree within a pencil line unless ease is declared.",
        _HOUSE,
        "house",
    )
    trade_seam_walk: float = _tolerance(
        1.6,
        "mm",
        "The workroom accepts 1/16 in (1.5875 mm) when it walks a seam by hand.",
        "1/16 in",
        "common practice",
    )
    print_per_100: float = _tolerance(
        0.1,
        "mm",
        "A printed 100 mm must measure 100 mm on a steel ruler, before the printer's own error.",
        _HOUSE,
        "house",
    )
    angle: float = _tolerance(
        1.0, "deg", "A protractor on paper is not read closer than one degree.", _HOUSE, "common practice"
    )
    side_junction: float = _tolerance(
        3.0,
        "deg",
        "Below three degrees off straight, a waist or hem shows no corner across a seam.",
        _HOUSE,
        "common practice",
    )


TOLERANCES: Final = Tolerances()


@dataclass(frozen=True, slots=True)
class ToleranceReason:
    """One tolerance with its amount, unit (mm or deg), reason, source and grade."""

    name: str
    amount: float
    unit: str
    reason: str
    source: str
    grade: str


def tolerance_reasons(tolerances: Tolerances = TOLERANCES) -> tuple[ToleranceReason, ...]:
    """Every tolerance with its reason, in the order of the table."""
    return tuple(
        ToleranceReason(name=item.name, amount=getattr(tolerances, item.name), **item.metadata)
        for item in fields(tolerances)
    )
