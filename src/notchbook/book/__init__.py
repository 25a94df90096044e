"""The book: the pattern library of a studio, kept in one file.

It keeps text that it is given (recipes, measures, geometry) under its sha256, a journal that only grows,
and frozen revisions. It knows no garment and reads none of the texts.
"""

from notchbook.book.book import Book
from notchbook.book.folder import Folder, folder_of
from notchbook.book.kinds import EntryKind, EntryStatus
from notchbook.book.records import (
    BackupReport,
    Copy,
    Document,
    Erased,
    Erasure,
    Event,
    Frozen,
    Listed,
    NewContent,
    NewEntry,
    Place,
    Revision,
    RevisionContents,
    StoredText,
    Swept,
    UnderCode,
)
from notchbook.book.settings import Clock, Settings

__all__ = [
    "BackupReport",
    "Book",
    "Clock",
    "Copy",
    "Document",
    "EntryKind",
    "EntryStatus",
    "Erased",
    "Erasure",
    "Event",
    "Folder",
    "Frozen",
    "Listed",
    "NewContent",
    "NewEntry",
    "Place",
    "Revision",
    "RevisionContents",
    "Settings",
    "StoredText",
    "Swept",
    "UnderCode",
    "folder_of",
]
