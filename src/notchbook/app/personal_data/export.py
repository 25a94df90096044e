"""A client's data to take away: one archive that can be read without the program."""

import csv
import io
import json
import zipfile
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final

from notchbook.app.personal_data.hers import Hers, gather
from notchbook.body import MeasureSet, set_from_data
from notchbook.body.files.write_measures import csv_text, json_text
from notchbook.book import Book, Document, Event, Revision
from notchbook.errors import InputError
from notchbook.output.files import write_file
from notchbook.recipe import canonical_json

ENDING: Final = ".zip"

_README: Final = """\
Measures of {name} ({number}), taken out of the book of a pattern studio on {day}.

All files are plain text in UTF-8. Lengths are in mm, angles in degrees, weights in kg. Left and right are the
wearer's.

measures.csv    her measures as they are now, one line each, and how they were taken; opens in a spreadsheet
measures.json   the same as JSON
history.csv     what was done to them: version, time (UTC), by whom, what, a note, the file of that state
history/        the measures as they were after each change
styles/         the styles that are drafted for her: the recipe and her measures, as JSON
revisions/      states of her measures, and of styles, that were frozen on them: recipe, measures, shapes

Status: "measured" was taken with the tape, "chart" comes from a size chart, "estimated" was reckoned from
her other measures and lies within the error (plus or minus) for nine bodies of ten. Readings: what the tape
said each time.
"""


def export_client(book: Book, body: int, path: Path) -> Path:
    """Write the archive; whole or not at all.

    Refused: ``export-ending`` for a file that does not end in .zip, ``entry-not-body``, and what
    :func:`notchbook.output.files.write_file` refuses.
    """
    if path.suffix.lower() != ENDING:
        raise InputError("export-ending", path=str(path))
    return write_file(path, client_archive(book, body))


def client_archive(book: Book, body: int) -> bytes:
    """The archive itself (zip). InputError ``entry-not-body``."""
    hers = gather(book, body)
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in _files(book, hers):
            # Without the time of day: on one day the same book gives the same bytes.
            archive.writestr(zipfile.ZipInfo(name), text, zipfile.ZIP_DEFLATED)
    return stream.getvalue()


def _files(book: Book, hers: Hers) -> Iterator[tuple[str, str]]:
    """(name, text) of each file of the archive."""
    document = hers.document
    measures = _set(document.content)
    day = datetime.now(UTC).date().isoformat()
    yield "README.txt", _README.format(name=document.name, number=document.number, day=day)
    yield "measures.csv", csv_text(measures)
    yield "measures.json", json_text(measures)
    events = book.history(document.id)
    yield "history.csv", _history(events)
    for event in events:
        if event.state == event.version_after:
            yield _state_name(event), json_text(_set(book.read(document.id, event.version_after).content))
    for style in hers.styles:
        yield f"styles/{style.number}.json", canonical_json(_style(style, document))
    for revision in (*book.revisions(document.id), *hers.frozen):
        name = f"revisions/{revision.number}-{revision.revision}.json"
        yield name, canonical_json(_revision(book, revision))


def _history(events: tuple[Event, ...]) -> str:
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    writer.writerow(("version", "at", "by", "what", "note", "measures"))
    states = {event.version_after: _state_name(event) for event in events}
    for event in events:
        at = event.at.isoformat(timespec="seconds")
        row = (event.version_after, at, event.actor, event.kind, event.note, states[event.state])
        writer.writerow(row)
    return stream.getvalue()


def _state_name(event: Event) -> str:
    return f"history/measures-{event.state:04d}.json"


def _style(style: Document, body: Document) -> dict[str, Any]:
    """The style in the form of a style file without its shapes, which are drawn from it."""
    return {
        "format": "notchbook style",
        "format_version": 1,
        "recipe": json.loads(style.content)["recipe"],
        "measures": json.loads(body.content),
    }


def _revision(book: Book, revision: Revision) -> dict[str, Any]:
    contents = book.revision_contents(revision.id)
    return {
        "reason": revision.reason,
        "frozen_by": revision.frozen_by,
        "frozen_at": revision.frozen_at.isoformat(timespec="seconds"),
        "approved_by": revision.approved_by,
        "content": json.loads(contents.content),
        "measures": None if contents.measures is None else json.loads(contents.measures),
        "shapes": None if contents.geometry is None else json.loads(contents.geometry),
    }


def _set(content: str) -> MeasureSet:
    return set_from_data(json.loads(content))
