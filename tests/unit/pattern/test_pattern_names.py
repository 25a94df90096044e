"""Names: the grammar, sides, children, and how they are said."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.errors import HouseFault
from notchbook.pattern import Side, child_name, part_name, piece_name, split_side, spoken, with_side
from notchbook.pattern.names import instance_of, is_name, is_slug, last_word, require_name

words = st.from_regex(r"[a-z][a-z0-9]{0,5}(_[a-z0-9]{1,4}){0,2}", fullmatch=True)
sides: st.SearchStrategy[Side] = st.sampled_from(("both", "left", "right"))


@pytest.mark.parametrize(
    "name",
    [
        "skirt.front",
        "skirt.front@left",
        "skirt.front/side_seam",
        "skirt.front/side_seam/above",
        "skirt.front/waist_dart/point@right",
        "skirt/side_seam",
        "skirt/side_seam@left",
        "a1.b2/c_3",
    ],
)
def test_names_of_the_grammar(name: str) -> None:
    assert is_name(name)
    assert require_name(name) == name


@pytest.mark.parametrize(
    "name",
    [
        "",
        "skirt",
        "Skirt.front",
        "skirt.front/",
        "skirt.front//hem",
        "skirt..front",
        "skirt.front.hem",
        "skirt.front/_hem",
        "skirt.front/hem_",
        "skirt.front/1hem",
        "skirt.front/side seam",
        "skirt.front@left/hem",
        "skirt.front/hem@left@right",
        "skirt.front/hem@both",
        "skirt.front/hem\n",
        "skirt.front/ärmel",
    ],
)
def test_what_is_no_name(name: str) -> None:
    assert not is_name(name)
    with pytest.raises(HouseFault, match="name-malformed"):
        require_name(name)


@given(words, words, words, words, sides)
def test_names_are_built_and_taken_apart(slug: str, piece: str, word: str, role: str, side: Side) -> None:
    owner = piece_name(slug, piece)
    name = with_side(part_name(owner, word), side)
    assert split_side(name) == (f"{slug}.{piece}/{word}", side)
    child = child_name(name, role)
    assert split_side(child) == (f"{slug}.{piece}/{word}/{role}", side)
    assert (instance_of(child), last_word(child)) == (slug, role)
    assert is_slug(slug) and is_name(child)
    assert part_name(with_side(owner, side), word) == name


@given(st.text(max_size=30))
def test_any_text_is_a_name_or_refused(text: str) -> None:
    if not is_name(text):
        with pytest.raises(HouseFault):
            require_name(text)


def test_a_name_has_one_side() -> None:
    with pytest.raises(HouseFault, match="name-malformed"):
        with_side("skirt.front@left", "right")


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("skirt.front", "front"),
        ("skirt.front@left", "left front"),
        ("skirt.front/side_seam", "front, side seam"),
        ("skirt.front/side_seam/above", "front, side seam (above)"),
        ("skirt.back/waist_dart/center_leg/upper@right", "right back, waist dart (center leg, upper)"),
        ("skirt/side_seam", "skirt, side seam"),
    ],
)
def test_names_are_said_in_the_words_of_the_trade(name: str, said: str) -> None:
    assert spoken(name) == said
