"""A book with an invented client, a style for her with an approved revision, and others beside her."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from notchbook.app.bodies.body_edits import RenameBody, SetMeasure
from notchbook.app.demo import demo_client, demo_recipe
from notchbook.app.studio import BodyState, Studio, StyleState
from notchbook.body import MeasureSet
from notchbook.book import Book, Frozen, Revision
from support.books import files_in

NAME = "Rosalind Quill"
FIRST_NAME = "Rosa Quill"
"""What she was called in the book before."""

WAIST = "733.625"
"""mm; a value that stands nowhere else."""


@dataclass(frozen=True)
class Room:
    """A studio with the client; ``book`` is the one that the studio has open."""

    studio: Studio
    path: Path
    client: int
    form: int
    style: int
    other_style: int

    @property
    def book(self) -> Book:
        return self.studio._book

    @property
    def approved(self) -> Revision:
        """The revision of her style that is approved."""
        [approved] = self.book.revisions(self.style)
        return approved

    def body(self) -> BodyState:
        return self.studio.open_body(self.client)

    def style_now(self) -> StyleState:
        return self.studio.open_style(self.style)

    def files_with(self, *words: str) -> set[str]:
        """The files of the folder in which one of the words stands."""
        return files_with(self.path.parent, words)


def files_with(folder: Path, words: Iterable[str]) -> set[str]:
    """The files of a folder in which one of the words stands, in any file form but compressed ones."""
    sought = [word.encode() for word in words]
    return {name for name, raw in files_in(folder).items() if any(word in raw for word in sought)}


def furnished(folder: Path) -> Room:
    """A new book with all that a client leaves: old names, edits, a style in her name, a revision."""
    path = folder / "studio.notchbook"
    studio = Studio.open(path)
    form = studio.new_body(replace(demo_client(), name="Form A", kind="form"))
    body = studio.new_body(her_measures())
    body = studio.edit_body(body.id, body.version, RenameBody(NAME))
    body = studio.edit_body(body.id, body.version, SetMeasure("waist_girth", f"{WAIST} mm", "cm"))
    recipe = demo_recipe(demo_client())
    style = studio.new_style(replace(recipe, number="", name=f"Skirt for {NAME}"), body.id)
    other = studio.new_style(replace(recipe, number="", name="Plain skirt"), form.id)
    book = studio._book
    for state, measured in ((style, body.id), (other, form.id)):
        parts = Frozen(book.read(measured).content, f'{{"outline":[[0,0],[{measured}.5,9]]}}', {"skirt": 1})
        made = book.freeze_revision(state.id, 1, parts, f"fits {book.read(measured).name}")
        book.approve(made.id, 2)
    return Room(studio, path, body.id, form.id, style.id, other.id)


def opened(path: Path) -> Room:
    """The room around a copy of such a book; the ids are those of the order in which it was made."""
    return Room(Studio.open_existing(path), path, form=1, client=2, style=3, other_style=4)


def her_measures() -> MeasureSet:
    """Her measures, under the name that she had first."""
    return replace(demo_client(), name=FIRST_NAME, note=f"{FIRST_NAME} stands with her weight on the left")
