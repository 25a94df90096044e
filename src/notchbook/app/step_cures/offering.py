"""Offering steps that cure findings: each is tried on a copy first, and told with what else it does."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Final

from notchbook.app.examining import examine
from notchbook.app.offered_cure import AddedStep, OfferedCure
from notchbook.app.step_cures.for_darts import for_dart
from notchbook.app.step_cures.for_openings import for_opening
from notchbook.app.step_cures.for_seams import for_junction, for_misfit, for_notch
from notchbook.app.step_cures.proposed import Proposer
from notchbook.app.step_cures.trying import tried
from notchbook.checks import Report
from notchbook.pattern import Finding
from notchbook.recipe import Replay

NUMBER_SIGN: Final = "."
"""Between a code and the number of one of its cures: ``sleeve-arm-too-full.2``."""

MOST_FINDINGS: Final = 12
"""Findings for which cures are tried in one look: more are seldom read at once, and each costs some runs."""

_PROPOSERS: Final[Mapping[str, Proposer]] = {
    "seam-second-longer": for_misfit,
    "seam-second-shorter": for_misfit,
    "notch-stretch-differs": for_notch,
    "junction-peak": for_junction,
    "junction-dip": for_junction,
    "armhole-corner": for_junction,
    "dart-legs-differ": for_dart,
    "dart-mouth-peak": for_dart,
    "dart-mouth-dip": for_dart,
    "opening-under-head": for_opening,
    "opening-under-hips": for_opening,
    "opening-under-bust": for_opening,
    "opening-under-hand": for_opening,
    "opening-under-heel": for_opening,
}
"""Which findings can be cured by a step, by their code."""


def step_cures(run: Replay, report: Report | None = None) -> tuple[OfferedCure, ...]:
    """The steps that would cure what the checks found on a run that did not stop.

    Each was tried: one that does not heal, or that would spoil something that is right now, is not offered.
    ``report`` is that of the run, where it is known. Nothing is changed.
    """
    if run.suspended is not None:
        return ()
    found = examine(run, cut=False) if report is None else report
    curable = [one for one in found.findings if one.code in _PROPOSERS][:MOST_FINDINGS]
    basis = examine(run, cut=False) if report is not None and curable else found
    return _numbered(cure for finding in curable for cure in _cures_of(run, basis, finding))


def _cures_of(run: Replay, report: Report, finding: Finding) -> Iterable[OfferedCure]:
    climbed: set[str] = set()
    for proposed in _PROPOSERS[finding.code](run.pattern, finding):
        if proposed.ladder in climbed:
            continue
        disturbs = tried(run, report, finding, proposed)
        if disturbs is not None:
            climbed |= {proposed.ladder} - {""}
            yield OfferedCure(
                code=finding.code,
                word=finding.code,
                step=proposed.operation,
                parameter="",
                value=proposed.value,
                order=proposed.order,
                raised_by=proposed.amount,
                adds=AddedStep(proposed.operation, proposed.parameters),
                where=finding.where,
                disturbs=disturbs,
            )


def _numbered(cures: Iterable[OfferedCure]) -> tuple[OfferedCure, ...]:
    """The cures with a word each: the first of a code has the code, the others a number after it."""
    seen: Counter[str] = Counter()
    numbered: list[OfferedCure] = []
    for cure in cures:
        seen[cure.code] += 1
        word = cure.code if seen[cure.code] == 1 else f"{cure.code}{NUMBER_SIGN}{seen[cure.code]}"
        numbered.append(replace(cure, word=word))
    return tuple(numbered)
