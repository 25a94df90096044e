"""Checks: one rule a file, with a patternmaker's reason; measured by other code than the drafts'.

``run_checks(Subject(pattern))`` gives a :class:`Report`. A new check is one file in ``rules``.
"""

from notchbook.checks.check import Check, Reading, Reads, Spot, check
from notchbook.checks.closure import Closure, closures_data, closures_from_data
from notchbook.checks.closures import closures
from notchbook.checks.limits import LIMITS, Limits
from notchbook.checks.profile import Override, Profile, house_profile, profile_from_text
from notchbook.checks.registry import all_checks, check_sources, load_check
from notchbook.checks.report import BrokenCheck, Report, SkippedCheck, Waived, WorstSeam, finding_data
from notchbook.checks.run import run_checks, worst_seam
from notchbook.checks.subject import Subject

__all__ = [
    "LIMITS",
    "BrokenCheck",
    "Check",
    "Closure",
    "Limits",
    "Override",
    "Profile",
    "Reading",
    "Reads",
    "Report",
    "SkippedCheck",
    "Spot",
    "Subject",
    "Waived",
    "WorstSeam",
    "all_checks",
    "check",
    "check_sources",
    "closures",
    "closures_data",
    "closures_from_data",
    "finding_data",
    "house_profile",
    "load_check",
    "profile_from_text",
    "run_checks",
    "worst_seam",
]
