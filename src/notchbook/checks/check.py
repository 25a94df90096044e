"""What a check is: a rule with its reason, found under its id for ever."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Literal

from notchbook.checks.subject import Subject
from notchbook.errors import HouseFault
from notchbook.geometry import Point
from notchbook.pattern import Finding, Severity

Reads = Literal[
    "pieces",
    "edges",
    "seams",
    "notches",
    "intakes",
    "grain",
    "allowances",
    "cut",
    "expectations",
    "instructions",
    "measures",
]
"""A part of the subject that a check looks at. ``cut`` are the cut pieces, which come from all the rest:
while an edge is dragged they are left alone, on its release they are made anew."""

Rule = Callable[[Subject], Iterable[Finding]]

_ID = re.compile(r"[a-z]+(-[a-z]+)*")


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a finding lies: the piece, the thing on it (both by name), a position in the piece's frame."""

    piece: str | None = None
    where: str | None = None
    position: Point | None = None
    names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Reading:
    """What was measured and what was wanted: mm, degrees where ``unit`` is "deg", a count where "".

    ``error`` is the ± of an estimate; ``wanted`` is then what would be estimated now, where that is another.
    """

    measured: float
    wanted: float | None
    unit: str = "mm"
    error: float | None = None


@dataclass(frozen=True)
class Check:
    """One rule: ``id`` is for ever, ``rationale`` is a patternmaker's reason.

    ``messages`` holds a text for each code of its findings, with facts in braces and no lengths:
    these stand in ``measured`` and ``wanted``, to be written in the reader's unit. ``reads`` says
    what it looks at; it runs again only when one of these was touched.
    """

    id: str
    title: str
    rationale: str
    severity: Severity
    reads: tuple[Reads, ...]
    messages: Mapping[str, str]
    suggestion: str
    rule: Rule = field(compare=False)

    def run(self, subject: Subject) -> Iterator[Finding]:
        """The findings of this check; silent when the subject is right."""
        yield from self.rule(subject)

    def finding(
        self,
        code: str,
        spot: Spot,
        reading: Reading | None = None,
        severity: Severity | None = None,
        /,
        **facts: object,
    ) -> Finding:
        """A finding of this check; ``severity`` is the check's own unless given."""
        return Finding(
            check=self.id,
            code=code,
            severity=severity or self.severity,
            message=self.messages[code].format(**facts),
            piece=spot.piece,
            where=spot.where,
            position=spot.position,
            measured=None if reading is None else reading.measured,
            wanted=None if reading is None else reading.wanted,
            unit="" if reading is None else reading.unit,
            suggestion=self.suggestion,
            names=spot.names,
            error=None if reading is None else reading.error,
        )


def check(
    *,
    id: str,
    title: str,
    rationale: str,
    severity: Severity,
    reads: tuple[Reads, ...],
    messages: Mapping[str, str],
    suggestion: str,
) -> Callable[[Rule], Check]:
    """Make a :class:`Check` of a function ``(subject) -> findings``; its file is named like its id."""
    if not _ID.fullmatch(id) or len(rationale.split(". ")) < 3 or not messages:
        raise HouseFault("check-malformed", check=id)

    def made(rule: Rule) -> Check:
        return Check(id, title, rationale, severity, reads, dict(messages), suggestion, rule)

    return made
