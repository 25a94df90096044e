"""Walking the JSON schema of a step's parameters: the same walk for reading and for writing."""

from collections.abc import Callable, Mapping
from typing import Any

from notchbook.recipe import definition

Leaf = Callable[[str, Any, Any], Any]
"""What is done with a value that is no list and no group: (kind, value, stored value) -> new value."""

_NOTHING: Mapping[str, Any] = {}


def step_form(operation: str) -> Mapping[str, Any]:
    """The JSON schema of the parameters of an operation."""
    return definition(operation).form


def mapped(schema: Mapping[str, Any], value: Any, stored: Any, leaf: Leaf) -> Any:
    """The value with ``leaf`` applied to each plain part; ``stored`` is the value kept until now.

    ``kind`` is the schema's own kind (amount, edge, ...), else its JSON type, else "choice". Parts
    that the schema does not know are handed on: the step's own reading refuses them.
    """
    return _mapped(schema, value, stored, leaf, schema.get("$defs", _NOTHING))


def _mapped(schema: Mapping[str, Any], value: Any, stored: Any, leaf: Leaf, shared: Mapping[str, Any]) -> Any:
    if "$ref" in schema:
        schema = shared[str(schema["$ref"]).rsplit("/", 1)[-1]]
    if "anyOf" in schema:
        if value is None or value == "":
            return None
        schema = next(option for option in schema["anyOf"] if option.get("type") != "null")
        return _mapped(schema, value, stored, leaf, shared)
    if schema.get("type") == "object" and isinstance(value, Mapping):
        known = schema.get("properties", _NOTHING)
        kept = stored if isinstance(stored, Mapping) else _NOTHING
        return {
            key: _mapped(known[key], part, kept.get(key), leaf, shared) if key in known else part
            for key, part in value.items()
        }
    if schema.get("type") == "array" and isinstance(value, (list, tuple)):
        kept_list = stored if isinstance(stored, (list, tuple)) else ()
        padded = (*kept_list, *([None] * len(value)))
        return [
            _mapped(schema["items"], part, before, leaf, shared)
            for part, before in zip(value, padded, strict=False)
        ]
    return leaf(str(schema.get("kind") or schema.get("type") or "choice"), value, stored)
