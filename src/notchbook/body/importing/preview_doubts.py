"""What is to be looked at again in a row of an import."""

from dataclasses import replace
from typing import Final

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.look_over import look_over
from notchbook.body.importing.preview_rows import PreviewRow, RowDoubt
from notchbook.units import LengthStyle

MOST_ROWS_HELD: Final = 300
"""Rows that are held against their population in a preview, which takes some milliseconds each. Longer
lists are looked over afterwards, with ``notchbook measures check``."""


def with_doubts(row: PreviewRow, style: LengthStyle, *, held: bool) -> PreviewRow:
    """The row with its doubts; ``held``: against the population that its set names, too."""
    if row.measures is None:
        return row
    certain = look_over(replace(row.measures, population=None), style).doubts
    found = certain
    if held and row.measures.population is not None:
        found = look_over(row.measures, style).doubts
    contradicted = any(doubt.level == "stop" for doubt in certain)
    return replace(row, doubts=tuple(_row_doubt(doubt, style) for doubt in found), contradicted=contradicted)


def _row_doubt(doubt: Doubt, style: LengthStyle) -> RowDoubt:
    return RowDoubt(
        doubt.level,
        doubt.code,
        doubt.problem.text(style.text),
        doubt.problem.next_step(style.text),
        doubt.keys,
        doubt.repairs,
    )
