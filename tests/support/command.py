"""Typing a command of Notchbook: in this process, or as a process of its own."""

import io
import os
import subprocess
import sys
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from pathlib import Path

from notchbook.cli.main import run

PROGRAM = (sys.executable, "-c", "from notchbook.cli.main import main; main()")
"""The command as a process, without relying on where its script was installed."""


@dataclass(frozen=True)
class Ended:
    """How a command ended: exit code, what it said, what it complained of."""

    code: int
    out: str
    err: str


def typed(*words: str | Path) -> Ended:
    """Run the command in this process."""
    out, err = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(err):
        code = run([str(word) for word in words])
    return Ended(int(code), out.getvalue(), err.getvalue())


def typed_in_process(*words: str | Path, folder: Path, **environment: str) -> Ended:
    """Run the command as a process of its own, in a folder."""
    done = subprocess.run(
        [*PROGRAM, *(str(word) for word in words)],
        cwd=folder,
        env={**os.environ, **environment},
        capture_output=True,
        check=False,
        timeout=120,
    )
    out, err = (text.decode("utf-8", "replace") for text in (done.stdout, done.stderr))
    return Ended(done.returncode, out, err)


def contents(folder: Path) -> dict[str, bytes | None]:
    """Everything in a folder: the bytes of files by their path, None for folders."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() else None
        for path in sorted(folder.rglob("*"))
    }
