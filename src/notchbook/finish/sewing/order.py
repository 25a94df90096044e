"""The sewing order: each task after what it needs, otherwise in the usual order of the workroom."""

from collections.abc import Iterable
from dataclasses import dataclass

from notchbook.finish.sewing.joints import Gap
from notchbook.finish.sewing.task import Task
from notchbook.finish.sewing.tasks import tasks_of
from notchbook.pattern import Pattern, Stage


@dataclass(frozen=True, slots=True)
class SewingLine:
    """One line: its number from 1, what is done in words, and with how much (mm) eased in, gathered or
    stretched on (``how``). ``key`` names the seam, intake or operation, ``at`` what is sewn."""

    number: int
    key: str
    stage: Stage
    text: str
    at: tuple[str, ...]
    amount: float
    how: str


@dataclass(frozen=True, slots=True)
class SewingOrder:
    """The lines in order. ``gaps`` are runs over two pieces that nothing joins before; ``waiting`` are the
    keys of tasks of which each waits for another, so that none can be first."""

    lines: tuple[SewingLine, ...]
    gaps: tuple[Gap, ...]
    waiting: tuple[str, ...]


def sewing_order(pattern: Pattern) -> SewingOrder:
    """In which order this pattern is sewn. Tasks that wait for each other stand last, as they come."""
    tasks, gaps = tasks_of(pattern)
    ordered, waiting = _ordered(tasks)
    lines = tuple(
        SewingLine(index, one.key, one.stage, one.text, one.at, one.amount, one.how)
        for index, one in enumerate((*ordered, *waiting), start=1)
    )
    return SewingOrder(lines, gaps, tuple(one.key for one in waiting))


def _ordered(tasks: Iterable[Task]) -> tuple[list[Task], list[Task]]:
    """The tasks each after what it needs, by stage where free; and those that wait for each other."""
    left = sorted(tasks, key=lambda task: task.place)  # a stable sort: as the pattern tells them
    open_keys = {task.key for task in left}
    done: list[Task] = []
    while left:
        following = next((task for task in left if not task.after & (open_keys - {task.key})), None)
        if following is None:
            return done, left
        done.append(following)
        left.remove(following)
        open_keys.remove(following.key)
    return done, []
