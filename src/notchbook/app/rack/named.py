"""The recipe of a style as it is typed: by its number on the rack, or by the path of its file."""

from pathlib import Path

from notchbook.app.rack.styles import rack_style
from notchbook.app.style_file import read_recipe
from notchbook.recipe import Recipe
from notchbook.units.style_number import is_style_number


def recipe_named(text: str) -> Recipe | None:
    """The recipe of the style file at this path (ending ``.json``), or of the style of the rack with this
    number; None for any other word, which is that of a block.

    Refused as :func:`notchbook.app.style_file.read_recipe` and :func:`notchbook.app.rack.styles.rack_style`.
    """
    if text.lower().endswith(".json"):
        return read_recipe(Path(text))
    return rack_style(text).recipe if is_style_number(text) else None
