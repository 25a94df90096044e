"""What came out of a run of checks."""

from dataclasses import dataclass
from typing import Any

from notchbook.errors.catalogue import LengthText
from notchbook.pattern import Finding, Severity, spoken


def _misfit_in_mm(value: float) -> str:
    """A misfit in mm, fine enough for that of a seam."""
    return f"{value:.2f} mm"


_ORDER = {Severity.STOP: 0, Severity.LOOK: 1, Severity.NOTE: 2}


@dataclass(frozen=True, slots=True)
class BrokenCheck:
    """A check that broke: our fault or a plug-in's, never the pattern's."""

    id: str
    error: str


@dataclass(frozen=True, slots=True)
class SkippedCheck:
    """A check that was not run, and why."""

    id: str
    reason: str


@dataclass(frozen=True, slots=True)
class Waived:
    """A finding that the profile overrides, with the reason."""

    finding: Finding
    reason: str


@dataclass(frozen=True, slots=True)
class WorstSeam:
    """The seam that agrees worst: its name and misfit, mm; and how many seams were walked."""

    seam: str
    misfit: float
    walked: int


@dataclass(frozen=True, slots=True)
class Report:
    """Findings in a fixed order; checks that passed, broke or were skipped; findings waived.

    A check passed when it had nothing to say but notes.
    """

    findings: tuple[Finding, ...]
    passed: tuple[str, ...]
    broken: tuple[BrokenCheck, ...] = ()
    skipped: tuple[SkippedCheck, ...] = ()
    waived: tuple[Waived, ...] = ()
    worst_seam: WorstSeam | None = None

    @property
    def stops(self) -> bool:
        """Whether papers must be refused: something would spoil cloth, or a check broke."""
        return bool(self.broken) or any(f.severity is Severity.STOP for f in self.findings)

    def summary(self, length_text: LengthText = _misfit_in_mm) -> str:
        """One line: how many checks, what they found, the worst seam, written by ``length_text``."""
        count = dict.fromkeys(Severity, 0)
        for finding in self.findings:
            count[finding.severity] += 1
        parts = [
            f"{len(self.passed)} checks passed",
            f"{count[Severity.STOP]} to stop for",
            f"{count[Severity.LOOK]} to look at",
        ]
        if self.skipped:
            parts.append(f"{len(self.skipped)} skipped")
        if self.broken:
            parts.append(f"{len(self.broken)} broke")
        if self.worst_seam is not None:
            worst = self.worst_seam
            parts.append(
                f"{worst.walked} seams walked, worst {spoken(worst.seam)} at {length_text(abs(worst.misfit))}"
            )
        return "; ".join(parts)

    def to_data(self) -> dict[str, Any]:
        """JSON-ready data in a fixed order; lengths in mm, angles in degrees."""
        worst = self.worst_seam
        return {
            "findings": [finding_data(finding) for finding in self.findings],
            "waived": [{"finding": finding_data(w.finding), "reason": w.reason} for w in self.waived],
            "passed": list(self.passed),
            "broken": [{"check": b.id, "error": b.error} for b in self.broken],
            "skipped": [{"check": s.id, "reason": s.reason} for s in self.skipped],
            "worst_seam": None
            if worst is None
            else {"seam": worst.seam, "misfit": round(worst.misfit, 6), "walked": worst.walked},
            "summary": self.summary(),
        }


def finding_data(finding: Finding) -> dict[str, Any]:
    """One finding as data; numbers rounded to 1e-6. ``error`` stands only with an estimate."""
    position = finding.position
    spread = {} if finding.error is None else {"error": _rounded(finding.error)}
    return {
        "check": finding.check,
        "code": finding.code,
        "severity": finding.severity.value,
        "message": finding.message,
        "piece": finding.piece,
        "where": finding.where,
        "position": None if position is None else [round(position.x, 6), round(position.y, 6)],
        "measured": _rounded(finding.measured),
        "wanted": _rounded(finding.wanted),
        **spread,
        "unit": finding.unit,
        "suggestion": finding.suggestion,
        "names": list(finding.names),
    }


def in_order(findings: list[Finding]) -> tuple[Finding, ...]:
    """The findings: the gravest first, then by check, code and place."""
    return tuple(sorted(findings, key=_sort_key))


def _sort_key(finding: Finding) -> tuple[int, str, str, str, str, tuple[str, ...], float, float]:
    position = finding.position
    return (
        _ORDER[finding.severity],
        finding.check,
        finding.code,
        finding.piece or "",
        finding.where or "",
        finding.names,
        0.0 if position is None else position.x,
        0.0 if position is None else position.y,
    )


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, 6)
