"""One thing to sew, before it is known when: what must be done before it, and when in the making it comes."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.pattern import STAGES, Stage, split_side


@dataclass(frozen=True, slots=True)
class Task:
    """A line of the order in the making.

    ``key`` names it: the seam, intake or operation, without a side, since left and right are sewn alike and
    are one line. ``text`` is the order in words; ``amount`` (mm) is how much is eased in, gathered or
    stretched on, and ``how`` says which of these. ``at`` names what is sewn, ``after`` keys that come first.
    ``rank`` puts it among its stage.
    """

    key: str
    stage: Stage
    text: str
    at: tuple[str, ...]
    after: frozenset[str] = frozenset()
    rank: int = 0
    amount: float = 0.0
    how: str = ""

    @property
    def place(self) -> tuple[int, int]:
        """Where the task would stand if nothing had to come before it."""
        return STAGES.index(self.stage), self.rank


def key_of(name: str) -> str:
    """The name without its side: left and right are sewn alike, in one line of the order."""
    return split_side(name)[0]


def after_renamed(task: Task, renamed: Mapping[str, str]) -> Task:
    """The task, with the keys that its needs have now; it never waits for itself."""
    if task.key not in task.after and renamed.keys().isdisjoint(task.after):
        return task
    return replace(task, after=frozenset(renamed.get(key, key) for key in task.after) - {task.key})
