"""Exporting bodies from a book: one to a file of its own, several to a bodies file."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from notchbook.app.studio import Studio
from notchbook.body import write_measures
from notchbook.body.files.write_bodies import write_bodies
from notchbook.errors import InputError
from notchbook.units import Unit


@dataclass(frozen=True, slots=True)
class ExportReport:
    """What was written: the file, and the numbers of the bodies in it."""

    path: Path
    numbers: tuple[str, ...]


def export_bodies(studio: Studio, out: Path, numbers: Sequence[str] = (), unit: Unit = "mm") -> ExportReport:
    """Write bodies of the book to a ``.csv`` or ``.json`` file, lengths in ``unit``.

    One number gives the file of one body, which every command with ``--measures`` reads; several, or none
    for all of the book, give a bodies file (CSV, the numbers as ids) or a list of sets (JSON).
    Refused: an unknown number (``book-number-missing``), an entry that is no body (``entry-not-body``),
    a book without bodies (``export-nothing``), another ending (``measures-file-kind``).
    """
    if len(numbers) == 1:
        state = studio.body_numbered(numbers[0])
        write_measures(state.measures, out, unit)
        return ExportReport(out, (state.number,))
    if numbers:
        states = {state.number: state.measures for state in map(studio.body_numbered, numbers)}
    else:
        states = {summary.number: measures for summary, measures in studio.all_bodies()}
    if not states:
        raise InputError("export-nothing")
    write_bodies(tuple(states.values()), out, unit, tuple(states))
    return ExportReport(out, tuple(states))
