"""Whether what was read from a file has the types that its class declares."""

import math
from dataclasses import fields
from functools import cache
from types import UnionType
from typing import Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

_Thing = TypeVar("_Thing")


def typed(thing: _Thing) -> _Thing:
    """The dataclass instance itself; TypeError naming the field when one is not of its declared type.

    Knows words, finite numbers, truth values, choices and tuples of words; what is itself a
    dataclass has been looked at when it was made.
    """
    kind: type = type(thing)
    for name, hint in _hints(kind):
        value = getattr(thing, name)
        if not _fits(value, hint):
            raise TypeError(f"{kind.__name__}.{name} cannot be {value!r}")
    return thing


@cache
def _hints(kind: type) -> tuple[tuple[str, Any], ...]:
    hints = get_type_hints(kind)
    return tuple((item.name, hints[item.name]) for item in fields(kind))


def _fits(value: object, hint: Any) -> bool:
    origin = get_origin(hint)
    if origin is Literal:
        return isinstance(value, str) and value in get_args(hint)
    if origin in (Union, UnionType):
        return any(_fits(value, part) for part in get_args(hint))
    if origin is tuple:
        inner = get_args(hint)[0]
        return isinstance(value, tuple) and all(_fits(part, inner) for part in value)
    if hint is float:
        return isinstance(value, (int, float)) and not isinstance(value, bool) and math.isfinite(value)
    if hint is int:
        return isinstance(value, int) and not isinstance(value, bool)
    return isinstance(value, hint)
