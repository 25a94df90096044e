"""Searches for the numbers of a wish: asked how far they are, and stopped, while their requests wait."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field

from notchbook.errors import InputError


class _Stopped(Exception):
    """Raised within a search that was asked to stop; no refusal, for those are answers of the search."""


@dataclass
class WishSearch:
    """One search: what it has ``tried`` so far, runs of the recipe or numbers, and ``of`` how many; None
    where nobody knows beforehand."""

    tried: int = 0
    of: int | None = None
    stopping: threading.Event = field(default_factory=threading.Event)

    def tell(self, tried: int, of: int | None = None) -> None:
        """Hear how far it is; ends the search where that was asked for."""
        if self.stopping.is_set():
            raise _Stopped
        self.tried, self.of = tried, of


class WishSearches:
    """The searches that run in one workroom, by the word that the page gave each. They only read."""

    def __init__(self) -> None:
        self._running: dict[str, WishSearch] = {}

    @contextmanager
    def running(self, word: str | None) -> Iterator[WishSearch]:
        """A search while its request lasts; without a word nobody asks for it.

        InputError ``wish-search-stopped`` when it was asked to stop.
        """
        search = WishSearch()
        if word is not None:
            self._running[word] = search
        try:
            yield search
        except _Stopped as stopped:
            raise InputError("wish-search-stopped") from stopped
        finally:
            if word is not None:
                self._running.pop(word, None)

    def find(self, word: str) -> WishSearch | None:
        """The search with this word; None when it has ended, or not begun."""
        return self._running.get(word)
