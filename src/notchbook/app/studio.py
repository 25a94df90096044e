"""The studio at work: styles and bodies of one book, open for editing.

An edit is on disk before its function returns. Each open style keeps its last run, so that an edit
re-runs only what it touches. The last good state stays visible while a step waits.
"""

import json
import threading
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from notchbook.app.demo import demo_client, demo_form, demo_recipe
from notchbook.app.edits import BodyEdit, SetBody, StyleEdit
from notchbook.app.examining import GirthRow, ease_table, examine
from notchbook.body import Doubt, MeasureSet, check_consistent, set_from_data, set_to_data
from notchbook.book import Book, Document, EntryKind
from notchbook.checks import Report
from notchbook.errors import BookError, InputError
from notchbook.finish import CutPiece, HouseTable, finish, production_table
from notchbook.recipe import (
    Recipe,
    Replay,
    StepKind,
    all_definitions,
    canonical_json,
    recipe_from_data,
    recipe_to_data,
    replay,
)


@dataclass(frozen=True, slots=True)
class EntrySummary:
    """One line of the library."""

    id: int
    number: str
    name: str
    version: int
    status: str


@dataclass(frozen=True, slots=True)
class StyleState:
    """A style as it stands: what is written, the run of it, and what is to be said of it.

    ``house`` is the table by which its cut pieces would be made.
    """

    id: int
    number: str
    name: str
    version: int
    can_undo: bool
    can_redo: bool
    body: EntrySummary
    replay: Replay
    girths: tuple[GirthRow, ...]
    house: HouseTable

    @property
    def recipe(self) -> Recipe:
        """The recipe of the style."""
        return self.replay.recipe

    @property
    def report(self) -> Report:
        """All checks but those on the cut pieces, run when asked for: whoever only looks at a shape
        does not wait for them. :meth:`Studio.full_report` runs every check."""
        return examine(self.replay, self.house, cut=False)


@dataclass(frozen=True, slots=True)
class BodyState:
    """A body's measures as they stand, and what should be looked at again."""

    id: int
    number: str
    version: int
    can_undo: bool
    can_redo: bool
    measures: MeasureSet
    doubts: tuple[Doubt, ...]


@dataclass(frozen=True, slots=True)
class StepChoice:
    """A step that can be added; ``schema`` is the JSON schema of its parameters."""

    operation: str
    title: str
    summary: str
    kind: StepKind
    schema: Mapping[str, Any]


class Studio:
    """A book open for work. Functions may be called from several threads; each sees whole states."""

    def __init__(self, book: Book, house: HouseTable | None = None) -> None:
        self._book = book
        self._house = house or production_table()
        self._lock = threading.RLock()
        self._runs: dict[int, Replay] = {}

    @classmethod
    def open(cls, path: Path) -> "Studio":
        """Open the book at this place, or make a new one there; see :meth:`Book.open_or_create`."""
        return cls(Book.open_or_create(path))

    def close(self) -> None:
        """Let go of the book."""
        with self._lock:
            self._book.close()

    def first_time(self) -> None:
        """Put the invented demonstration into a book that holds nothing yet."""
        with self._lock:
            if self._book.list():
                return
            form = self._add_body(demo_form(), "first use")
            self._add_body(demo_client(), "first use")
            recipe = demo_recipe(demo_form())
            self._add_style(recipe, form.id, recipe.number, "first use")

    def notice(self) -> str | None:
        """What is to be said about where the book lies, if anything."""
        return self._book.notice

    def list_styles(self) -> tuple[EntrySummary, ...]:
        """The styles of the book by number."""
        return self._list(EntryKind.STYLE)

    def list_bodies(self) -> tuple[EntrySummary, ...]:
        """The bodies, forms and sizes of the book by number."""
        return self._list(EntryKind.MEASURES)

    def step_choices(self) -> tuple[StepChoice, ...]:
        """Every step that can be added to a style, blocks first."""
        order = {"block": 0, "style": 1, "cut": 2}
        steps = sorted(all_definitions(), key=lambda step: (order[step.kind], step.title))
        return tuple(
            StepChoice(
                step.operation,
                step.title,
                (step.parameters.__doc__ or "").strip().split("\n", 1)[0],
                step.kind,
                step.parameters.model_json_schema(),
            )
            for step in steps
        )

    def new_style(self, recipe: Recipe, body: int) -> StyleState:
        """A new style in the book under the next free number."""
        with self._lock:
            self._measures(body)
            number = recipe.number or self._book.next_number("S")
            return self._style_state(self._add_style(recipe, body, number, "new style"))

    def open_style(self, style: int) -> StyleState:
        """A style as it stands; BookError ``book-document-missing`` when there is none."""
        with self._lock:
            return self._style_state(self._book.read(style))

    def full_report(self, style: int) -> Report:
        """Every check on the style as it stands, those on its cut pieces too."""
        # Looked over outside of the lock: an edit need not wait for it.
        return examine(self.open_style(style).replay, self._house)

    def cut_pieces(self, style: int) -> tuple[CutPiece, ...]:
        """The cut pieces of the style as it is drawn: a piece that is cut on the fold stays a half.
        Refused as :func:`notchbook.finish.finish`."""
        return finish(self.open_style(style).replay.pattern, self._house.with_changes({"supply": "fold"}))

    def recipe_of(self, style: int) -> Recipe:
        """The recipe of a style as it is kept, not run."""
        with self._lock:
            return recipe_from_data(_content(self._book.read(style))["recipe"])

    def edit_style(self, style: int, expected_version: int, edit: StyleEdit) -> StyleState:
        """Change a style. BookError ``book-conflict`` when another edit came first."""
        with self._lock:
            document = self._book.read(style)
            content = self._edited(document, edit)
            saved = self._book.save(style, canonical_json(content), expected_version, _word(edit))
            return self._style_state(self._named(saved, content["recipe"]["name"]))

    def preview_style(self, style: int, edit: StyleEdit) -> StyleState:
        """What an edit would give; nothing is stored."""
        with self._lock:
            document = self._book.read(style)
            return self._state_of(document, self._edited(document, edit))

    def undo_style(self, style: int, expected_version: int) -> StyleState:
        """Restore the style before its last edit, as an edit of its own."""
        with self._lock:
            saved = self._book.undo(style, expected_version)
            return self._style_state(self._named(saved, _content(saved)["recipe"]["name"]))

    def redo_style(self, style: int, expected_version: int) -> StyleState:
        """Restore what was undone last."""
        with self._lock:
            saved = self._book.redo(style, expected_version)
            return self._style_state(self._named(saved, _content(saved)["recipe"]["name"]))

    def new_body(self, measures: MeasureSet) -> BodyState:
        """A new body in the book under the next free number."""
        with self._lock:
            return self._body_state(self._add_body(measures, "new body"))

    def open_body(self, body: int) -> BodyState:
        """A body's measures as they stand."""
        with self._lock:
            return self._body_state(self._book.read(body))

    def edit_body(self, body: int, expected_version: int, edit: BodyEdit) -> BodyState:
        """Change a measure; every style for this body is drawn anew when it is next looked at."""
        with self._lock:
            measures = edit.apply(self._measures(body))
            content = canonical_json(set_to_data(measures))
            saved = self._book.save(body, content, expected_version, _word(edit))
            return self._body_state(self._named(saved, measures.name))

    def preview_body(self, style: int, edit: BodyEdit) -> StyleState:
        """What a style would be if its body had another measure; nothing is stored."""
        with self._lock:
            document = self._book.read(style)
            content = _content(document)
            measures = edit.apply(self._measures(content["body"]))
            return self._state_of(document, content, measures)

    def undo_body(self, body: int, expected_version: int) -> BodyState:
        """Restore the measures before the last edit."""
        with self._lock:
            saved = self._book.undo(body, expected_version)
            return self._body_state(self._named(saved, json.loads(saved.content)["name"]))

    def redo_body(self, body: int, expected_version: int) -> BodyState:
        """Restore what was undone last."""
        with self._lock:
            saved = self._book.redo(body, expected_version)
            return self._body_state(self._named(saved, json.loads(saved.content)["name"]))

    def backup(self, path: Path) -> Path:
        """A verified copy of the whole book as one file."""
        return self._book.backup(path).path

    def _named(self, document: Document, name: str) -> Document:
        """The document under the name that its content says, in the library too."""
        if name == document.name:
            return document
        return self._book.rename(document.id, name, document.version)

    def _list(self, kind: EntryKind) -> tuple[EntrySummary, ...]:
        with self._lock:
            listed = self._book.list(kind)
        return tuple(EntrySummary(e.id, e.number, e.name, e.version, e.status.value) for e in listed)

    def _add_body(self, measures: MeasureSet, note: str) -> Document:
        number = self._book.next_number("M")
        content = canonical_json(set_to_data(measures))
        return self._book.add(EntryKind.MEASURES, number, measures.name, content, note=note)

    def _add_style(self, recipe: Recipe, body: int, number: str, note: str) -> Document:
        content = canonical_json({"recipe": recipe_to_data(recipe), "body": body})
        return self._book.add(EntryKind.STYLE, number, recipe.name, content, note=note)

    def _measures(self, body: int) -> MeasureSet:
        return _measures_in(self._book.read(body))

    def _edited(self, document: Document, edit: StyleEdit) -> dict[str, Any]:
        content = _content(document)
        if isinstance(edit, SetBody):
            self._measures(edit.body)
            return {**content, "body": edit.body}
        recipe = recipe_from_data(content["recipe"])
        edited = edit.apply(recipe, self._measures(content["body"]))
        return {**content, "recipe": recipe_to_data(edited)}

    def _style_state(self, document: Document) -> StyleState:
        state = self._state_of(document, _content(document))
        self._runs[document.id] = state.replay
        return state

    def _state_of(
        self, document: Document, content: Mapping[str, Any], measures: MeasureSet | None = None
    ) -> StyleState:
        body = self._book.read(content["body"])
        run = replay(
            recipe_from_data(content["recipe"]),
            measures or _measures_in(body),
            self._runs.get(document.id),
        )
        return StyleState(
            id=document.id,
            number=document.number,
            name=run.recipe.name,
            version=document.version,
            can_undo=document.can_undo,
            can_redo=document.can_redo,
            body=EntrySummary(body.id, body.number, body.name, body.version, body.status.value),
            replay=run,
            girths=ease_table(run),
            house=self._house,
        )

    def _body_state(self, document: Document) -> BodyState:
        measures = set_from_data(json.loads(document.content))
        return BodyState(
            id=document.id,
            number=document.number,
            version=document.version,
            can_undo=document.can_undo,
            can_redo=document.can_redo,
            measures=measures,
            doubts=check_consistent(measures),
        )


def _measures_in(document: Document) -> MeasureSet:
    if document.kind is not EntryKind.MEASURES:
        raise InputError("entry-not-body", number=document.number, name=document.name)
    return set_from_data(json.loads(document.content))


def _content(document: Document) -> dict[str, Any]:
    content = json.loads(document.content)
    if document.kind is not EntryKind.STYLE or not isinstance(content, dict):
        raise BookError("entry-not-style", number=document.number, name=document.name)
    return content


def _word(edit: StyleEdit | BodyEdit) -> str:
    """The word for an edit in the journal: ``add-step`` for AddStep."""
    name = type(edit).__name__
    if name == "Rename":
        # The book keeps the plain word for its own entries.
        return "rename-style"
    return "".join(f"-{letter.lower()}" if letter.isupper() else letter for letter in name).lstrip("-")
