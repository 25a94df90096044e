"""What of a pattern is worth being made to measure: offered in the order in which a hand would ask for it."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.app.comparing.length_changes import whole_runs
from notchbook.errors import NotchbookError
from notchbook.pattern import Pattern
from notchbook.pattern.names import instance_of, last_word
from notchbook.pattern.resolve import expand
from notchbook.recipe import Replay
from notchbook.recipe.targets import Quantity, measured


@dataclass(frozen=True, slots=True)
class Measurable:
    """Something that can be made to measure, and what it measures now, mm."""

    quantity: Quantity
    now: float


def measurable(run: Replay) -> tuple[Measurable, ...]:
    """Finished girths, open edges all round, eases of seams, girths at level lines, lengths of edges."""
    found: list[Measurable] = []
    for quantity in dict.fromkeys(_quantities(run)):
        try:
            found.append(Measurable(quantity, measured(run, quantity)))
        except NotchbookError:
            continue  # what a later step took a part of cannot be measured, so that it is not offered
    return tuple(found)


def _quantities(run: Replay) -> Iterator[Quantity]:
    pattern = run.pattern
    yield from (Quantity("finished", (promise.name,)) for promise in run.expectations)
    runs = whole_runs(pattern)
    yield from _by_word("around", [name for name in runs if _is_open(pattern, name)])
    yield from _eases(pattern)
    levels = [line.name for piece in pattern.pieces.values() for line in piece.lines if line.kind == "level"]
    yield from _by_word("level", levels)
    yield from (Quantity("length", (name,)) for name in runs)


def _by_word(kind: str, names: list[str]) -> Iterator[Quantity]:
    """Things of one word and one instance together: the hem of all pieces."""
    groups: dict[tuple[str, str], list[str]] = {}
    for name in names:
        groups.setdefault((instance_of(name), last_word(name)), []).append(name)
    for together in groups.values():
        yield Quantity("around" if kind == "around" else "level", tuple(together))


def _is_open(pattern: Pattern, name: str) -> bool:
    """Whether an edge is sewn to no other and lies on no fold: a hem, a waist, a neck."""
    sewn = {
        member
        for seam in pattern.seams.values()
        for use in (*seam.first, *seam.second)
        for member in expand(pattern, use.edge)[0]
    }
    members = expand(pattern, name)[0]
    return not sewn & set(members) and all(pattern.edges[one].kind != "fold" for one in members)


def _eases(pattern: Pattern) -> Iterator[Quantity]:
    """The ease of all eased seams of one instance together (a sleeve cap), then of each seam."""
    eased: dict[tuple[str, str], list[str]] = {}
    for seam in pattern.seams.values():
        if seam.ease:
            eased.setdefault((instance_of(seam.name), seam.allowance_class), []).append(seam.name)
    yield from (Quantity("ease", tuple(names)) for names in eased.values() if len(names) > 1)
    yield from (Quantity("ease", (name,)) for name in pattern.seams)
