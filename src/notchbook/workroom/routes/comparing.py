"""Holding a body or form against a size chart, another body, or a style."""

from typing import Annotated

from fastapi import APIRouter, Query

from notchbook.app.comparing.measures import compare_style
from notchbook.app.studio import Studio
from notchbook.body.charts import Garment, SizeChart, compare_sets, nearest_size, shipped_charts
from notchbook.errors import InputError
from notchbook.units import quoted
from notchbook.workroom.answers.comparison import (
    ComparisonAnswer,
    StyleComparisonAnswer,
    comparison_answer,
    style_comparison_answer,
)
from notchbook.workroom.answers.nearest import NearestAnswer, nearest_answer
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/bodies/{body}")

ChartWord = Annotated[str, Query(max_length=40)]
"""A shipped chart by its name (``women``), or one of the book by its id."""


@router.get("/nearest")
def read_nearest(
    body: int, studio: StudioOf, reader: ReaderOf, chart: ChartWord, garment: Garment = "dress"
) -> NearestAnswer:
    """Which size of the chart it is, and how far each measure lies off."""
    measures, sizes = studio.open_body(body).measures, chart_called(chart, studio)
    return nearest_answer(measures, sizes, nearest_size(measures, sizes, garment), reader)


@router.get("/against-body/{other}")
def read_against_body(body: int, other: int, studio: StudioOf, reader: ReaderOf) -> ComparisonAnswer:
    """The other one's measures minus this one's."""
    first, second = studio.open_body(body).measures, studio.open_body(other).measures
    return comparison_answer(compare_sets(first, second), reader)


@router.get("/against-style/{style}")
def read_against_style(body: int, style: int, studio: StudioOf, reader: ReaderOf) -> StyleComparisonAnswer:
    """The style as drafted, on this client."""
    compared = compare_style(studio.open_style(style).replay, studio.open_body(body).measures)
    return style_comparison_answer(compared, reader)


def chart_called(word: str, studio: Studio) -> SizeChart:
    """The chart that the page means; InputError ``chart-unknown`` for a word that is neither."""
    if word in shipped_charts():
        return shipped_charts()[word]
    if not (word.isascii() and word.isdigit()):
        raise InputError("chart-unknown", word=quoted(word), known=tuple(shipped_charts()))
    return studio.open_chart(int(word)).chart
