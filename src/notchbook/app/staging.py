"""Writing a set of files together: all of them take their places, or none."""

import shutil
import tempfile
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from notchbook.errors import InputError, OutputError


@contextmanager
def staged(targets: Mapping[str, Path]) -> Iterator[dict[str, Path]]:
    """Places beside the targets to write to; each file goes to its target when the block succeeds.

    So a card never lies beside a pattern of another run because the disk filled up between them.
    Refused with OutputError, as :func:`notchbook.output.write_file` does.
    """
    rooms: dict[Path, Path] = {}
    try:
        for target in targets.values():
            if target.parent not in rooms:
                rooms[target.parent] = _room(target)
        places = {name: rooms[target.parent] / target.name for name, target in targets.items()}
        with _named_by_target(places, targets):
            yield places
        for name, target in targets.items():
            _take_place(places[name], target)
    finally:
        for room in rooms.values():
            shutil.rmtree(room, ignore_errors=True)


def refuse_over_input(out: Path, inputs: Iterable[Path]) -> None:
    """Refuse (``output-over-input``) to write over a file that is being read."""
    for given in inputs:
        if out.exists() and given.exists() and out.samefile(given):
            raise InputError("output-over-input", path=str(out))


def _room(target: Path) -> Path:
    if not target.parent.is_dir():
        raise OutputError("output-folder-missing", path=str(target), folder=str(target.parent))
    try:
        return Path(tempfile.mkdtemp(prefix=".papers-", dir=target.parent))
    except OSError as error:
        raise _refusal(error, target) from error


def _take_place(place: Path, target: Path) -> None:
    if target.is_dir():
        raise OutputError("output-is-folder", path=str(target))
    if target.exists() and not target.is_file():
        raise OutputError("output-not-a-file", path=str(target))
    try:
        place.replace(target)
    except OSError as error:
        raise _refusal(error, target) from error


def _refusal(error: OSError, target: Path) -> OutputError:
    reason = error.strerror or type(error).__name__
    return OutputError("output-forbidden", path=str(target), folder=str(target.parent), reason=reason)


@contextmanager
def _named_by_target(places: Mapping[str, Path], targets: Mapping[str, Path]) -> Iterator[None]:
    """A refusal inside names the file as it was asked for, not where it was to be staged."""
    try:
        yield
    except OutputError as error:
        meant = {str(places[name]): target for name, target in targets.items()}
        target = meant.get(str(error.facts.get("path")))
        if target is None:
            raise
        facts = {**error.facts, "path": str(target), "folder": str(target.parent)}
        raise OutputError(error.code, **facts) from error
