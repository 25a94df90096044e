"""Amounts between the recipe and the fields: written in the reader's unit, read as typed."""

from collections.abc import Mapping
from typing import Any

from notchbook.app.amount_words import amount_in_words
from notchbook.body import notation_names
from notchbook.units import parse_amount, parse_number
from notchbook.workroom.asked.schema import mapped
from notchbook.workroom.reader import Reader


def written(schema: Mapping[str, Any], stored: Any, reader: Reader) -> Any:
    """The stored parameters with every amount written in the reader's unit."""

    def leaf(kind: str, value: Any, _stored: Any) -> Any:
        return amount_words(value, reader) if kind == "amount" and isinstance(value, str) else value

    return mapped(schema, stored, None, leaf)


def typed(schema: Mapping[str, Any], given: Any, stored: Any, reader: Reader) -> Any:
    """The parameters as they are kept, from what she typed; a bare number is in the reader's unit.

    A text that still stands as it was written for her keeps what is stored: showing 15 mm as 9/16"
    must never change it. Refused with InputError as :func:`notchbook.units.parse_amount` says.
    """

    def leaf(kind: str, value: Any, before: Any) -> Any:
        if kind == "amount" and isinstance(value, str):
            if isinstance(before, str) and value.strip() == amount_words(before, reader):
                return before
            return parse_amount(value, reader.unit, notation_names()).text
        if kind == "number" and isinstance(value, str):
            return parse_number(value, allow_negative=True)
        return value

    return mapped(schema, given, stored, leaf)


def amount_words(text: str, reader: Reader) -> str:
    """An amount as kept (``1/4 hip + 10 mm``) in the reader's unit (``1/4 hip + 1 cm``)."""
    return amount_in_words(text, reader.unit)
