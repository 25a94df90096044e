"""Lines of the ease table as they are called."""

import pytest

from notchbook.app.eases.row_words import row_words


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("trousers/knee_girth@right", "right leg, knee girth"),
        ("leggings/calf_girth@left", "left leg, calf girth"),
        ("trousers/knee_girth", "trousers, knee girth"),
        ("sleeve/biceps@left", "left sleeve, biceps"),
    ],
)
def test_one_of_two_legs_is_called_a_leg(name: str, words: str) -> None:
    assert row_words(name, None) == words
