"""What a person sets of a draft by name, as text: ``length=58``, ``back_darts=2``."""

from collections.abc import Iterable
from typing import Any

from notchbook.app.drafting import block_named
from notchbook.body import notation_names
from notchbook.errors import InputError
from notchbook.units import Unit, parse_amount, quoted, suggestion


def read_settings(block: str, texts: Iterable[str], unit: Unit) -> dict[str, Any]:
    """The parameters of a block from texts of the form ``name=value``; each bare number is in ``unit``.

    Refused with InputError: ``setting-malformed``, ``setting-unknown``, ``block-unknown``. The value
    itself is judged when the block is drafted.
    """
    fields = block_named(block).parameters.model_json_schema()["properties"]
    found: dict[str, Any] = {}
    for text in texts:
        name, sign, value = (part.strip() for part in text.partition("="))
        if not (name and sign and value):
            raise InputError("setting-malformed", text=quoted(text))
        if name not in fields:
            known = tuple(fields)
            raise InputError(
                "setting-unknown",
                block=block,
                name=quoted(name),
                known=known,
                suggestion=suggestion(name, known),
            )
        found[name] = _value(fields[name], value, unit)
    return found


def _value(field: dict[str, Any], text: str, unit: Unit) -> Any:
    """The text as the field wants it: one of its choices, an amount with its unit, else the text."""
    for choice in field.get("enum", ()):
        if str(choice) == text:
            return choice
    if field.get("kind") != "amount":
        return text
    try:
        return parse_amount(text, unit, notation_names()).text
    except InputError:
        return text  # judged, and refused with the name of its field, when the block is drafted
