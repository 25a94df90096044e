"""Foreign tables: from the text of a client list or a size chart to measure sets, with a preview in between.

``read_table`` takes the text apart, ``propose`` says what each column or row would mean and why,
``preview`` shows what would be stored. Nothing is guessed silently: what is not sure is an open question.
"""

from notchbook.body.importing.answers import (
    Again,
    Answers,
    LineAnswer,
    RowAnswer,
    read_line_answer,
    read_row_answer,
)
from notchbook.body.importing.foreign_table import ForeignBody, ForeignLine, ForeignTable, Layout, SetAside
from notchbook.body.importing.known_names import KnownNames, fold_name
from notchbook.body.importing.mapping import MappedLine, Question, TableMapping
from notchbook.body.importing.preview import preview
from notchbook.body.importing.preview_chart import chart_doubts, gives_chart, preview_chart
from notchbook.body.importing.preview_rows import Preview, PreviewRow, PreviewValue, Refusal
from notchbook.body.importing.propose import propose
from notchbook.body.importing.read_table import read_table

__all__ = [
    "Again",
    "Answers",
    "ForeignBody",
    "ForeignLine",
    "ForeignTable",
    "KnownNames",
    "Layout",
    "LineAnswer",
    "MappedLine",
    "Preview",
    "PreviewRow",
    "PreviewValue",
    "Question",
    "Refusal",
    "RowAnswer",
    "SetAside",
    "TableMapping",
    "chart_doubts",
    "fold_name",
    "gives_chart",
    "preview",
    "preview_chart",
    "propose",
    "read_line_answer",
    "read_row_answer",
    "read_table",
]
