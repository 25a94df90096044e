"""Why a parameter was refused, in the words of the house."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, Final

from notchbook.errors import NotchbookError

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

_WORDS: Final[Mapping[str, str]] = {
    "literal_error": "it takes {expected}, not {input}.",
    "extra_forbidden": "there is no field of this name.",
    "missing": "it is missing.",
    "string_type": "it takes words, not {input}.",
    "bool_type": "it takes true or false, not {input}.",
    "bool_parsing": "it takes true or false, not {input}.",
    "int_type": "it takes a whole number, not {input}.",
    "int_parsing": "it takes a whole number, not {input}.",
    "int_from_float": "it takes a whole number, not {input}.",
    "float_type": "it takes a number, not {input}.",
    "float_parsing": "it takes a number, not {input}.",
    "finite_number": "it takes a number that has an end.",
    "tuple_type": "it takes a list, not {input}.",
    "list_type": "it takes a list, not {input}.",
    "model_type": "each entry has fields of its own, and {input} has none.",
    "dict_type": "it takes names with values, not {input}.",
    "value_error": "{input} is nothing that it can use.",
    "greater_than": "it must be over {gt}, not {input}.",
    "greater_than_equal": "it must be {ge} or more, not {input}.",
    "less_than": "it must be under {lt}, not {input}.",
    "less_than_equal": "it must be {le} or less, not {input}.",
    "too_short": "it needs at least {min_length} entries.",
    "too_long": "it takes at most {max_length} entries.",
    "string_too_short": "it needs at least {min_length} letters.",
    "string_too_long": "it takes at most {max_length} letters.",
}
"""What each kind of complaint means to whoever filled in the field."""

LONGEST_INPUT: Final = 40
"""Letters of what was typed that are told back."""


def refused_words(error: "ErrorDetails") -> str:
    """One complaint about a parameter as a sentence; a refusal of our own says itself what to do."""
    facts: dict[str, Any] = error.get("ctx", {})
    cause = facts.get("error")
    if isinstance(cause, NotchbookError):
        return f"{cause.text()} {cause.next_step()}"
    words = _WORDS.get(error["type"])
    if words is None:
        return f"{error['msg']}."
    return words.format(**{**facts, "input": _told(error["input"])})


def _told(value: object) -> str:
    text = value if isinstance(value, str) else repr(value)
    return f"{text[:LONGEST_INPUT]}…" if len(text) > LONGEST_INPUT else text
