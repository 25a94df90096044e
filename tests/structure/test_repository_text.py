"""No file of the repository names a package registry's host or a place of somebody's machine.

That no product of the trade is named or imitated is a rule for people (CONTRIBUTING.md); there is no list.
"""

import re
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from house import ROOT

# Put together here so that this file does not hold what it looks for.
REGISTRY_HOSTS = [
    "pypi" + ".org",
    "python" + "hosted.org",
    "registry.npm" + "js.org",
    "npm" + "js.com",
    "registry.yarn" + "pkg.com",
]
MACHINE_PLACE = re.compile(r"(?<![\w.:~})-])(?<!:/)/(?:work|root|home/\w+|Users/\w+)/\w|[A-Z]:\\\\?Users\\")
BINARY = {".png", ".ttf", ".woff2", ".pdf", ".ico", ".sqlite", ".zip", ".gz"}


def repository_files() -> list[Path]:
    """The files that belong to the repository: known to git or new and not ignored."""
    command = ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"]
    try:
        done = subprocess.run(command, cwd=ROOT, capture_output=True, check=True)
    except (OSError, subprocess.CalledProcessError):
        pytest.skip("this is no git checkout")
    places = {ROOT / name for name in done.stdout.decode().split("\0") if name}
    return sorted(path for path in places if path.is_file() and path.suffix not in BINARY)


def offences(text: str) -> Iterator[str]:
    """What a text names and must not."""
    yield from (host for host in REGISTRY_HOSTS if host in text)
    yield from (found.group() for found in MACHINE_PLACE.finditer(text))


def test_no_registry_host_and_no_place_of_a_machine() -> None:
    found = {}
    for path in repository_files():
        named = sorted(set(offences(path.read_text(encoding="utf-8", errors="replace"))))
        if named:
            found[path.relative_to(ROOT).as_posix()] = named
    assert not found


@pytest.mark.parametrize(
    "text",
    [
        "see /wo" + "rk/shared",
        "'/ro" + "ot/x'",
        "=/ho" + "me/ann/book",
        '"resolved": "https://registry.npm' + 'js.org/x"',
    ],
)
def test_planted_names_are_found(text: str) -> None:
    assert list(offences(text))


@pytest.mark.parametrize(
    "text", ["http://host/wo" + "rk/x", "docs/wo" + "rk/x", "/usr/bin/env", "bodice/ro" + "ot/x"]
)
def test_innocent_paths_pass(text: str) -> None:
    assert not list(offences(text))


def test_test_files_have_names_of_their_own() -> None:
    names = [path.name for path in (ROOT / "tests").rglob("test_*.py")]
    twice = {name for name in names if names.count(name) > 1}
    assert not twice, f"two test files of one name: {twice}"
