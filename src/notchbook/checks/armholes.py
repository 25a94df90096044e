"""Armholes as drawn, each from its underarm to the shoulder point, darts closed."""

from collections.abc import Iterator

from notchbook.checks.bow import rounded
from notchbook.checks.subject import Subject
from notchbook.checks.turning import Stretch
from notchbook.checks.word_runs import WordRun, word_runs
from notchbook.pattern import Pattern


def armholes(pattern: Pattern) -> Iterator[WordRun]:
    """The armholes that lie whole on one piece, walked from the underarm."""
    for run in word_runs(pattern, "armhole"):
        found = run.from_point("underarm")
        if found is not None:
            yield found


def pairs(pattern: Pattern) -> Iterator[tuple[WordRun, WordRun]]:
    """The front and the back armhole of each garment and side."""
    found = list(armholes(pattern))
    for front in found:
        for back in found:
            same = (front.instance, front.side) == (back.instance, back.side)
            if same and (front.panel, back.panel) == ("front", "back"):
                yield front, back


def wrong_turns(subject: Subject, run: WordRun) -> list[Stretch]:
    """Where an armhole is round instead of hollow, apart from the hook near the tip."""
    begin = (1.0 - subject.limits.armhole_hook) * run.line.length
    return [one for one in rounded(run, subject.limits.inflection) if one.turned > 0.0 and one.begins < begin]
