"""Words that a step may be told besides names: allowance classes of the house's table, and materials."""

from typing import Final

from notchbook.finish import HouseTable
from notchbook.finish.allowance_words import class_words
from notchbook.pattern import Pattern
from notchbook.workroom.answers.form import Answer, Named
from notchbook.workroom.reader import Reader

USUAL_MATERIALS: Final = ("self", "contrast", "lining", "fusible", "interlining", "pocketing", "rib")
"""What pieces are usually cut in, self first (common practice, no source)."""


class WordChoices(Answer):
    """The choices by the kind of the field."""

    allowance_class: tuple[Named, ...]
    material: tuple[Named, ...]


def word_choices(pattern: Pattern, house: HouseTable, reader: Reader) -> WordChoices:
    """The rows of the house's table, with widths; the usual materials with those of this style."""
    return WordChoices(
        allowance_class=tuple(
            Named(name=name, said=f"{class_words(name)}, {reader.text(row.value)}")
            for name, row in house.allowances.items()
        ),
        material=tuple(
            Named(name=name, said=name.replace("_", " "))
            for name in dict.fromkeys((*USUAL_MATERIALS, *pattern.materials))
        ),
    )
