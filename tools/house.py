"""Where things are in this repository, and how a program is started. Standard library only."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
PAGE = ROOT / "frontend"
STATIC = ROOT / "src" / "notchbook" / "workroom" / "static"


class TaskFailed(Exception):
    """A task that cannot go on: words for the person at the terminal, and the exit code."""

    def __init__(self, message: str, exit_code: int = 1) -> None:
        self.exit_code = exit_code
        super().__init__(message)


def venv_program(name: str, *, windows: bool = os.name == "nt") -> Path:
    """The path of an installed program (``python``, ``ruff``) inside the environment."""
    return VENV / ("Scripts" if windows else "bin") / (f"{name}.exe" if windows else name)


def say(message: str) -> None:
    """A line for the person at the terminal, in order with the output of the programs that we start."""
    print(f"==> {message}", flush=True)


def run(*command: str | Path, environment: dict[str, str] | None = None, folder: Path = ROOT) -> int:
    """Start a program, its output straight to the terminal; its exit code."""
    sys.stdout.flush()
    variables = {**os.environ, **(environment or {})}
    try:
        return subprocess.run(
            [str(part) for part in command], cwd=folder, env=variables, check=False
        ).returncode
    except OSError as error:
        raise TaskFailed(f"{command[0]} could not be started: {error}", 127) from error


def must_run(what: str, *command: str | Path, environment: dict[str, str] | None = None) -> None:
    """Start a program that has to succeed; ``what`` says in words what it is for."""
    code = run(*command, environment=environment)
    if code:
        raise TaskFailed(f"{what} failed (exit code {code}); the lines above say why.", code)
