"""Drafts torso and dress for the tests of both."""

from typing import Any

from notchbook.body import MeasureSet
from notchbook.errors import InputError, StepRefused
from notchbook.pattern import pattern_to_data
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.joined_judge import open_closures


def drafted(block: str, measures: MeasureSet, **parameters: Any) -> Replay:
    """The block alone, drafted to its end."""
    done = replay(add_step(Recipe("Garment"), block, parameters, base=measures), measures)
    assert done.suspended is None, str(done.suspended.error)
    return done


def stopped(block: str, measures: MeasureSet, **parameters: Any) -> str:
    """The code with which the block refuses."""
    done = replay(add_step(Recipe("Garment"), block, parameters, base=measures), measures)
    assert done.suspended is not None
    assert str(done.suspended.error)
    return done.suspended.error.code


def still_open(done: Replay) -> list[str]:
    """What does not agree by other code than the draft's."""
    wanted = {promise.measure: promise.wanted for promise in done.expectations if promise.measure}
    return open_closures(pattern_to_data(done.pattern), done.recipe.steps[0].slug, wanted)


def closes_or_refuses(block: str, measures: MeasureSet, **parameters: Any) -> None:
    """Fails where the block is drafted and something is open, or ends with another error than a refusal."""
    done = replay(add_step(Recipe("Garment"), block, parameters, base=measures), measures)
    if done.suspended is None:
        assert still_open(done) == []
    else:
        assert isinstance(done.suspended.error, (InputError, StepRefused))
