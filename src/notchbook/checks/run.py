"""Running checks: a check that breaks is never a piece that fails."""

from collections.abc import Collection, Iterable
from dataclasses import replace

from notchbook.checks.check import Check, Reads
from notchbook.checks.profile import Profile, house_profile
from notchbook.checks.registry import check_sources, load_check
from notchbook.checks.report import BrokenCheck, Report, SkippedCheck, Waived, WorstSeam, in_order
from notchbook.checks.subject import Subject
from notchbook.checks.walks import walked_seams
from notchbook.errors import InputError, NotchbookError
from notchbook.pattern import Finding, Pattern, Severity

_CUT_READY = "cut-ready"
"""The check that tells of pieces which cannot be made cut-ready; the others that read them are skipped."""


def run_checks(
    subject: Subject,
    only: Iterable[str] | None = None,
    profile: Profile | None = None,
    touched: Collection[Reads] | None = None,
) -> Report:
    """Run the checks over the subject.

    ``only`` names the checks to run (None: all); InputError ``check-unknown`` for a wrong id.
    ``touched`` runs those alone that read one of these parts. The limits are the profile's.
    """
    profile = profile or house_profile()
    if subject.limits != profile.limits:
        subject = replace(subject, limits=profile.limits)
    run = _Run(subject, profile, touched)
    for check_id in sorted(set(only)) if only is not None else check_sources():
        run.take(check_id)
    return run.report()


class _Run:
    """The state of one run: the lists that become the report."""

    def __init__(self, subject: Subject, profile: Profile, touched: Collection[Reads] | None) -> None:
        self._subject = subject
        self._profile = profile
        self._touched = touched
        self._findings: list[Finding] = []
        self._passed: list[str] = []
        self._broken: list[BrokenCheck] = []
        self._skipped: list[SkippedCheck] = []
        self._waived: list[Waived] = []

    def take(self, check_id: str) -> None:
        """Run one check, or say why not."""
        try:
            rule = load_check(check_id)
            reason = self._reason_to_skip(rule)
            if reason is not None:
                self._skipped.append(SkippedCheck(check_id, reason))
                return
            found = list(rule.run(self._subject))
        except InputError as error:
            if error.code == "check-unknown":
                raise
            self._broken.append(BrokenCheck(check_id, str(error)))
        except Exception as error:  # whatever breaks inside a check is the check's fault, not the pattern's
            self._broken.append(BrokenCheck(check_id, f"{type(error).__name__}: {error}"))
        else:
            self._sort_out(check_id, found)

    def report(self) -> Report:
        """What came out."""
        return Report(
            findings=in_order(self._findings),
            passed=tuple(self._passed),
            broken=tuple(self._broken),
            skipped=tuple(self._skipped),
            waived=tuple(self._waived),
            worst_seam=worst_seam(self._subject.pattern),
        )

    def _reason_to_skip(self, rule: Check) -> str | None:
        if rule.id in self._profile.left_out:
            return self._profile.left_out[rule.id]
        if self._touched is not None and not set(rule.reads) & set(self._touched):
            return "nothing that it reads was touched"
        if "expectations" in rule.reads and not self._subject.promises:
            return "nothing was promised of this pattern"
        if rule.id != _CUT_READY and "cut" in rule.reads and not self._is_cut_ready():
            return "the pieces cannot be made cut-ready"
        return None

    def _is_cut_ready(self) -> bool:
        try:
            return self._subject.cut_pieces is not None
        except NotchbookError:
            return False

    def _sort_out(self, check_id: str, found: list[Finding]) -> None:
        kept: list[Finding] = []
        for finding in found:
            override = self._profile.override_of(finding)
            if override is None:
                kept.append(finding)
            elif override.severity is None:
                self._waived.append(Waived(finding, override.reason))
            else:
                kept.append(replace(finding, severity=override.severity))
        self._findings.extend(kept)
        if all(finding.severity is Severity.NOTE for finding in kept):
            self._passed.append(check_id)


def worst_seam(pattern: Pattern) -> WorstSeam | None:
    """The seam whose two sides agree worst, declared ease apart; None when there are no seams."""
    walked = list(walked_seams(pattern))
    if not walked:
        return None
    worst = max(walked, key=lambda seam: abs(seam.misfit))
    return WorstSeam(worst.seam.name, worst.misfit, len(walked))
