"""Paths to single values within the parameters of a step: ``length``, ``start.distance``."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

SIGN: Final = "."
"""Between a step and its parameter, and between the parts of a path."""


def with_value(parameters: Mapping[str, Any], path: str, value: str | float) -> dict[str, Any]:
    """The parameters with the value at this path in them."""
    changed = _put(dict(parameters), path.split(SIGN), value)
    assert isinstance(changed, dict)
    return changed


def value_at(parameters: Any, path: str) -> Any:
    """What stands at a path of the parameters; None when nothing does."""
    for word in path.split(SIGN):
        if isinstance(parameters, Mapping):
            parameters = parameters.get(word)
        elif isinstance(parameters, Sequence) and not isinstance(parameters, str):
            parameters = parameters[int(word)] if word.isdigit() and int(word) < len(parameters) else None
        else:
            return None
    return parameters


def _put(holder: Any, words: list[str], value: str | float) -> Any:
    if not words:
        return value
    first, *rest = words
    if isinstance(holder, Mapping):
        return {**holder, first: _put(holder.get(first), rest, value)}
    return [_put(part, rest, value) if str(index) == first else part for index, part in enumerate(holder)]


def path_in_words(path: str) -> str:
    """A path as it is said: ``hem girth``; what stands in a list by its number from 1."""
    words = [str(int(word) + 1) if word.isdigit() else word.replace("_", " ") for word in path.split(SIGN)]
    return " ".join(words)
