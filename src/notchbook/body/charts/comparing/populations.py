"""What is said where two sides are of different people."""

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.measure_set import PopulationName
from notchbook.errors import InputError


def population_remarks(
    first: str, one: PopulationName | None, second: str, other: PopulationName | None
) -> tuple[Doubt, ...]:
    """A remark where both sides name their people and not the same; a side that names none is not asked."""
    if one is None or other is None or one == other:
        return ()
    problem = InputError("compare-populations", first=first, one=one, second=second, other=other, where="")
    return (Doubt("check", (), problem),)
