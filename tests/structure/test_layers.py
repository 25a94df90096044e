"""Each package has its place in the house, and the linter catches who imports what is not below."""

import shutil
import subprocess
import sys
import tomllib
from pathlib import Path
from typing import Any

import pytest

from house import ROOT

PACKAGE = ROOT / "src" / "notchbook"
OUTSIDE_THE_CORE = {"output", "book", "app", "workroom", "cli"}


def contracts() -> dict[str, dict[str, Any]]:
    """The contracts of pyproject.toml by id."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    return {item["id"]: item for item in settings["tool"]["importlinter"]["contracts"]}


def packages() -> set[str]:
    """The packages that exist."""
    return {path.parent.name for path in PACKAGE.glob("*/__init__.py")}


def places() -> set[str]:
    """The packages that the layers contract names."""
    layers: list[str] = contracts()["layers"]["layers"]
    return {name.strip().strip("()") for layer in layers for name in layer.split("|")}


def test_every_package_has_a_place_among_the_layers() -> None:
    assert packages() <= places(), f"give a place in pyproject.toml to: {packages() - places()}"
    assert contracts()["layers"]["exhaustive"] is True


def test_only_the_outer_packages_are_outside_the_core() -> None:
    outside = {line.split(" ")[0].removesuffix(".**") for line in contracts()["core"]["ignore_imports"]}
    assert outside == {f"notchbook.{name}" for name in OUTSIDE_THE_CORE}


def lint_copy(folder: Path) -> subprocess.CompletedProcess[str]:
    """Run the linter over a copy of the package, by its own contracts."""
    run_it = "from importlinter.cli import lint_imports_command; lint_imports_command()"
    script = f"import sys; sys.path.insert(0, 'src'); {run_it}"
    command = [sys.executable, "-c", script, "--no-cache", "--no-logo"]
    return subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False, timeout=120)


@pytest.fixture
def house_copy(tmp_path: Path) -> Path:
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    left_out = shutil.ignore_patterns("__pycache__", "static")
    shutil.copytree(PACKAGE, tmp_path / "src" / "notchbook", ignore=left_out)
    return tmp_path


def plant(folder: Path, place: str, line: str) -> None:
    target = folder / "src" / "notchbook" / place
    target.parent.mkdir(exist_ok=True)
    if target.name != "__init__.py" and not (target.parent / "__init__.py").exists():
        (target.parent / "__init__.py").write_text("")
    target.write_text(f"{line}\n")


def test_the_house_as_it_stands_is_kept(house_copy: Path) -> None:
    done = lint_copy(house_copy)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "0 broken" in done.stdout


def test_an_import_from_above_is_caught(house_copy: Path) -> None:
    plant(house_copy, "finish/planted_target.py", "")
    plant(house_copy, "errors/planted.py", "import notchbook.finish.planted_target")
    done = lint_copy(house_copy)
    assert done.returncode == 1
    assert "notchbook.errors is not allowed to import notchbook.finish" in done.stdout


def test_a_neighbor_on_the_same_floor_is_caught(house_copy: Path) -> None:
    plant(house_copy, "style/planted_target.py", "")
    plant(house_copy, "blocks/planted.py", "import notchbook.style.planted_target")
    done = lint_copy(house_copy)
    assert done.returncode == 1
    assert "notchbook.blocks is not allowed to import notchbook.style" in done.stdout


def test_a_database_in_the_core_is_caught(house_copy: Path) -> None:
    plant(house_copy, "errors/planted.py", "import sqlite3")
    done = lint_copy(house_copy)
    assert done.returncode == 1
    assert "notchbook.errors is not allowed to import sqlite3" in done.stdout


def test_a_database_behind_a_helper_in_the_core_is_caught(house_copy: Path) -> None:
    plant(house_copy, "errors/planted_target.py", "import sqlalchemy.orm")
    plant(house_copy, "style/planted.py", "def late() -> None:\n    import notchbook.errors.planted_target")
    done = lint_copy(house_copy)
    assert done.returncode == 1
    assert "notchbook.style is not allowed to import sqlalchemy" in done.stdout


def test_a_package_without_a_place_is_caught(house_copy: Path) -> None:
    plant(house_copy, "attic/__init__.py", "")
    done = lint_copy(house_copy)
    assert done.returncode == 1
    assert "attic" in done.stdout


def test_a_page_that_reaches_for_the_book_is_caught(house_copy: Path) -> None:
    plant(house_copy, "book/planted_target.py", "")
    plant(house_copy, "workroom/planted.py", "import notchbook.book.planted_target")
    done = lint_copy(house_copy)
    assert done.returncode == 1
    assert "The book is reached by the app alone BROKEN" in done.stdout


def test_the_app_may_reach_for_the_book(house_copy: Path) -> None:
    plant(house_copy, "book/planted_target.py", "")
    plant(house_copy, "app/planted.py", "import notchbook.book.planted_target")
    assert "The book is reached by the app alone KEPT" in lint_copy(house_copy).stdout


def test_outer_packages_may_use_what_the_core_may_not(house_copy: Path) -> None:
    plant(house_copy, "output/planted.py", "import reportlab.pdfgen.canvas")
    plant(house_copy, "cli/planted.py", "import typer")
    done = lint_copy(house_copy)
    assert done.returncode == 0, done.stdout


def test_a_check_that_loads_paper_through_the_output_is_caught(house_copy: Path) -> None:
    plant(house_copy, "output/planted_target.py", "import reportlab")
    plant(house_copy, "checks/planted.py", "import notchbook.output.planted_target")
    done = lint_copy(house_copy)
    assert done.returncode == 1
    assert "not even through the output that they sit on BROKEN" in done.stdout
