"""A size chart as the page shows it: measures by sizes, with what is to be asked beside its cells."""

from collections.abc import Sequence

from notchbook.app.studio import ChartState
from notchbook.body import PopulationName, measure_entry, measure_table
from notchbook.body.charts import ChartDoubt, ChartStatus, SizeChart, check_chart
from notchbook.body.doubts.doubt import DoubtLevel
from notchbook.workroom.answers.form import Answer, Named
from notchbook.workroom.answers.nearest import chart_words
from notchbook.workroom.answers.quantities import said_difference, said_value
from notchbook.workroom.answers.refusal import refusal
from notchbook.workroom.reader import Reader


class ChartCell(Answer):
    """One value, empty where there is none. ``margin_text`` is the ± of a computed one, ``step_text`` the
    step from the size before. ``doubts`` are places in the chart's list of doubts."""

    text: str
    margin_text: str
    step_text: str
    doubts: tuple[int, ...]


class ChartRow(Answer):
    """One measure over all sizes."""

    key: str
    label: str
    is_length: bool
    cells: tuple[ChartCell, ...]


class ChartDoubtAnswer(Answer):
    """Something to ask about the chart; no ``keys`` means all rows, no ``sizes`` all sizes.

    ``expected_text`` is what a single cell would be if it followed its row; offered, never put in.
    """

    level: DoubtLevel
    code: str
    message: str
    next_step: str
    keys: tuple[str, ...]
    sizes: tuple[str, ...]
    expected_text: str


class ChartAnswer(Answer):
    """A chart. ``id`` is null for a computed one that comes with the program and is only read.

    ``words`` say where the figures come from; ``addable`` are measures that it does not have yet.
    """

    id: int | None
    number: str
    name: str
    version: int
    can_undo: bool
    can_redo: bool
    population: PopulationName | None
    status: ChartStatus
    words: str
    source: str
    note: str
    main_measure: str
    labels: tuple[str, ...]
    rows: tuple[ChartRow, ...]
    doubts: tuple[ChartDoubtAnswer, ...]
    addable: tuple[Named, ...]


class ComputedChart(Answer):
    """A chart that comes with the program, by the word under which it is asked for."""

    word: PopulationName
    name: str
    words: str


def chart_answer(state: ChartState, reader: Reader) -> ChartAnswer:
    """A chart of the book in the reader's unit."""
    return _answer(state.chart, state, reader)


def computed_answer(chart: SizeChart, reader: Reader) -> ChartAnswer:
    """A chart that comes with the program."""
    return _answer(chart, None, reader)


def _answer(chart: SizeChart, state: ChartState | None, reader: Reader) -> ChartAnswer:
    doubts = check_chart(chart, reader.style)
    return ChartAnswer(
        id=None if state is None else state.id,
        number="" if state is None else state.number,
        name=chart.name,
        version=0 if state is None else state.version,
        can_undo=state is not None and state.can_undo,
        can_redo=state is not None and state.can_redo,
        population=chart.population,
        status=chart.status,
        words=chart_words(chart),
        source=chart.source,
        note=chart.note,
        main_measure=chart.main_measure,
        labels=chart.labels,
        rows=tuple(_row(chart, key, doubts, reader) for key in chart.keys),
        doubts=tuple(_doubt(doubt, reader) for doubt in doubts),
        addable=tuple(
            Named(name=entry.key, said=entry.label)
            for entry in measure_table().values()
            if entry.key not in chart.keys
        ),
    )


def _row(chart: SizeChart, key: str, doubts: Sequence[ChartDoubt], reader: Reader) -> ChartRow:
    entry, row = measure_entry(key), chart.row(key)
    steps = [
        None if value is None or before is None else value - before
        for value, before in zip(row, (None, *row[:-1]), strict=True)
    ]
    return ChartRow(
        key=key,
        label=entry.label,
        is_length=entry.is_length,
        cells=tuple(
            ChartCell(
                text=said_value(key, value, reader),
                margin_text=said_value(key, chart.margin(label, key), reader),
                step_text=said_difference(key, step, reader),
                doubts=tuple(at for at, doubt in enumerate(doubts) if _is_about(doubt, key, label)),
            )
            for label, value, step in zip(chart.labels, row, steps, strict=True)
        ),
    )


def _is_about(doubt: ChartDoubt, key: str, label: str) -> bool:
    """A doubt about the whole chart marks no cell: it stands over the chart."""
    return bool(doubt.keys or doubt.sizes) and doubt.covers(key, label)


def _doubt(doubt: ChartDoubt, reader: Reader) -> ChartDoubtAnswer:
    said = refusal(doubt.problem, reader)
    return ChartDoubtAnswer(
        level=doubt.level,
        code=doubt.code,
        message=said.message,
        next_step=said.next_step,
        keys=doubt.keys,
        sizes=doubt.sizes,
        expected_text=said_value(doubt.keys[0], doubt.expected, reader) if doubt.keys else "",
    )
