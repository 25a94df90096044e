"""What is to be said of wishes that are kept beside numbers: told, never solved by itself."""

from collections.abc import Iterator

from notchbook.pattern import Finding, Severity, worded
from notchbook.recipe import Replay
from notchbook.recipe.parameter_paths import path_in_words
from notchbook.recipe.targets import KeptTarget, kept_targets

_CHECK = "targets"
"""The name under which kept wishes are told."""


def target_findings(run: Replay) -> tuple[Finding, ...]:
    """A finding for each kept wish that does not come true on this run, or cannot be measured any more."""
    return () if run.suspended is not None else tuple(_findings(run))


def _findings(run: Replay) -> Iterator[Finding]:
    for one in kept_targets(run):
        if one.holds:
            continue
        said = one.target.wish if one.wish is None else one.wish.said
        number = number_said(one)
        if one.found is None:
            reason = "" if one.trouble is None else one.trouble.text()
            yield worded(_CHECK, "target-lost", Severity.LOOK, number=number, wish=said, reason=reason)
        else:
            yield worded(
                _CHECK,
                "target-no-longer-holds",
                Severity.LOOK,
                number=number,
                wish=said,
                wanted=one.wanted,
                found=one.found,
            )


def number_said(one: KeptTarget) -> str:
    """The number of a kept wish: ``Draft skirt, flare``."""
    return f"{one.record.title or one.record.operation}, {path_in_words(one.target.parameter)}"
