"""The words of the book: kinds and states of an entry, kinds of events."""

import re
from enum import StrEnum
from typing import Final

from notchbook.errors import BookError


class EntryKind(StrEnum):
    """What an entry of the book is."""

    STYLE = "style"
    BLOCK = "block"
    MEASURES = "measures"
    CHART = "chart"


class EntryStatus(StrEnum):
    """Where an entry stands: its content is worked on, is that of an approved revision, or is filed away."""

    WORKING = "working"
    APPROVED = "approved"
    RETIRED = "retired"


class BookEvent(StrEnum):
    """The events that the book writes itself; an edit brings a word of its own."""

    ADD = "add"
    UNDO = "undo"
    REDO = "redo"
    RENAME = "rename"
    RETIRE = "retire"
    BRING_BACK = "bring-back"
    FREEZE = "freeze"
    APPROVE = "approve"
    ERASE = "erase"
    """Something that was made on an erased entry was taken out of this document."""
    UNDER_CODE = "keep-under-code"
    """A name in this document, now and before, gave way to a code."""


_EDIT_KIND: Final = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_LONGEST_EDIT_KIND: Final = 60


def check_edit_kind(kind: str) -> str:
    """The word for an edit: lower-case words joined by hyphens, and none of the book's own."""
    if not _EDIT_KIND.fullmatch(kind) or len(kind) > _LONGEST_EDIT_KIND or kind in set(BookEvent):
        raise BookError("book-edit-kind-refused", kind=kind, own=tuple(BookEvent))
    return kind


def entry_kind(kind: EntryKind | str) -> EntryKind:
    """The kind by its word."""
    try:
        return EntryKind(kind)
    except ValueError:
        raise BookError("book-kind-unknown", kind=kind, kinds=tuple(EntryKind)) from None
