"""A number with its word: one set, two sets."""


def counted(number: int, word: str) -> str:
    """The number and the word, with an s behind it for any number but one."""
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
