"""Notes that say the same of many places, folded into one: a note has to be worth the time that it takes.

What is to be looked at or would spoil cloth is never folded.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import Final

from notchbook.pattern import Finding, Severity, spoken, worded
from notchbook.pattern.operation import listed

_FOLDED: Final[Mapping[str, str]] = {
    "seam-eased": "seams-eased",
    "seam-stretched": "seams-eased",
    "corner-blunted": "corners-blunted",
    "notch-marked": "notches-marked",
    "label-over-lines": "labels-over-lines",
}
"""Notes that are folded where there are several, and what they are then."""


def folded(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings, several notes of one kind as one in the place of the first."""
    groups: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.severity is Severity.NOTE and finding.code in _FOLDED:
            groups.setdefault(_FOLDED[finding.code], []).append(finding)
    found: list[Finding] = []
    for finding in findings:
        group = groups.get(_FOLDED.get(finding.code, ""), [])
        if len(group) < 2 or finding not in group:
            found.append(finding)
        elif finding is group[0]:
            code = _FOLDED[finding.code]
            found.append(_TOLD[code](code, group))
    return tuple(found)


def _eased(code: str, group: Sequence[Finding]) -> Finding:
    """All declared ease: how many seams have it, and the one that has the most."""
    most = max(group, key=lambda one: one.measured or 0.0)
    return worded(
        most.check,
        code,
        Severity.NOTE,
        names=tuple(one.where for one in group if one.where is not None),
        count=len(group),
        seam=spoken(most.where or ""),
        most=most.measured,
    )


def _of_pieces(code: str, group: Sequence[Finding]) -> Finding:
    """How many there are, and of which pieces: sharp corners cut off, notches not slit, labels over lines."""
    titles = dict.fromkeys(_title(one) for one in group)
    names = tuple(name for one in group for name in one.names)
    pieces = listed(tuple(titles))
    return worded(group[0].check, code, Severity.NOTE, names=names, count=len(group), pieces=pieces)


def _title(note: Finding) -> str:
    """What the piece of a note is called: by its title where the note kept it."""
    return str(dict(note.facts).get("piece", spoken(note.piece or ""))).lower()


_TOLD: Final[Mapping[str, Callable[[str, Sequence[Finding]], Finding]]] = {
    "seams-eased": _eased,
    "corners-blunted": _of_pieces,
    "notches-marked": _of_pieces,
    "labels-over-lines": _of_pieces,
}
