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


def refuse_same_file(targets: Iterable[Path]) -> None:
    """Refuse (``outputs-same-file``) to write two things under one name: only the last would stay."""
    seen: list[Path] = []
    for target in targets:
        if any(_is_same(target, other) for other in seen):
            raise InputError("outputs-same-file", path=str(target))
        seen.append(target)


def refuse_folder(target: Path) -> None:
    """Refuse (``output-is-folder``) to write a file where a folder is."""
    if target.is_dir():
        raise OutputError("output-is-folder", path=str(target))


def refuse_without_ending(target: Path, known: Iterable[str]) -> None:
    """Refuse a folder (``output-is-folder``), and a name that does not say what is written
    (``suffix-missing``); ``known`` are the endings that do."""
    refuse_folder(target)
    if not target.suffix:
        raise InputError("suffix-missing", path=str(target), known=tuple(known))


def refuse_other_ending(target: Path, wanted: str) -> None:
    """As :func:`refuse_without_ending`, and refuse any ending but this one (``suffix-unknown``)."""
    refuse_without_ending(target, (wanted,))
    if target.suffix.lower() != wanted:
        raise InputError("suffix-unknown", suffix=target.suffix, known=(wanted,))


def _is_same(one: Path, other: Path) -> bool:
    """Whether both names lead to one file, by links too, be it there already or not."""
    if one.exists() and other.exists():
        return one.samefile(other)
    return one.resolve() == other.resolve()


def _room(target: Path) -> Path:
    if not target.parent.is_dir():
        raise OutputError("output-folder-missing", path=str(target), folder=str(target.parent))
    try:
        return Path(tempfile.mkdtemp(prefix=".papers-", dir=target.parent))
    except OSError as error:
        raise _refusal(error, target) from error


def _take_place(place: Path, target: Path) -> None:
    refuse_folder(target)
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
