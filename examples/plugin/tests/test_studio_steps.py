"""The step and the block, each run alone; needs this package to be installed."""

from notchbook.body import MeasureSet
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
