"""Importing a foreign table: read, shown, and stored as a whole, into a book or into files."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from notchbook.app.staging import refuse_over_input, staged
from notchbook.app.studio import EntrySummary, Studio
from notchbook.body import MeasureSet, write_measures
from notchbook.body.charts import write_chart
from notchbook.body.files.text_file import MOST_BYTES_BODIES, read_text_file
from notchbook.body.files.write_bodies import write_bodies
from notchbook.body.importing import (
    Answers,
    KnownNames,
    Layout,
    Preview,
    fold_name,
    gives_chart,
    preview,
    preview_chart,
    propose,
    read_table,
)
from notchbook.errors import InputError, OutputError
from notchbook.units import located_errors, quoted

BODIES_FILES = (".csv", ".json")
"""Endings of a file that takes all bodies; any other place is a folder with a file for each."""


@dataclass(frozen=True, slots=True)
class ImportReport:
    """What was stored, as entries of the book or as files; how many refused rows were left, and how many rows
    she left out."""

    stored: int
    left: int
    left_out: int = 0
    entries: tuple[EntrySummary, ...] = ()
    files: tuple[Path, ...] = ()


def names_in(studio: Studio) -> dict[str, str]:
    """The names of the book's bodies, forms and sizes, folded, each with the number of its first entry."""
    return {fold_name(entry.name): entry.number for entry in reversed(studio.list_bodies())}


def preview_text(
    text: str,
    source: str = "",
    answers: Answers | None = None,
    layout: Layout | None = None,
    known: KnownNames | None = None,
) -> Preview:
    """What an import of this text would store, with her answers put in.

    ``source`` names the list; ``known`` are the names in the book where it is to be stored, as
    :func:`names_in` gives them. Refused as :func:`notchbook.body.importing.read_table` and ``propose`` say.
    """
    table = read_table(text, layout)
    return preview(table, propose(table, answers), source, known)


def preview_file(
    path: Path,
    answers: Answers | None = None,
    layout: Layout | None = None,
    known: KnownNames | None = None,
) -> Preview:
    """The same for a CSV or JSON file, which is only read; refused too as ``read_text_file`` says."""
    text = read_text_file(path, MOST_BYTES_BODIES)
    with located_errors(quoted(path.name)):
        return preview_text(text, path.stem, answers, layout, known)


def import_into(
    studio: Studio,
    shown: Preview,
    *,
    only_good: bool = False,
    progress: Callable[[int], None] | None = None,
    should_stop: Callable[[], bool] | None = None,
) -> ImportReport:
    """Store the sets of the preview in the book: all of them within one transaction, or none.

    The sizes of one chart are stored as a size chart, everything else as bodies (forms, sizes).
    ``progress`` hears how many are in. ``should_stop`` is asked now and then; once it says so the book
    is left as it was and ``import-stopped`` raised. Refused as :meth:`Preview.sets` says.
    """
    sets = shown.sets(only_good=only_good)
    told = _told(progress, should_stop)
    if gives_chart(shown):
        told(0)
        state = studio.new_chart(preview_chart(shown, only_good=only_good))
        chart = EntrySummary(state.id, state.number, state.chart.name, state.version, "working", "chart")
        return ImportReport(len(sets), shown.refused, shown.left_out, entries=(chart,))
    entries = studio.new_bodies(sets, f"imported from {shown.source or 'a list'}", told)
    return ImportReport(len(sets), shown.refused, shown.left_out, entries=entries)


def import_to_files(
    shown: Preview,
    out: Path,
    *,
    only_good: bool = False,
    source: Path | None = None,
    progress: Callable[[int], None] | None = None,
    should_stop: Callable[[], bool] | None = None,
) -> ImportReport:
    """Write the sets of the preview to one file (``.csv``, ``.json``), or each to a file in a folder.

    The sizes of one chart give a chart file, everything else a bodies file or a list of sets.
    All of it or nothing is written. No file that is there is written over (``import-file-exists``), least
    of all ``source``, the one that was read. Refused too as :meth:`Preview.sets` says.
    """
    sets = shown.sets(only_good=only_good)
    told = _told(progress, should_stop)
    if source is not None:
        refuse_over_input(out, (source,))
    if out.suffix.lower() in BODIES_FILES:
        _refuse_existing(out)
        told(0)
        if gives_chart(shown):
            write_chart(preview_chart(shown, only_good=only_good), out)
        else:
            write_bodies(sets, out)
        files: tuple[Path, ...] = (out,)
    else:
        files = _write_folder(sets, out, told)
    return ImportReport(len(sets), shown.refused, shown.left_out, files=files)


def _told(
    progress: Callable[[int], None] | None, should_stop: Callable[[], bool] | None
) -> Callable[[int], None]:
    def told(done: int) -> None:
        if progress is not None:
            progress(done)
        if should_stop is not None and should_stop():
            raise InputError("import-stopped")

    return told


def _write_folder(sets: Sequence[MeasureSet], folder: Path, told: Callable[[int], None]) -> tuple[Path, ...]:
    made = not folder.exists()
    try:
        folder.mkdir(exist_ok=True)
    except OSError as error:
        raise OutputError("output-folder", path=str(folder), detail=error.strerror or "refused") from None
    targets = {name: folder / f"{name}.json" for name in _file_names(sets)}
    try:
        for target in targets.values():
            _refuse_existing(target)
        with staged(targets) as places:
            for done, (place, measures) in enumerate(zip(places.values(), sets, strict=True)):
                told(done)
                write_measures(measures, place)
    except BaseException:
        # Stopped or refused: a folder that was made for nothing goes again.
        if made and not any(folder.iterdir()):
            folder.rmdir()
        raise
    return tuple(targets.values())


def _refuse_existing(path: Path) -> None:
    if path.exists():
        raise OutputError("import-file-exists", path=str(path))


def _file_names(sets: Sequence[MeasureSet]) -> tuple[str, ...]:
    """A name of plain letters for each set, each once, capitals aside."""
    found: list[str] = []
    taken: set[str] = set()
    for measures in sets:
        letters = "".join(sign if sign.isalnum() else " " for sign in measures.name.lower())
        base = "-".join(letters.split())[:40] or "body"
        name, count = base, 1
        while name.casefold() in taken:
            count += 1
            name = f"{base}-{count}"
        taken.add(name.casefold())
        found.append(name)
    return tuple(found)
