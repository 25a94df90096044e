"""A studio with an invented client, for each test a copy of one that is made once."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from support.clients import Room, furnished, opened


@pytest.fixture(scope="session")
def furnished_book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The file of a book in which a client has left all that a client leaves."""
    room = furnished(tmp_path_factory.mktemp("clients"))
    room.studio.close()
    return room.path


@pytest.fixture
def room(furnished_book: Path, tmp_path: Path) -> Iterator[Room]:
    """A copy of it, open, alone in its folder."""
    folder = tmp_path / "studio"
    folder.mkdir()
    made = opened(Path(shutil.copy(furnished_book, folder / "studio.notchbook")))
    yield made
    made.studio.close()
