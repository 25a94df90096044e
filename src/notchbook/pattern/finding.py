"""A finding: what a check says."""

from dataclasses import dataclass, field
from enum import StrEnum

from notchbook.geometry import Point


class Severity(StrEnum):
    """How bad a finding is."""

    STOP = "stop"
    """Cloth would be spoiled: papers are refused."""
    LOOK = "look"
    """Look again; it may be meant."""
    NOTE = "note"
    """Said for the record, such as a declared ease."""


@dataclass(frozen=True, slots=True)
class Finding:
    """What a check found, where, measured, wanted, why it matters and what to do.

    ``measured`` and ``wanted`` are mm (degrees where ``unit`` is "deg"; a count where it is "").
    ``position`` lies in the frame of ``piece``.
    """

    check: str
    code: str
    severity: Severity
    message: str
    piece: str | None = None
    where: str | None = None
    position: Point | None = None
    measured: float | None = None
    wanted: float | None = None
    unit: str = "mm"
    suggestion: str = ""
    names: tuple[str, ...] = field(default=())
