"""Styles in the studio: listed, opened, edited, looked at before they are changed."""

from collections.abc import Mapping
from typing import Any

from notchbook.app.bodies.body_edits import BodyEdit
from notchbook.app.drift import redrawn_steps
from notchbook.app.eases.ease_rows import ease_table
from notchbook.app.examining import examine
from notchbook.app.studio.desk import Desk, edit_word, measures_in, style_in, summary_of
from notchbook.app.studio.states import EntrySummary, StepChoice, StyleState
from notchbook.app.style_edits import SetBody, Solving, StyleEdit
from notchbook.body import MeasureSet
from notchbook.book import Document, EntryKind
from notchbook.checks import Report
from notchbook.errors import BookError
from notchbook.finish import CutPiece, finish
from notchbook.recipe import (
    Recipe,
    all_definitions,
    canonical_json,
    recipe_from_data,
    recipe_to_data,
    replay,
)
from notchbook.recipe.targets import Made, Tell


class Styles(Desk):
    """The part of the studio that handles styles."""

    def list_styles(self) -> tuple[EntrySummary, ...]:
        """The styles of the book by number."""
        return self._list(EntryKind.STYLE)

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
                step.form,
                step.superseded_by,
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
        state = self.open_style(style)
        return state.told(examine(state.replay, self._house))

    def cut_pieces(self, style: int) -> tuple[CutPiece, ...]:
        """The cut pieces of the style as it is drawn: a piece that is cut on the fold stays a half.
        Refused as :func:`notchbook.finish.finish`."""
        return finish(self.open_style(style).replay.pattern, self._house.with_changes({"supply": "fold"}))

    def recipe_of(self, style: int) -> Recipe:
        """The recipe of a style as it is kept, not run."""
        with self._lock:
            return recipe_from_data(style_in(self._book.read(style))["recipe"])

    def edit_style(self, style: int, expected_version: int, edit: StyleEdit) -> StyleState:
        """Change a style. BookError ``book-conflict`` when another edit came first."""
        with self._lock:
            document = self._book.read(style)
            content = self._edited(document, edit)
            saved = self._book.save(style, canonical_json(content), expected_version, edit_word(edit))
            return self._style_state(self._named(saved, content["recipe"]["name"]))

    def preview_style(self, style: int, edit: StyleEdit) -> StyleState:
        """What an edit would give; nothing is stored."""
        with self._lock:
            document = self._book.read(style)
            return self._state_of(document, self._edited(document, edit))

    def preview_body(self, style: int, edit: BodyEdit) -> StyleState:
        """What a style would be if its body had another measure; nothing is stored."""
        with self._lock:
            document = self._book.read(style)
            content = style_in(document)
            measures = edit.apply(self._measures(content["body"]))
            return self._state_of(document, content, measures)

    def solved(self, style: int, edit: Solving, tell: Tell | None = None) -> Made:
        """What solving would write into a style; nothing is stored. ``tell`` hears of each trial, and what it
        raises ends the search."""
        with self._lock:
            content = style_in(self._book.read(style))
            measures = self._measures(content["body"])
        return edit.solved(recipe_from_data(content["recipe"]), measures, tell)

    def undo_style(self, style: int, expected_version: int) -> StyleState:
        """Restore the style before its last edit, as an edit of its own. BookError ``style-body-erased``
        when it was drafted for somebody then who is erased from the book."""
        with self._lock:
            self._check_body_at(style, self._book.undo_leads_to(style))
            saved = self._book.undo(style, expected_version)
            return self._style_state(self._named(saved, style_in(saved)["recipe"]["name"]))

    def redo_style(self, style: int, expected_version: int) -> StyleState:
        """Restore what was undone last; refused as :meth:`undo_style`."""
        with self._lock:
            self._check_body_at(style, self._book.redo_leads_to(style))
            saved = self._book.redo(style, expected_version)
            return self._style_state(self._named(saved, style_in(saved)["recipe"]["name"]))

    def _check_body_at(self, style: int, version: int | None) -> None:
        if version is None:
            return
        document = self._book.read(style, version)
        body = style_in(document)["body"]
        if body not in {entry.id for entry in self._book.list(EntryKind.MEASURES)}:
            raise BookError("style-body-erased", number=document.number, name=document.name)

    def _add_style(self, recipe: Recipe, body: int, number: str, note: str) -> Document:
        content = canonical_json({"recipe": recipe_to_data(recipe), "body": body})
        return self._book.add(EntryKind.STYLE, number, recipe.name, content, note=note)

    def _edited(self, document: Document, edit: StyleEdit) -> dict[str, Any]:
        content = style_in(document)
        if isinstance(edit, SetBody):
            self._measures(edit.body)
            return {**content, "body": edit.body}
        recipe = recipe_from_data(content["recipe"])
        edited = edit.apply(recipe, self._measures(content["body"]))
        return {**content, "recipe": recipe_to_data(edited)}

    def _style_state(self, document: Document) -> StyleState:
        state = self._state_of(document, style_in(document))
        self._runs[document.id] = state.replay
        return state

    def _state_of(
        self, document: Document, content: Mapping[str, Any], measures: MeasureSet | None = None
    ) -> StyleState:
        body = self._book.read(content["body"])
        run = replay(
            recipe_from_data(content["recipe"]),
            measures or measures_in(body),
            self._runs.get(document.id),
        )
        return StyleState(
            id=document.id,
            number=document.number,
            name=run.recipe.name,
            version=document.version,
            can_undo=document.can_undo,
            can_redo=document.can_redo,
            body=summary_of(body),
            replay=run,
            eases=ease_table(run),
            house=self._house,
            redrawn=redrawn_steps(content["recipe"]),
        )
