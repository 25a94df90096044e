"""Text that somebody typed, made safe to repeat in a message."""

from typing import Final

_LONGEST: Final = 40


def quoted(text: str) -> str:
    """The text shortened to 40 characters, with unprintable characters written as escapes."""
    short = text if len(text) <= _LONGEST else text[: _LONGEST - 3] + "..."
    return "".join(sign if sign.isprintable() else ascii(sign)[1:-1] for sign in short)
