"""What the page is told when something is refused: words, never a traceback."""

from typing import Any

from notchbook.body import likely_slips, measure_table
from notchbook.errors import NotchbookError
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class Offer(Answer):
    """What was probably meant; offered, never applied."""

    text: str
    question: str


class Refusal(Answer):
    """A stable code, what is wrong, what to do now, the facts, and what may have been meant."""

    code: str
    message: str
    next_step: str
    facts: dict[str, Any]
    offers: tuple[Offer, ...] = ()


def refusal(error: NotchbookError, reader: Reader) -> Refusal:
    """The refusal in the reader's unit; the page shows it at its place, so it does not name the place."""
    said = type(error)(error.code, **{**error.facts, **_reworded(error)})
    return Refusal(
        code=error.code,
        message=said.text(reader.text).strip(),
        next_step=said.next_step(reader.text).strip(),
        facts={name: _plain(value) for name, value in error.facts.items()},
        offers=_offers(error, reader),
    )


def _reworded(error: NotchbookError) -> dict[str, object]:
    """Facts as the page says them: no place, for it stands at its place; measures as the form calls them."""
    facts: dict[str, object] = {"where": ""} if "where" in error.facts else {}
    keys = error.facts.get("keys")
    if error.code == "measure-missing" and isinstance(keys, tuple):
        facts["keys"] = tuple(_label(str(key)) for key in keys)
    return facts


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
