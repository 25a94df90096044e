"""Names: the identity of every piece, edge, point, intake and seam.

A name is given once, by the draft or the step that makes the thing, and kept for ever; the piece
that carries an edge may change, the edge's name does not. The grammar::

    instance.piece                 a piece          skirt.front
    instance.piece/word[/role]     a thing on it    skirt.front/side_seam/above
    instance/word                  a seam           skirt/side_seam

``@left`` and ``@right`` at the end name the wearer's side where the two differ.
"""

import re
from typing import Literal

from notchbook.errors import HouseFault

Side = Literal["both", "left", "right"]
"""The wearer's side that something belongs to."""

_WORD = r"[a-z][a-z0-9]*(?:_[a-z0-9]+)*"
_SIDE = r"(?:@left|@right)?"
_NAME = re.compile(rf"{_WORD}(?:\.{_WORD}(?:/{_WORD})*|(?:/{_WORD})+){_SIDE}")
_SLUG = re.compile(_WORD)


def is_slug(text: str) -> bool:
    """Whether the text can be the short name of a step or of a block used in a style."""
    return _SLUG.fullmatch(text) is not None


def is_name(text: str) -> bool:
    """Whether the text has the form of a name."""
    return _NAME.fullmatch(text) is not None


def require_name(text: str) -> str:
    """The text, when it has the form of a name; else our own fault is raised."""
    if not is_name(text):
        raise HouseFault("name-malformed", name=text)
    return text


def piece_name(instance: str, piece: str) -> str:
    """``skirt`` and ``front`` give ``skirt.front``."""
    return require_name(f"{instance}.{piece}")


def part_name(owner: str, *words: str) -> str:
    """``skirt.front`` and ``side_seam`` give ``skirt.front/side_seam``; a side moves to the end."""
    base, side = split_side(owner)
    return require_name(with_side("/".join((base, *words)), side))


def child_name(name: str, role: str) -> str:
    """The name of the part of ``name`` that plays ``role`` after a split: ``.../above``."""
    base, side = split_side(name)
    return with_side(require_name(f"{base}/{role}"), side)


def split_side(name: str) -> tuple[str, Side]:
    """The name without its side, and the side."""
    if name.endswith("@left"):
        return name.removesuffix("@left"), "left"
    if name.endswith("@right"):
        return name.removesuffix("@right"), "right"
    return name, "both"


def with_side(name: str, side: Side) -> str:
    """The name with the side added; ``both`` adds nothing. A name has one side at most."""
    return name if side == "both" else require_name(f"{name}@{side}")


def instance_of(name: str) -> str:
    """The instance (block or step slug) that gave the name: ``skirt`` for ``skirt.front/waist``."""
    return name.partition("/")[0].partition(".")[0]


def last_word(name: str) -> str:
    """The last word of a name: what it is called on its piece."""
    return split_side(name)[0].rsplit("/", 1)[-1].rsplit(".", 1)[-1]


def spoken(name: str) -> str:
    """The name as it is said on paper and page: ``front, side seam (above)``."""
    base, side = split_side(name)
    owner, *words = base.split("/")
    piece = owner.rsplit(".", 1)[-1]
    parts = [piece.replace("_", " ")]
    if words:
        said = words[0].replace("_", " ")
        if len(words) > 1:
            said += f" ({', '.join(word.replace('_', ' ') for word in words[1:])})"
        parts.append(said)
    if side != "both":
        parts[0] = f"{side} {parts[0]}"
    return ", ".join(parts)
