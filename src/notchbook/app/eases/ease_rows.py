"""The ease table: what every girth and length of a draft is on the body, on the pattern and when sewn."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

from notchbook.app.eases.ease_changes import changed_by
from notchbook.pattern import Expectation, ExpectationKind, spoken
from notchbook.pattern.promise_parts import LEFT_AWAY, Gone, promise_parts
from notchbook.pattern.promised_length import promised_length, sewn_shares
from notchbook.recipe import Replay
from notchbook.units import TOLERANCES, LengthStyle

_ROUNDING_STEPS: Final = 1.5
"""Steps of a style by which two rounded lengths may set their difference off: half a step each, and as much
again for what the sew line is off."""


@dataclass(frozen=True, slots=True)
class EaseRow:
    """One line of the ease table, mm, each number as the measure is taken: a girth whole.

    ``body`` is the body, ``ease`` what was drafted or asked of a step, ``pattern`` what the sew line measures
    now with the darts closed, ``finished`` what it measures in the garment: a line that is eased into a
    shorter one is then as long as that, and pleats are laid. Both are None where the pattern can no longer be
    measured there; ``gone`` says why, in words. ``changed_by`` names the steps by which the pattern is no
    longer body and ease. ``usual`` is the usual ease; ``error`` is the ± of the body where that is an
    estimate, else None. ``measure`` is empty where the length comes from no measure of the body, such as a
    sleeve cap that goes into an armhole.
    """

    name: str
    kind: ExpectationKind
    measure: str
    body: float
    ease: float
    pattern: float | None
    finished: float | None
    usual: tuple[float, float] | None
    error: float | None = None
    gone: str = ""
    changed_by: tuple[str, ...] = ()

    @property
    def miss(self) -> float:
        """How far the sew line is from body and ease, mm; 0 where the pattern no longer has it."""
        return 0.0 if self.pattern is None else abs(self.pattern - self.body - self.ease)

    @property
    def is_changed(self) -> bool:
        """Whether the pattern is no longer body and ease as drafted, or has no such line any more."""
        return self.pattern is None or self.miss > TOLERANCES.closure

    def shown_ease(self, style: LengthStyle) -> float:
        """The ease, mm, to be written between body and pattern in this style: as now measured, so that the
        three add up as written; as drafted where the pattern can no longer be measured."""
        if self.pattern is None:
            return self.ease
        return style.nearest(self.pattern) - style.nearest(self.body)

    @property
    def is_left_away(self) -> bool:
        """Whether it lay on a piece that is not cut, so that nobody looks for it on the papers."""
        return self.gone.endswith(LEFT_AWAY)

    def asked_ease(self, style: LengthStyle) -> float:
        """The ease, mm, to be written in this style as it was drafted or asked for: where the pattern is body
        and ease but for rounding, so that they add up as written."""
        now = self.shown_ease(style)
        return now if abs(now - self.ease) <= _ROUNDING_STEPS * style.step else self.ease


def ease_table(replay: Replay) -> tuple[EaseRow, ...]:
    """A row for every girth, then for every length, that the drafts promised."""
    promises = replay.expectations
    if not promises:
        return ()
    shares = sewn_shares(replay.pattern)
    rows = [_explained(replay, promise, _row(replay, promise, shares)) for promise in promises]
    return tuple(sorted(rows, key=lambda row: row.kind != "girth"))


def _explained(run: Replay, promise: Expectation, row: EaseRow) -> EaseRow:
    """The row with why it is no longer as drafted."""
    if not row.is_changed:
        return row
    return replace(row, gone=_gone(run, promise), changed_by=changed_by(run, promise))


def _gone(run: Replay, promise: Expectation) -> str:
    """Why the length cannot be measured any more, in words; empty where it can."""
    parts = promise_parts(run.pattern, promise)
    if not isinstance(parts, Gone):
        return ""
    return f"{spoken(parts.name)}: {parts.reason}" if parts.reason else f"{spoken(parts.name)} is gone"


def _row(replay: Replay, promise: Expectation, shares: Mapping[str, float]) -> EaseRow:
    body = replay.measures.find(promise.measure) if promise.measure else None
    return EaseRow(
        name=promise.name,
        kind=promise.kind,
        measure=promise.measure,
        body=promise.body,
        ease=promise.ease,
        pattern=promised_length(replay.pattern, promise),
        finished=promised_length(replay.pattern, promise, shares),
        usual=promise.usual_ease,
        error=None if body is None else body.error,
    )
