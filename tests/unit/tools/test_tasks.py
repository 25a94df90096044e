"""The task runner: its words, what it starts, and how it ends."""

import subprocess
import sys
from pathlib import Path

import pytest

import find_chromium
import tasks
from house import ROOT, TaskFailed, must_run, run, venv_program


def test_make_and_the_task_runner_have_the_same_tasks() -> None:
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    phony = next(line for line in makefile.splitlines() if line.startswith(".PHONY:"))
    assert set(phony.split()[1:]) == set(tasks.TASKS)


def test_help_lists_every_task_with_its_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    assert tasks.main(["--help"]) == 0
    told = capsys.readouterr().out
    for name, task in tasks.TASKS.items():
        assert task.__doc__ and "\n" not in task.__doc__
        assert f"  {name:8}{task.__doc__}" in told
    assert tasks.main([]) == 2


def test_an_unknown_task_is_refused_with_the_list() -> None:
    command = [sys.executable, str(ROOT / "tools" / "tasks.py"), "bake"]
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=60)
    assert done.returncode == 2
    assert "demo" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_failed_task_ends_with_words_and_its_exit_code(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fail(_words: list[str]) -> int:
        raise TaskFailed("The iron is cold.", 7)

    monkeypatch.setitem(tasks.TASKS, "demo", fail)
    assert tasks.main(["demo"]) == 7
    assert capsys.readouterr().err == "The iron is cold.\n"


def test_further_words_go_to_the_task(monkeypatch: pytest.MonkeyPatch) -> None:
    got: list[str] = []

    def take(words: list[str]) -> int:
        got.extend(words)
        return len(words)

    monkeypatch.setitem(tasks.TASKS, "test", take)
    assert tasks.main(["test", "-k", "seam"]) == 2
    assert got == ["-k", "seam"]


def test_clean_takes_what_tasks_made_and_nothing_else(tmp_path: Path) -> None:
    made = ("out", "dist", ".mypy_cache", "src/notchbook/__pycache__", "src/notchbook/workroom/static")
    kept = ("src/notchbook/workroom", ".venv/lib", "frontend/node_modules", "docs")
    for name in (*made, *kept):
        (tmp_path / name).mkdir(parents=True, exist_ok=True)
    places = {place.relative_to(tmp_path).as_posix() for place in tasks.clean_places(tmp_path)}
    assert places == set(made)


def test_lint_runs_every_judge() -> None:
    commands = [" ".join(str(word) for word in command) for _what, command in tasks.lint_checks()]
    for judge in ("ruff check", "ruff format --check", "mypy", "lint-imports", "make_docs.py --check"):
        assert any(judge in command.replace(".exe", "") for command in commands), judge


def test_programs_of_the_environment_on_both_kinds_of_system() -> None:
    assert venv_program("ruff", windows=False).as_posix().endswith(".venv/bin/ruff")
    assert venv_program("ruff", windows=True).as_posix().endswith(".venv/Scripts/ruff.exe")


def test_a_program_that_fails_or_is_absent_is_told_in_words() -> None:
    assert run(sys.executable, "-c", "import sys; sys.exit(5)") == 5
    with pytest.raises(TaskFailed, match="Baking failed") as failed:
        must_run("Baking", sys.executable, "-c", "import sys; sys.exit(5)")
    assert failed.value.exit_code == 5
    with pytest.raises(TaskFailed, match="could not be started"):
        run(ROOT / "no-such-program")


def test_the_named_chromium_comes_first() -> None:
    which = {"/opt/mine": "/opt/mine", "chromium": "/usr/bin/chromium"}.get
    assert find_chromium.find({"NOTCHBOOK_CHROMIUM": "/opt/mine"}, which) == "/opt/mine"
    assert find_chromium.find({}, which) == "/usr/bin/chromium"


def test_a_wrongly_named_chromium_is_not_passed_over() -> None:
    with pytest.raises(TaskFailed, match="NOTCHBOOK_CHROMIUM names /opt/gone"):
        find_chromium.find({"NOTCHBOOK_CHROMIUM": "/opt/gone"}, {"chromium": "/usr/bin/chromium"}.get)


def test_without_chromium_the_words_say_how_to_get_one(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(find_chromium, "find", lambda environment: None)
    monkeypatch.setattr("os.geteuid", lambda: 1000, raising=False)
    with pytest.raises(TaskFailed, match="apt-get install chromium") as failed:
        find_chromium.find_or_install()
    assert failed.value.exit_code == 3
