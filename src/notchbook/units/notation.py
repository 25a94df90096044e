"""Reading an amount in the trade's notation: ``1/4 hip + 1 cm``. Nothing more, and never code."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from notchbook.errors import InputError
from notchbook.units.amount import Amount, Term
from notchbook.units.length import mm_of
from notchbook.units.nearest import suggestion
from notchbook.units.number import NUMBER_PATTERN, check_text, exact_number, not_a_number
from notchbook.units.quoted import quoted
from notchbook.units.signs import plain_signs
from notchbook.units.unit import FEET_WORDS, UNITS, Unit, unit_named

MOST_TERMS: Final = 12
LARGEST_FACTOR: Final = 100
"""No draft takes more than a hundred times a measure; a larger factor is a slip (common practice)."""

_TERM: Final = re.compile(
    rf"(?:({NUMBER_PATTERN}) ?(?:x (?=[a-z]))?)?([a-z][a-z0-9_]*(?: [a-z][a-z0-9_]*)*|\"|')?"
)
_SIGN: Final = re.compile(r" ?([+-]) ?")
_OTHER_UNITS: Final = frozenset(
    {"m", "meter", "meters", "metre", "metres", "dm", "yd", "yard", "yards", "km"}
)
"""Units that are no measures' names either; a body is not measured in them."""

_UNIT_WORDS: Final = frozenset({"mm", "cm", "in", "inch", "inches", '"'}) | FEET_WORDS


@dataclass(frozen=True, slots=True)
class _Reading:
    """What one reading needs to know: the text, the default unit and the measures by name."""

    text: str
    default_unit: Unit | None
    known: Mapping[str, str]

    def refusal(self, code: str, **facts: object) -> InputError:
        return InputError(code, **{"text": quoted(self.text), "where": "", **facts})


def parse_amount(text: str, default_unit: Unit | None, known_measures: Mapping[str, str]) -> Amount:
    """The amount that the text means; a bare number is in ``default_unit``.

    ``known_measures`` maps the short names that may be written to the keys of measures; a key may be
    written as well. A term is a number with or without unit, or a measure with or without a factor
    before it (``1/4 hip``, ``0.97 hip``, ``2 x waist``); terms are joined by + and -.
    Refused with InputError: ``number-*``, ``length-*``, ``amount-unknown-measure`` (with the nearest
    name), ``amount-not-understood`` (parentheses, functions, division of a measure, a missing sign),
    ``amount-too-many-terms``, ``amount-factor``.
    """
    check_text(text)
    reading = _Reading(text, default_unit, known_measures)
    plain = plain_signs(text)
    terms: list[Term] = []
    at = 0
    while at < len(plain) or not terms:
        sign, at = _sign(reading, plain, at, first=not terms)
        term, at = _term(reading, plain, at)
        terms.append(Term(sign * term.factor, term.measure, term.name, term.unit))
        if len(terms) > MOST_TERMS:
            raise reading.refusal("amount-too-many-terms", most=MOST_TERMS)
    return Amount(tuple(terms))


def _sign(reading: _Reading, plain: str, at: int, *, first: bool) -> tuple[int, int]:
    match = _SIGN.match(plain, at)
    if match is None:
        if first:
            return 1, at
        raise _not_understood(reading, plain)
    return (-1 if match.group(1) == "-" else 1), match.end()


def _term(reading: _Reading, plain: str, at: int) -> tuple[Term, int]:
    match = _TERM.match(plain, at)
    if match is None or match.end() == at:
        raise _not_understood(reading, plain)
    number, word = match.groups()
    factor = Fraction(1) if number is None else exact_number(number, reading.text)
    if word is None or word in _UNIT_WORDS:
        return _plain_term(reading, plain, number and factor, word), match.end()
    return _measure_term(reading, factor, word), match.end()


def _plain_term(reading: _Reading, plain: str, number: Fraction | str | None, word: str | None) -> Term:
    if not isinstance(number, Fraction):
        raise _not_understood(reading, plain)
    unit = unit_named(word) if word else reading.default_unit
    if unit is None:
        raise reading.refusal("length-unit-missing")
    mm_of(number, unit, reading.text)
    return Term(number, unit=unit)


def _measure_term(reading: _Reading, factor: Fraction, word: str) -> Term:
    name = word.replace(" ", "_")
    if name not in reading.known:
        by_key = {key: short for short, key in reading.known.items()}
        if name not in by_key:
            raise _unknown(reading, word, name)
        name = by_key[name]
    if factor > LARGEST_FACTOR:
        raise reading.refusal("amount-factor", most=LARGEST_FACTOR)
    return Term(factor, measure=reading.known[name], name=name)


def _unknown(reading: _Reading, word: str, name: str) -> InputError:
    refusal = not_a_number(plain_signs(reading.text), reading.text)
    if refusal.code != "number-text":
        return refusal
    if name in _OTHER_UNITS:
        return reading.refusal("length-unit-unknown", unit=quoted(word))
    return reading.refusal(
        "amount-unknown-measure", name=quoted(word), suggestion=suggestion(name, reading.known)
    )


def _not_understood(reading: _Reading, plain: str) -> InputError:
    refusal = not_a_number(plain, reading.text)
    return refusal if refusal.code != "number-text" else reading.refusal("amount-not-understood", units=UNITS)
