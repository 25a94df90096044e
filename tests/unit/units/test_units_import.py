"""The command line loads this package first: it must stay light."""

import subprocess
import sys


def test_units_load_no_numerics() -> None:
    heavy = ["numpy", "scipy", "shapely", "pydantic", "sqlalchemy", "difflib", "unittest"]
    code = f"import sys, notchbook.units; print([name for name in {heavy!r} if name in sys.modules])"
    found = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert found.stdout.strip() == "[]"
