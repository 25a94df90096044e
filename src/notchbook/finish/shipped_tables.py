"""The house tables that come with the program: for cloth, and for a fitting muslin."""

from functools import cache
from importlib.resources import files

from notchbook.finish.house_table import HouseTable
from notchbook.finish.table_text import table_from_text


@cache
def production_table() -> HouseTable:
    """The table that comes with the book, for cutting in cloth."""
    return _shipped("production", None)


@cache
def muslin_table() -> HouseTable:
    """The table for a fitting muslin: wide allowances to let out, the rest as in production."""
    return _shipped("muslin", production_table())


def _shipped(name: str, base: HouseTable | None) -> HouseTable:
    text = (files("notchbook.finish") / f"{name}.toml").read_text(encoding="utf-8")
    return table_from_text(text, f"{name}.toml", base, {})
