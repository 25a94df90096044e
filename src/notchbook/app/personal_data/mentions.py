"""Where a name stands in texts that are not her own: style names, notes, reasons."""

from collections.abc import Iterable
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

_LONGEST: Final = 120
"""Characters of a text that are shown."""


@dataclass(frozen=True, slots=True)
class Mention:
    """The name in a text of another entry; ``where`` in words, ``text`` at most 120 characters of it."""

    number: str
    where: str
    text: str


def is_own(stored: StoredText, hers: Hers) -> bool:
    """Whether a text is hers: of her entry, or her measures as a revision froze them."""
    frozen = stored.place is Place.MEASURES and stored.key in hers.measures
    return stored.document_id == hers.document.id or frozen


def mentions(texts: Iterable[StoredText], hers: Hers, spelling: Spelling) -> tuple[Mention, ...]:
    """Each text of others in which the name stands, once."""
    found = [
        Mention(hers.numbers[stored.document_id], _WHERE[stored.place], said[:_LONGEST])
        for stored in texts
        if stored.place not in _SIGNED and not is_own(stored, hers) and spelling.may_stand_in(stored.text)
        for _field, said in strings_in(stored.text)
        if spelling.stands_in(said)
    ]
    return tuple(dict.fromkeys(found))


def without_name(stored: StoredText, spelling: Spelling) -> str:
    """The text with the word in the stead of the name, wherever words of hers may stand."""
    if stored.place in _SIGNED or not spelling.may_stand_in(stored.text):
        return stored.text
    if stored.place in (Place.NAME, Place.NOTE, Place.REASON):
        return spelling.replaced(stored.text)
    prose = PROSE - {"name"} if stored.place is Place.GEOMETRY else PROSE

    def change(field: str, said: str) -> str:
        return spelling.replaced(said) if field in prose else said

    return changed_text(stored.text, change)
