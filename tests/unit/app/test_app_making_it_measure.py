"""What a solved number would do beside what was wished, which numbers could serve, and edits as data."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from notchbook.app.demo import demo_form, demo_recipe
from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.app.studio import Studio
from notchbook.app.style_edits import LetWishGo, MakeItMeasure, SolveAgain
from notchbook.app.wishes.making_it_measure import candidates, consequences, orders_for
from notchbook.app.wishes.measurable import measurable
from notchbook.app.wishes.solved_by_size import solved_by_size
from notchbook.body.charts.shipped import shipped_charts
from notchbook.errors import InputError
from notchbook.pattern import Severity, sewn_length
from notchbook.recipe import Replay, add_step, change_step, replay
from notchbook.recipe.targets import Made, make_it_measure, measured, read_wish

HEM = "around hem = 120 cm"


@pytest.fixture(scope="module")
def skirt() -> Replay:
    return draft("skirt", demo_form())


@pytest.fixture
def studio(tmp_path: Path) -> Iterator[Studio]:
    opened = Studio.open(tmp_path / "studio.notchbook")
    opened.first_time()
    yield opened
    opened.close()


def made(run: Replay, *pairs: tuple[str, str], hold: bool = False) -> Made:
    return make_it_measure(run, orders_for(run, pairs, hold=hold))


def test_what_else_changes_is_what_differs_between_the_patterns(skirt: Replay) -> None:
    done = made(skirt, (HEM, "flare"))
    told = {one.name: one for one in consequences(done).edges}
    assert "skirt.front/hem" not in told  # that was wished
    for name in ("skirt.front/side_seam", "skirt.back/side_seam"):
        before, after = (sewn_length(run.pattern, name) for run in (done.before, done.after))
        assert (told[name].before, told[name].after) == (before, after) and abs(after - before) > 0.1
    assert "skirt.front/center_front" not in told  # the length at the center is what was told


def test_kept_wishes_that_break_are_told_and_held_when_asked_for(skirt: Replay) -> None:
    run = made(skirt, (HEM, "flare")).after
    pair = ("finished hip = 110 cm", "skirt-1.hip_ease")
    (broken,) = consequences(made(run, pair)).broken
    assert broken.target.parameter == "flare" and broken.found == pytest.approx(1280.0, abs=5.0)
    assert not consequences(made(run, pair, hold=True)).broken


def test_checks_that_turn_are_told(skirt: Replay) -> None:
    """A hem that is made longer on one piece only puts the side seams out."""
    parameters = {"amount": "0.1 mm", "hems": ["skirt.front/hem"]}
    run = replay(
        add_step(skirt.recipe, "change_length", parameters, base=skirt.measures), skirt.measures, skirt
    )
    done = made(run, ("length skirt.front/center_front = 70 cm", "change_length-1.amount"))
    codes = {finding.code for finding in consequences(done).new_findings}
    before = {one.code for one in examine(run, cut=False).findings}
    after = {one.code for one in examine(done.after, cut=False).findings if one.severity is Severity.STOP}
    assert after - before and after - before <= codes
    was = sewn_length(run.pattern, "skirt.front/center_front")
    back = made(done.after, (f"length skirt.front/center_front = {was:.6f} mm", "change_length-1.amount"))
    assert after - before <= {finding.code for finding in consequences(back).gone_findings}


def test_candidates_give_the_wish_and_the_least_stirring_comes_first(skirt: Replay) -> None:
    wish = read_wish(HEM, skirt)
    found = candidates(skirt, wish)
    able = [one for one in found if one.made is not None]
    assert {"skirt-1.flare", "skirt-1.hem_girth", "skirt-1.hip_ease"} <= {one.number.word for one in able}
    assert "skirt-1.length" not in {one.number.word for one in found}
    for one in able:
        assert one.made is not None
        assert measured(one.made.after, wish.quantity) == pytest.approx(1200.0, abs=0.01)
    stirs = [one.stirs for one in able]
    assert stirs == sorted(stirs)
    assert found.index(able[-1]) == len(able) - 1  # those out of reach come last, with their reason


def test_a_broken_wish_is_a_finding_and_a_kept_one_is_none(skirt: Replay) -> None:
    run = made(skirt, (HEM, "flare")).after
    assert "target-no-longer-holds" not in {one.code for one in examine(run, cut=False).findings}
    eased = replay(change_step(run.recipe, "skirt-1", {"hip_ease": "8 cm"}, base=run.measures), run.measures)
    (finding,) = (one for one in examine(eased, cut=False).findings if one.check == "targets")
    assert finding.code == "target-no-longer-holds" and "1200.0 mm" in finding.message


def test_every_size_of_a_chart_is_solved_for_itself(skirt: Replay) -> None:
    chart = shipped_charts()["women"]
    labels = chart.labels[3:6]
    orders = orders_for(skirt, ((HEM, "flare"),))
    solved = solved_by_size(skirt.recipe, [chart.size(label) for label in labels], orders)
    values = [one.made.numbers[0].value for one in solved if one.made is not None]
    assert len(values) == 3 and values == sorted(values, reverse=True)  # a wider hip needs less flare
    for one in solved:
        assert one.made is not None and one.made.measured[0] == pytest.approx(1200.0, abs=0.01)
    nine_meters = orders_for(skirt, (("around hem = 900 cm", "flare"),))
    far = solved_by_size(skirt.recipe, [chart.size(labels[0])], nine_meters)
    assert far[0].made is None and far[0].refusal is not None and far[0].refusal.code == "wish-out-of-reach"


def test_what_is_offered_can_be_read_again_and_is_what_it_measures() -> None:
    run = replay(demo_recipe(demo_form()), demo_form())
    offered = measurable(run)
    kinds = {one.quantity.kind for one in offered}
    assert {"finished", "around", "ease", "level", "length"} <= kinds
    for one in offered:
        wish = read_wish(f"{one.quantity.text} = 1 mm", run)
        assert wish.quantity == one.quantity and measured(run, wish.quantity) == one.now


def test_an_edit_is_one_entry_of_the_journal_and_undo_restores_the_bytes(studio: Studio) -> None:
    style = studio.list_styles()[0].id
    before = studio._book.read(style)  # the stored text itself: undo must bring back each byte
    edit = MakeItMeasure("around hem = 120", "skirt-1.flare", "cm")
    looked = studio.solved(style, edit)
    assert studio._book.read(style).content == before.content
    state = studio.edit_style(style, before.version, edit)
    assert state.recipe.step("skirt-1").targets == looked.recipe.step("skirt-1").targets
    assert state.version == before.version + 1
    undone = studio.undo_style(style, state.version)
    assert studio._book.read(style).content == before.content and not undone.recipe.step("skirt-1").targets


def test_solving_again_and_letting_go_are_edits(skirt: Replay) -> None:
    base = skirt.measures
    recipe = MakeItMeasure(HEM, "flare").apply(skirt.recipe, base)
    eased = change_step(recipe, "skirt-1", {"hip_ease": "8 cm"}, base=base)
    again = SolveAgain().apply(eased, base)
    hem = read_wish(HEM, skirt).quantity
    assert measured(replay(eased, base), hem) != pytest.approx(1200.0, abs=1.0)
    assert measured(replay(again, base), hem) == pytest.approx(1200.0, abs=0.01)
    assert LetWishGo("flare").apply(again, base).step("skirt-1").targets == ()
    with pytest.raises(InputError, match="no-targets"):
        SolveAgain().apply(skirt.recipe, base)
