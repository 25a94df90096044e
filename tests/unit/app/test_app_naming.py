"""A name in texts: where it stands, and a word in its stead, without breaking what is no prose."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.app.personal_data.naming import PROSE, changed_text, spelling_of, strings_in
from notchbook.recipe import canonical_json

MARTA = spelling_of(("Marta V.",), "K-102", ("Marta",))


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Skirt for Marta V.", "Skirt for K-102"),
        ("MARTA V., second fitting", "K-102, second fitting"),
        ("Marta  V.", "K-102"),
        ("marta likes it long", "K-102 likes it long"),
        ("Martas and Smarta", "Martas and Smarta"),
        ("Marta V.s", "K-102 V.s"),
        ("(Marta V.)", "(K-102)"),
        ("", ""),
    ],
)
def test_whole_words_only_in_any_capitals(text: str, wanted: str) -> None:
    assert MARTA.replaced(text) == wanted
    assert MARTA.stands_in(text) == (text != wanted)


def test_a_short_name_is_looked_for_in_its_own_capitals() -> None:
    short = spelling_of(("A",), "K-1")
    assert short.replaced("A dart for A, a seam") == "K-1 dart for K-1, a seam"


def test_earlier_names_stay_apart() -> None:
    """Else two frozen states that differ in the name alone would become one."""
    both = spelling_of(("Marta Voss", "Marta"), "K-102")
    assert both.replaced("from Marta to Marta Voss") == "from K-102 (2) to K-102"


def test_a_word_is_no_pattern() -> None:
    assert spelling_of(("Marta",), r"\1 (?)").replaced("Marta") == r"\1 (?)"
    assert spelling_of(("M.rta (x)",), "K").replaced("Marta x, M.rta (x)") == "Marta x, K"


def test_data_keeps_its_form() -> None:
    data = {"name": "Łucja", "edge": "Łucja", "steps": [{"note": "for Łucja", "n": 1.5}]}
    spelling = spelling_of(("Łucja",), "K-1")

    def change(field: str, text: str) -> str:
        return spelling.replaced(text) if field in PROSE else text

    wanted = {"name": "K-1", "edge": "Łucja", "steps": [{"note": "for K-1", "n": 1.5}]}
    compact = json.dumps(data, sort_keys=True, separators=(",", ":"))
    assert changed_text(canonical_json(data), change) == canonical_json(wanted)
    assert changed_text(compact, change) == json.dumps(wanted, sort_keys=True, separators=(",", ":"))
    assert changed_text("{broken", change) == "{broken"


def test_every_string_of_data_is_seen() -> None:
    seen = set(strings_in('{"a": {"b": ["x", {"c": "y"}]}, "d": 3}'))
    assert seen == {("b", "x"), ("c", "y"), ("", "a"), ("", "b"), ("", "c"), ("", "d")}
    assert list(strings_in("plain words")) == [("", "plain words")]


PIECES = st.sampled_from(["Marta V.", "marta", "Marta", "V.", "dart", " ", ", ", "\n", "é", "(", "-"])
TEXTS = st.lists(PIECES, max_size=12).map("".join)


@given(TEXTS)
def test_a_replaced_name_is_gone(text: str) -> None:
    replaced = MARTA.replaced(text)
    assert not MARTA.stands_in(replaced)
    assert MARTA.replaced(replaced) == replaced


@given(
    st.dictionaries(st.sampled_from(["name", "note", "edge"]), st.one_of(TEXTS, st.integers()), min_size=1)
)
def test_data_is_data_afterwards(data: dict[str, str | int]) -> None:
    new = json.loads(changed_text(canonical_json(data), lambda _field, text: MARTA.replaced(text)))
    assert new.keys() == data.keys()
    assert not any(isinstance(value, str) and MARTA.stands_in(value) for value in new.values())
    assert {key: new[key] for key in data if isinstance(data[key], int)} == {
        key: value for key, value in data.items() if isinstance(value, int)
    }


@given(TEXTS, st.sampled_from(["Marta V.", '(M) "V"', "Łucja", "É"]), st.booleans())
def test_the_quick_look_misses_nothing(text: str, name: str, ascii_only: bool) -> None:
    spelling = spelling_of((name,), "K-1")
    assert spelling.may_stand_in(json.dumps({"note": f"{text} {name} {text}"}, ensure_ascii=ascii_only))


def test_the_quick_look_is_spared_where_it_can_be() -> None:
    assert not MARTA.may_stand_in('{"note":"a dart for Ada"}')
