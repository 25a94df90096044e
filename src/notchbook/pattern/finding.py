"""A finding: what a check says."""

from dataclasses import dataclass, field
from enum import StrEnum

from notchbook.errors import entry
from notchbook.errors.catalogue import fill
from notchbook.geometry import Point
from notchbook.pattern.contradiction import Contradiction
from notchbook.pattern.cure import Cure


class Severity(StrEnum):
    """How bad a finding is."""

    STOP = "stop"
    """Cloth would be spoiled: papers are refused."""
    LOOK = "look"
    """Look again; it may be meant."""
    NOTE = "note"
    """Said for the record, such as a declared ease."""


@dataclass(frozen=True, slots=True)
class Measured:
    """What was measured and what was wanted; mm, degrees ("deg") or a plain number ("")."""

    measured: float | None = None
    wanted: float | None = None
    unit: str = "mm"


@dataclass(frozen=True, slots=True)
class Finding:
    """What a check found, where, measured, wanted, why it matters and what to do.

    ``measured`` and ``wanted`` are mm (degrees where ``unit`` is "deg"; a count where it is "").
    ``position`` lies in the frame of ``piece``. ``error`` is the ± of what was measured, where it is an
    estimate; ``wanted`` is then what would be estimated now, None while the estimate still follows.
    ``cures`` are changes that would heal it, ``contradiction`` the two measures that disagree. ``facts`` are
    what filled the words, so that these can be written again in another unit.
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
    error: float | None = None
    cures: tuple[Cure, ...] = ()
    contradiction: Contradiction | None = None
    facts: tuple[tuple[str, object], ...] = field(default=(), compare=False, repr=False)


def worded(
    check: str,
    code: str,
    severity: Severity,
    measured: Measured | None = None,
    *,
    piece: str | None = None,
    where: str | None = None,
    names: tuple[str, ...] = (),
    **facts: object,
) -> Finding:
    """A finding in the words of the catalogue; ``facts`` fill them, amounts stand in ``measured``.

    The facts ``cures`` (a tuple of :class:`Cure`) and ``contradiction`` go with the finding, as they go with
    a refusal.
    """
    words = entry(code)
    amounts = measured or Measured()
    cures, contradiction = facts.get("cures"), facts.get("contradiction")
    return Finding(
        check=check,
        code=code,
        severity=severity,
        message=fill(words.message, facts),
        piece=piece,
        where=where,
        measured=amounts.measured,
        wanted=amounts.wanted,
        unit=amounts.unit,
        suggestion=fill(words.next_step, facts),
        names=names,
        cures=tuple(one for one in cures if isinstance(one, Cure)) if isinstance(cures, tuple) else (),
        contradiction=contradiction if isinstance(contradiction, Contradiction) else None,
        facts=tuple(facts.items()),
    )
