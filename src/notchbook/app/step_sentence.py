"""A step read like a written order: its sentence with its values."""

from collections.abc import Iterator, Mapping
from string import Formatter
from typing import Any, Final

from notchbook.pattern import spoken
from notchbook.pattern.names import is_name, is_slug

_SPELLED: Final = {
    "french": "French",
    "t_shirt": "T-shirt",
    "three_quarter": "three-quarter",
    "u": "U",
    "v": "V",
}
"""Choices that are not said as they are written."""


def sentence(template: str, values: Mapping[str, Any]) -> str:
    """The order with its values; a part of it, between commas, that states nothing is left out."""
    said = _Blank({name: _said(value) for name, value in values.items()})
    parts = [part for part in template.split(", ") if "{" not in part or any(_stated(part, said))]
    return ", ".join(part.format_map(said).strip() for part in parts)


def _stated(part: str, said: Mapping[str, str]) -> Iterator[bool]:
    for _, name, _, _ in Formatter().parse(part):
        if name is not None:
            yield bool(said[name])


class _Blank(dict[str, str]):
    """Leaves out what a step does not state."""

    def __missing__(self, key: str) -> str:
        return ""


def _said(value: Any) -> str:
    """A value in words: names as they are said, lists with commas, a group by its edges."""
    if isinstance(value, (list, tuple)):
        return "; ".join(map(_said, value)) if any(isinstance(v, dict) for v in value) else _listed(value)
    if isinstance(value, Mapping):
        edges = [_said(part) for part in value.values() if isinstance(part, Mapping)]
        return " to ".join(edges) if edges else _said(value.get("edge") or value.get("intake") or "")
    if value is None:
        return ""
    if isinstance(value, str) and is_name(value):
        return spoken(value)
    return _chosen(value) if isinstance(value, str) and is_slug(value) else str(value)


def _chosen(value: str) -> str:
    """A choice as it is said."""
    return _SPELLED.get(value, value.replace("_", " "))


def _listed(values: list[Any] | tuple[Any, ...]) -> str:
    return " and ".join(map(_said, values))
