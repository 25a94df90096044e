"""Every word that the house's blocks and steps give stands in the vocabulary, and no word is idle."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import get_args

import pytest

import notchbook
from notchbook.blocks.bodice_pieces.dart_places import DartPlace
from notchbook.pattern import split_side
from notchbook.pattern.vocabulary import VOCABULARY, words_of
from notchbook.recipe import Replay
from support.bodice_bodies import MAN, bodice_run, body
from support.sleeve_bodies import sleeve_run
from support.style_lines import BACK_PRINCESS, EMPIRE, bodice_with, hip_yoke, princess, skirt_with
from support.yoke_skirt import FORM_A, WAISTBAND, run, skirt_recipe, with_steps, yoke_recipe

SOURCE = Path(notchbook.__file__).parent


def skirt_names() -> Iterator[str]:
    """All names of skirts with every count of darts and of a style with every step."""
    recipes = [skirt_recipe(front_darts=count, back_darts=count) for count in (1, 2, 3)]
    recipes += [yoke_recipe(), with_steps(skirt_recipe(front_darts=0), WAISTBAND)]
    for recipe in recipes:
        for measures in (FORM_A, FORM_A.with_value("hip_depth", 200.0, "left")):
            yield from names_of(run(recipe, measures))


def bodice_names() -> Iterator[str]:
    """All names of bodices with the bust dart at every place, to waist and hip, and of a sleeve."""
    for place in get_args(DartPlace):
        yield from names_of(bodice_run(body(), bust_dart=place, contour="dart", front_darts=2))
    yield from names_of(bodice_run(body(), length="hip"))
    yield from names_of(bodice_run(body(MAN, "men")))
    yield from names_of(sleeve_run(elbow="dart"))


def style_line_names() -> Iterator[str]:
    """All names of yokes, seams under the bust, princess seams and joins."""
    yield from names_of(bodice_with(("cut_style_line", "empire", EMPIRE)))
    yield from names_of(
        bodice_with(("princess_seam", "front", princess()), ("princess_seam", "back", BACK_PRINCESS))
    )
    line = {**hip_yoke()["lines"][0], "darts": []}
    for end in ("start", "end"):
        line[end] = {**line[end], "distance": "26 cm"}
    join = {"first_edge": "cut.front_below/style_line", "second_edge": "cut.front_above/style_line"}
    cut = ("cut_style_line", "cut", {"lines": [line], "notches": "apex"})
    yield from names_of(skirt_with(cut, measures=FORM_A))
    yield from names_of(skirt_with(cut, ("join_pieces", "again", join), measures=FORM_A))


def names_of(done: Replay) -> set[str]:
    return {*done.pattern.index, *done.pattern.fates, *(one.name for one in done.expectations)}


def given_words() -> set[str]:
    """The words of all names that the blocks and steps give."""
    found: set[str] = set()
    for name in (*skirt_names(), *bodice_names(), *style_line_names()):
        owner, *words = split_side(name)[0].split("/")
        found.update(words, owner.split(".")[1:])
    return found


def test_every_given_word_is_in_the_vocabulary() -> None:
    unknown = sorted(word for word in given_words() if not words_of(word))
    assert unknown == []


def test_every_word_has_a_meaning_and_a_use() -> None:
    assert all(meaning.strip() for meaning in VOCABULARY.values())
    used = {part for word in given_words() for part in words_of(word)}
    texts = "".join(
        path.read_text(encoding="utf-8")
        for kind in ("blocks", "style")
        for path in (SOURCE / kind).rglob("*.py")
    )
    idle = [word for word in VOCABULARY if word not in used and not re.search(rf"\b{word}\b", texts)]
    assert idle == []


@pytest.mark.parametrize(
    ("word", "parts"),
    [
        ("side_seam", ("side_seam",)),
        ("front_above", ("front", "above")),
        ("side_seam_below_end", ("side_seam", "below", "end")),
        ("pocket", ()),
        ("front_pocket", ()),
        ("", ()),
    ],
)
def test_words_are_taken_apart(word: str, parts: tuple[str, ...]) -> None:
    assert words_of(word) == parts
