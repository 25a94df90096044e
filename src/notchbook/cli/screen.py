"""What a person reads on the screen: lines and tables, without colors where there is no terminal."""

import sys
from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import TYPE_CHECKING, TextIO

if TYPE_CHECKING:
    from rich.console import Console

_WIDTH_WITHOUT_TERMINAL = 110
"""Characters; a file or another program is not asked how wide it is."""


class Screen:
    """Writes plain words to a stream; nothing in them is taken for markup."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream

    @cached_property
    def console(self) -> "Console":
        """The console of rich, loaded at the first table."""
        from rich.console import Console

        width = None if self._stream.isatty() else _WIDTH_WITHOUT_TERMINAL
        return Console(file=self._stream, width=width, markup=False, highlight=False, emoji=False)

    def line(self, text: str = "") -> None:
        """One line of words."""
        self._stream.write(f"{text}\n")

    def table(
        self,
        columns: Sequence[str],
        rows: Iterable[Sequence[str]],
        numbers: Sequence[str] = (),
    ) -> None:
        """A table; the columns named in ``numbers`` stand to the right."""
        from rich.box import SIMPLE_HEAD
        from rich.table import Table
        from rich.text import Text

        table = Table(box=SIMPLE_HEAD, pad_edge=False, show_edge=False)
        for name in columns:
            table.add_column(Text(name), justify="right" if name in numbers else "left", overflow="fold")
        for row in rows:
            table.add_row(*(Text(cell) for cell in row))
        # Written by us, not by the console, which would end the program where a reader has gone away.
        with self.console.capture() as drawn:
            self.console.print(table)
        self._stream.write(drawn.get())

    def next_steps(self, steps: Sequence[str]) -> None:
        """What to do now, one thing a line."""
        if steps:
            self.line()
            self.line("Next:")
        for step in steps:
            self.line(f"  {step}")


def out() -> Screen:
    """The screen of answers."""
    return Screen(sys.stdout)


def err() -> Screen:
    """The screen of refusals and of progress."""
    return Screen(sys.stderr)
