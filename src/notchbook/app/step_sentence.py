"""A step read like a written order: its sentence with its values.

A template is text with parameter names in braces. After a colon stands the template of what the parameter
holds, for each entry of a list: ``{necks:{edge} {shape}, {depth} lower}``. Two words after bars say an amount
without its minus: ``{depth|lower|higher}``. A part of a template, between commas, that states nothing, or
amounts of nothing alone, is left out.
"""

import re
from collections.abc import Iterator, Mapping
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

_NOTHING: Final = re.compile(r"""[-−]?0+([.,]0+)?\s*(mm|cm|in|")?""")


def sentence(template: str, values: Mapping[str, Any]) -> str:
    """The order with its values."""
    said = (_part_said(part, values) for part in _split(template, ", "))
    return ", ".join(part for part in said if part)


def _part_said(part: str, values: Mapping[str, Any]) -> str:
    """One part of the template with its values; empty where it states nothing."""
    words: list[str] = []
    stated: list[bool] = []
    for text, field in _pieces(part):
        words.append(text)
        if field is not None:
            value = _field_said(field, values)
            stated.append(bool(value) and _NOTHING.fullmatch(value) is None)
            words.append(value)
    if stated and not any(stated):
        return ""
    return " ".join("".join(words).split())


def _field_said(field: str, values: Mapping[str, Any]) -> str:
    name, _, inner = field.partition(":")
    name, *ways = name.split("|")
    value = values.get(name)
    if inner and value is not None:
        entries = value if isinstance(value, (list, tuple)) else [value]
        return "; ".join(filter(None, (sentence(inner, entry) for entry in entries)))
    said = _said(value)
    if not ways or not said or _NOTHING.fullmatch(said):
        return "" if ways else said
    is_less = said[0] in "-−"
    return f"{said.lstrip('-−')} {ways[1] if is_less else ways[0]}"


def _pieces(part: str) -> Iterator[tuple[str, str | None]]:
    """Text and the field that follows it, in turn; a field may hold fields."""
    text, depth, begin = "", 0, 0
    for index, letter in enumerate(part):
        if letter == "{":
            begin = index + 1 if depth == 0 else begin
            depth += 1
        elif letter == "}":
            depth -= 1
            if depth == 0:
                yield text, part[begin:index]
                text = ""
        elif depth == 0:
            text += letter
    if text:
        yield text, None


def _split(template: str, mark: str) -> list[str]:
    """The template split at the marks that stand outside of braces."""
    parts, depth = [""], 0
    for index, letter in enumerate(template):
        depth += (letter == "{") - (letter == "}")
        parts[-1] += letter
        if depth == 0 and template[: index + 1].endswith(mark):
            parts[-1] = parts[-1][: -len(mark)]
            parts.append("")
    return parts


def _said(value: Any) -> str:
    """A value in words: names as they are said, lists with commas, a place by its edge and distance."""
    if isinstance(value, (list, tuple)):
        return "; ".join(map(_said, value)) if any(isinstance(v, dict) for v in value) else _listed(value)
    if isinstance(value, Mapping):
        return _mapping_said(value)
    if value is None:
        return ""
    if isinstance(value, str) and is_name(value):
        return spoken(value)
    if isinstance(value, float):
        return f"{value:g}"
    return _chosen(value) if isinstance(value, str) and is_slug(value) else str(value)


def _mapping_said(value: Mapping[str, Any]) -> str:
    edges = [_said(part) for part in value.values() if isinstance(part, Mapping)]
    if edges:
        return " to ".join(edges)
    name = _said(value.get("edge") or value.get("intake") or "")
    start = value.get("from_point")
    if start is None:
        return name
    if value.get("distance") is not None:
        counted = value.get("notch") or start
        return f"{name} {value['distance']} from {_last_words(counted)}"
    share = value.get("fraction")
    return name if share is None else f"{name} {share * 100:g} % from {_last_words(start)}"


def _last_words(name: str) -> str:
    """What a point is called without its piece: ``waist side``."""
    return spoken(name).rpartition(", ")[2]


def _chosen(value: str) -> str:
    """A choice as it is said."""
    return _SPELLED.get(value, value.replace("_", " "))


def _listed(values: list[Any] | tuple[Any, ...]) -> str:
    return " and ".join(map(_said, values))
