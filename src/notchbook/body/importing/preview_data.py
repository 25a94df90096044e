"""A preview as plain data, for programs."""

from dataclasses import asdict
from typing import Any

from notchbook.body.files.set_data import set_to_data
from notchbook.body.importing.preview_rows import Preview, PreviewRow


def preview_data(preview: Preview) -> dict[str, Any]:
    """The preview as data that JSON can hold; lengths in mm."""
    table, mapping = preview.table, preview.mapping
    return {
        "source": preview.source,
        "layout": table.layout,
        "delimiter": table.delimiter,
        "header_line": table.header_line,
        "kind": mapping.kind,
        "kind_why": mapping.kind_why,
        "ready": preview.ready,
        "good": preview.good,
        "refused": preview.refused,
        "waiting": preview.waiting,
        "left_out": preview.left_out,
        "to_check": preview.to_check,
        "held": preview.held,
        "questions": [asdict(question) for question in preview.questions],
        "lines": [asdict(line) for line in mapping.lines],
        "set_aside": [asdict(aside) for aside in preview.set_aside],
        "rows": [_row_data(row) for row in preview.rows],
    }


def _row_data(row: PreviewRow) -> dict[str, Any]:
    return {
        "number": row.number,
        "id": row.id,
        "name": row.name,
        "good": row.good,
        "state": row.state,
        "in_book": row.in_book,
        "choice": row.choice,
        "other_unit": row.other_unit,
        "unread": list(row.unread),
        "values": [asdict(value) for value in row.values],
        "refusals": [asdict(refusal) for refusal in row.refusals],
        "doubts": [asdict(doubt) for doubt in row.doubts],
        "measures": set_to_data(row.measures) if row.measures is not None else None,
    }
