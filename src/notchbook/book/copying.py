"""Copying the file of a book while others may write to it."""

from contextlib import closing
from pathlib import Path

from notchbook.book.connecting import Journal, connect
from notchbook.book.settings import Settings


def copy_file(source: Path, target: Path, settings: Settings, mode: str) -> None:
    """Copy a book with everything that is still in its write-ahead log, into one single file."""
    with (
        closing(connect(source, settings, mode)) as old,
        closing(connect(target, settings, "mode=rwc")) as new,
    ):
        if settings.page_limit is not None:
            new.execute(f"PRAGMA max_page_count = {settings.page_limit:d}")
        old.backup(new)
        new.execute(f"PRAGMA journal_mode = {Journal.ROLLBACK}")
