"""The example package outside the house, put on the path as if it were installed."""

import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from notchbook.checks.registry import check_sources, load_check
from notchbook.output.registry import output, output_sources
from notchbook.recipe.registry import definition, operation_sources

PLUGIN = Path(__file__).parents[2] / "examples" / "plugin"


def installed(monkeypatch: pytest.MonkeyPatch, folder: Path) -> Iterator[None]:
    """The example with the entry points of its pyproject, taken away again afterward."""
    project = tomllib.loads((PLUGIN / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    info = folder / f"{project['name'].replace('-', '_')}-{project['version']}.dist-info"
    info.mkdir()
    (info / "METADATA").write_text(f"Name: {project['name']}\nVersion: {project['version']}\n")
    lines = []
    for group, points in project["entry-points"].items():
        lines += [f"[{group}]", *(f"{name} = {where}" for name, where in points.items())]
    (info / "entry_points.txt").write_text("\n".join(lines) + "\n")
    monkeypatch.syspath_prepend(str(folder))
    monkeypatch.syspath_prepend(str(PLUGIN / "src"))
    _forget()
    yield
    for name in [name for name in sys.modules if name.startswith("studio_steps")]:
        del sys.modules[name]
    monkeypatch.undo()
    _forget()


def _forget() -> None:
    for found in (operation_sources, definition, check_sources, load_check, output_sources, output):
        found.cache_clear()
