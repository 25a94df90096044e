"""Numbers as typed: whole, with a decimal point or comma, or as a fraction; always exact."""

import re
from fractions import Fraction
from typing import Final

from notchbook.errors import InputError
from notchbook.units.quoted import quoted
from notchbook.units.signs import plain_signs

LONGEST_TEXT: Final = 200
"""No number, length or amount needs more characters; longer text is refused unread."""

_MOST_DIGITS: Final = 20
_LARGEST_DENOMINATOR: Final = 1000

NUMBER_PATTERN: Final = (
    r"[0-9]+(?: |-)[0-9]+ ?/ ?[0-9]+"  # 37 1/2 and 37-1/2
    r"|[0-9]+ ?/ ?[0-9]+"  # 3/8
    r"|[0-9]*[.,][0-9]+|[0-9]+"  # 95.3, 95,3, .5, 953
)
"""What a number without its sign looks like once the signs are plain."""

_NOT_FINITE: Final = re.compile(r"[+-]?(nan|inf|infinity)\b")
_EXPONENT: Final = re.compile(r"[0-9][.,]?e[+-]?[0-9]")
_THOUSANDS: Final = re.compile(r"^[1-9][0-9]{0,2},[0-9]{3}$")
_SEPARATORS: Final = re.compile(
    r"[0-9][.,'_][0-9]*[.,'_]|[0-9][ '_][0-9]{3}(?![0-9/])|[.,]{2}|[0-9][.,](?![0-9])"
)


_WHOLE: Final = re.compile(rf"([+-]?) ?({NUMBER_PATTERN})")


def parse_number(text: str, *, allow_negative: bool = False) -> float:
    """The plain number without unit that the text means. Refused: ``number-*``."""
    check_text(text)
    plain = plain_signs(text)
    match = _WHOLE.fullmatch(plain)
    if match is None:
        raise not_a_number(plain, text)
    sign, number = match.groups()
    exact = exact_number(number, text)
    if sign == "-" and exact and not allow_negative:
        raise InputError("number-negative", text=quoted(text), where="")
    return float(-exact if sign == "-" else exact)


def check_text(text: str) -> None:
    """Refuse empty text (``number-empty``) and text that is too long to be a number."""
    if len(text) > LONGEST_TEXT:
        raise InputError("number-too-long", most=LONGEST_TEXT, where="")
    if not text.strip():
        raise InputError("number-empty", where="")


def not_a_number(plain: str, text: str) -> InputError:
    """The refusal for text that does not read as a number, with the likeliest reason as its code."""
    if _NOT_FINITE.match(plain):
        return InputError("number-not-finite", text=quoted(text), where="")
    if _EXPONENT.search(plain):
        return InputError("number-exponent", text=quoted(text), where="")
    if _SEPARATORS.search(plain):
        return InputError("number-decimal-signs", text=quoted(text), where="")
    return InputError("number-text", text=quoted(text), where="")


def exact_number(plain: str, text: str) -> Fraction:
    """The exact value of a number without sign that matches :data:`NUMBER_PATTERN`.

    ``text`` is what was typed, for the message. Refused: ``number-zero-denominator``;
    ``number-fraction`` for ``37 5/4``, where the fraction after a whole number is 1 or more, and for
    a denominator over 1000;
    ``number-decimal-signs`` for ``1,234``, which may be meant as thousands; ``number-too-long``.
    """
    digits = re.findall(r"[0-9]+", plain)
    if any(len(group) > _MOST_DIGITS for group in digits):
        raise InputError("number-too-long", most=_MOST_DIGITS, where="")
    if "/" in plain:
        return _exact_fraction([int(group) for group in digits], text)
    if _THOUSANDS.match(plain):
        raise InputError("number-decimal-signs", text=quoted(text), where="")
    return Fraction(plain.replace(",", "."))


def _exact_fraction(parts: list[int], text: str) -> Fraction:
    numerator, denominator = parts[-2:]
    if denominator == 0:
        raise InputError("number-zero-denominator", text=quoted(text), where="")
    fraction = Fraction(numerator, denominator)
    mixed = len(parts) == 3
    if denominator > _LARGEST_DENOMINATOR or (mixed and fraction >= 1):
        raise InputError("number-fraction", text=quoted(text), where="")
    return parts[0] + fraction if mixed else fraction


def decimal_text(value: Fraction) -> str | None:
    """The value written exactly with a decimal point, or None when it has no end (1/3)."""
    places = 0
    rest = value.denominator
    for factor in (2, 5):
        count = 0
        while rest % factor == 0:
            rest //= factor
            count += 1
        places = max(places, count)
    if rest != 1:
        return None
    scaled = abs(value.numerator) * 10**places // value.denominator
    digits = str(scaled).rjust(places + 1, "0")
    body = f"{digits[:-places]}.{digits[-places:]}" if places else digits
    return f"-{body}" if value < 0 else body


def fraction_text(value: Fraction) -> str:
    """The value written as a reduced fraction with its whole number: ``37 1/2``, ``3/8``, ``-2``."""
    whole, part = divmod(abs(value.numerator), value.denominator)
    words = [str(whole)] if whole or not part else []
    if part:
        words.append(f"{part}/{value.denominator}")
    return ("-" if value < 0 else "") + " ".join(words)


def rounded(value: Fraction) -> int:
    """The nearest whole number; halves go away from zero, as one rounds on a ruler."""
    away = (2 * abs(value.numerator) + value.denominator) // (2 * value.denominator)
    return -away if value < 0 else away
