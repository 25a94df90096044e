"""A table of the trade is read whole or not at all."""

import pytest

from notchbook.blocks._trade_figures import TradeFigure, figures_from_text, table_from_text
from notchbook.errors import HouseFault

SOUND = """
[cap]
rise = { value = 30.0, unit = "mm", source = "invented for the test", grade = "memory" }
ease = { value = 5, unit = "mm", source = "invented", grade = "handbook", least = 4, most = 6 }
"""


def test_rows_are_found_by_section_and_name() -> None:
    assert figures_from_text(SOUND) == {
        "cap.rise": TradeFigure(30.0, "mm", "invented for the test", "memory"),
        "cap.ease": TradeFigure(5, "mm", "invented", "handbook", 4, 6),
    }


def test_the_usual_range_is_known_only_with_both_ends() -> None:
    assert figures_from_text(SOUND)["cap.ease"].usual == (4, 6)
    assert figures_from_text(SOUND)["cap.rise"].usual is None


@pytest.mark.parametrize(
    ("sound", "spoiled", "what"),
    [
        ('"memory"', '"memmory"', "grade"),
        (', grade = "memory"', "", "grade"),
        ('"invented for the test"', '""', "source"),
        ('source = "invented for the test", ', "", "source"),
    ],
)
def test_a_row_that_nobody_could_judge_is_refused(sound: str, spoiled: str, what: str) -> None:
    assert sound in SOUND
    with pytest.raises(HouseFault) as refused:
        figures_from_text(SOUND.replace(sound, spoiled))
    assert refused.value.code == "trade-figure-unsound"
    assert refused.value.facts == {"name": "cap.rise", "what": what}


LISTED = """
unknown = { value = 25, source = "invented", grade = "memory" }

[women.close]
bust = { value = 45, least = 0, source = "invented", grade = "handbook" }

[[cups]]
value = 13
source = "invented"
grade = "memory"

[[cups]]
value = 16
source = "invented, too"
grade = "memory"
"""


def test_a_table_of_other_rows_is_read_as_it_stands() -> None:
    table = table_from_text(LISTED)
    assert (table["women"]["close"]["bust"]["value"], table["cups"][1]["value"]) == (45, 16)


@pytest.mark.parametrize(
    ("sound", "spoiled", "name", "what"),
    [
        ('"handbook"', '"hearsay"', "women.close.bust", "grade"),
        ('"invented, too"', '""', "cups.2", "source"),
        ('25, source = "invented", ', "25, ", "unknown", "source"),
    ],
)
def test_each_row_of_such_a_table_is_judged(sound: str, spoiled: str, name: str, what: str) -> None:
    assert sound in LISTED
    with pytest.raises(HouseFault) as refused:
        table_from_text(LISTED.replace(sound, spoiled))
    assert refused.value.facts == {"name": name, "what": what}
