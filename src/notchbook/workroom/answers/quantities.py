"""Values and differences of any measure as the page shows them."""

from collections.abc import Iterable

from notchbook.body import Doubt, measure_entry
from notchbook.body.quantity_words import quantity_text, said_key
from notchbook.workroom.answers.refusal import Refusal, refusal
from notchbook.workroom.reader import Reader


def said_value(key: str, value: float | None, reader: Reader) -> str:
    """A value (mm, degrees or kg) of the measure, which may carry a side; empty for None."""
    return "" if value is None else quantity_text(measure_entry(_plain(key)), value, reader.style)


def said_difference(key: str, difference: float | None, reader: Reader) -> str:
    """A difference with its sign, ``+1.5 cm``; zero stands without one, None is empty."""
    text = said_value(key, difference, reader)
    is_more = difference is not None and difference > 0
    return f"+{text}" if is_more and any(digit in text for digit in "123456789") else text


def label_of(key: str) -> str:
    """The measure as a line of its own, ``Hip depth, left``."""
    said = said_key(key)
    return f"{said[0].upper()}{said[1:]}"


def said_keys(keys: Iterable[str]) -> tuple[str, ...]:
    """Each measure as it is said in a sentence."""
    return tuple(map(said_key, keys))


def remarks_of(doubts: Iterable[Doubt], reader: Reader) -> tuple[Refusal, ...]:
    """What makes an answer weaker, in words."""
    return tuple(refusal(doubt.problem, reader) for doubt in doubts)


def _plain(key: str) -> str:
    return key.partition("@")[0]
