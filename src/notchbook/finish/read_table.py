"""Reading a house table from a TOML file."""

from pathlib import Path as FilePath

from notchbook.errors import InputError
from notchbook.finish.house_table import HouseTable
from notchbook.finish.shipped_tables import muslin_table, production_table
from notchbook.finish.table_text import table_from_text

_LARGEST_FILE = 1_000_000
"""Bytes; a house table is a page of text."""


def read_house_table(path: FilePath | str) -> HouseTable:
    """A studio's own table: what the file names replaces the row of the table that it starts from.

    The file is TOML: ``unit`` ("mm", "cm" or "in") for bare numbers, and as wanted ``name``, ``base``
    ("production" or "muslin"), ``supply`` ("whole" or "fold"), ``[allowance]`` and ``[mark]`` with a
    number, a length such as ``"5/8 in"``, or ``{ value, source, grade }``; ``[zip]`` with a list of
    lengths, or ``{ cm, in, source, grade }`` with a list each. New allowance classes may be named. Refused
    with InputError ``house-file-*`` (missing, unreadable, not TOML), ``house-unit-missing``,
    ``house-key-unknown``, ``house-value-unusable``, ``house-lengths-unusable``.
    """
    source = FilePath(path)
    try:
        if source.stat().st_size > _LARGEST_FILE:
            raise InputError("house-file-large", path=str(source), largest=_LARGEST_FILE)
        text = source.read_text(encoding="utf-8-sig")
    except FileNotFoundError as error:
        raise InputError("house-file-missing", path=str(source)) from error
    except (OSError, UnicodeDecodeError) as error:
        raise InputError("house-file-unreadable", path=str(source)) from error
    bases = {"production": production_table, "muslin": muslin_table}
    return table_from_text(text, str(source), production_table(), bases)
