"""How far a long run has come."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from notchbook.cli.screen import err


@contextmanager
def progress_of_bodies() -> Iterator[Callable[[int], None] | None]:
    """A line of progress on the error stream, where that is a terminal."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.progress import Progress, TextColumn, TimeElapsedColumn

    columns = (TextColumn("{task.completed:.0f} bodies"), TimeElapsedColumn())
    with Progress(*columns, console=err().console, transient=True) as shown:
        task = shown.add_task("bodies", total=None)
        yield lambda done: shown.update(task, completed=done)


@contextmanager
def progress_of_drafts() -> Iterator[Callable[[int], None] | None]:
    """How many drafts were tried for a wish, where the error stream is a terminal."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.progress import Progress, TextColumn, TimeElapsedColumn

    columns = (TextColumn("{task.completed:.0f} drafts tried"), TimeElapsedColumn())
    with Progress(*columns, console=err().console, transient=True) as shown:
        task = shown.add_task("drafts", total=None)
        yield lambda done: shown.update(task, completed=done)


@contextmanager
def progress_of_numbers() -> Iterator[Callable[[int, int], None] | None]:
    """How many numbers of a style were tried and of how many, where the error stream is a terminal."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.progress import Progress, TextColumn, TimeElapsedColumn

    columns = (TextColumn("{task.completed:.0f} of {task.total:.0f} numbers tried"), TimeElapsedColumn())
    with Progress(*columns, console=err().console, transient=True) as shown:
        task = shown.add_task("numbers", total=1)
        yield lambda done, total: shown.update(task, completed=done, total=total)
