"""Help of any verb answers at once: nothing that reckons, draws, stores or serves is loaded for it."""

import subprocess
import sys

import pytest

from notchbook.cli.client.group import CLIENT_VERBS
from notchbook.cli.main import VERBS
from notchbook.cli.measures.group import MEASURES_VERBS

HEAVY = {
    "numpy", "scipy", "shapely", "pydantic", "sqlalchemy", "alembic", "fastapi", "uvicorn", "reportlab",
    "pikepdf", "pypdfium2", "PIL", "rich",
}  # fmt: skip
SCRIPT = """
import sys
from notchbook.cli.main import run
code = run(sys.argv[1:])
print("loaded:", *sorted({name.partition(".")[0] for name in sys.modules}))
print("own:", *sorted(name for name in sys.modules if name.startswith("notchbook.")))
sys.exit(code)
"""


def loaded(*words: str) -> tuple[set[str], set[str]]:
    """The packages, and the modules of our own, that a command loads."""
    done = subprocess.run([sys.executable, "-c", SCRIPT, *words], capture_output=True, text=True, check=True)
    packages, own = (line.partition(": ")[2].split() for line in done.stdout.splitlines()[-2:])
    return set(packages), set(own)


ALL_VERBS = [
    *([verb] for verb in VERBS),
    *(["measures", verb] for verb in MEASURES_VERBS),
    *(["client", verb] for verb in CLIENT_VERBS),
]


@pytest.mark.parametrize("words", [["--help"], ["--version"], *([*verb, "--help"] for verb in ALL_VERBS)])
def test_help_loads_nothing_heavy(words: list[str]) -> None:
    packages, own = loaded(*words)
    # typer itself reads the words of a verb with pydantic.
    allowed = {"pydantic"} if [*words[:-1]] in ALL_VERBS else set()
    assert not packages & (HEAVY - allowed)
    assert {name.split(".")[1] for name in own} == {"cli", "errors", "units"}


def test_a_command_that_works_does_load_it() -> None:
    """Else the test above could not fail."""
    _, own = loaded("blocks", "--json")
    assert {"app", "recipe", "blocks"} <= {name.split(".")[1] for name in own}
