"""What a form and a client cannot be held together by, since a measure is lacking."""

from dataclasses import dataclass
from typing import Literal

from notchbook.body.charts.padding.length_changes import MARKED_LENGTHS
from notchbook.body.charts.padding.padding_level import MAIN_GIRTHS, padding_levels
from notchbook.body.measure_set import MeasureSet
from notchbook.body.quantity_words import said_key

Lacking = Literal["form", "client", "both", "other_waist"]


@dataclass(frozen=True, slots=True)
class NotCompared:
    """A girth of a level or a length that is not known on both; ``lacking`` says where.

    ``other_waist``: both have it, at waists that are tied at different levels.
    """

    key: str
    lacking: Lacking

    @property
    def is_level(self) -> bool:
        """Whether it is a level to be padded, and not a length to be marked."""
        return self.key in padding_levels()


def not_compared(form: MeasureSet, client: MeasureSet, leveled: MeasureSet) -> tuple[NotCompared, ...]:
    """What one side lacks, levels first, and the main girths that both lack.

    ``leveled`` is the form as it would read with its waist tied where the client's is.
    """
    found = ((key, _lacking(key, form, client, leveled)) for key in (*padding_levels(), *MARKED_LENGTHS))
    return tuple(NotCompared(key, lacking) for key, lacking in found if lacking is not None)


def not_compared_sentences(found: tuple[NotCompared, ...]) -> tuple[str, ...]:
    """What form and client were not held together by, a sentence for each side that lacks something."""
    said = {
        "form": "The form has no {keys}.",
        "client": "The client has no {keys}.",
        "both": "Neither has {keys}.",
        "other_waist": "Tied at another level: {keys}.",
    }
    by_side = {side: [said_key(one.key) for one in found if one.lacking == side] for side in said}
    return tuple(words.format(keys=", ".join(by_side[side])) for side, words in said.items() if by_side[side])


def _lacking(key: str, form: MeasureSet, client: MeasureSet, leveled: MeasureSet) -> Lacking | None:
    on_form, on_client = form.find(key) is not None, client.find(key) is not None
    if on_form and on_client:
        return None if leveled.find(key) is not None else "other_waist"
    if on_form:
        return "client"
    if on_client:
        return "form"
    return "both" if key in MAIN_GIRTHS else None
