"""Make it measure: the numbers that give what is wished, found by running the recipe again.

One wish is sought outward from where the number stands; several are solved together, since each number may
move all of them. What is found is rounded to the fewest decimals that still give it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from notchbook.errors import InputError
from notchbook.geometry.solve_between import Accuracies, Place, seek_zero
from notchbook.geometry.solve_together import solve_together
from notchbook.recipe.recipe import Recipe, StepRecord, Target
from notchbook.recipe.replay import Replay, replay
from notchbook.recipe.targets.keeping import order_of_target
from notchbook.recipe.targets.numbers import StepNumber, moved_number
from notchbook.recipe.targets.refusing import EXACT, LIMIT, jumps, out_of_reach, told_to
from notchbook.recipe.targets.trials import Known, Tell, Trials, written
from notchbook.recipe.targets.wish import Wish

_ROOT = 1e-7
"""How exactly a number is sought, mm or degrees, before it is rounded."""

_STEPS: Final = (1.0, 0.1, 0.01, 1e-3, 1e-4, 1e-5, 1e-6)
"""What a number is rounded to, coarsest first: mm, degrees."""

_RULER: Final = tuple(25.4 / parts for parts in (1, 2, 4, 8, 16, 32, 64))
_INCH_STEPS: Final = (*_RULER, 0.0254, 0.00254, 2.54e-4, 2.54e-5)
"""The same where the number is written in inches: the fractions of a ruler, then decimals; mm."""


_STARTS: Final = (0.0, *(10.0 * 1.35**power for power in range(17)))
"""From where an empty length is sought, mm: the first that its step takes."""

_SHARES: Final = (0.1, 0.5, 0.9)
"""The same for a plain number, as shares of what its field takes."""


@dataclass(frozen=True, slots=True)
class Order:
    """One wish and the number that may move for it."""

    wish: Wish
    number: StepNumber


@dataclass(frozen=True, slots=True)
class Made:
    """What was solved: the run before and after, and each number as it is written now.

    The recipe of ``after`` has the numbers in it, each with its wish beside it.
    """

    before: Replay
    after: Replay
    orders: tuple[Order, ...]
    numbers: tuple[StepNumber, ...]
    measured: tuple[float, ...]
    wanted: tuple[float, ...]

    @property
    def recipe(self) -> Recipe:
        """The recipe with the numbers written into it."""
        return self.after.recipe


def make_it_measure(
    run: Replay, orders: Sequence[Order], known: Known | None = None, tell: Tell | None = None
) -> Made:
    """The numbers that make every wish come true to 0.01 mm, together.

    ``known`` may hold trials of the one number of a single order, so that none is done again. ``tell``
    hears before each trial how many were done; what it raises ends the search, and nothing is changed.

    InputError: ``wish-run-stopped``, ``wish-number-twice``, ``wish-out-of-reach`` (with what can be reached
    and what stands in the way), ``wish-not-moved``, ``wish-jumps``, ``wishes-collide``,
    ``wishes-not-together``; NameLost for a name that is gone.
    """
    if run.suspended is not None:
        raise InputError("wish-run-stopped", step=run.suspended.step, reason=run.suspended.error.text())
    numbers = [order.number for order in orders]
    twice = [one.said for one in numbers if sum(one.word == other.word for other in numbers) > 1]
    if twice:
        raise InputError("wish-number-twice", number=twice[0])
    wanted = tuple(order.wish.wanted(run.measures) for order in orders)
    shared: Known | None = ({} if known is None else known) if len(orders) == 1 else None
    orders = [replace(order, number=begun(run, order, shared, tell)) for order in orders]
    quantities = [order.wish.quantity for order in orders]
    trials = Trials(run, [order.number for order in orders], quantities, shared, tell)
    begin = trials.at([number.value for number in trials.numbers])
    if begin.refusal is not None:
        raise begin.refusal
    search = _one if len(orders) == 1 else _several
    values = _rounded(trials, wanted, search(trials, orders, wanted))
    return _made(trials, tuple(orders), wanted, values)


def solve_again(run: Replay, tell: Tell | None = None) -> Made:
    """Every wish that the recipe keeps, solved anew on the body of this run.

    InputError ``no-targets`` when it keeps none, else as :func:`make_it_measure`.
    """
    pairs = [
        order_of_target(run.recipe, record, target)
        for record in run.recipe.ordered()
        for target in record.targets
    ]
    if not pairs:
        raise InputError("no-targets", style=run.recipe.name)
    return make_it_measure(run, [Order(*pair) for pair in pairs], tell=tell)


def begun(run: Replay, order: Order, known: Known | None = None, tell: Tell | None = None) -> StepNumber:
    """The number with a value to start from: where its field is empty, the first that its step takes."""
    number = order.number
    if number.stored is not None:
        return number
    trials = Trials(run, (number,), (order.wish.quantity,), known, tell)
    places = [place for place in _STARTS if number.low <= place <= number.high] or [number.value]
    if number.kind == "number":
        places = [number.value, *((number.low + (number.high - number.low) * share) for share in _SHARES)]
    fitting = (place for place in places if trials.at((place,)).refusal is None)
    return replace(number, value=next(fitting, places[-1]))


def orders_with_kept(run: Replay, orders: Sequence[Order]) -> tuple[Order, ...]:
    """The orders, then every wish that the recipe keeps with another number and of another thing."""
    numbers = {order.number.word for order in orders}
    asked = {order.wish.quantity for order in orders}
    kept = [
        Order(*order_of_target(run.recipe, record, target))
        for record in run.recipe.ordered()
        for target in record.targets
    ]
    others = [one for one in kept if one.number.word not in numbers and one.wish.quantity not in asked]
    return (*orders, *others)


def without_target(recipe: Recipe, number: StepNumber) -> Recipe:
    """The recipe with the wish beside this number let go; the number stays."""
    record = recipe.step(number.step)
    kept = tuple(target for target in record.targets if target.parameter != number.path)
    return _with_record(recipe, replace(record, targets=kept))


def _one(trials: Trials, orders: Sequence[Order], wanted: tuple[float, ...]) -> tuple[float, ...]:
    wish, number = orders[0].wish, orders[0].number
    start = Place(number.value, trials.at((number.value,)).values[0] - wanted[0])
    if abs(start.value) <= EXACT:
        return (number.value,)

    def away(at: float) -> float | None:
        found = trials.at((at,))
        return None if found.refusal is not None else found.values[0] - wanted[0]

    told = told_to(number)
    accuracies = Accuracies(_ROOT, min(LIMIT, told), told)
    sought = seek_zero(away, start, number.first_step, (number.low, number.high), accuracies)
    if sought.root is None:
        raise out_of_reach(trials, wish, wanted[0], sought)
    left = away(sought.root)
    if left is None or abs(left) > EXACT:
        raise jumps(trials, wish, wanted[0], sought.root)
    return (sought.root,)


def _several(trials: Trials, orders: Sequence[Order], wanted: tuple[float, ...]) -> tuple[float, ...]:
    def away(place: Sequence[float]) -> list[float] | None:
        found = trials.at(place)
        if found.refusal is not None:
            return None
        return [value - wish for value, wish in zip(found.values, wanted, strict=True)]

    start = [order.number.value for order in orders]
    found = solve_together(away, start, [order.number.first_step for order in orders], EXACT / 100.0)
    if found.is_solved or max(map(abs, found.values)) <= EXACT / 2.0:
        return found.place
    for order in orders:
        _refuse_alone(trials, order)
    off = [index for index, value in enumerate(found.values) if abs(value) > EXACT]
    raise InputError(
        "wishes-collide" if found.is_bound else "wishes-not-together",
        wishes=tuple(order.wish.said for order in orders),
        numbers=tuple(order.number.said for order in orders),
        first=orders[off[0]].wish.said,
        wanted=wanted[off[0]],
        nearest=wanted[off[0]] + found.values[off[0]],
    )


def _refuse_alone(several: Trials, order: Order) -> None:
    """Refuse one wish of several as it would be refused alone, where it would: that says more."""
    trials = Trials(several.run, (order.number,), (order.wish.quantity,), tell=several.tell)
    _one(trials, (order,), (order.wish.wanted(several.run.measures),))


def _rounded(trials: Trials, wanted: tuple[float, ...], values: tuple[float, ...]) -> tuple[float, ...]:
    """The values with the fewest decimals with which all wishes still come true."""
    ladders = [_INCH_STEPS if number.unit == "in" else _STEPS for number in trials.numbers]
    for rung in range(max(map(len, ladders))):
        steps = [ladder[min(rung, len(ladder) - 1)] for ladder in ladders]
        tried = tuple(round(value / step) * step for value, step in zip(values, steps, strict=True))
        found = trials.at(tried)
        if found.refusal is None and all(
            abs(value - wish) <= EXACT for value, wish in zip(found.values, wanted, strict=True)
        ):
            return tried
    return values


def _made(
    trials: Trials, orders: tuple[Order, ...], wanted: tuple[float, ...], values: tuple[float, ...]
) -> Made:
    numbers = tuple(moved_number(one, value) for one, value in zip(trials.numbers, values, strict=True))
    stored = [number.at(number.value) for number in numbers]
    recipe = written(trials.run.recipe, trials.numbers, stored, trials.run)
    for order, wish in zip(orders, wanted, strict=True):
        recipe = _with_target(recipe, order, wish)
    after = replay(recipe, trials.run.measures, trials.run)
    return Made(trials.run, after, orders, numbers, trials.at(values).values, wanted)


def _with_target(recipe: Recipe, order: Order, wanted: float) -> Recipe:
    """The recipe with the wish beside the number; a number has one wish, the last."""
    record = recipe.step(order.number.step)
    kept = tuple(target for target in record.targets if target.parameter != order.number.path)
    target = Target(order.number.path, order.wish.text, wanted)
    return _with_record(recipe, replace(record, targets=(*kept, target)))


def _with_record(recipe: Recipe, record: StepRecord) -> Recipe:
    return recipe.with_steps(tuple(record if one.id == record.id else one for one in recipe.steps))
