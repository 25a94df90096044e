"""Size charts: those that come with the program, and hers, opened, made and edited."""

from dataclasses import replace

from fastapi import APIRouter

from notchbook.body import PopulationName
from notchbook.body.charts import SizeChart, shipped_chart, shipped_charts
from notchbook.body.measure_set import POPULATIONS
from notchbook.workroom.answers.chart import ChartAnswer, ComputedChart, chart_answer, computed_answer
from notchbook.workroom.answers.nearest import chart_words
from notchbook.workroom.asked.chart_edits import ChartChange, NewChart
from notchbook.workroom.asked.form import Expected
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api")


@router.get("/computed-charts")
def read_computed_charts() -> tuple[ComputedChart, ...]:
    """The charts that come with the program."""
    known = shipped_charts()
    return tuple(
        ComputedChart(word=word, name=known[word].name, words=chart_words(known[word]))
        for word in POPULATIONS
        if word in known
    )


@router.get("/computed-charts/{word}")
def read_computed_chart(word: PopulationName, reader: ReaderOf) -> ChartAnswer:
    """One of them, to be read."""
    return computed_answer(shipped_chart(word), reader)


@router.post("/charts")
def new_chart(asked: NewChart, studio: StudioOf, reader: ReaderOf) -> ChartAnswer:
    """A chart of her own under the next free number."""
    chart = (
        SizeChart(asked.name) if asked.like is None else replace(shipped_chart(asked.like), name=asked.name)
    )
    return chart_answer(studio.new_chart(chart), reader)


@router.get("/charts/{chart}")
def read_chart(chart: int, studio: StudioOf, reader: ReaderOf) -> ChartAnswer:
    """A chart as it stands, with what is to be asked about it."""
    return chart_answer(studio.open_chart(chart), reader)


@router.post("/charts/{chart}/edits")
def change_chart(chart: int, change: ChartChange, studio: StudioOf, reader: ReaderOf) -> ChartAnswer:
    """Change a chart; it is on disk when the answer comes. 409 when another edit came first."""
    edit = change.edit.for_app(reader)
    return chart_answer(studio.edit_chart(chart, change.expected_version, edit), reader)


@router.post("/charts/{chart}/undo")
def undo_chart(chart: int, expected: Expected, studio: StudioOf, reader: ReaderOf) -> ChartAnswer:
    """Restore the chart before the last edit."""
    return chart_answer(studio.undo_chart(chart, expected.expected_version), reader)


@router.post("/charts/{chart}/redo")
def redo_chart(chart: int, expected: Expected, studio: StudioOf, reader: ReaderOf) -> ChartAnswer:
    """Restore what was undone last."""
    return chart_answer(studio.redo_chart(chart, expected.expected_version), reader)
