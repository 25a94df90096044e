"""Left and right of the wearer: ``hip_depth@left`` is hip_depth on the left side alone."""

from typing import Final, Literal

from notchbook.body.measure_table import measure_entry
from notchbook.errors import InputError
from notchbook.units import quoted

Side = Literal["both", "left", "right"]

SIDES: Final[tuple[Side, ...]] = ("both", "left", "right")

_BY_WORD: Final[dict[str, Side]] = {"left": "left", "right": "right"}


def sided_key(key: str, side: Side) -> str:
    """The key with its side: ``hip_depth``, ``hip_depth@left`` or ``hip_depth@right``."""
    return key if side == "both" else f"{key}@{side}"


def plain_key(text_key: str) -> str:
    """The key without its side: ``hip_depth`` of ``hip_depth@left``. Nothing is refused."""
    return text_key.partition("@")[0]


def split_key(text: str) -> tuple[str, Side]:
    """The key and side that the text names.

    Refused: ``measure-unknown``, ``measure-side-unknown`` (anything but left and right after the @),
    ``measure-not-sided`` (height, weight and other measures that have no sides).
    """
    key, at_sign, word = text.partition("@")
    entry = measure_entry(key)
    if not at_sign:
        return key, "both"
    side = _BY_WORD.get(word)
    if side is None:
        raise InputError("measure-side-unknown", key=key, side=quoted(word), where="")
    if not entry.sided:
        raise InputError("measure-not-sided", key=key, label=entry.label, where="")
    return key, side
