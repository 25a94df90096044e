"""The task runner: `python3 tools/tasks.py TASK`, on any system, with nothing but Python.

It makes the environment `.venv` when needed, then does the task. `make TASK` is the same.
"""

from __future__ import annotations

import argparse
import os
import shutil
import sys
from collections.abc import Callable
from pathlib import Path

import find_chromium
from house import PAGE, ROOT, STATIC, TaskFailed, must_run, run, say, venv_program
from venv_setup import ensure


def setup(_words: list[str]) -> int:
    """Make .venv with everything that developing needs."""
    ensure("dev")
    say("ready: .venv")
    return 0


def demo(words: list[str]) -> int:
    """Run the demo: an invented client, from her measures to cut-ready paper in out/."""
    ensure("runtime")
    return run(venv_program("notchbook"), "demo", *words)


def open_workroom(words: list[str]) -> int:
    """Open the workroom in the browser."""
    ensure("runtime", page_again=True)
    return run(venv_program("notchbook"), "open", *words)


def test(words: list[str]) -> int:
    """Run the tests; further words go to pytest (`tasks.py test tests/unit -k seam`)."""
    ensure("dev", page_again=True)
    environment = {}
    if any((ROOT / "tests" / "browser").glob("test_*.py")):
        environment["NOTCHBOOK_CHROMIUM"] = find_chromium.find_or_install()
    workers = ["-n", str(min(2, os.cpu_count() or 1)), "--dist", "loadfile"]
    return run(venv_program("python"), "-m", "pytest", *workers, *words, environment=environment)


def lint(_words: list[str]) -> int:
    """Check style, types, layers, and that the generated docs are up to date."""
    ensure("dev")
    failed = [what for what, command in lint_checks() if not _passes(what, command)]
    if not _page_passes():
        failed.append("types of the page")
    run(venv_program("python"), ROOT / "tools" / "measure_house.py")
    say(f"lint: {', '.join(failed)} FAILED" if failed else "lint: all passed")
    return 1 if failed else 0


def lint_checks() -> list[tuple[str, list[str | Path]]]:
    """What lint runs: in words, and as a command."""
    places = [name for name in ("src", "tests", "tools", "benchmarks", "examples") if (ROOT / name).is_dir()]
    places.append("hatch_build.py")
    return [
        ("style", [venv_program("ruff"), "check", *places]),
        ("format", [venv_program("ruff"), "format", "--check", *places]),
        ("types", [venv_program("mypy"), *(place for place in places if place != "examples")]),
        ("layers", [venv_program("lint-imports"), "--no-logo"]),
        *(
            (f"generated: {maker}", [venv_program("python"), ROOT / "tools" / maker, "--check"])
            for maker in MAKERS
        ),
    ]


def _passes(what: str, command: list[str | Path]) -> bool:
    say(f"lint: {what}")
    return run(*command) == 0


def _page_passes() -> bool:
    """The page's type check, when its tools are installed; they must be where the page is required."""
    if not (PAGE / "package.json").is_file():
        return True
    if not (PAGE / "node_modules" / "svelte-check").is_dir():
        required = bool(os.environ.get("NOTCHBOOK_REQUIRE_PAGE"))
        say("lint: the types of the page are not checked, for its tools are not installed")
        return not required
    say("lint: types of the page")
    if run(*_maker("make_page_types.py", "--check")) != 0:
        return False
    runner = "import sys, hatch_build; sys.exit(hatch_build.npm(sys.argv[1:]))"
    return run(venv_program("python"), "-c", runner, "run", "check") == 0


def docs(_words: list[str]) -> int:
    """Write the generated pages of docs/ anew."""
    ensure("dev")
    return max(run(*_maker(maker)) for maker in MAKERS)


def bench(words: list[str]) -> int:
    """Measure speed and size on fixed jobs, and write the figures to docs/."""
    return _program("benchmarks/run.py", words)


def survey(words: list[str]) -> int:
    """Draft the blocks for the bodies of the survey and count what closes and what is refused."""
    return _program("benchmarks/survey.py", words)


def _program(place: str, words: list[str]) -> int:
    if not (ROOT / place).is_file():
        raise TaskFailed(f"There is no {place} in this checkout.")
    ensure("dev")
    return run(venv_program("python"), ROOT / place, *words)


def lock(_words: list[str]) -> int:
    """Write requirements/*.txt anew from requirements/*.in: exact versions with hashes, no addresses."""
    uv = shutil.which("uv")
    if uv is None:
        raise TaskFailed("Locking needs the program `uv`; install it first (pipx install uv).")
    options = ["--universal", "--python-version", "3.11", "--generate-hashes", "--no-annotate", "--no-header"]
    folder = ROOT / "requirements"
    for name, bound in (("runtime", []), ("dev", ["--constraint", str(folder / "runtime.txt")])):
        lists = [str(folder / f"{name}.in"), "--output-file", str(folder / f"{name}.txt")]
        must_run(f"Locking {name}", uv, "pip", "compile", "--quiet", *options, *bound, *lists)
    return 0


def clean(_words: list[str]) -> int:
    """Remove what the tasks made (caches, builds, out/); .venv and node_modules stay."""
    for place in clean_places(ROOT):
        say(f"removing {place.relative_to(ROOT)}")
        shutil.rmtree(place)
    return 0


def clean_places(root: Path) -> list[Path]:
    """The folders that `clean` removes under this root."""
    named = ("build", "dist", "out", ".mypy_cache", ".ruff_cache", ".pytest_cache", ".hypothesis")
    places = [root / name for name in (*named, ".import_linter_cache")]
    places.append(root / STATIC.relative_to(ROOT))
    for name in ("src", "tests", "tools", "benchmarks", "examples"):
        places += (root / name).rglob("__pycache__")
    return [place for place in places if place.is_dir()]


MAKERS = ("make_docs.py", "make_schema_page.py", "make_recipe_pages.py")
"""What writes the generated pages of docs/; each knows ``--check``."""

TASKS: dict[str, Callable[[list[str]], int]] = {
    "setup": setup,
    "demo": demo,
    "test": test,
    "lint": lint,
    "open": open_workroom,
    "bench": bench,
    "survey": survey,
    "docs": docs,
    "lock": lock,
    "clean": clean,
}


def main(words: list[str]) -> int:
    """Do the task that the words name; the exit code."""
    table = "\n".join(f"  {name:8}{task.__doc__}" for name, task in TASKS.items())
    parser = argparse.ArgumentParser(
        prog="tasks.py",
        description=f"tasks:\n{table}",
        epilog="Further words go to the program of the task.",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("task", choices=TASKS, metavar="TASK")
    if not words or words[0] in {"-h", "--help"}:
        parser.print_help()
        return 0 if words else 2
    task = TASKS[parser.parse_args(words[:1]).task]
    try:
        return task(words[1:])
    except TaskFailed as failure:
        print(f"{failure}", file=sys.stderr)
        return failure.exit_code
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
