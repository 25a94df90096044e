"""Steps offered as cures: each tried on a copy, told with what else it does, taken only when asked."""

import pytest

from notchbook.app.checked_by_size import checked_by_size
from notchbook.app.curing import take_cure, taking
from notchbook.app.examining import examine
from notchbook.app.step_cures import step_cures
from notchbook.recipe import Replay, replay
from notchbook.units import LengthStyle
from support import yoke_skirt
from support.style_lines import SMALL, WOMAN, bodice_with

LONGER = ("change_length", "longer", {"hems": ["bodice.back/waist"], "amount": "2 mm"})


@pytest.fixture(scope="module")
def run() -> Replay:
    return bodice_with(LONGER)


def codes(done: Replay) -> set[str]:
    return {finding.code for finding in examine(done, cut=False).findings}


def test_a_misfit_offers_truing_at_either_side_and_ease(run: Replay) -> None:
    cures = step_cures(run)
    assert {cure.step for cure in cures if cure.code == "seam-second-longer"} == {"true_seam", "declare_ease"}
    words = [cure.word for cure in cures]
    assert len(set(words)) == len(words)
    for cure in cures:
        healed = replay(take_cure(run.recipe, cure, run.measures), run.measures)
        assert cure.code not in codes(healed)


def test_what_else_it_does_is_told_and_nothing_was_changed(run: Replay) -> None:
    recipe = run.recipe
    first = step_cures(run)[0]
    assert run.recipe == recipe
    told = " ".join(first.disturbs.words(LengthStyle("mm")))
    assert "Back, side seam becomes 2 mm shorter" in told
    assert first.words(LengthStyle("mm")) == "Make back, side seam shorter at its end by 2 mm"


def test_a_cure_that_spoils_a_notch_is_not_offered(run: Replay) -> None:
    """Cut back under the arm, the stretch from there to the notch would be short on one side."""
    assert not [c for c in step_cures(run) if c.adds and c.adds.parameters.get("end") == "start"]


def test_a_cure_is_taken_by_its_word(run: Replay) -> None:
    done, taken = taking(run, ("seam-second-longer",))
    assert [cure.step for cure in taken] == ["true_seam"]
    assert "seam-second-longer" not in codes(done)
    assert len(done.recipe.steps) == len(run.recipe.steps) + 1


def test_a_true_pattern_offers_nothing() -> None:
    assert step_cures(bodice_with()) == ()


def test_every_size_asked_is_checked(run: Replay) -> None:
    wrong = checked_by_size(run.recipe, (WOMAN, SMALL))
    assert [size.is_right for size in wrong] == [False, False]
    assert all("seam-second-longer" in {one.code for one in size.findings} for size in wrong)
    done, _ = taking(run, ("seam-second-longer",))
    right = checked_by_size(done.recipe, (WOMAN, SMALL))
    assert all("seam-second-longer" not in {one.code for one in size.findings} for size in right)


def test_an_opening_too_small_is_offered_a_zip_as_long_as_is_missing() -> None:
    longer = ("change_length", "longer", {"hems": ["skirt.front/hem", "skirt.back/hem"], "amount": "2 cm"})
    style = yoke_skirt.run(yoke_skirt.with_steps(yoke_skirt.skirt_recipe(), longer, yoke_skirt.WAISTBAND))
    assert style.suspended is None
    body = style.measures
    (finding,) = [one for one in examine(style, cut=False).findings if one.code == "opening-under-hips"]
    assert finding.measured is not None and finding.wanted is not None
    cure = next(one for one in step_cures(style) if one.code == "opening-under-hips")
    assert cure.adds is not None and cure.step == "zip_opening"
    length = float(str(cure.value).removesuffix(" mm"))
    assert 0.0 <= 2.0 * length - (finding.wanted - finding.measured) < 20.0
    healed = replay(take_cure(style.recipe, cure, body), body)
    assert "opening-under-hips" not in codes(healed)
