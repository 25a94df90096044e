"""How the number of a style is written: letters, a hyphen and digits, such as ``S-205``."""

import re
from typing import Final

_NUMBER: Final = re.compile(r"[A-Za-z]+-\d+")


def is_style_number(word: str) -> bool:
    """Whether the word is the number of a style and not the name of a block."""
    return _NUMBER.fullmatch(word) is not None
