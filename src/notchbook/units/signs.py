"""The many signs that mean the same on paper, brought to one plain form before reading."""

from typing import Final

_FRACTIONS: Final[dict[str, str]] = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅐": "1/7", "⅑": "1/9", "⅒": "1/10",
    "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
    "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip

_PLAIN: Final = str.maketrans(
    {
        **{sign: f" {words} " for sign, words in _FRACTIONS.items()},
        **dict.fromkeys("\u2044\u2215", "/"),
        **dict.fromkeys("\u2212\u2010\u2011\u2013", "-"),
        **dict.fromkeys("\u2033\u201c\u201d\u02ba\uff02", '"'),
        **dict.fromkeys("\u2032\u2018\u2019\u02b9\uff07", "'"),
        **dict.fromkeys("\u00a0\u2009\u202f\u2007\t", " "),
        "\u00d7": "x",
        "\u00ba": "\u00b0",
    }
)


def plain_signs(text: str) -> str:
    """The text with one kind of fraction, minus, prime and space, trimmed, in lower case.

    ``37½″`` becomes ``37 1/2 "`` and two single primes count as one double prime.
    """
    return " ".join(text.translate(_PLAIN).replace("''", '"').lower().split())
