"""Makes the environment `.venv` once, and finds out at a glance that it is up to date.

Two stamps lie in ``.venv/notchbook-stamps``: the fingerprint of the requirements that are installed, and
that of the project's own build. A second call compares them and does nothing.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Literal

from house import PAGE, ROOT, STATIC, VENV, TaskFailed, must_run, say, venv_program

Kind = Literal["runtime", "dev"]

OLDEST_PYTHON = (3, 11)
STAMPS = VENV / "notchbook-stamps"
PAGE_LEFT_OUT = {"node_modules", "dist", ".svelte-kit"}


def refuse_old_python(version: tuple[int, ...] = tuple(sys.version_info[:2])) -> None:
    """Raise TaskFailed in clear words when this Python is older than the project allows."""
    if version < OLDEST_PYTHON:
        wanted, found = (".".join(str(part) for part in numbers) for numbers in (OLDEST_PYTHON, version))
        raise TaskFailed(
            f"Notchbook needs Python {wanted} or newer; this is Python {found}. Install a newer one and start"
            f" with it, for example: python{wanted} tools/tasks.py setup"
        )


def fingerprint(paths: Iterable[Path], root: Path = ROOT) -> str:
    """One hash over the names and contents of these files, in any order; an absent file counts too."""
    total = hashlib.sha256()
    for path in sorted(set(paths)):
        content = path.read_bytes() if path.is_file() else b"absent"
        total.update(f"{path.relative_to(root).as_posix()}\0{len(content)}\0".encode() + content)
    return total.hexdigest()


def page_sources(page: Path = PAGE) -> list[Path]:
    """The files from which the page is built."""
    if not page.is_dir():
        return []
    found = (path for path in page.rglob("*") if path.is_file())
    return [path for path in found if not PAGE_LEFT_OUT & set(path.relative_to(page).parts)]


def is_stamped(name: str, wanted: str, stamps: Path = STAMPS) -> bool:
    """True when the stamp of this name holds this fingerprint."""
    stamp = stamps / name
    return stamp.is_file() and stamp.read_text(encoding="utf-8") == wanted


def put_stamp(name: str, value: str, stamps: Path = STAMPS) -> None:
    """Note that what has this fingerprint is installed."""
    stamps.mkdir(parents=True, exist_ok=True)
    (stamps / name).write_text(value, encoding="utf-8")


def ensure(kind: Kind, *, page_again: bool = False) -> None:
    """Have ``.venv`` with the runtime or the dev requirements and the project; instant when nothing changed.

    ``page_again`` tries the page once more when an earlier build of it failed or left it out.
    """
    refuse_old_python()
    _ensure_venv()
    _ensure_requirements(kind)
    built_from = fingerprint([ROOT / "pyproject.toml", ROOT / "hatch_build.py", *page_sources()])
    # A dev install also holds what checks the page, so it is good enough for the demo too.
    good = [f"{built_from} dev"] if kind == "dev" else [f"{built_from} dev", f"{built_from} runtime"]
    is_current = any(is_stamped("project", stamp) for stamp in good)
    if not is_current or (page_again and page_is_missing()):
        _install_project(kind)
        put_stamp("project", f"{built_from} {kind}")


def page_is_missing(page: Path = PAGE, static: Path = STATIC) -> bool:
    """True when the page has sources and no build, and a build is wanted."""
    has_sources = (page / "package.json").is_file()
    return has_sources and not (static / "index.html").is_file() and not os.environ.get("NOTCHBOOK_SKIP_PAGE")


def _ensure_venv() -> None:
    if venv_program("python").exists():
        return
    say("making the environment .venv")
    try:
        must_run("Making .venv", sys.executable, "-m", "venv", VENV)
    except TaskFailed as error:
        # A half-made environment would pass for a whole one at the next call.
        shutil.rmtree(VENV, ignore_errors=True)
        raise TaskFailed(
            f"{error} On Debian and Ubuntu the part `python3-venv` comes as a package of its own.",
            error.exit_code,
        ) from error


def _ensure_requirements(kind: Kind) -> None:
    wanted = {name: fingerprint([ROOT / "requirements" / f"{name}.txt"]) for name in ("runtime", "dev")}
    # The dev list holds all of the runtime list, so either stamp is enough for the demo.
    if is_stamped("dev", wanted["dev"]) or (kind == "runtime" and is_stamped("runtime", wanted["runtime"])):
        return
    say(f"installing the {kind} requirements (a few minutes, once)")
    listed = ROOT / "requirements" / f"{kind}.txt"
    must_run("Installing the requirements", *_pip_install("--require-hashes", "--requirement", str(listed)))
    put_stamp(kind, wanted[kind])


def _install_project(kind: Kind) -> None:
    say("installing the project")
    options = ["--no-deps", "--editable", str(ROOT)]
    environment: dict[str, str] = {}
    if kind == "dev":
        # What the build itself needs is among the dev requirements, checked by hash: take that.
        options.insert(0, "--no-build-isolation")
        environment["NOTCHBOOK_PAGE_TOOLS"] = "1"
    must_run("Installing the project", *_pip_install(*options), environment=environment)
    note = STATIC / "MISSING"
    if note.exists():
        say(note.read_text(encoding="utf-8").strip())


def _pip_install(*options: str) -> list[str]:
    return [str(venv_program("python")), "-m", "pip", "install", "--quiet", *options]
