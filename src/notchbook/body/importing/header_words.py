"""What the words over a column or before a row mean: the trade's words, and the house's own keys."""

import re
import tomllib
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from importlib.resources import files
from typing import Any, Final

from notchbook.body.files.body_columns import ABOUT_COLUMNS, split_column
from notchbook.body.importing.unit_words import NO_UNIT, UnitWords, take_unit
from notchbook.body.measure_set import PopulationName
from notchbook.body.measure_table import measure_entry, measure_table
from notchbook.body.sides import Side, plain_key, sided_key
from notchbook.errors import InputError

LONGEST_HEADER: Final = 120
"""Characters; a longer header is a sentence."""

_BRACKETS: Final = re.compile(r"[(\[{][^()\[\]{}]*[)\]}]")
_SIDE_WORDS: Final[dict[str, Side]] = {
    "left": "left", "right": "right", "l": "left", "r": "right", "lh": "left", "rh": "right",
    "links": "left", "rechts": "right", "gauche": "left", "droite": "right",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class HeaderMeaning:
    """What a header may mean.

    ``targets`` are keys (with side), fields about the whole body, or ``KEY.FIELD``; none when the words
    are not known or are to be left out. ``sure`` is False when several are possible, or when one is likely
    but the word is also used for something else. ``left_out`` marks words that are known to be no measure.
    """

    targets: tuple[str, ...] = ()
    sure: bool = False
    left_out: bool = False
    own: bool = False
    unit: UnitWords = NO_UNIT


@dataclass(frozen=True, slots=True)
class HeaderWords:
    """The table: plain words -> what they may mean; words to be asked about; words to be left out.

    ``men`` are words that are sure where the measures are those of men.
    """

    meanings: Mapping[str, tuple[str, ...]]
    asked: frozenset[str]
    left_out: frozenset[str]
    corners: frozenset[str]
    totals: frozenset[str]
    fields: Mapping[str, str]
    men: Mapping[str, str]


@cache
def header_words() -> HeaderWords:
    """The table of ``header_words.toml`` with the labels of the measure table, read once."""
    text = files("notchbook.body.importing").joinpath("header_words.toml").read_text(encoding="utf-8")
    data: dict[str, dict[str, Any]] = tomllib.loads(text)
    meanings: dict[str, tuple[str, ...]] = {plain_words(name): (name,) for name in ABOUT_COLUMNS}
    for entry in measure_table().values():
        meanings[plain_words(entry.label)] = (entry.key,)
        meanings[plain_words(entry.key)] = (entry.key,)
    for chapter in ("measures", "about"):
        for target, words in data[chapter].items():
            meanings |= {plain_words(word): (target,) for word in words}
    meanings |= {plain_words(word): tuple(targets) for word, targets in data["asked"].items()}
    other = data["other"]
    return HeaderWords(
        meanings=meanings,
        asked=_plain(data["asked"]),
        left_out=_plain(other["left_out"]),
        corners=_plain(other["corners"]),
        totals=_plain(other["totals"]),
        men={plain_words(word): target for target, words in data["men"].items() for word in words},
        fields={plain_words(word): field for field, words in data["fields"].items() for word in words},
    )


def plain_words(text: str) -> str:
    """The words in small letters without accents and signs, with one word for each of a few synonyms."""
    letters = unicodedata.normalize("NFKD", text[:LONGEST_HEADER].casefold())
    bare = "".join(sign for sign in letters if not unicodedata.combining(sign))
    words = re.sub(r"[^a-z0-9#]+", " ", bare.replace("'s ", "s ")).split()
    return " ".join(_SYNONYMS.get(word, word) for word in words if word not in _FILLERS)


_SYNONYMS: Final = {
    "circumference": "girth", "circ": "girth", "circum": "girth", "circumf": "girth",
    "centre": "center", "armhole": "armscye", "len": "length", "lgth": "length", "lengths": "length",
    "hips": "hip", "shoulders": "shoulder", "ctr": "center",
}  # fmt: skip
_FILLERS: Final = frozenset({"measurement", "measurements", "measure", "body", "your", "the", "a", "of"})


@lru_cache(maxsize=4096)
def header_meaning(words: str) -> HeaderMeaning:
    """What the header may mean, with the unit that it names. Nothing is found by likeness here."""
    if len(words) > LONGEST_HEADER:
        return HeaderMeaning()
    own = _own_word(words)
    if own:
        return HeaderMeaning((own,), sure=True, own=True)
    rest, unit = take_unit(words)
    found = _known(plain_words(rest))
    without = _BRACKETS.sub(" ", rest)
    if found is None and without.strip() != rest.strip():
        inner = _known(plain_words(without))
        # What stands in brackets may change the meaning: "Waist (at the navel)".
        found = replace(inner, sure=inner.left_out) if inner else None
    return replace(found, unit=unit) if found else HeaderMeaning(unit=unit)


def meaning_for(words: str, population: PopulationName | None) -> HeaderMeaning:
    """The same where she said whose measures they are: *chest* of men is the bust girth and nothing else."""
    meaning = header_meaning(words)
    if population != "men" or meaning.sure or not meaning.targets:
        return meaning
    target = header_words().men.get(plain_words(take_unit(words)[0]))
    return replace(meaning, targets=(target,), sure=True) if target else meaning


def _own_word(words: str) -> str:
    """The word itself when it is a key, a field about the body, or a column such as ``hip_girth.error``."""
    name = words.strip().lower()
    if "_" not in name and name != words.strip():
        # "Heel" or "Weight" over a column is a word of the trade; our keys are small.
        return ""
    if name in ABOUT_COLUMNS:
        return name
    if plain_key(name.partition(".")[0]) not in measure_table():
        return ""
    try:
        split_column(name)
    except InputError:
        return ""
    return name


def _known(plain: str) -> HeaderMeaning | None:
    table = header_words()
    if plain in table.left_out:
        return HeaderMeaning(sure=True, left_out=True)
    found = table.meanings.get(plain)
    if found:
        return HeaderMeaning(found, sure=len(found) == 1 and plain not in table.asked)
    return _with_side(plain, table)


def _with_side(plain: str, table: HeaderWords) -> HeaderMeaning | None:
    words = plain.split()
    for side_word, rest in ((words[:1], words[1:]), (words[-1:], words[:-1])):
        side = _SIDE_WORDS.get(side_word[0]) if side_word and rest else None
        keys = [key for key in table.meanings.get(" ".join(rest), ()) if side and _takes_side(key)]
        if side and keys:
            sure = len(keys) == 1 and " ".join(rest) not in table.asked
            return HeaderMeaning(tuple(sided_key(key, side) for key in keys), sure=sure)
    return None


def _takes_side(target: str) -> bool:
    return target in measure_table() and measure_entry(target).sided


def _plain(words: Iterable[str]) -> frozenset[str]:
    return frozenset(plain_words(word) for word in words)
