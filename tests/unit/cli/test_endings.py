"""However a command ends, it ends in words: faults of the program, Ctrl-C, a reader that goes away."""

import signal
import subprocess
import time
from pathlib import Path
from typing import Any, NoReturn

import pytest

from notchbook.app import explaining
from notchbook.app.needs import garment_parameters
from notchbook.errors import HouseFault
from support.command import PROGRAM, contents, typed


def raising(error: BaseException) -> Any:
    """A function that raises this, whatever it is given."""

    def raises(*words: Any, **more: Any) -> NoReturn:
        raise error

    return raises


@pytest.mark.parametrize(
    "error", [HouseFault("ledger-name-vanished", step="vent-1", names="x"), ZeroDivisionError("by zero")]
)
def test_a_fault_of_the_program_says_so(error: BaseException, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(explaining, "explain", raising(error))
    ended = typed("why", "measure-missing")
    assert ended.code == 3
    assert "A fault of the program" in ended.err
    assert "report" in ended.err
    assert "test_endings.py, line" in ended.err
    assert "Traceback" not in ended.err


def test_a_refusal_without_its_facts_is_a_fault_in_words(monkeypatch: pytest.MonkeyPatch) -> None:
    from notchbook.errors import InputError

    monkeypatch.setattr(explaining, "explain", raising(InputError("measure-missing")))
    ended = typed("why", "measure-missing")
    assert ended.code == 3
    assert "A fault of the program" in ended.err


def test_ctrl_c_ends_in_words(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(garment_parameters, "blocks", raising(KeyboardInterrupt()))
    ended = typed("blocks")
    assert ended.code == 130
    assert ended.err.startswith("Stopped.")


def test_ctrl_c_stops_a_run_over_many_bodies_and_leaves_nothing(tmp_path: Path) -> None:
    head = "id,unit,waist_girth,hip_girth,hip_depth\n"
    (tmp_path / "bodies.csv").write_text(head + "".join(f"b{n},cm,70,97,20.5\n" for n in range(4000)))
    before = contents(tmp_path)
    words = ("mtm", "skirt", "-b", "bodies.csv", "-r", "report.csv", "--cores", "2")
    with subprocess.Popen([*PROGRAM, *words], cwd=tmp_path, stderr=subprocess.PIPE) as running:
        time.sleep(3.0)
        running.send_signal(signal.SIGINT)
        _, complaint = running.communicate(timeout=60)
    assert running.returncode == 130, complaint
    assert complaint.decode().startswith("Stopped.")
    assert b"Traceback" not in complaint
    assert contents(tmp_path) == before


@pytest.mark.parametrize("words", [["blocks"], ["--help"], ["blocks", "--json"]])
def test_a_reader_that_goes_away_is_no_fault(words: list[str]) -> None:
    """141 is 128 + SIGPIPE (13), as shells count it (POSIX)."""
    with subprocess.Popen([*PROGRAM, *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE) as running:
        assert running.stdout is not None
        assert running.stderr is not None
        running.stdout.close()
        complaint = running.stderr.read()
        assert running.wait(timeout=60) == 141
    assert complaint == b""


def test_signs_that_a_terminal_lacks_do_not_stop_a_command(tmp_path: Path) -> None:
    """An English Windows writes in code page 1252, an old terminal in ASCII."""
    for encoding in ("cp1252", "ascii"):
        done = subprocess.run(
            [*PROGRAM, "blocks"],
            env={"PYTHONIOENCODING": encoding},
            capture_output=True,
            check=False,
            timeout=60,
        )
        assert done.returncode == 0, done.stderr
        assert b"hip_depth" in done.stdout
