"""Folders on a network are told from those of this computer."""

from pathlib import Path, PurePosixPath, PureWindowsPath

import pytest

from notchbook.book import Book, folder
from notchbook.book.connecting import Journal, file_uri, journal_for
from notchbook.book.folder import Folder, folder_of, parse_mount_list, parse_mountinfo
from support.books import add_style, settings, use_rollback_journal

# Lines of the form of man 5 proc (proc_pid_mountinfo); the places are invented.
MOUNTINFO = """\
22 1 254:0 / / rw,relatime shared:1 - ext4 /dev/vda rw
36 22 0:34 / /mnt/studio rw,relatime shared:20 - nfs4 server:/studio rw,vers=4.2
37 22 0:35 / /mnt/two\\040words rw shared:21 master:3 - cifs //server/two rw
38 36 0:36 / /mnt/studio/fast rw - tmpfs tmpfs rw
"""

# The form of the output of mount(8) on a Mac (from memory).
MOUNT_LIST = """\
/dev/disk3s1s1 on / (apfs, sealed, local, read-only, journaled)
//ines@server/Patterns (old) on /Volumes/Patterns (old) (smbfs, nodev, nosuid, mounted by ines)
/dev/disk5s1 on /Volumes/Key (msdos, local, nodev)
"""


def at(place: str, monkeypatch: pytest.MonkeyPatch, system: str = "linux") -> Folder:
    monkeypatch.setattr(folder, "_linux_mounts", lambda: parse_mountinfo(MOUNTINFO))
    monkeypatch.setattr(folder, "_mac_mounts", lambda: parse_mount_list(MOUNT_LIST))
    return folder_of(Path(place), system)


@pytest.mark.skipif("os.name == 'nt'")
@pytest.mark.parametrize(
    ("place", "wanted"),
    [
        ("/home/a.notchbook", Folder("ext4", local=True)),
        ("/mnt/studio/a.notchbook", Folder("nfs4", local=False)),
        ("/mnt/studio2/a.notchbook", Folder("ext4", local=True)),
        ("/mnt/two words/a.notchbook", Folder("cifs", local=False)),
        ("/mnt/studio/fast/a.notchbook", Folder("tmpfs", local=True)),
    ],
)
def test_the_deepest_mount_counts(place: str, wanted: Folder, monkeypatch: pytest.MonkeyPatch) -> None:
    assert at(place, monkeypatch) == wanted


@pytest.mark.skipif("os.name == 'nt'")
def test_mounts_of_a_mac(monkeypatch: pytest.MonkeyPatch) -> None:
    assert at("/Users/a.notchbook", monkeypatch, "darwin") == Folder("apfs", local=True)
    assert at("/Volumes/Patterns (old)/a", monkeypatch, "darwin") == Folder("smbfs", local=False)
    assert at("/Volumes/Key/a", monkeypatch, "darwin") == Folder("msdos", local=True)


def test_what_cannot_be_told_counts_as_a_network(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(folder, "_linux_mounts", list)
    monkeypatch.setattr(folder, "_mac_mounts", list)
    for system in ("linux", "darwin", "win32"):
        assert not folder_of(Path("//server/share/a"), system).local
    assert journal_for(Path("//server/share/a")) is Journal.ROLLBACK


@pytest.mark.parametrize(
    ("path", "uri"),
    [
        (PurePosixPath("/a b/ü?#%.db"), "file:///a%20b/%C3%BC%3F%23%25.db?mode=rw"),
        (PureWindowsPath("C:\\a b\\c.db"), "file:///C%3A/a%20b/c.db?mode=rw"),
        (PureWindowsPath("\\\\server\\share\\c.db"), "file:////server/share/c.db?mode=rw"),
    ],
)
def test_paths_as_uris(path: Path, uri: str) -> None:
    """Source: sqlite.org/uri.html, "URI path"."""
    assert file_uri(path, "mode=rw") == uri


def test_a_book_on_this_computer_has_the_write_ahead_log(book: Book) -> None:
    add_style(book)
    assert book.notice is None
    assert book.path.with_name(book.path.name + "-wal").exists()


def test_a_book_on_a_network_has_the_rollback_journal(
    book_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The same file goes to a network and comes back; it never loses an entry."""
    with Book.open(book_path, settings()) as here:
        add_style(here)
    with monkeypatch.context() as away:
        use_rollback_journal(away.setattr)
        with Book.open(book_path, settings()) as there:
            assert there.notice is not None
            assert "rollback journal" in there.notice
            add_style(there, "S-105")
            assert [path.name for path in book_path.parent.iterdir()] == [book_path.name]
    with Book.open(book_path, settings()) as back:
        assert back.notice is None
        assert [line.number for line in back.list()] == ["S-104", "S-105"]


def test_every_connection_has_safe_settings(book: Book) -> None:
    """Source of the numbers: sqlite.org/pragma.html (synchronous: FULL is 2, EXTRA is 3)."""
    wanted = {"synchronous": 2, "foreign_keys": 1, "recursive_triggers": 1, "trusted_schema": 0}
    with book._engine.connect() as connection:
        found = {name: connection.exec_driver_sql(f"PRAGMA {name}").scalar_one() for name in wanted}
    assert found == wanted
