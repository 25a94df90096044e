"""A profile: which checks are run, with which limits, and what is overridden, each with its reason."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files
from typing import Any

from notchbook.checks.limits import LIMITS, Limits
from notchbook.checks.registry import check_sources
from notchbook.errors import InputError
from notchbook.pattern import Finding, Severity, frozen_map


@dataclass(frozen=True, slots=True)
class Override:
    """One code of a finding taken otherwise, for a reason: of another severity, or waived (None).

    ``names`` narrows it to findings at these pieces, edges or seams; empty means everywhere.
    """

    code: str
    severity: Severity | None
    reason: str
    names: tuple[str, ...] = ()

    def covers(self, finding: Finding) -> bool:
        """Whether the finding is one that this override speaks of."""
        if finding.code != self.code:
            return False
        touched = {finding.piece, finding.where, *finding.names}
        return not self.names or not touched.isdisjoint(self.names)


@dataclass(frozen=True)
class Profile:
    """Which checks are left out and why, changed limits with their reasons, and overrides."""

    name: str
    left_out: Mapping[str, str] = field(default_factory=frozen_map)
    limits: Limits = LIMITS
    limit_reasons: Mapping[str, str] = field(default_factory=frozen_map)
    overrides: tuple[Override, ...] = ()

    def override_of(self, finding: Finding) -> Override | None:
        """The first override that speaks of the finding."""
        return next((override for override in self.overrides if override.covers(finding)), None)


@cache
def house_profile() -> Profile:
    """The profile that comes with the book: every check, every limit as it stands."""
    text = (files("notchbook.checks") / "profiles" / "house.toml").read_text(encoding="utf-8")
    return profile_from_text(text)


def profile_from_text(text: str) -> Profile:
    """The profile written in TOML; InputError ``profile-unusable`` says what is wrong with it."""
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise InputError("profile-unusable", detail=str(error)) from error
    limits = _rows(data, "limits")
    left_out = _rows(data, "left_out")
    for check_id in left_out:
        if check_id not in check_sources():
            raise InputError("check-unknown", check=check_id, near=tuple(check_sources()))
    return Profile(
        name=str(data.get("name", "unnamed")),
        left_out=frozen_map((n, _reason(row, n)) for n, row in left_out.items()),
        limits=LIMITS.with_changes({n: _value(row, n) for n, row in limits.items()}),
        limit_reasons=frozen_map((n, _reason(row, n)) for n, row in limits.items()),
        overrides=tuple(_override(n, row) for n, row in _rows(data, "overrides").items()),
    )


def _rows(data: Mapping[str, Any], table: str) -> Mapping[str, Mapping[str, Any]]:
    rows = data.get(table, {})
    if not isinstance(rows, dict) or not all(isinstance(row, dict) for row in rows.values()):
        raise InputError("profile-unusable", detail=f"{table} must hold one table for each name")
    return rows


def _reason(row: Mapping[str, Any], name: str) -> str:
    reason = row.get("reason")
    if not isinstance(reason, str) or not reason.strip():
        raise InputError("profile-unusable", detail=f"{name} has no reason")
    return reason


def _value(row: Mapping[str, Any], name: str) -> float:
    value = row.get("value")
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise InputError("profile-unusable", detail=f"{name} has no number as its value")
    return float(value)


def _override(code: str, row: Mapping[str, Any]) -> Override:
    word = row.get("severity", "waived")
    known = {severity.value: severity for severity in Severity}
    if word != "waived" and word not in known:
        raise InputError("profile-unusable", detail=f"{code}: the severity cannot be {word!r}")
    names = row.get("names", [])
    if not isinstance(names, list) or not all(isinstance(name, str) for name in names):
        raise InputError("profile-unusable", detail=f"{code}: names must be a list of names")
    return Override(code, known.get(word), _reason(row, code), tuple(names))
