"""Size charts in the studio: listed, opened, edited."""

import json
from typing import Protocol

from notchbook.app.studio.desk import Desk, edit_word
from notchbook.app.studio.states import ChartState, EntrySummary
from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.chart_data import chart_from_data, chart_to_data
from notchbook.book import Document, EntryKind
from notchbook.errors import InputError
from notchbook.recipe import canonical_json


class ChartEdit(Protocol):
    """A change of a chart as data."""

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart with the change; refused in words when it cannot be done."""


class Charts(Desk):
    """The part of the studio that handles size charts."""

    def list_charts(self) -> tuple[EntrySummary, ...]:
        """The size charts of the book by number."""
        return self._list(EntryKind.CHART)

    def new_chart(self, chart: SizeChart) -> ChartState:
        """A new size chart in the book under the next free number."""
        with self._lock:
            number = self._book.next_number("C")
            content = canonical_json(chart_to_data(chart))
            made = self._book.add(EntryKind.CHART, number, chart.name, content, note="new chart")
            return _chart_state(made)

    def open_chart(self, chart: int) -> ChartState:
        """A size chart as it stands; InputError ``entry-not-chart`` when it is something else."""
        with self._lock:
            return _chart_state(self._book.read(chart))

    def edit_chart(self, chart: int, expected_version: int, edit: ChartEdit) -> ChartState:
        """Change a chart. BookError ``book-conflict`` when another edit came first."""
        with self._lock:
            edited = edit.apply(_chart_in(self._book.read(chart)))
            content = canonical_json(chart_to_data(edited))
            return self._shown(self._book.save(chart, content, expected_version, edit_word(edit)))

    def undo_chart(self, chart: int, expected_version: int) -> ChartState:
        """Restore the chart before its last edit."""
        with self._lock:
            return self._shown(self._book.undo(chart, expected_version))

    def redo_chart(self, chart: int, expected_version: int) -> ChartState:
        """Restore what was undone last."""
        with self._lock:
            return self._shown(self._book.redo(chart, expected_version))

    def _shown(self, saved: Document) -> ChartState:
        return _chart_state(self._named(saved, _chart_in(saved).name))


def _chart_in(document: Document) -> SizeChart:
    if document.kind is not EntryKind.CHART:
        raise InputError("entry-not-chart", number=document.number, name=document.name)
    return chart_from_data(json.loads(document.content))


def _chart_state(document: Document) -> ChartState:
    return ChartState(
        id=document.id,
        number=document.number,
        version=document.version,
        can_undo=document.can_undo,
        can_redo=document.can_redo,
        chart=_chart_in(document),
    )
