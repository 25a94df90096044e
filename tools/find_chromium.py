"""Finds the browser for the page's tests: Chromium, installed or installable."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Callable, Mapping
from pathlib import Path

from house import TaskFailed, run, say, venv_program

NAMES = ("chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome", "msedge")
MISSING = (
    "The tests of the page need Chromium, and none was found. Install one (on Debian: apt-get install"
    " chromium), or name it: NOTCHBOOK_CHROMIUM=/path/to/chromium, or run:"
    " .venv/bin/python -m playwright install chromium"
)


def find(environment: Mapping[str, str], which: Callable[[str], str | None] = shutil.which) -> str | None:
    """The path of a Chromium: the one named in NOTCHBOOK_CHROMIUM, else on PATH, else playwright's own.

    A named one that does not exist raises TaskFailed: a wrong name must not be passed over.
    """
    named = environment.get("NOTCHBOOK_CHROMIUM")
    if named:
        if which(named) is None:
            raise TaskFailed(f"NOTCHBOOK_CHROMIUM names {named}, and there is no such program.")
        return named
    return next((path for path in map(which, NAMES) if path), None) or _from_playwright()


def find_or_install() -> str:
    """The path of a Chromium, installed from the system's packages when we may; TaskFailed without one."""
    found = find(os.environ)
    if found:
        return found
    if hasattr(os, "geteuid") and os.geteuid() == 0 and shutil.which("apt-get"):
        say("installing Chromium for the tests of the page")
        quiet = {"DEBIAN_FRONTEND": "noninteractive"}
        run("apt-get", "update", "-qq", environment=quiet)
        run("apt-get", "install", "-y", "-qq", "--no-install-recommends", "chromium", environment=quiet)
        found = find(os.environ)
    if not found:
        raise TaskFailed(MISSING, 3)
    return found


def _from_playwright() -> str | None:
    """The browser that playwright has fetched for itself, if any."""
    python = venv_program("python")
    if not python.exists():
        return None
    script = (
        "from playwright.sync_api import sync_playwright as start\n"
        "with start() as tool: print(tool.chromium.executable_path)"
    )
    answer = subprocess.run([str(python), "-c", script], capture_output=True, text=True, check=False)
    path = answer.stdout.strip()
    return path if answer.returncode == 0 and path and Path(path).exists() else None
