"""Make it measure, as she asks for it: what a solved number would do, looked at before it is taken.

The solving is in :mod:`notchbook.recipe.targets`; here stands what else would move, which checks would turn,
and which of the numbers of a style could serve.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from notchbook.app.comparing.length_changes import LengthChange, edge_changes, girth_changes
from notchbook.app.examining import examine
from notchbook.errors import InputError
from notchbook.pattern import Finding, Severity
from notchbook.recipe import Replay
from notchbook.recipe.targets import (
    KeptTarget,
    Known,
    Made,
    Order,
    StepNumber,
    Tell,
    Trials,
    Wish,
    begun,
    kept_targets,
    make_it_measure,
    number_named,
    numbers_of,
    orders_with_kept,
    read_wish,
)
from notchbook.units import Unit

_STIRS = 1e-4
"""mm; a number that moves what is wished for by less at its first step does not move it."""


@dataclass(frozen=True, slots=True)
class Consequences:
    """What solved numbers would do beside what was wished: girths and edges that change, kept wishes that no
    longer come true, and what the checks would newly say or say no more (notes left out)."""

    girths: tuple[LengthChange, ...]
    edges: tuple[LengthChange, ...]
    broken: tuple[KeptTarget, ...]
    new_findings: tuple[Finding, ...]
    gone_findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Candidate:
    """A number that could be moved for a wish: what comes of it, or why it cannot give it.

    ``stirs`` is the sum of all changes of other edges that it would bring along, mm.
    """

    number: StepNumber
    made: Made | None
    refusal: InputError | None
    stirs: float


def orders_for(
    run: Replay, asked: Sequence[tuple[str, str]], unit: Unit = "mm", *, hold: bool = False
) -> tuple[Order, ...]:
    """Orders from texts, each a wish and the number that may move; with ``hold`` every kept wish with them.

    InputError as reading a wish and a number refuses.
    """
    orders = tuple(Order(read_wish(wish, run, unit), number_named(run.recipe, word)) for wish, word in asked)
    return orders_with_kept(run, orders) if hold else orders


def consequences(made: Made) -> Consequences:
    """What else would change; nothing is stored."""
    wished = {name for order in made.orders for name in order.wish.quantity.names}
    held = {(one.record.id, one.target.parameter) for one in kept_targets(made.before) if one.holds}
    return Consequences(
        girths=tuple(one for one in girth_changes(made.before, made.after) if one.name not in wished),
        edges=tuple(
            one for one in edge_changes(made.before.pattern, made.after.pattern) if one.name not in wished
        ),
        broken=tuple(
            one
            for one in kept_targets(made.after)
            if not one.holds and (one.record.id, one.target.parameter) in held
        ),
        new_findings=_only_in(made.after, made.before),
        gone_findings=_only_in(made.before, made.after),
    )


def candidates(
    run: Replay, wish: Wish, tell: Callable[[int, int], None] | None = None
) -> tuple[Candidate, ...]:
    """The numbers that move what is wished for: first those that give it, the least stirring first.

    Every number of every step is moved a little, and those that move it are solved. ``tell`` hears before
    each run of the recipe how many numbers are done, and of how many; what it raises ends the search. Refused
    as :func:`notchbook.recipe.targets.make_it_measure` where the wish cannot be measured.
    """
    numbers = numbers_of(run.recipe)
    found = []
    for done, number in enumerate(numbers):
        hears = None if tell is None else partial(_told, tell, done, len(numbers))
        found.append(_candidate(run, Order(wish, number), hears))
    able = [one for one in found if one is not None]
    return tuple(sorted(able, key=lambda one: (one.made is None, one.stirs)))


def _told(tell: Callable[[int, int], None], done: int, count: int, _trials: int) -> None:
    tell(done, count)


def _candidate(run: Replay, order: Order, tell: Tell | None) -> Candidate | None:
    known: Known = {}
    number = begun(run, order, known, tell)
    if not _moves(run, Order(order.wish, number), known, tell):
        return None
    try:
        made = make_it_measure(run, (order,), known, tell)
    except InputError as refusal:
        return Candidate(number, None, refusal, 0.0)
    wished = set(order.wish.quantity.names)
    changes = edge_changes(made.before.pattern, made.after.pattern)
    return Candidate(number, made, None, sum(abs(one.by) for one in changes if one.name not in wished))


def _moves(run: Replay, order: Order, known: Known, tell: Tell | None) -> bool:
    """Whether a small step of the number moves what is wished for."""
    trials = Trials(run, (order.number,), (order.wish.quantity,), known, tell)
    here = trials.at((order.number.value,))
    if here.refusal is not None:
        return False
    for by in (order.number.first_step, -order.number.first_step):
        there = trials.at((order.number.value + by,))
        if there.refusal is None and abs(there.values[0] - here.values[0]) > _STIRS:
            return True
    return False


def _only_in(run: Replay, other: Replay) -> tuple[Finding, ...]:
    """What the quick checks say of the one and not of the other, but for notes and kept wishes."""
    known = {_key(finding) for finding in examine(other, cut=False).findings}
    return tuple(
        finding
        for finding in examine(run, cut=False).findings
        if finding.severity is not Severity.NOTE and finding.check != "targets" and _key(finding) not in known
    )


def _key(finding: Finding) -> tuple[str, str | None, str | None]:
    return finding.code, finding.piece, finding.where
