"""Trying a step on a copy: whether it heals a finding, and what else comes of it."""

from typing import Final

from notchbook.app.examining import SEAM_PUT_OUT, examine
from notchbook.app.offered_cure import Disturbance
from notchbook.app.step_cures.proposed import Proposed
from notchbook.checks import Report
from notchbook.errors import HouseFault, NotchbookError
from notchbook.pattern import Finding, Pattern, Severity, sewn_length
from notchbook.recipe import Replay, add_step, replay

LEAST_TOLD: Final = 0.05
"""mm; an edge that changes by less is not told of. Half the closure tolerance."""

_Key = tuple[str, str | None, str | None, tuple[str, ...], str]


def tried(run: Replay, report: Report, finding: Finding, proposed: Proposed) -> Disturbance | None:
    """What else the step does; None where it is refused, does not heal, or would spoil something new."""
    try:
        recipe = add_step(run.recipe, proposed.operation, proposed.parameters, base=run.measures)
        done = replay(recipe, run.measures, run)
    except HouseFault:
        raise
    except NotchbookError:
        return None
    if done.suspended is not None:
        return None
    after = _weighty(examine(done, cut=False))
    before = _weighty(report)
    if _key(finding) in after:
        return None
    appear = tuple(one for key, one in after.items() if key not in before)
    if any(one.severity is Severity.STOP for one in appear):
        return None
    settle = tuple(
        one
        for key, one in before.items()
        if key not in after and key != _key(finding) and one.code != SEAM_PUT_OUT
    )
    return Disturbance(settle, appear, _changed_edges(run.pattern, done.pattern))


def _weighty(report: Report) -> dict[_Key, Finding]:
    """The findings that want to be looked at, by what they are about."""
    return {_key(one): one for one in report.findings if one.severity is not Severity.NOTE}


def _key(finding: Finding) -> _Key:
    """What a finding is about; the words of a check tell one stretch of a seam from the next, those of a step
    hold amounts, which may change."""
    words = "" if finding.facts else finding.message
    return finding.code, finding.piece, finding.where, finding.names, words


def _changed_edges(before: Pattern, after: Pattern) -> tuple[tuple[str, float], ...]:
    """Edges of both patterns whose sewn length is another, the most changed first."""
    changed = [
        (name, sewn_length(after, name) - sewn_length(before, name))
        for name in before.edges
        if name in after.edges
    ]
    told = [(name, by) for name, by in changed if abs(by) > LEAST_TOLD]
    return tuple(sorted(told, key=lambda one: (-abs(one[1]), one[0])))
