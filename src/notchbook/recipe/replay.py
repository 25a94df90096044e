"""Running a recipe on a body: pure, the same bytes every time, and only what must run again.

The shaping steps run once for a body whose sides are alike, else once for each of the wearer's
sides; the two are then laid together. Steps that need the whole garment run last.
"""

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from notchbook.body import MeasureSet
from notchbook.errors import NameLost, StepRefused
from notchbook.pattern.expectation import Expectation
from notchbook.pattern.finding import Finding
from notchbook.pattern.names import Side, instance_of, split_side, with_side
from notchbook.pattern.pattern import Pattern
from notchbook.recipe.asked_promises import promises_of
from notchbook.recipe.asked_shapes import Told, asked_grains, asked_waves
from notchbook.recipe.context import taken_alike
from notchbook.recipe.recipe import Recipe, StepRecord
from notchbook.recipe.sided_promises import assemble_expectations, assemble_notes, unfolded_expectations
from notchbook.recipe.sides import assemble
from notchbook.recipe.track import StepState, Suspension, Track, run_track


@dataclass(frozen=True, slots=True)
class Replay:
    """A run of a recipe on a body.

    ``right`` is the track of the wearer's right side, which stands for both when ``left`` is None.
    ``whole`` is the run after the two sides are laid together, None while a side is suspended;
    ``parted`` says why the two sides could not be laid together.
    """

    recipe: Recipe
    measures: MeasureSet
    right: Track
    left: Track | None
    whole: Track | None
    parted: Suspension | None = None

    @property
    def states(self) -> tuple[StepState, ...]:
        """The states in the order run: those of the right side, then those of the whole."""
        return (*self.right.states, *(self.whole.states if self.whole else ()))

    @property
    def suspended(self) -> Suspension | None:
        """Where the run stopped, if it did; the steps for the whole garment wait for the sides too."""
        for track in (self.right, self.left):
            if track is not None and track.suspended is not None:
                later = tuple(record.id for record in self.recipe.steps if record.phase == "whole")
                return replace(track.suspended, waiting=(*track.suspended.waiting, *later))
        return self.whole.suspended if self.whole is not None else self.parted

    @property
    def pattern(self) -> Pattern:
        """The last good pattern; while a side is suspended, that of the wearer's right side."""
        if self.whole is not None:
            return self.whole.pattern
        return self.right.pattern

    @property
    def key(self) -> str:
        """The hash of the last good state."""
        return self.whole.key if self.whole is not None else self.right.key

    @property
    def expectations(self) -> tuple[Expectation, ...]:
        """The closures promised by the drafts, under the names of the whole pattern."""
        right = promises_of(self.right.states)
        if self.left is not None and self.whole is not None:
            left = promises_of(self.left.states)
            right = assemble_expectations(right, left, self.whole.pattern.index)
        elif self.whole is not None:
            right = unfolded_expectations(right, self.whole.pattern.index)
        return promises_of(self.whole.states if self.whole else (), right)

    @property
    def waves(self) -> Mapping[str, int]:
        """The edges of the last good pattern that steps were asked to draw with a wave, and how often each
        may change the side to which it bends."""
        return asked_waves(self._told, self.pattern)

    @property
    def grains(self) -> frozenset[str]:
        """The pieces of the last good pattern whose grain steps were asked to turn off their center."""
        return asked_grains(self._told, self.pattern)

    @property
    def _told(self) -> tuple[Told, ...]:
        """Every state, with the side of which its names are: of both where the sides are alike."""
        right: Side = "both" if self.left is None else "right"
        tracks: tuple[tuple[Side, Track | None], ...] = (
            (right, self.right),
            ("left", self.left),
            ("both", self.whole),
        )
        return tuple((side, state) for side, track in tracks if track is not None for state in track.states)

    @property
    def notes(self) -> tuple[Finding, ...]:
        """What the steps had to say, in order, each once; of one side where the sides differ.

        What is said alike of both, of names that belong to both, is said of the whole.
        """
        said = list(_said(self.right))
        if self.left is not None:
            said = list(assemble_notes(said, _said(self.left), self.pattern))
        if self.whole is not None:
            said += _said(self.whole)
        return tuple(dict.fromkeys(said))

    @property
    def reused(self) -> int:
        """How many states were taken over from the run before."""
        return sum(track.reused for track in (self.right, self.left, self.whole) if track)


def replay(recipe: Recipe, measures: MeasureSet, previous: Replay | None = None) -> Replay:
    """Run the recipe on a body, taking over from ``previous`` every state that still holds."""
    ordered = recipe.ordered()
    sided = tuple(record for record in ordered if record.phase != "whole")
    right_steps = tuple(record for record in sided if record.side != "left")
    start = (Pattern(), "start:right")
    right = run_track(right_steps, start, measures, "right", previous.right if previous else None)
    right = _explained(right, recipe)
    left: Track | None = None
    if _sides_differ(sided, right, measures):
        left_steps = tuple(record for record in sided if record.side != "right")
        before = previous.left if previous else None
        left = run_track(left_steps, (Pattern(), "start:left"), measures, "left", before)
        left = _explained(left, recipe)
    if right.suspended or (left is not None and left.suspended):
        return Replay(recipe, measures, right, left, None)
    records = tuple(record for record in ordered if record.phase == "whole")
    try:
        begin = (right.pattern, right.key) if left is None else _assembled(right, left)
    except StepRefused as error:
        waiting = tuple(record.id for record in records)
        return Replay(recipe, measures, right, left, None, Suspension("both sides", error, waiting))
    whole = run_track(records, begin, measures, "both", previous.whole if previous else None)
    whole = _explained(whole, recipe)
    return Replay(recipe, measures, right, left, whole)


def _said(track: Track) -> Iterator[Finding]:
    return (note for state in track.states for note in state.notes)


def _sides_differ(sided: tuple[StepRecord, ...], right: Track, measures: MeasureSet) -> bool:
    if any(record.side != "both" for record in sided):
        return True
    keys = sorted({key for state in right.states for key, _, _ in state.reads})
    return measures.sides_differ(keys) or not taken_alike(measures, keys)


def _assembled(right: Track, left: Track) -> tuple[Pattern, str]:
    whole = assemble(right.pattern, left.pattern)
    return whole, hashlib.sha256(f"{right.key}+{left.key}".encode()).hexdigest()


def _explained(track: Track, recipe: Recipe) -> Track:
    """Say of a name that is not there whether its step comes later or was removed."""
    stop = track.suspended
    if stop is None or stop.name is None or stop.taken_by or stop.error.code != "name-lost":
        return track
    later = _made_later(stop.step, instance_of(stop.name), recipe)
    if later is not None:
        is_late = recipe.step(stop.step).phase == later.phase
        error = NameLost(
            "name-later" if is_late else "name-derived", name=stop.name, by=later.id, step=stop.step
        )
        return replace(track, suspended=replace(stop, error=error, taken_by=later.id))
    facts = dict(stop.error.facts)
    if instance_of(stop.name) in recipe.retired:
        facts["reason"] = "the step that made it was removed"
    candidates = stop.candidates or _living_whole(track.pattern, stop.name)
    error = NameLost("name-lost", **{**facts, "candidates": candidates})
    return replace(track, suspended=replace(stop, error=error, candidates=candidates))


def _made_later(asking: str, slug: str, recipe: Recipe) -> StepRecord | None:
    """The step of this slug, where it runs after the one that asks for its names."""
    order = recipe.ordered()
    place = next(index for index, record in enumerate(order) if record.id == asking)
    makers = (record for record in order[place + 1 :] if record.slug == slug)
    return next(makers, None)


def _living_whole(pattern: Pattern, name: str) -> tuple[str, ...]:
    """The living edge or group of which the name would be a part, if there is one."""
    base, side = split_side(name)
    while base.count("/") > 1:
        base = base.rsplit("/", 1)[0]
        if with_side(base, side) in pattern.index:
            return (with_side(base, side),)
    return ()
