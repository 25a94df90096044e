"""What all work in the studio stands on: the book, one lock, and how entries are read from it."""

import json
import threading
from collections.abc import Mapping
from typing import Any, Final

from notchbook.app.studio.states import EntrySummary, ShelfKind
from notchbook.body import MeasureSet, set_from_data
from notchbook.book import Book, Document, EntryKind, Listed
from notchbook.errors import BookError, InputError
from notchbook.finish import HouseTable, production_table
from notchbook.recipe import Replay

_SHELF_KINDS: Final[Mapping[str, ShelfKind]] = {"body": "body", "form": "form", "chart": "size"}
"""Kinds of a set of measures, as the library calls them."""


class Desk:
    """A book open for work, with the runs of the styles that were looked at."""

    def __init__(self, book: Book, house: HouseTable | None = None) -> None:
        self._book = book
        self._house = house or production_table()
        self._lock = threading.RLock()
        self._runs: dict[int, Replay] = {}

    def _named(self, document: Document, name: str) -> Document:
        """The document under the name that its content says, in the library too."""
        if name == document.name:
            return document
        return self._book.rename(document.id, name, document.version)

    def _list(self, kind: EntryKind) -> tuple[EntrySummary, ...]:
        with self._lock:
            listed = self._book.list(kind)
            contents = self._book.contents_of(kind) if kind is EntryKind.MEASURES else {}
        return tuple(line_of(entry, contents.get(entry.id, "")) for entry in listed)

    def _measures(self, body: int) -> MeasureSet:
        return measures_in(self._book.read(body))


def summary_of(document: Document) -> EntrySummary:
    """The line of the library for a document."""
    return EntrySummary(
        document.id,
        document.number,
        document.name,
        document.version,
        document.status.value,
        _shelf_kind(document.kind, document.content),
    )


def measures_in(document: Document) -> MeasureSet:
    """The measures of an entry; InputError ``entry-not-body`` when it is something else."""
    if document.kind is not EntryKind.MEASURES:
        raise InputError("entry-not-body", number=document.number, name=document.name)
    return set_from_data(json.loads(document.content))


def style_in(document: Document) -> dict[str, Any]:
    """The recipe and the body of a style; BookError ``entry-not-style`` when it is something else."""
    content = json.loads(document.content)
    if document.kind is not EntryKind.STYLE or not isinstance(content, dict):
        raise BookError("entry-not-style", number=document.number, name=document.name)
    return content


def edit_word(edit: object) -> str:
    """The word for an edit in the journal: ``add-step`` for AddStep."""
    name = type(edit).__name__
    if name == "Rename":
        # The book keeps the plain word for its own entries.
        return "rename-style"
    return "".join(f"-{letter.lower()}" if letter.isupper() else letter for letter in name).lstrip("-")


def line_of(entry: Listed, content: str) -> EntrySummary:
    """The line of the library for an entry with this content."""
    kind = _shelf_kind(entry.kind, content)
    return EntrySummary(entry.id, entry.number, entry.name, entry.version, entry.status.value, kind)


def _shelf_kind(kind: EntryKind, content: str) -> ShelfKind:
    if kind is EntryKind.MEASURES:
        said = json.loads(content).get("kind", "body") if content else "body"
        return _SHELF_KINDS.get(said, "body")
    return "chart" if kind is EntryKind.CHART else "style"
