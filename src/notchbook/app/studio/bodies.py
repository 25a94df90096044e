"""Bodies, dress forms and single sizes in the studio: listed, opened, measured."""

import json
from collections.abc import Callable, Sequence

from notchbook.app.bodies.body_edits import BodyEdit
from notchbook.app.studio.desk import Desk, edit_word, line_of, measures_in
from notchbook.app.studio.states import BodyState, EntrySummary
from notchbook.body import MeasureSet, check_consistent, set_from_data, set_to_data
from notchbook.book import Document, EntryKind, NewEntry
from notchbook.recipe import canonical_json


class Bodies(Desk):
    """The part of the studio that handles measures."""

    def list_bodies(self) -> tuple[EntrySummary, ...]:
        """The bodies, forms and sizes of the book by number; ``kind`` tells them apart."""
        return self._list(EntryKind.MEASURES)

    def new_body(self, measures: MeasureSet) -> BodyState:
        """A new body in the book under the next free number."""
        with self._lock:
            return self._body_state(self._add_body(measures, "new body"))

    def new_bodies(
        self, sets: Sequence[MeasureSet], note: str, told: Callable[[int], None] | None = None
    ) -> tuple[EntrySummary, ...]:
        """New bodies in the book, all of them or none; ``told`` hears now and then how many are in.

        What ``told`` raises leaves the book as it was.
        """
        entries = [NewEntry(measures.name, canonical_json(set_to_data(measures))) for measures in sets]
        with self._lock:
            listed = self._book.add_many(EntryKind.MEASURES, "M", entries, note, told)
        return tuple(line_of(entry, made.content) for entry, made in zip(listed, entries, strict=True))

    def all_bodies(self) -> tuple[tuple[EntrySummary, MeasureSet], ...]:
        """Every body, form and size of the book by number, each with its measures."""
        with self._lock:
            listed = self._book.list(EntryKind.MEASURES)
            contents = self._book.contents_of(EntryKind.MEASURES)
        return tuple(
            (line_of(entry, contents[entry.id]), set_from_data(json.loads(contents[entry.id])))
            for entry in listed
        )

    def body_numbered(self, number: str) -> BodyState:
        """The body with this number, such as ``M-101``."""
        with self._lock:
            return self._body_state(self._book.find(number))

    def open_body(self, body: int) -> BodyState:
        """A body's measures as they stand; InputError ``entry-not-body`` when it is something else."""
        with self._lock:
            return self._body_state(self._book.read(body))

    def edit_body(self, body: int, expected_version: int, edit: BodyEdit) -> BodyState:
        """Change a measure; every style for this body is drawn anew when it is next looked at."""
        with self._lock:
            measures = edit.apply(self._measures(body))
            content = canonical_json(set_to_data(measures))
            saved = self._book.save(body, content, expected_version, edit_word(edit))
            return self._body_state(self._named(saved, measures.name))

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

    def _add_body(self, measures: MeasureSet, note: str) -> Document:
        number = self._book.next_number("M")
        content = canonical_json(set_to_data(measures))
        return self._book.add(EntryKind.MEASURES, number, measures.name, content, note=note)

    def _body_state(self, document: Document) -> BodyState:
        measures = measures_in(document)
        return BodyState(
            id=document.id,
            number=document.number,
            version=document.version,
            can_undo=document.can_undo,
            can_redo=document.can_redo,
            measures=measures,
            doubts=check_consistent(measures),
        )
