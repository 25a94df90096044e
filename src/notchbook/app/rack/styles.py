"""The styles of the rack: read from their recipes, found by number."""

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from notchbook.errors import InputError
from notchbook.recipe import Recipe, recipe_from_json
from notchbook.units import quoted, suggestion

_RECIPE = ".json"
_WORDS = ".toml"


@dataclass(frozen=True, slots=True)
class RackStyle:
    """A style of the rack: the ``stem`` of its files, its recipe, and in ``about`` what it is."""

    stem: str
    recipe: Recipe
    about: str

    @property
    def title(self) -> str:
        """Its number and its name."""
        return f"{self.recipe.number} {self.recipe.name}"


@cache
def rack() -> tuple[RackStyle, ...]:
    """All styles of the rack, by number."""
    return tuple(sorted(_read(), key=lambda style: style.recipe.number))


def rack_style(number: str) -> RackStyle:
    """The style of this number, in capitals or not; InputError ``rack-style-unknown``."""
    styles = {style.recipe.number: style for style in rack()}
    found = styles.get(number.upper())
    if found is None:
        near = suggestion(number.upper(), styles)
        raise InputError("rack-style-unknown", number=quoted(number), near=near, known=tuple(styles))
    return found


def _read() -> Iterator[RackStyle]:
    for recipe in (files("notchbook.app.rack") / "recipes").iterdir():
        if recipe.name.endswith(_RECIPE):
            stem = recipe.name.removesuffix(_RECIPE)
            words = files("notchbook.app.rack") / "recipes" / f"{stem}{_WORDS}"
            about = " ".join(str(tomllib.loads(words.read_text(encoding="utf-8"))["about"]).split())
            yield RackStyle(stem, recipe_from_json(recipe.read_text(encoding="utf-8")), about)
