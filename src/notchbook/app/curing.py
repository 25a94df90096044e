"""Cures: one changed parameter that heals a refusal or a note, or one step that heals what a check found;
solved here, taken only on request.

A step that is refused may name a length of another step that would have to be larger. It cannot see how
large that length is, nor what comes of it; here the length is raised and the recipe run again until the
refusal is gone, so that what is offered is known to heal. What is taken is written into the recipe: other
bodies of the style get the same amount.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from notchbook.app.drafting import completed, draft_recipe
from notchbook.app.offered_cure import OfferedCure
from notchbook.app.step_cures import NUMBER_SIGN, step_cures
from notchbook.body import MeasureSet
from notchbook.errors import InputError, NotchbookError
from notchbook.pattern import Cure
from notchbook.recipe import Recipe, Replay, StepRecord, add_step, change_step, replay
from notchbook.recipe.parameters import read_amount
from notchbook.units import Amount

MOST_ROUNDS: Final = 12
"""How often a length is raised before the cure is given up; each round is a run of the recipe."""

FINEST_CURE: Final = 1.0
"""mm; a solved length is rounded up to whole millimeters: no chalk is finer. Own judgment."""


def offered_cures(run: Replay) -> tuple[OfferedCure, ...]:
    """What would heal the refusal that stopped the run, and what its drafts noted.

    Each cure was tried. One that does not heal (another refusal stands in its way) is not offered.
    """
    found: list[OfferedCure] = []
    for code, cure in dict.fromkeys(_named(run)):
        offered = _solved(run, code, cure, sum(one.code == code for one in found))
        if offered is not None:
            found.append(offered)
    return tuple(found)


def take_cure(recipe: Recipe, cure: OfferedCure, base: MeasureSet) -> Recipe:
    """The recipe with the cure written into it: a parameter changed, or a step added at the end."""
    if cure.adds is not None:
        return add_step(recipe, cure.adds.operation, cure.adds.parameters, base=base)
    return change_step(recipe, cure.step, {cure.parameter: cure.value}, base=base)


def taking(run: Replay, words: Sequence[str]) -> tuple[Replay, tuple[OfferedCure, ...]]:
    """The run with cures taken by their word, one after another, and which they were.

    A cure that this body does not call for is passed over, so that a run over many bodies may ask for it.
    """
    taken: list[OfferedCure] = []
    # Solved once for each run: each cure takes many runs of the recipe.
    offered: dict[str, OfferedCure] | None = None
    for word in words:
        if offered is None:
            offered = {one.word: one for one in reversed((*offered_cures(run), *step_cures(run)))}
        if word in offered:
            taken.append(offered[word])
            run = replay(take_cure(run.recipe, offered[word], run.measures), run.measures, run)
            offered = None
    return run, tuple(taken)


def draft_taking(
    block: str, measures: MeasureSet, parameters: Mapping[str, Any] | None, words: Sequence[str]
) -> tuple[Replay, tuple[OfferedCure, ...]]:
    """As :func:`notchbook.app.drafting.draft`, with cures taken by their word; and which were taken.

    A refusal holds in its fact ``offered`` what could still be taken.
    """
    run = replay(draft_recipe(block, measures, parameters), measures)
    cured, taken = taking(run, words)
    try:
        return completed_or_offering(cured), taken
    except NotchbookError as error:
        _say_not_offered(error, words, taken)
        raise


def _say_not_offered(error: NotchbookError, words: Sequence[str], taken: Sequence[OfferedCure]) -> None:
    """Say beside the refusal which words took nothing: she may have mistyped the cure that it offers."""
    offered = error.facts.get("offered")
    known = [cure.word for cure in offered] if isinstance(offered, tuple) else []
    for word in words:
        if word not in {cure.word for cure in taken}:
            error.add_note(InputError("cure-not-offered", word=word, known=tuple(known)).text())


def completed_or_offering(run: Replay) -> Replay:
    """As :func:`notchbook.app.drafting.completed`; a refusal holds in its fact ``offered`` what heals it."""
    stop = run.suspended
    if stop is not None and "cures" in stop.error.facts:
        say_solved(stop.error, offered_cures(run))
    return completed(run)


def say_solved(error: NotchbookError, offered: tuple[OfferedCure, ...]) -> None:
    """Have the refusal hold what is offered, and name the amount that heals where it named a first guess.

    A step that is refused cannot see what comes of its cure: the amount in its words is what it knew. One
    number on the screen is enough, and it must be the one that heals.
    """
    told = error.facts.get("cures")
    error.facts["offered"] = offered
    for cure in told if isinstance(told, tuple) else ():
        solved = next((one for one in offered if _is_solved(one, error.code, cure)), None)
        if solved is not None:
            guessed = [name for name, value in error.facts.items() if _is_amount(value, cure.value)]
            error.facts.update(dict.fromkeys(guessed, solved.raised_by))


def _is_solved(offered: OfferedCure, code: str, cure: Cure) -> bool:
    is_same = (offered.code, offered.parameter, offered.order) == (code, cure.parameter, cure.words)
    return cure.added and is_same and offered.raised_by is not None


def _is_amount(value: object, amount: object) -> bool:
    return isinstance(value, float) and value == amount


def require_offered(
    words: Sequence[str], taken: Sequence[OfferedCure], offered: Sequence[OfferedCure]
) -> None:
    """Refuse (``cure-not-offered``) where a word took nothing; ``offered`` is what could still be taken."""
    for word in words:
        if word not in {cure.word for cure in taken}:
            raise InputError("cure-not-offered", word=word, known=tuple(cure.word for cure in offered))


def _named(run: Replay) -> Iterator[tuple[str, Cure]]:
    """The cures that the refusal and the notes of a run name, each with its code."""
    stop = run.suspended
    if stop is not None:
        told = stop.error.facts.get("cures")
        for cure in told if isinstance(told, tuple) else ():
            if isinstance(cure, Cure):
                yield stop.error.code, cure
    yield from ((note.code, cure) for note in run.notes for cure in note.cures)


def _solved(run: Replay, code: str, cure: Cure, before: int) -> OfferedCure | None:
    """The cure as it heals; None where it does not. ``before`` counts the cures of this code before it."""
    record = next((one for one in run.recipe.steps if cure.step in (one.slug, one.id)), None)
    if record is None:
        return None
    value, raised = cure.value, None
    if cure.added:
        raised = _raise_that_heals(run, code, cure, record)
        if raised is None:
            return None
        value = raised_amount(record.parameters[cure.parameter], raised)
    elif _asked_again(_tried(run, record, cure.parameter, value), code, cure) is not None:
        return None
    word = f"{code}{NUMBER_SIGN}{before + 1}" if before else code
    return OfferedCure(code, word, record.id, cure.parameter, value, cure.words, raised)


def _raise_that_heals(run: Replay, code: str, cure: Cure, record: StepRecord) -> float | None:
    """By how much the length must be raised until nobody asks for more, whole mm; None when that fails."""
    total, more = 0.0, float(cure.value)
    for _ in range(MOST_ROUNDS):
        total = math.ceil((total + more) / FINEST_CURE - 1e-9) * FINEST_CURE
        value = raised_amount(record.parameters[cure.parameter], total)
        asked = _asked_again(_tried(run, record, cure.parameter, value), code, cure)
        if asked is None:
            return total
        more = asked
        if more <= 0.0:
            return None
    return None


def _tried(run: Replay, record: StepRecord, parameter: str, value: Any) -> Replay:
    changed = change_step(run.recipe, record.id, {parameter: value}, base=run.measures)
    return replay(changed, run.measures, run)


def _asked_again(run: Replay, code: str, cure: Cure) -> float | None:
    """None when the run is healed of this; else the mm that it asks for now, 0 when it does not say."""
    for told, now in _named(run):
        if (told, now.step, now.parameter) == (code, cure.step, cure.parameter):
            return float(now.value) if now.added else 0.0
    return None if run.suspended is None else 0.0


def raised_amount(stored: str | None, by: float) -> str:
    """An amount as kept, longer by so many mm: ``12 mm``, ``1/20 bust + 12 mm``. None counts as nothing."""
    amount = read_amount(stored or "0 mm")
    if amount.measures:
        return read_amount(f"{amount.text} + {by:g} mm").text
    return Amount.plain(amount.evaluate(lambda _key: 0.0) + by).text
