"""The step, the block, the check and the output, each run alone; needs this package to be installed."""

from pathlib import Path

from notchbook.body import MeasureSet
from notchbook.checks import Subject, run_checks
from notchbook.finish import finish, production_table
from notchbook.output import PaperInfo
from notchbook.output.registry import output
from notchbook.recipe import Recipe, add_step, replay

FORM = MeasureSet.from_mm("Invented form", {"hip_girth": 960.0})


def test_an_apron_with_a_notch_in_its_hem() -> None:
    """The step marks the hem of the block, a quarter of the hip wide."""
    recipe = add_step(Recipe("Apron"), "apron", {}, base=FORM)
    hem = {"hem": "apron.panel/hem", "from_point": "apron.panel/hem_center"}
    recipe = add_step(recipe, "hem_notch", hem, base=FORM, slug="marks")
    done = replay(recipe, FORM)
    assert done.suspended is None
    assert done.pattern.edges["apron.panel/hem"].length == 240.0
    assert list(done.pattern.notches) == ["marks.panel/hem_notch"]


def test_the_check_asks_for_the_notch() -> None:
    """An apron without the step is told; its list of pieces is written all the same."""
    pattern = replay(add_step(Recipe("Apron"), "apron", {}, base=FORM), FORM).pattern
    found = run_checks(Subject(pattern), ["hem-marked"]).findings
    assert [finding.code for finding in found] == ["hem-unmarked"]


def test_the_list_of_pieces(tmp_path: Path) -> None:
    """The output is found by its ending."""
    pattern = replay(add_step(Recipe("Apron"), "apron", {}, base=FORM), FORM).pattern
    path = tmp_path / "apron.txt"
    output(".txt").write(finish(pattern, production_table()), PaperInfo("A-1", "Apron"), path, "both")
    assert "Apron" in path.read_text(encoding="utf-8")
