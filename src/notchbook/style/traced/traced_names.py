"""What the edges and points of a traced piece are called: by the words of what they were traced from."""

from notchbook.pattern import part_name, split_side
from notchbook.pattern.names import with_side


def own_name(piece: str, traced: str, prefix: str = "", *, apart: bool = False) -> str:
    """The name on the traced piece for what has this name on its own piece; a side stays.

    ``apart``: the prefix stays a word of its own, so that the last word is that of the mate.
    """
    base, side = split_side(traced)
    words = [word for word in (prefix, *base.split("/")[1:]) if word]
    made = part_name(piece, *words) if apart else part_name(piece, "_".join(words))
    return with_side(made, side)


def end_word(traced: str, prefix: str = "") -> str:
    """The word for an end along this edge, whatever parts the edge has become."""
    word = split_side(traced)[0].split("/")[1]
    return f"{prefix}_{word}" if prefix else word
