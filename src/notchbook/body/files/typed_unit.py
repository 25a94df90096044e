"""In which unit the file of one body was typed."""

from pathlib import Path

from notchbook.body.files.csv_lines import read_sheet
from notchbook.body.files.read_json import json_data
from notchbook.body.files.set_data import unit_of
from notchbook.body.files.text_file import MOST_BYTES_ONE_BODY, read_text_file
from notchbook.units import Unit


def typed_unit(path: Path) -> Unit | None:
    """The unit that a readable file of one body names for its bare numbers, or None."""
    text = read_text_file(path, MOST_BYTES_ONE_BODY)
    if path.suffix.lower() == ".json":
        data = json_data(text)
        return unit_of(data) if isinstance(data, dict) else None
    sheet = read_sheet(text)
    for _, line in sheet.lines:
        cells = sheet.row(line)
        if cells.get("measure", "").lower() == "unit":
            return unit_of({"unit": cells.get("value", "")})
    return None
