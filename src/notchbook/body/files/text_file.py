"""Reading a whole text file of measures, and refusing what is none."""

from pathlib import Path
from typing import Final

from notchbook.errors import InputError
from notchbook.units import quoted

MOST_BYTES_ONE_BODY: Final = 5_000_000
MOST_BYTES_BODIES: Final = 50_000_000

_UTF16_MARKS: Final = (b"\xff\xfe", b"\xfe\xff")
_ZIP_MARK: Final = b"PK\x03\x04"
_OLD_SPREADSHEET_MARK: Final = b"\xd0\xcf\x11\xe0"


def read_text_file(path: Path, most_bytes: int) -> str:
    """The text of a UTF-8 file, with or without byte order mark, with plain line ends.

    Refused with InputError: ``measures-file-missing``, ``-is-folder``, ``-unreadable``, ``-empty``,
    ``-too-large``, ``-utf16``, ``-spreadsheet``, ``-not-utf8``, ``-binary``.
    """
    return text_of_bytes(_bytes(path, most_bytes), path.name)


def text_of_bytes(data: bytes, file_name: str) -> str:
    """The text in the bytes of a UTF-8 file; refused as :func:`read_text_file` refuses what is no text."""
    name = quoted(file_name)
    if data.startswith(_UTF16_MARKS) or _looks_utf16(data):
        raise InputError("measures-file-utf16", file=name)
    if data.startswith((_ZIP_MARK, _OLD_SPREADSHEET_MARK)):
        raise InputError("measures-file-spreadsheet", file=name)
    if b"\0" in data:
        raise InputError("measures-file-binary", file=name)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise InputError("measures-file-not-utf8", file=name, line=line) from None
    if not text.strip():
        raise InputError("measures-file-empty", file=name)
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _bytes(path: Path, most_bytes: int) -> bytes:
    name = quoted(path.name)
    if _is_folder(path):
        raise InputError("measures-file-is-folder", file=name)
    try:
        with path.open("rb") as stream:
            data = stream.read(most_bytes + 1)
    except FileNotFoundError:
        raise InputError("measures-file-missing", file=name) from None
    except OSError as error:
        raise InputError(
            "measures-file-unreadable", file=name, reason=error.strerror or "no reason"
        ) from None
    except ValueError:
        # A name with a zero byte inside.
        raise InputError("measures-file-unreadable", file=name, reason="no file has such a name") from None
    if len(data) > most_bytes:
        raise InputError("measures-file-too-large", file=name, most=most_bytes // 1_000_000)
    return data


def _is_folder(path: Path) -> bool:
    try:
        return path.is_dir()
    except (OSError, ValueError):
        return False


def _looks_utf16(data: bytes) -> bool:
    """Whether every second byte of the beginning is zero, as in Latin text in UTF-16 without mark."""
    head = data[:200]
    return len(head) >= 8 and (not any(head[0::2]) or not any(head[1::2]))
