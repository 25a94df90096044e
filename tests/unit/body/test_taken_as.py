"""A set says by whose definitions it was taken, and keeps it in files."""

import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from notchbook.body import MeasureSet, read_bodies, read_measures, set_from_data, set_to_data, write_measures
from notchbook.errors import InputError

TAKEN = MeasureSet("w0", MeasureSet.from_mm("w0", {"height": 1560.0}).values, taken_as="survey")


@pytest.mark.parametrize("ending", [".json", ".csv"])
def test_files_keep_it(tmp_path: Path, ending: str) -> None:
    path = tmp_path / f"set{ending}"
    write_measures(TAKEN, path)
    assert read_measures(path) == TAKEN


def test_the_book_is_taken_for_granted() -> None:
    plain = MeasureSet.from_mm("x", {"height": 1600.0})
    assert plain.taken_as == "book"
    assert "taken_as" not in set_to_data(plain)
    assert set_from_data(set_to_data(TAKEN)) == TAKEN


def test_another_word_is_refused(tmp_path: Path) -> None:
    wrong: Any = "tailor"
    with pytest.raises(InputError) as refused:
        MeasureSet("x", {}, taken_as=wrong)
    assert refused.value.code == "measure-choice"
    path = tmp_path / "bodies.csv"
    path.write_text("id,unit,taken_as,height\na,cm,survey,160\nb,cm,tailor,160\n", encoding="utf-8")
    first, second = read_bodies(path)
    assert first.measures is not None
    assert first.measures.taken_as == "survey"
    assert second.error is not None
    assert second.error.code == "measure-choice"


def test_bodies_are_read_without_the_weight_of_the_statistics() -> None:
    program = "import sys, notchbook.body; sys.exit('numpy' in sys.modules or 'scipy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", program], check=False).returncode == 0
