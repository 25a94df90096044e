"""The ease table: what every girth and length of a draft is on the body, on the pattern and when sewn."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from notchbook.pattern import Expectation, ExpectationKind
from notchbook.pattern.promised_length import promised_length, sewn_shares
from notchbook.recipe import Replay
from notchbook.units import LengthStyle

_ROUNDING_STEPS: Final = 1.5
"""Steps of a style by which two rounded lengths may set their difference off: half a step each, and as much
again for what the sew line is off."""


@dataclass(frozen=True, slots=True)
class EaseRow:
    """One line of the ease table, mm, each number as the measure is taken: a girth whole.

    ``body`` is the body, ``ease`` what was drafted, ``pattern`` what the sew line measures now with the
    darts closed, ``finished`` what it measures in the garment: a line that is eased into a shorter one
    is then as long as that. Both are None where the pattern no longer has this line. ``usual`` is the usual
    ease; ``error`` is the ± of the body where that is an estimate, else None. ``measure`` is empty where
    the length comes from no measure of the body, such as a sleeve cap that goes into an armhole.
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

    @property
    def miss(self) -> float:
        """How far the sew line is from body and ease, mm; 0 where the pattern no longer has it."""
        return 0.0 if self.pattern is None else abs(self.pattern - self.body - self.ease)

    def shown_ease(self, style: LengthStyle) -> float:
        """The ease, mm, to be written between body and pattern in this style, so that they add up as written.

        Where the pattern has gone farther from body and ease than rounding explains, or has no such line any
        more, it is the ease as drafted.
        """
        if self.pattern is None:
            return self.ease
        between = style.nearest(self.pattern) - style.nearest(self.body)
        return between if abs(between - self.ease) <= _ROUNDING_STEPS * style.step else self.ease


def ease_table(replay: Replay) -> tuple[EaseRow, ...]:
    """A row for every girth, then for every length, that the drafts promised."""
    promises = replay.expectations
    if not promises:
        return ()
    shares = sewn_shares(replay.pattern)
    rows = [_row(replay, promise, shares) for promise in promises]
    return tuple(sorted(rows, key=lambda row: row.kind != "girth"))


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
