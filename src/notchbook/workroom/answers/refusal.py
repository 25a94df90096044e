"""What the page is told when something is refused: words, never a traceback."""

from typing import Any, Final

from notchbook import pattern
from notchbook.app.contradictions import contradiction_in
from notchbook.app.offered_cure import OfferedCure
from notchbook.body import MeasureSet, likely_slips, measure_table
from notchbook.errors import NotchbookError
from notchbook.workroom.answers.cures import Contradiction, Cure, contradiction, cure
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader

_OBJECTS: Final = frozenset({"cures", "offered", "contradiction"})
"""Facts that have fields of their own in the answer."""


class Offer(Answer):
    """What was probably meant; offered, never applied."""

    text: str
    question: str


class Refusal(Answer):
    """A stable code, what is wrong, what to do now, the facts, and what may have been meant.

    ``cures`` would heal it; ``contradiction`` are the two measures that disagree, None where none do.
    """

    code: str
    message: str
    next_step: str
    facts: dict[str, Any]
    offers: tuple[Offer, ...] = ()
    cures: tuple[Cure, ...] = ()
    contradiction: Contradiction | None = None


def refusal(
    error: NotchbookError,
    reader: Reader,
    measures: MeasureSet | None = None,
    offered: tuple[OfferedCure, ...] = (),
) -> Refusal:
    """The refusal in the reader's unit; the page shows it at its place, so it does not name the place.

    ``measures`` are those on which a draft was refused, ``offered`` what would heal it.
    """
    told = contradiction_in(error)
    said = type(error)(error.code, **{**error.facts, **_reworded(error), **_solved(error, offered)})
    return Refusal(
        code=error.code,
        message=said.text(reader.text).strip(),
        next_step=said.next_step(reader.text).strip(),
        facts={name: _plain(value) for name, value in error.facts.items() if name not in _OBJECTS},
        offers=_offers(error, reader),
        cures=tuple(cure(one, reader) for one in offered if one.code == error.code),
        contradiction=None if told is None or measures is None else contradiction(told, measures, reader),
    )


def _reworded(error: NotchbookError) -> dict[str, object]:
    """Facts as the page says them: no place, for it stands at its place; measures as the form calls them."""
    facts: dict[str, object] = {"where": ""} if "where" in error.facts else {}
    keys = error.facts.get("keys")
    if error.code == "measure-missing" and isinstance(keys, tuple):
        facts["keys"] = tuple(_label(str(key)) for key in keys)
    return facts


def _solved(error: NotchbookError, offered: tuple[OfferedCure, ...]) -> dict[str, object]:
    """Facts that ask for a length, said as the cure was solved: sentence and button name one amount."""
    told = error.facts.get("cures")
    raised: dict[object, object] = {
        asked.value: one.raised_by
        for asked in (told if isinstance(told, tuple) else ())
        for one in offered
        if isinstance(asked, pattern.Cure) and asked.added
        if (one.code, one.parameter) == (error.code, asked.parameter)
    }
    return {
        name: raised[value]
        for name, value in error.facts.items()
        if isinstance(value, float) and value in raised
    }


def _label(key: str) -> str:
    name, _, side = key.partition("@")
    label = measure_table()[name].label.lower()
    return f"{label} ({side})" if side else label


def offers_for(key: str, value: float, reader: Reader) -> tuple[Offer, ...]:
    """What may have been meant by an unlikely length (mm) of this measure."""
    entry = measure_table()[key]
    slips = likely_slips(entry, value, reader.unit)
    return tuple(Offer(text=reader.text(slip.value), question=slip.question) for slip in slips)


def _offers(error: NotchbookError, reader: Reader) -> tuple[Offer, ...]:
    """What may have been meant by a length that no body has."""
    if error.code != "measure-impossible":
        return ()
    key = str(error.facts["key"]).partition("@")[0]
    value = error.facts.get("value")
    return offers_for(key, value, reader) if isinstance(value, float) else ()


def _plain(value: object) -> Any:
    if value is None or isinstance(value, (bool, int, float, str)):
        return value
    if isinstance(value, (list, tuple, set, frozenset)):
        return [_plain(part) for part in value]
    return str(value)
