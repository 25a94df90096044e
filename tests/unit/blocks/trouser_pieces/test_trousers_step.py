"""Trousers as a step: choices, names, seams, promises, notes, refusals and their cures."""

from typing import Any

import pytest
from shapely.geometry import LineString, Polygon

from notchbook.app.curing import draft_taking
from notchbook.blocks.lower_measures import usual_crotch_length
from notchbook.blocks.trouser_pieces.parameters import TrousersParameters
from notchbook.blocks.trouser_pieces.trouser_measures import needs_for
from notchbook.body import Measure, MeasureSet, RiseMethod
from notchbook.checks import Subject, load_check, run_checks
from notchbook.checks.closures import closures
from notchbook.checks.measured import dense
from notchbook.errors import DraftRefused, InputError
from notchbook.pattern import Contradiction, Finding, Severity
from notchbook.pattern.names import last_word
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.trouser_bodies import CHILD, MAN, WOMAN, lower_body, trousers_run, usual_run, without

PANELS = ("front", "back")
SILHOUETTES = ("fitted", "straight", "wide", "shorts", "culottes")


def open_closures(run: Replay) -> list[str]:
    assert run.suspended is None, str(run.suspended)
    found = closures(Subject(run.pattern, None, run.expectations))
    return [one.name for one in found if abs(one.measured - one.wanted) > one.within]


def said(run: Replay) -> dict[str, Finding]:
    assert run.suspended is None, str(run.suspended)
    return {note.code: note for note in run.notes}


def wanted(run: Replay) -> dict[str, float]:
    assert run.suspended is None, str(run.suspended)
    return {promise.name.partition("/")[2]: promise.wanted for promise in run.expectations}


def refused(run: Replay) -> DraftRefused:
    assert run.suspended is not None
    assert isinstance(run.suspended.error, DraftRefused)
    return run.suspended.error


def number(error: DraftRefused, name: str) -> float:
    found = error.facts[name]
    assert isinstance(found, float)
    return found


# ------------------------------------------------------------------ what closes


@pytest.mark.parametrize("silhouette", SILHOUETTES)
def test_every_silhouette_closes_on_an_ordinary_woman(silhouette: str) -> None:
    run = trousers_run(silhouette=silhouette)
    assert open_closures(run) == []
    assert not [note for note in run.notes if note.severity is not Severity.NOTE]


@pytest.mark.parametrize(("values", "population"), [(MAN, "men"), (CHILD, None)])
def test_a_man_and_a_child_close(values: dict[str, float], population: Any) -> None:
    run = trousers_run(lower_body(values, population))
    assert open_closures(run) == []
    assert not run.pattern.pieces["trousers.front"].intakes


@pytest.mark.parametrize("silhouette", ["fitted", "straight"])
def test_no_check_has_a_word_to_say_of_an_ordinary_woman(silhouette: str) -> None:
    run = trousers_run(silhouette=silhouette)
    found = run_checks(Subject(run.pattern, None, run.expectations)).findings
    assert [one.code for one in found if one.severity is not Severity.NOTE] == []


def test_waist_hip_and_crotch_are_the_measures_with_their_ease() -> None:
    found = wanted(trousers_run(waist_ease="22 mm", hip_ease="44 mm", crotch_ease="31 mm"))
    assert (found["waist_girth"], found["hip_girth"], found["crotch_length"]) == (742.0, 1004.0, 731.0)


def test_the_side_is_as_long_as_asked() -> None:
    assert wanted(trousers_run(own_length="90 cm"))["outside_leg"] == 900.0


# ------------------------------------------------------------------ choices and names


def test_every_choice_is_written_down() -> None:
    step = usual_run().recipe.steps[0].parameters
    assert {step[name] for name in ("wearer", "length", "front_shape")} == {"women", "ankle", "darts"}
    assert "auto" not in step.values()


def test_a_choice_left_open_is_refused() -> None:
    body = lower_body()
    recipe = add_step(Recipe("Trousers"), "trousers", {}, base=body)
    (record,) = recipe.steps
    opened = record.__class__(
        **{**vars_of(record), "parameters": {**record.parameters, "front_shape": "auto"}}
    )
    run = replay(Recipe("Trousers", steps=(opened,)), body)
    assert refused(run).code == "choices-not-settled"


def vars_of(record: Any) -> dict[str, Any]:
    return {name: getattr(record, name) for name in record.__dataclass_fields__}


def test_pieces_lie_as_they_are_worn_and_have_their_names() -> None:
    pattern = usual_run().pattern
    assert list(pattern.pieces) == ["trousers.front", "trousers.back"]
    for which, way in (("front", -1.0), ("back", 1.0)):
        piece = pattern.pieces[f"trousers.{which}"]
        assert (piece.cut, piece.grain.degrees) == ("pair", 90.0)
        assert piece.points[f"{piece.name}/waist_side"].x * way > 0.0
        words = {last_word(name) for name in piece.names()}
        assert {"crotch_seam", "inseam", "hem", "side_seam", "waist_center", "crotch_point"} <= words
        assert {"hip_line", "crotch_line", "knee_line", "crease_line"} <= words
    assert set(pattern.seams) == {
        "trousers/side_seam",
        "trousers/inseam",
        "trousers/front_crotch_seam",
        "trousers/back_crotch_seam",
    }


def test_the_crease_runs_along_the_grain_from_the_hem_to_the_top() -> None:
    for which in PANELS:
        piece = usual_run().pattern.pieces[f"trousers.{which}"]
        crease = piece.line(f"{piece.name}/crease_line").path
        assert crease.start.x == crease.end.x == 0.0
        assert crease.length > 0.8 * (piece.bounds.max_y - piece.bounds.min_y)


def test_shorts_end_over_the_knee_and_have_no_knee_line() -> None:
    run = trousers_run(silhouette="shorts")
    words = {last_word(name) for name in run.pattern.index}
    assert "knee_line" not in words
    assert "knee_girth" not in wanted(run)
    assert open_closures(run) == []


def test_flat_fronts_have_no_dart_and_darts_can_be_asked_for() -> None:
    flat = trousers_run(front_shape="flat")
    assert not flat.pattern.pieces["trousers.front"].intakes
    darted = trousers_run(lower_body(MAN, "men"), front_shape="darts", front_darts=1)
    assert len(darted.pattern.pieces["trousers.front"].intakes) == 1
    assert open_closures(flat) == open_closures(darted) == []


# ------------------------------------------------------------------ how it is sewn


@pytest.mark.parametrize("stretch", ["-1 mm", "11 mm", "5 cm"])
def test_more_than_an_iron_stretches_is_refused(stretch: str) -> None:
    with pytest.raises(InputError) as told:
        trousers_run(inseam_stretch=stretch)
    assert told.value.code == "inseam-stretch-outside"


@pytest.mark.parametrize("stretch", [0.0, 5.0, 10.0])
def test_the_back_inseam_is_shorter_by_what_is_declared(stretch: float) -> None:
    run = trousers_run(inseam_stretch=stretch)
    pattern, seam = run.pattern, run.pattern.seams["trousers/inseam"]
    back, front = (pattern.edges[f"trousers.{which}/inseam"].length for which in ("back", "front"))
    assert front - back == pytest.approx(stretch, abs=0.02)
    assert seam.ease == stretch
    assert seam.ease_between == (("start", "knee_notch") if stretch else None)


def test_below_the_knee_the_inseams_agree() -> None:
    pattern = usual_run().pattern
    below = [
        pattern.edges[f"trousers.{which}/inseam"].length
        - pattern.notches[f"trousers.{which}/inseam/knee_notch"].place.amount
        for which in PANELS
    ]
    assert below[0] == pytest.approx(below[1], abs=0.01)


def test_a_narrow_leg_is_hemmed_less_deep() -> None:
    straight, narrow = usual_run(), trousers_run(own_knee="560 mm", own_hem="380 mm")
    hem = "trousers.front/hem"
    assert straight.pattern.allowances[hem].allowance_class == "hem_trousers"
    assert narrow.pattern.allowances[hem].allowance_class == "hem_trousers_tapered"


# ------------------------------------------------------------------ the rise, three ways


@pytest.mark.parametrize(
    ("rise", "needed"),
    [
        ({"standing_rise": 270.0}, ("standing_rise",)),
        ({"sitting_rise": 280.0}, ("sitting_rise",)),
        ({"outside_leg": 1050.0}, ("outside_leg",)),
    ],
)
def test_each_way_to_the_rise_gives_the_same_fork(rise: dict[str, float], needed: tuple[str, ...]) -> None:
    """The sitting rise is 10.5 mm longer than the standing one (computed from a published sample)."""
    body = lower_body(without(WOMAN, "standing_rise") | rise)
    assert set(needed) <= set(needs_for(TrousersParameters(), body).needed)
    run = trousers_run(body)
    assert open_closures(run) == []
    fork = run.pattern.pieces["trousers.front"].points
    down = fork["trousers.front/hip_side"].y - fork["trousers.front/crotch_point"].y
    usual = usual_run().pattern.pieces["trousers.front"].points
    assert down == pytest.approx(
        usual["trousers.front/hip_side"].y - usual["trousers.front/crotch_point"].y, abs=0.6
    )


def test_a_set_that_says_how_its_rise_was_taken_is_followed() -> None:
    values = {key: Measure(value) for key, value in {**WOMAN, "sitting_rise": 300.0}.items()}
    ways: tuple[tuple[RiseMethod, float], ...] = (("standing", 270.0), ("sitting", 300.0))
    for method, rise in ways:
        body = MeasureSet("Invented", values, population="women", rise_method=method)
        run = trousers_run(body)
        promise = next(one for one in run.expectations if one.name == "trousers/hip_to_crotch")
        assert promise.body == pytest.approx(rise - 205.0)


def test_without_any_way_to_the_rise_the_standing_one_is_asked_for() -> None:
    body = lower_body(without(WOMAN, "standing_rise"))
    assert "standing_rise" in needs_for(TrousersParameters(), body).needed
    with pytest.raises(InputError, match="measure-missing"):
        trousers_run(body)


# ------------------------------------------------------------------ what is missing


def test_what_is_put_in_for_a_missing_measure_is_said() -> None:
    run = trousers_run(lower_body(without(WOMAN, "crotch_length", "thigh_girth")))
    assert open_closures(run) == []
    notes = said(run)
    assert notes["trousers-crotch-assumed"].severity is Severity.NOTE
    assert "trousers-measure-assumed" in notes
    assert "trousers-crotch-assumed" not in said(usual_run())


def test_without_a_population_the_crotch_falls_as_the_usual_draft_has_it() -> None:
    run = trousers_run(lower_body(without(WOMAN, "crotch_length"), None))
    assert open_closures(run) == []
    assert "trousers-crotch-as-it-falls" in said(run)
    assert "trousers-crotch-pulled" not in said(run)


def test_an_estimated_crotch_length_yields_to_what_can_be_drafted() -> None:
    body = lower_body().with_value("crotch_length", Measure(880.0, "estimated", 40.0))
    run = trousers_run(body)
    assert open_closures(run) == []
    assert wanted(run)["crotch_length"] < 905.0
    assert "trousers-crotch-estimate-yields" in said(run)


def test_front_and_back_crotch_length_make_the_whole() -> None:
    parts = {"front_crotch_length": 310.0, "back_crotch_length": 390.0}
    run = trousers_run(lower_body(without(WOMAN, "crotch_length") | parts))
    assert open_closures(run) == []
    assert wanted(run)["crotch_length"] == 725.0
    assert {"front_crotch_length", "back_crotch_length"} <= set(wanted(run))


@pytest.mark.parametrize(
    ("values", "population", "taken"),
    [
        (WOMAN, "women", {"waist_girth": 860.0, "belly_girth": 970.0, "belly_depth": 90.0}),
        (MAN, "men", {"waist_girth": 1080.0, "belly_girth": 1100.0, "belly_depth": 60.0}),
    ],
)
def test_a_belly_is_held_at_its_level(
    values: dict[str, float], population: Any, taken: dict[str, float]
) -> None:
    """Cut out of the outlines with shapely at the level of the belly below the waist at the side."""
    run = trousers_run(lower_body(values | taken, population))
    assert open_closures(run) == []
    held = 0.0
    for piece in run.pattern.pieces.values():
        level = piece.points[f"{piece.name}/waist_side"].y - taken["belly_depth"]
        outline = Polygon(dense(piece.sew_line).points)
        held += 2.0 * outline.intersection(LineString([(-2000.0, level), (2000.0, level)])).length
    assert held >= taken["belly_girth"] + 15.0


# ------------------------------------------------------------------ contradictions, refusals, cures


def test_a_crotch_length_that_no_lever_reaches_is_refused_with_what_would_agree() -> None:
    error = refused(trousers_run(lower_body(crotch_length=880.0)))
    assert error.code == "trousers-crotch-long"
    least, most, agrees = (number(error, name) for name in ("least", "most", "crotch_agrees"))
    assert least < most < number(error, "wanted") == 905.0
    assert agrees == pytest.approx(880.0 + most - 905.0)
    contradiction = error.facts["contradiction"]
    assert isinstance(contradiction, Contradiction)
    assert (contradiction.first, contradiction.second) == ("crotch_length", "standing_rise")
    assert "same waist tape" in error.next_step()


def test_a_refusal_names_the_rise_where_all_else_speaks_for_the_crotch_length() -> None:
    """A rise of 33 cm goes with no woman of 168 cm and these legs; her crotch length does."""
    error = refused(trousers_run(lower_body(standing_rise=330.0)))
    assert error.code == "trousers-crotch-short"
    contradiction = error.facts["contradiction"]
    assert isinstance(contradiction, Contradiction)
    assert contradiction.explains == contradiction.read_again == "standing_rise"
    assert contradiction.value < 290.0


def test_a_crotch_length_below_what_would_agree_can_be_drafted() -> None:
    agrees = number(refused(trousers_run(lower_body(crotch_length=880.0))), "crotch_agrees")
    assert open_closures(trousers_run(lower_body(crotch_length=agrees - 15.0))) == []


@pytest.mark.parametrize(
    ("crotch", "word", "parameter"),
    [
        (835.0, "trousers-crotch-long", "crotch_limits"),
        (835.0, "trousers-crotch-long.2", "crotch_ease"),
        (550.0, "trousers-crotch-short", "crotch_limits"),
    ],
)
def test_a_cure_is_taken_on_request_and_recorded(crotch: float, word: str, parameter: str) -> None:
    body = lower_body(crotch_length=crotch)
    run, taken = draft_taking("trousers", body, None, (word,))
    assert [cure.parameter for cure in taken] == [parameter]
    assert run.recipe.steps[0].parameters[parameter] == taken[0].value
    assert [name for name in open_closures(run) if not name.endswith("corner depth")] == []


def test_crotch_and_rise_from_two_waists_are_asked_about() -> None:
    notes = said(trousers_run(lower_body(crotch_length=615.0)))
    found = {code for code in notes if code.startswith("crotch-length")}
    assert len(found) == 1
    contradiction = notes[found.pop()].contradiction
    assert contradiction is not None
    assert {contradiction.first, contradiction.second} == {"crotch_length", "standing_rise"}


def test_an_ease_out_of_its_range_is_drafted_and_said() -> None:
    run = trousers_run(hip_ease="120 mm")
    assert open_closures(run) == []
    assert said(run)["trousers-ease-unusual"].wanted == 51.0


def test_a_hem_through_which_no_heel_goes_is_said() -> None:
    assert "trousers-hem-narrow" in said(trousers_run(own_hem="280 mm"))
    assert "trousers-hem-narrow" not in said(trousers_run(own_hem="350 mm"))


def test_a_seat_as_low_as_the_fork_is_drawn_higher_and_said() -> None:
    run = trousers_run(lower_body(hip_depth=275.0))
    assert open_closures(run) == []
    assert "trousers-hip-level-raised" in said(run)


def test_a_hem_much_smaller_than_a_short_leg_is_widened_and_said() -> None:
    run = trousers_run(silhouette="shorts", own_hem="50 cm")
    assert open_closures(run) == []
    assert "trousers-hem-widened" in said(run)


# ------------------------------------------------------------------ below the waist


def test_an_edge_below_the_waist_has_the_girth_between() -> None:
    """The girth grows evenly from waist to hip; the crotch seam is shorter in front and behind."""
    run = trousers_run(waist_drop="60 mm")
    assert open_closures(run) == []
    found = wanted(run)
    assert found["waist_girth"] == pytest.approx(720.0 + 60.0 / 205.0 * 240.0 + 20.0)
    assert found["crotch_length"] == pytest.approx(725.0 - 2.04 * 60.0)
    assert "trousers-edge-girth-between" in said(run)


def test_a_girth_that_was_taken_there_is_used() -> None:
    run = trousers_run(lower_body(top_hip_girth=880.0), waist_drop="10.25 cm")
    assert wanted(run)["waist_girth"] == pytest.approx(900.0)
    assert "trousers-edge-girth-between" not in said(run)


@pytest.mark.parametrize("drop", ["-10 mm", "170 mm", "300 mm"])
def test_an_edge_at_the_hip_or_above_the_waist_is_refused(drop: str) -> None:
    with pytest.raises(DraftRefused, match="trousers-waist-drop"):
        trousers_run(waist_drop=drop)


# ------------------------------------------------------------------ left and right apart


@pytest.mark.parametrize(
    ("key", "by"),
    [("hip_girth", 20.0), ("standing_rise", 8.0), ("hip_depth", 10.0), ("inside_leg", 12.0)],
)
def test_two_legs_that_differ_meet_at_the_fork(key: str, by: float) -> None:
    body = lower_body().with_value(key, WOMAN[key] + by, "left")
    run = trousers_run(body)
    assert open_closures(run) == []
    assert set(run.pattern.pieces) == {
        f"trousers.{which}@{side}" for which in PANELS for side in ("left", "right")
    }
    for which in PANELS:
        left, right = (
            run.pattern.edges[f"trousers.{which}/crotch_seam@{side}"].length for side in ("left", "right")
        )
        assert left == pytest.approx(right, abs=0.1)


def test_legs_that_are_alike_are_drafted_once() -> None:
    body = lower_body().with_value("hip_girth", WOMAN["hip_girth"], "left")
    assert set(trousers_run(body).pattern.pieces) == {"trousers.front", "trousers.back"}


def test_the_front_dart_ends_on_the_crease() -> None:
    run = trousers_run()
    front = run.pattern.pieces["trousers.front"]
    crease = front.line("trousers.front/crease_line").path
    assert len(front.intakes) == 1
    point = front.edge(front.intakes[0].first_leg).path.end
    assert point.x == pytest.approx(crease.start.x, abs=2.0)


def test_hip_lines_reach_both_seams_and_the_hip_is_measured_from_the_straight_center() -> None:
    run = trousers_run()
    for piece in run.pattern.pieces.values():
        line = piece.line(f"{piece.name}/hip_line").path
        seam = piece.edge(f"{piece.name}/crotch_seam").path
        assert min(seam.nearest(end).gap for end in (line.start, line.end)) < 1e-6
    hip = next(one for one in run.expectations if one.name == "trousers/hip_girth")
    assert hip.names == () and len(hip.chains) == 2


@pytest.mark.parametrize("silhouette", SILHOUETTES)
def test_an_average_woman_pulls_no_lever_worth_a_word(silhouette: str) -> None:
    """Crotch, rise, hip and waist as surveyed women have them together (crotch_length.toml)."""
    usual, _ = usual_crotch_length("women", 270.0, 960.0, 720.0, 0.0)
    notes = said(trousers_run(lower_body(crotch_length=usual), silhouette=silhouette))
    assert not {"trousers-crotch-pulled", "trousers-crotch-unusual", "trousers-fork-hangs"} & set(notes)
    assert not {"trousers-hem-widened", "trousers-knee-widened"} & set(notes)


def test_an_estimated_crotch_length_yields_until_the_crotch_keeps_its_shape() -> None:
    large = lower_body(
        without(WOMAN, "crotch_length"),
        waist_girth=1130.0,
        hip_girth=1380.0,
        thigh_girth=828.0,
        knee_girth=497.0,
    )
    run = trousers_run(large)
    note = said(run)["trousers-crotch-estimate-yields"]
    assert note.measured is not None and note.wanted is not None
    assert note.measured < note.wanted - 1.0
    assert wanted(run)["crotch_length"] == pytest.approx(note.measured + 25.0, abs=0.01)
    found = {one.code for one in load_check("crotch-shape").run(Subject(run.pattern))}
    assert not {"crotch-diagonal", "crotch-hooked", "crotch-ramp"} & found
