"""Help answers at once: it loads no numerics, no database and no server."""

import subprocess
import sys

import pytest

from house import ROOT

HEAVY = {"numpy", "scipy", "shapely", "sqlalchemy", "fastapi", "reportlab", "pikepdf", "pypdfium2", "PIL"}
SCRIPT = """
import sys
sys.argv = ["notchbook", "--help"]
from notchbook.cli.main import main
try:
    main()
except SystemExit as end:
    code = end.code or 0
else:
    code = 0
print("loaded:", *sorted({name.partition(".")[0] for name in sys.modules}))
sys.exit(code)
"""


@pytest.mark.skipif(
    not (ROOT / "src/notchbook/cli/main.py").exists(), reason="the command line does not exist yet"
)
def test_help_loads_nothing_heavy() -> None:
    done = subprocess.run(
        [sys.executable, "-c", SCRIPT], capture_output=True, text=True, check=False, timeout=60
    )
    assert done.returncode == 0, done.stderr
    loaded = set(done.stdout.rpartition("loaded:")[2].split())
    assert "notchbook" in loaded
    assert not loaded & HEAVY
