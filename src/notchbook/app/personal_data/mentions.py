"""Where a name stands in texts that are not her own: style names, notes, reasons."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from notchbook.app.personal_data.hers import Hers
from notchbook.app.personal_data.naming import PROSE, Spelling, changed_text, strings_in
from notchbook.book import Place, StoredText

_SIGNED: Final = frozenset({Place.ACTOR, Place.FROZEN_BY, Place.APPROVED_BY})
"""Who worked in the studio. A client who bears the same name is not meant."""

_WHERE: Final = {
    Place.NAME: "its name",
    Place.CONTENT: "its text, now or before",
    Place.MEASURES: "the measures of a revision",
    Place.GEOMETRY: "the shapes of a revision",
    Place.NOTE: "a note in its journal",
    Place.FACTS: "its journal",
    Place.REASON: "the reason of a revision",
}

_PLAIN: Final = frozenset({Place.NAME, Place.NOTE, Place.REASON})
"""Plain words; all other texts are data."""

_ITS_OWN_NAME: Final = frozenset({"name", "from", "to"})
"""Fields in which the name of an entry stands: in its content, and in its journal where it was renamed."""

_LONGEST: Final = 120
"""Characters of a text that are shown."""

_BEFORE: Final = 40
"""Characters that are shown before the name in a longer text."""


@dataclass(frozen=True, slots=True)
class Mention:
    """The name in a text of another entry; ``where`` in words, ``text`` at most 120 characters of it.

    ``after`` is the same text with the word in the stead of the name. It is the text itself where the name
    is never taken out: in the name of another client, and in words that a drawing goes by.
    """

    number: str
    where: str
    text: str
    after: str

    @property
    def changes(self) -> bool:
        """Whether the text becomes another one when the name is taken out of texts of others."""
        return self.after != self.text


def is_own(stored: StoredText, hers: Hers) -> bool:
    """Whether a text is hers: of her entry, or her measures as a revision froze them."""
    frozen = stored.place is Place.MEASURES and stored.key in hers.measures
    return stored.document_id == hers.document.id or frozen


def mentions(texts: Iterable[StoredText], hers: Hers, spelling: Spelling) -> tuple[Mention, ...]:
    """Each text of others in which the name stands, once."""
    found = (
        mention
        for stored in texts
        if stored.place not in _SIGNED and not is_own(stored, hers) and spelling.may_stand_in(stored.text)
        for mention in _in_text(stored, hers, spelling)
    )
    return tuple(dict.fromkeys(found))


def without_name(stored: StoredText, hers: Hers, spelling: Spelling) -> str:
    """The text with the word in the stead of the name, wherever words of hers may stand.

    What another client is called is hers to keep, also where it holds a spelling that was asked for.
    """
    if stored.place in _SIGNED or not spelling.may_stand_in(stored.text):
        return stored.text
    prose = _prose(stored, hers)
    if stored.place in _PLAIN:
        return spelling.replaced(stored.text) if prose else stored.text

    def change(field: str, said: str) -> str:
        return spelling.replaced(said) if field in prose else said

    return changed_text(stored.text, change)


def _in_text(stored: StoredText, hers: Hers, spelling: Spelling) -> Iterator[Mention]:
    prose = _prose(stored, hers)
    for field, said in (("", stored.text),) if stored.place in _PLAIN else strings_in(stored.text):
        start = spelling.begins_at(said)
        if start is not None:
            after = spelling.replaced(said) if field in prose else said
            shown, becomes = _excerpt(said, start), _excerpt(after, start)
            yield Mention(hers.numbers[stored.document_id], _WHERE[stored.place], shown, becomes)


def _prose(stored: StoredText, hers: Hers) -> frozenset[str]:
    """The fields of a text in which the name is taken out; a plain text is the field without a name."""
    another = stored.document_id in hers.others
    if stored.place in _PLAIN:
        return frozenset() if another and stored.place is Place.NAME else frozenset({""})
    frozen = stored.place is Place.MEASURES and not is_own(stored, hers)
    return PROSE - _ITS_OWN_NAME if another or frozen or stored.place is Place.GEOMETRY else PROSE


def _excerpt(text: str, start: int) -> str:
    """At most 120 characters of the text, so that what begins at ``start`` is among them."""
    first = max(start - _BEFORE, 0) if start > _LONGEST - _BEFORE else 0
    return ("…" if first else "") + text[first : first + _LONGEST]
