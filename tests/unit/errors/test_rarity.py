"""Standard deviations said as bodies, against the rule of 68, 95 and 99.7 per cent."""

import pytest

from notchbook.errors.catalogue import fill
from notchbook.errors.rarity import rarity


@pytest.mark.parametrize(
    ("deviations", "words"),
    [
        (1.0, "many a body"),
        (2.0, "about one body in 20"),
        (-2.0, "about one body in 20"),
        (3.0, "about one body in 400"),
        (4.5, "hardly one body in a thousand"),
        (50.0, "hardly one body in a thousand"),
    ],
)
def test_the_rule_of_68_95_and_99_7(deviations: float, words: str) -> None:
    """32 % lie beyond one, 5 % beyond two, 0.3 % beyond three (any handbook of statistics)."""
    assert rarity(deviations) == words


def test_a_message_says_it_in_words() -> None:
    assert fill("as {far:rarity} does", {"far": 2.2}) == "as about one body in 40 does"
