"""What kind of folder a book lies in: the write-ahead log needs shared memory, which networks lack.

Source: "Write-Ahead Logging", sqlite.org/wal.html: all processes must be on one computer; it does not work
over a network file system.
"""

import os
import re
import subprocess
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

_LOCAL: Final = frozenset(
    {
        "apfs",
        "bcachefs",
        "btrfs",
        "exfat",
        "ext2",
        "ext3",
        "ext4",
        "f2fs",
        "hfs",
        "jfs",
        "msdos",
        "ntfs",
        "ntfs3",
        "overlay",
        "ramfs",
        "reiserfs",
        "tmpfs",
        "ufs",
        "vfat",
        "xfs",
        "zfs",
    }
)
"""File systems of one computer, as the systems name them (from memory). All others count as a network:
the rollback journal is right everywhere, only slower."""

_DRIVE_KINDS: Final = {
    0: "unknown",
    1: "unknown",
    2: "removable",
    3: "fixed",
    4: "remote",
    5: "disc",
    6: "ram",
}
"""Answers of GetDriveTypeW (Windows API reference, fileapi.h)."""
_LOCAL_DRIVES: Final = frozenset({"removable", "fixed", "ram"})
_UNKNOWN: Final = "unknown"


@dataclass(frozen=True, slots=True)
class Folder:
    """A folder's file system, and whether it is one of this computer."""

    file_system: str
    local: bool


def folder_of(path: Path, system: str = sys.platform) -> Folder:
    """The kind of the folder that ``path`` lies in; an unknown one does not count as local."""
    if system == "win32":
        return _windows(path)
    if system == "darwin":
        return _of_file_system(_mounted(path, _mac_mounts()))
    return _of_file_system(_mounted(path, _linux_mounts()))


def _of_file_system(name: str) -> Folder:
    return Folder(name, name in _LOCAL)


def _mounted(path: Path, mounts: Iterable[tuple[str, str]]) -> str:
    """The file system of the deepest mount above ``path``; of two mounts on one place, the later."""
    above = {str(place) for place in (path, *path.parents)}
    found, depth = _UNKNOWN, 0
    for place, file_system in mounts:
        if place in above and len(place) >= depth:
            found, depth = file_system, len(place)
    return found


def _linux_mounts() -> list[tuple[str, str]]:
    try:
        lines = Path("/proc/self/mountinfo").read_text(encoding="utf-8", errors="surrogateescape")
    except OSError:
        return []
    return parse_mountinfo(lines)


def parse_mountinfo(lines: str) -> list[tuple[str, str]]:
    """Place and file system of each mount, from the text of /proc/self/mountinfo (man 5 proc)."""
    mounts = []
    for line in lines.splitlines():
        head, dash, tail = line.partition(" - ")
        if dash:
            place = re.sub(r"\\([0-7]{3})", lambda sign: chr(int(sign[1], 8)), head.split(" ")[4])
            mounts.append((place, tail.split(" ")[0]))
    return mounts


def _mac_mounts() -> list[tuple[str, str]]:
    try:
        lines = subprocess.run(["/sbin/mount"], capture_output=True, text=True, check=False, timeout=5).stdout
    except (OSError, subprocess.SubprocessError):
        return []
    return parse_mount_list(lines)


def parse_mount_list(lines: str) -> list[tuple[str, str]]:
    """Place and file system of each mount, from lines ``source on /place (apfs, local, ...)``."""
    found = (re.fullmatch(r".*? on (/.*) \(([^,)]+).*\)", line) for line in lines.splitlines())
    return [(match[1], match[2]) for match in found if match]


def _windows(path: Path) -> Folder:
    if sys.platform != "win32" or path.drive.startswith("\\\\"):
        return Folder("remote", local=False)
    import ctypes

    kind = ctypes.windll.kernel32.GetDriveTypeW(path.drive + os.sep)
    name = _DRIVE_KINDS.get(int(kind), _UNKNOWN)
    return Folder(name, name in _LOCAL_DRIVES)
