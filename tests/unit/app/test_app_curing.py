"""Cures: solved, offered only where they heal, taken on request and written into the recipe."""

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.app import curing
from notchbook.app.curing import (
    MOST_ROUNDS,
    draft_taking,
    offered_cures,
    raised_amount,
    require_offered,
    take_cure,
    taking,
)
from notchbook.app.draft_order import Drafted, DraftOrder, carry_out
from notchbook.app.drafting import draft_recipe
from notchbook.app.made_to_measure import GarmentAsked, make_to_measure
from notchbook.app.offered_cure import OfferedCure
from notchbook.app.style_file import StyleFile, run_style, run_style_taking
from notchbook.body import MeasureSet
from notchbook.errors import DraftRefused, InputError
from notchbook.pattern import Cure, Pattern
from notchbook.recipe import Change, Replay, StepContext, replay
from notchbook.recipe.parameters import read_amount
from notchbook.units import LengthStyle
from support.odd_steps import register
from support.paired_blocks import LID, REFUSAL, TRAY, TRAY_HEIGHT, LidParameters, run_lid, tray_body

FULL_ARM = 263.0
"""mm; rounder by 63 than a tray is high, so that by the numbers of the tray alone 63 mm heal."""


@pytest.fixture(autouse=True)
def paired(monkeypatch: pytest.MonkeyPatch) -> None:
    """The tray and the lid are blocks until the test is over."""
    register(monkeypatch, TRAY, LID)


def stopped_run(arm: float = FULL_ARM, lowered: str = "0 mm") -> Replay:
    body = tray_body(upper_arm_girth=arm)
    return replay(draft_recipe("lid", body, {"cloth": "knit", "tray.lowered": lowered}), body)


def test_the_cure_is_solved_by_drafting_again_until_it_heals() -> None:
    run = stopped_run()
    assert run.suspended is not None
    (cure,) = offered_cures(run)
    assert (cure.step, cure.parameter, cure.code) == ("tray-1", "lowered", REFUSAL)
    assert cure.raised_by is not None
    assert FULL_ARM - TRAY_HEIGHT <= cure.raised_by < FULL_ARM - TRAY_HEIGHT + 2.0
    assert cure.value == f"{cure.raised_by:g} mm"
    assert cure.words(LengthStyle("cm")) == f"Lower the tray by {cure.raised_by / 10:.1f} cm"
    healed = replay(take_cure(run.recipe, cure, run.measures), run.measures)
    assert healed.suspended is None


def test_an_amount_in_the_order_is_said_in_the_readers_unit() -> None:
    (cure,) = offered_cures(stopped_run())
    other = replace(cure, value="30 mm", order="give the arm 30 mm of ease", raised_by=None)
    assert other.words(LengthStyle("cm")) == "Give the arm 3.0 cm of ease"
    assert other.words(LengthStyle("mm")) == "Give the arm 30 mm of ease"


def test_what_heals_one_millimeter_less_does_not() -> None:
    run = stopped_run()
    (cure,) = offered_cures(run)
    short = replace(cure, value=f"{FULL_ARM - TRAY_HEIGHT - 1.0} mm")
    assert replay(take_cure(run.recipe, short, run.measures), run.measures).suspended is not None


def test_a_cure_that_does_not_heal_is_not_offered() -> None:
    """The refusal names a second cure, which changes nothing: it is tried and left out."""
    assert [cure.parameter for cure in offered_cures(stopped_run())] == ["lowered"]


def test_a_cure_that_leads_into_another_refusal_is_not_offered(monkeypatch: pytest.MonkeyPatch) -> None:
    def run(pattern: Pattern, context: StepContext, parameters: LidParameters) -> Change:
        if pattern.pieces["tray.front"].bounds.max_y > TRAY_HEIGHT:
            raise DraftRefused("count-not-settled", step=context.step)
        return run_lid(pattern, context, parameters)

    register(monkeypatch, TRAY, replace(LID, run=run))
    assert offered_cures(stopped_run()) == ()


def test_a_cure_that_never_comes_to_an_end_is_given_up(monkeypatch: pytest.MonkeyPatch) -> None:
    def run(pattern: Pattern, context: StepContext, parameters: LidParameters) -> Change:
        height = pattern.pieces[f"{parameters.tray}.front"].bounds.max_y
        tried.append(height)
        cure = Cure(parameters.tray, "lowered", 5.0, "lower the tray", added=True)
        raise DraftRefused(REFUSAL, length=height, hip_depth=height + 5.0, cures=(cure,))

    tried: list[float] = []
    register(monkeypatch, TRAY, replace(LID, run=run))
    assert offered_cures(stopped_run()) == ()
    assert len(tried) == MOST_ROUNDS + 1
    assert max(tried) == TRAY_HEIGHT + 5.0 * MOST_ROUNDS


def test_a_run_that_is_well_offers_nothing() -> None:
    assert offered_cures(stopped_run(190.0)) == ()


def test_what_was_taken_stands_in_the_recipe_and_serves_other_bodies() -> None:
    run, taken = draft_taking("lid", tray_body(upper_arm_girth=FULL_ARM), {"cloth": "knit"}, [REFUSAL])
    assert [cure.word for cure in taken] == [REFUSAL]
    stored = run.recipe.step("tray-1").parameters["lowered"]
    assert stored == taken[0].value
    slim = run_style(StyleFile(run.recipe, tray_body(), None))
    assert slim.pattern.pieces["tray.front"].bounds.max_y == pytest.approx(
        TRAY_HEIGHT + read_amount(stored).evaluate(lambda _key: 0.0)
    )


def test_what_stands_there_already_is_raised_not_replaced() -> None:
    (cure,) = offered_cures(stopped_run(lowered="20 mm"))
    assert cure.raised_by is not None
    assert read_amount(cure.value).evaluate(lambda _key: 0.0) == pytest.approx(20.0 + cure.raised_by)


def test_a_refused_draft_holds_what_can_be_taken() -> None:
    with pytest.raises(DraftRefused) as caught:
        draft_taking("lid", tray_body(upper_arm_girth=FULL_ARM), {"cloth": "knit"}, [])
    offered = caught.value.facts["offered"]
    assert isinstance(offered, tuple)
    assert offered[0].word == REFUSAL


def test_a_word_that_took_nothing_is_refused() -> None:
    run, taken = taking(stopped_run(190.0), ["no-such-cure"])
    assert taken == ()
    with pytest.raises(InputError) as caught:
        require_offered(["no-such-cure"], taken, offered_cures(run))
    assert caught.value.code == "cure-not-offered"
    require_offered([], (), ())


def test_a_style_takes_a_cure_on_another_body() -> None:
    style = StyleFile(stopped_run(190.0).recipe, tray_body(), None)
    fuller = tray_body(upper_arm_girth=FULL_ARM)
    with pytest.raises(DraftRefused) as caught:
        run_style(style, fuller)
    assert "offered" in caught.value.facts
    run, taken = run_style_taking(style, fuller, [REFUSAL])
    assert run.suspended is None
    assert len(taken) == 1


def test_an_order_carries_estimates_and_cures() -> None:
    body = tray_body(upper_arm_girth=FULL_ARM, hip_girth=960.0, height=1680.0).without("waist_girth")
    done = carry_out(DraftOrder("lid", body, {"cloth": "knit"}, estimate=True, take=(REFUSAL,)))
    assert done.filled is not None
    assert done.filled.keys == ("waist_girth",)
    assert [cure.word for cure in done.taken] == [REFUSAL]


def test_made_to_measure_counts_cures_apart(tmp_path: Path) -> None:
    bodies = tmp_path / "bodies.csv"
    bodies.write_text(
        "id,unit,population,bust_girth,waist_girth,upper_arm_girth\n"
        f"a,mm,women,900,700,190\nb,mm,women,900,700,{FULL_ARM}\n"
    )
    report = tmp_path / "report.csv"
    plain = make_to_measure(GarmentAsked("lid", {"cloth": "knit"}), bodies, report, cores=1)
    assert (plain.drafted, plain.cured) == (1, 0)
    cured = make_to_measure(GarmentAsked("lid", {"cloth": "knit"}, take=(REFUSAL,)), bodies, report, cores=1)
    assert (cured.drafted, cured.cured) == (2, 1)
    header, _, second = (line.split(",") for line in report.read_text().splitlines())
    assert second[header.index("taken")] == REFUSAL


def test_a_choice_that_nobody_made_stops_the_whole_run(tmp_path: Path) -> None:
    bodies, report = tmp_path / "bodies.csv", tmp_path / "report.csv"
    bodies.write_text("id,unit,population,bust_girth,waist_girth,upper_arm_girth\na,mm,women,900,700,190\n")
    with pytest.raises(InputError) as caught:
        make_to_measure(GarmentAsked("lid"), bodies, report, cores=1)
    assert caught.value.facts["setting"] == "cloth"
    assert not report.exists()


@pytest.mark.parametrize(
    ("stored", "by", "text"),
    [
        (None, 12.0, "12 mm"),
        ("0 mm", 12.0, "12 mm"),
        ("1 in", 3.0, "28.4 mm"),
        ("1/20 bust", 12.0, "1/20 bust + 12 mm"),
    ],
)
def test_an_amount_is_raised_as_it_is_written(stored: str | None, by: float, text: str) -> None:
    assert raised_amount(stored, by) == text


@given(arm=st.floats(201.0, 400.0), lowered=st.integers(0, 40))
@settings(max_examples=25)
def test_every_offered_cure_heals(arm: float, lowered: int) -> None:
    run = stopped_run(arm, f"{lowered} mm")
    offered = offered_cures(run)
    assert bool(offered) == (run.suspended is not None)
    for cure in offered:
        healed = replay(take_cure(run.recipe, cure, run.measures), run.measures)
        assert healed.suspended is None
        assert healed.pattern.pieces["tray.front"].bounds.max_y >= arm


def test_measures_stay_as_they_are() -> None:
    body: MeasureSet = tray_body(upper_arm_girth=FULL_ARM)
    run, _ = draft_taking("lid", body, {"cloth": "knit"}, [REFUSAL])
    assert run.measures == body


def test_a_fault_on_one_body_is_a_line_of_the_report(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    bodies, report = tmp_path / "bodies.csv", tmp_path / "report.csv"
    bodies.write_text(
        "id,unit,population,bust_girth,waist_girth,upper_arm_girth\na,mm,women,900,700,190\n"
        "b,mm,women,901,700,190\nc,mm,women,900,700,190\n"
    )

    def faulty(order: DraftOrder) -> Drafted:
        if order.measures.value("bust_girth") == 901.0:
            raise KeyError("planted")
        return carry_out(order)

    monkeypatch.setattr("notchbook.app.made_to_measure.carry_out", faulty)
    made = make_to_measure(GarmentAsked("lid", {"cloth": "knit"}), bodies, report, cores=1)
    assert (made.bodies, made.drafted) == (3, 2)
    rows = [line.split(",")[:3] for line in report.read_text().splitlines()[1:]]
    assert rows == [["a", "yes", ""], ["b", "no", "program-fault"], ["c", "yes", ""]]


def test_cures_are_solved_once_for_a_run_however_many_words_are_asked_for(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Each is many runs of the recipe: asked for by four words they took four times as long."""
    solved: list[Replay] = []

    def counted(run: Replay) -> tuple[OfferedCure, ...]:
        solved.append(run)
        return offered_cures(run)

    monkeypatch.setattr(curing, "offered_cures", counted)
    stopped = stopped_run(FULL_ARM)
    cured, taken = taking(stopped, ("no-such-cure", "another", REFUSAL, "a-third"))
    assert [cure.word for cure in taken] == [REFUSAL] and cured.suspended is None
    assert solved == [stopped, cured]
