"""Looking a pattern over: checks, what the draft had to say, and the girths against the body."""

from dataclasses import dataclass, replace
from typing import Final

from notchbook.app.resting_on_estimates import rested_on
from notchbook.checks import Report, Subject, all_checks, run_checks
from notchbook.finish import Cloth, HouseTable
from notchbook.pattern import Expectation, Pattern, resolve, sewn_length
from notchbook.pattern.resolve import Found
from notchbook.recipe import Replay
from notchbook.units import LengthStyle

_ROUNDING_STEPS: Final = 1.5
"""Steps of a style by which two rounded lengths may set their difference off: half a step each, and as much
again for what the sew line is off."""


@dataclass(frozen=True, slots=True)
class GirthRow:
    """One line of the ease table, mm: the body, the ease that was drafted, and what the sew line
    measures now (None where the pattern no longer has this girth). ``usual`` is the usual ease;
    ``error`` is the ± of the body where that is an estimate, else None."""

    name: str
    measure: str
    body: float
    ease: float
    pattern: float | None
    usual: tuple[float, float] | None
    error: float | None = None

    def shown_ease(self, style: LengthStyle) -> float:
        """The ease, mm, to be written between body and pattern in this style, so that they add up as written.

        Where the pattern has gone farther from body and ease than rounding explains, or has no such girth any
        more, it is the ease as drafted.
        """
        if self.pattern is None:
            return self.ease
        between = style.nearest(self.pattern) - style.nearest(self.body)
        return between if abs(between - self.ease) <= _ROUNDING_STEPS * style.step else self.ease


def examine(replay: Replay, house: HouseTable | None = None, *, cut: bool = True) -> Report:
    """The report of all checks on the last good pattern, the notes of the drafts among its findings.

    Without ``cut`` the checks that need the pieces made cut-ready are left for later: while a
    pattern is being shaped, every stroke is looked at, the papers when she pauses.
    """
    return examine_subject(subject_of(replay, house), replay, cut=cut)


def subject_of(replay: Replay, house: HouseTable | None = None, cloth: Cloth | None = None) -> Subject:
    """What the checks look at: the last good pattern, the body, and what the drafts promised.

    What a draft promised is checked on the block as drafted, and after the styles where it must be kept.
    """
    measures, rested = replay.measures, rested_on(replay)
    body = {key: measures.value(key) for key in measures.measure_keys() if measures.find(key) is not None}
    return Subject(
        replay.pattern,
        body,
        replay.expectations,
        house,
        cloth,
        is_block=not _was_styled(replay),
        estimates={name: one.measure for name, one in rested.items()},
        stale={name: one.now for name, one in rested.items() if one.is_stale},
        population=measures.population,
    )


def examine_subject(subject: Subject, replay: Replay, *, cut: bool = True) -> Report:
    """As :func:`examine`, on a subject whose cut pieces are wanted afterward."""
    report = run_checks(subject, None if cut else _without_cut())
    return replace(report, findings=(*replay.notes, *report.findings))


def _without_cut() -> list[str]:
    return [check.id for check in all_checks() if "cut" not in check.reads]


def ease_table(replay: Replay) -> tuple[GirthRow, ...]:
    """Body, ease and pattern for every girth that the drafts promised."""
    pattern = replay.pattern
    return tuple(
        GirthRow(
            promise.name,
            promise.measure,
            promise.body,
            promise.ease,
            promised_length(pattern, promise),
            promise.usual_ease,
            _error(replay, promise.measure),
        )
        for promise in replay.expectations
    )


def _error(replay: Replay, key: str) -> float | None:
    """The ± of a girth of the body, mm; None where it was taken."""
    measure = replay.measures.find(key)
    return None if measure is None else measure.error


def promised_length(pattern: Pattern, promise: Expectation) -> float | None:
    """What the promised length measures on the sew line now, mm; None when a part of it is gone."""
    lines = {line.name: line.path.length for piece in pattern.pieces.values() for line in piece.lines}
    total = 0.0
    for name in promise.names:
        if name in lines:
            total += lines[name]
        elif isinstance(resolve(pattern, name), Found):
            total += sewn_length(pattern, name)
        else:
            return None
    return promise.times * total


def _was_styled(replay: Replay) -> bool:
    """Whether shapes were changed after the drafts, so that only what is kept can be asked of them."""
    from notchbook.recipe import definition

    return any(
        definition(state.record.operation).kind == "style" and state.record.phase == "shaping"
        for state in replay.states
    )
