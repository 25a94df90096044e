"""Writing files whole or not at all."""

import errno
import os
import tempfile
from collections.abc import Callable
from pathlib import Path as FilePath

from notchbook.errors import NotchbookError, OutputError

_FULL = (errno.ENOSPC, errno.EDQUOT)
_FORBIDDEN = (errno.EACCES, errno.EPERM, errno.EROFS)


def write_file(path: FilePath | str, data: bytes) -> FilePath:
    """Write the bytes under this name; a file that was there is replaced in one stroke.

    The bytes go to a new file in the same folder first, so that a failure leaves the old file (or none)
    and nothing half-written. Refused with OutputError: ``output-is-folder``, ``output-folder-missing``,
    ``output-forbidden``, ``output-disk-full``, ``output-failed``, ``output-not-a-file``.
    """
    target = FilePath(path)
    if target.is_dir():
        raise OutputError("output-is-folder", path=str(target))
    if target.exists() and not target.is_file():
        raise OutputError("output-not-a-file", path=str(target))
    if not target.parent.is_dir():
        raise OutputError("output-folder-missing", path=str(target), folder=str(target.parent))
    return _refusing(target, lambda: _replace(target, data))


def _refusing(target: FilePath, act: Callable[[], None]) -> FilePath:
    try:
        act()
    except NotchbookError:
        raise
    except OSError as error:
        code = "output-failed"
        if error.errno in _FULL:
            code = "output-disk-full"
        elif error.errno in _FORBIDDEN:
            code = "output-forbidden"
        reason = error.strerror or type(error).__name__
        raise OutputError(code, path=str(target), folder=str(target.parent), reason=reason) from error
    return target


def _replace(target: FilePath, data: bytes) -> None:
    handle, name = tempfile.mkstemp(prefix=f".{target.name[:40]}.", suffix=".part", dir=target.parent)
    part = FilePath(name)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
        part.chmod(_mode_of(target))
        part.replace(target)
    except BaseException:
        part.unlink(missing_ok=True)
        raise


def _mode_of(target: FilePath) -> int:
    """The rights of the file that is replaced; for a new one what the user's mask gives."""
    if target.exists():
        return target.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
