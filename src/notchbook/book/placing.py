"""Putting a finished file in its place: whole or not at all, and never over another file."""

import os
import secrets
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Final

from notchbook.errors import BookError

SIDE_FILES: Final = ("-journal", "-wal", "-shm")
"""Endings of the files that may lie beside a book and belong to it."""


@contextmanager
def made_beside(path: Path) -> Iterator[Path]:
    """A new file beside ``path``: it takes the place when the block succeeds, and is removed when not."""
    if path.is_dir():
        raise BookError("book-is-folder", path=str(path))
    if path.exists():
        raise BookError("book-exists", path=str(path))
    if not path.parent.is_dir():
        raise BookError("book-folder-missing", path=str(path), folder=str(path.parent))
    draft = path.with_name(f".{path.name}.{secrets.token_hex(4)}.part")
    try:
        yield draft
        _write_through(draft)
        _take_place(draft, path)
        _write_through(path.parent)
    except OSError as error:
        if isinstance(error, FileExistsError):
            raise BookError("book-exists", path=str(path)) from None
        raise BookError("book-cannot-make", path=str(path), detail=error.strerror or str(error)) from error
    finally:
        for left in (draft, *(draft.with_name(draft.name + side) for side in SIDE_FILES)):
            with suppress(OSError):
                left.unlink(missing_ok=True)


def _take_place(draft: Path, path: Path) -> None:
    """Give the file its name; a link never replaces a file that came in between."""
    try:
        os.link(draft, path)
    except FileExistsError:
        raise
    except OSError:
        # No links on this file system (FAT, some networks).
        if path.exists():
            raise FileExistsError(path) from None
        draft.rename(path)


def _write_through(path: Path) -> None:
    """Have the file or folder on disk. Windows cannot do it for a folder."""
    if os.name == "nt" and path.is_dir():
        return
    handle = os.open(path, os.O_RDWR if path.is_file() else os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
