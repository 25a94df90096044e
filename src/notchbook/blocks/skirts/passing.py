"""A skirt that is put on without an opening: its waist must pass over the hip."""

from collections.abc import Iterator
from math import ceil

from notchbook.pattern import Cure, Finding, Measured, Severity, worded


def passing_notes(
    check: str, step: str, waist: float, hip: float | None, where: tuple[str, ...]
) -> Iterator[Finding]:
    """``waist`` as sewn and the ``hip`` of the body, mm; ``where`` the edges of the waist."""
    if hip is None or waist >= hip:
        return
    more = float(ceil(hip - waist))
    cure = Cure(step, "waist_ease", more, "give the waist ease for an elastic", added=True)
    yield worded(
        check,
        "waist-does-not-pass-hip",
        Severity.STOP,
        Measured(waist, hip),
        where=where[0],
        names=where,
        cures=(cure,),
    )
