"""The step of the bodice: what it settles, needs, refuses and says."""

import math
import re
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any, get_args

import pytest

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice import STEP
from notchbook.blocks.bodice_pieces.dart_places import DartPlace
from notchbook.blocks.bodice_pieces.drafting import UPPER_REFUSES
from notchbook.blocks.bodice_pieces.lever_notes import lever_notes
from notchbook.blocks.bodice_pieces.parameters import BodiceParameters
from notchbook.blocks.upper.draft_bodice import draft_bodice
from notchbook.blocks.upper.shapes import Lever
from notchbook.checks.run import run_checks
from notchbook.checks.subject import Subject
from notchbook.errors.catalogue import entry
from notchbook.pattern import Severity
from notchbook.recipe import recipe_from_data, recipe_to_data, replay
from support.bodice_bodies import (
    CHILD,
    FULL_BUST,
    MAN,
    WOMAN,
    bodice,
    bodice_recipe,
    bodice_run,
    body,
    codes,
    without,
)

BUST = ("front_waist_length", "center_front_length", "neck_to_bust_point", "bust_point_width")


def settled(measures: Any, **parameters: Any) -> dict[str, Any]:
    return dict(bodice_recipe(measures, **parameters).steps[0].parameters)


def stopped(measures: Any, **parameters: Any) -> str:
    done = replay(bodice_recipe(measures, **parameters), measures)
    assert done.suspended is not None
    return done.suspended.error.code


def test_every_choice_is_written_down_on_the_base_measures() -> None:
    for measures in (body(), body(FULL_BUST), body(MAN, "men"), body(CHILD, None)):
        assert "auto" not in settled(measures).values()


def test_what_is_settled_for_a_woman_a_man_and_a_child() -> None:
    keys = ("wearer", "bust_shaping", "back_shoulder", "front_darts", "back_darts")
    assert [settled(body())[key] for key in keys] == ["women", "dart", "dart", 1, 2]
    assert [settled(body(MAN, "men"))[key] for key in keys] == ["men", "none", "ease", 0, 0]
    assert [settled(body(CHILD, None))[key] for key in keys] == ["children", "none", "ease", 0, 0]


def test_a_body_of_which_nobody_said_whose_is_told_by_what_was_taken() -> None:
    assert settled(body(WOMAN, None))["bust_shaping"] == "dart"
    assert settled(body(without(WOMAN, "bust_point_width"), None))["bust_shaping"] == "none"


def test_her_own_choice_stays() -> None:
    own = settled(body(), front_darts=2, back_shoulder="ease", bust_shaping="dart")
    assert (own["front_darts"], own["back_darts"], own["back_shoulder"]) == (2, 2, "ease")


def test_a_choice_left_open_in_a_file_is_refused() -> None:
    data = recipe_to_data(bodice_recipe(body()))
    data["steps"][0]["parameters"]["contour"] = "auto"
    done = replay(recipe_from_data(data), body())
    assert done.suspended is not None
    assert done.suspended.error.code == "choices-not-settled"
    assert "contour" in done.suspended.error.text()


def test_needs_depend_on_bust_shaping_and_length() -> None:
    plain = BodiceParameters()
    woman, man = STEP.needs_of(plain, body()), STEP.needs_of(plain, body(MAN, "men"))
    assert set(BUST) <= set(woman.needed)
    assert not set(BUST) & set(man.needed)
    assert "shoulder_slope" in woman.estimated
    to_hip = STEP.needs_of(BodiceParameters(length="hip"), body())
    assert set(to_hip.needed) - set(woman.needed) == {"hip_girth", "hip_depth"}
    for needs in (woman, man, STEP.needs):
        assert len(needs.keys) == len(set(needs.keys))


@pytest.mark.parametrize("key", STEP.needs.needed)
def test_a_needed_measure_that_is_missing_is_named(key: str) -> None:
    measures = body(without(MAN, key), "men")
    done = replay(bodice_recipe(body(MAN, "men")), measures)
    assert done.suspended is not None
    assert done.suspended.error.code == "measure-missing"


def test_what_is_drafted_well_says_nothing() -> None:
    assert codes(body()) == set()


def test_what_was_assumed_is_said() -> None:
    bare = body(without(WOMAN, "shoulder_slope", "under_bust_girth"))
    assert {"shoulder-slope-assumed", "cup-unknown"} <= codes(bare)
    assert {"front-length-assumed", "waist-left-as-it-falls"} <= codes(body(MAN, "men"))
    assert "front-length-assumed" not in codes(body(MAN, "men", front_waist_length=458.0))


def test_forced_shapes_are_said() -> None:
    assert "shoulder-slope-unusual" in codes(body(shoulder_slope=9.0))
    assert "waist-asks-for-a-seam" in codes(body(FULL_BUST, waist_girth=680.0))
    assert "measure-gave-way" in codes(body(shoulder_length=98.0))


@pytest.mark.parametrize(
    ("lever", "code"),
    [
        (Lever("side_place", 0.60, 0.38, 0.60, 0.49, ""), "side-seam-place-forced"),
        (Lever("neck_width", 0.155, 0.155, 0.212, 0.183, ""), "neck-width-forced"),
        (Lever("neck_lean", 18.0, 0.0, 18.0, 7.0, "deg"), "neck-lean-forced"),
        (Lever("shoulder_tilt", -6.0, -6.0, 6.0, 0.0, "deg"), "shoulder-tilt-forced"),
        (Lever("armhole_width", 180.0, 80.0, 170.0, 130.0), "armhole-width-forced"),
        (Lever("side_tilt", 9.5, -12.0, 9.0, 0.0, "deg"), "bodice-side-leans"),
        (Lever("balance", 0.24, 0.0, 0.23, 0.13, ""), "front-back-balance"),
        (Lever("bust_dart", 29.0, 4.0, 27.0, 15.0, "deg"), "bust-dart-wide"),
        (Lever("bust_dart", 2.0, 4.0, 27.0, 15.0, "deg"), "bust-dart-left-out"),
        (Lever("upper_bust", 41.0, -40.0, 40.0, 0.0), "upper-bust-disagrees"),
        (Lever("across_back", 14.0, -20.0, 24.0, 0.0), "measure-gave-way"),
        (Lever("shoulder", 12.0, 0.0, 12.0, 0.0), "measure-gave-way"),
        (Lever("center_front", 14.0, -25.0, 45.0, 0.0), "front-neck-raised"),
        (Lever("center_front", -14.0, -25.0, 45.0, 0.0), "front-neck-lowered"),
    ],
)
def test_a_lever_at_its_limit_is_to_be_looked_at(lever: Lever, code: str) -> None:
    (said,) = lever_notes(PanelNames("bodice"), (lever,), "front-neck-raised")
    # The width of a bust dart is looked at on the finished pattern, by the check dart-count.
    severity = Severity.NOTE if code == "bust-dart-wide" else Severity.LOOK
    assert (said.code, said.severity) == (code, severity)
    pulled = abs(lever.pulled) if lever.name == "center_front" else lever.pulled
    assert said.measured == pytest.approx(pulled)
    assert "{" not in said.message


NAMES = PanelNames("bodice")


@pytest.mark.parametrize("name", ["side_place", "neck_width", "armhole_width", "balance", "bust_dart"])
def test_a_lever_within_its_limits_says_nothing(name: str) -> None:
    assert list(lever_notes(NAMES, (Lever(name, 5.0, 0.0, 10.0, 4.0),), "front-neck-raised")) == []


def test_a_small_change_of_a_width_is_said_for_the_record() -> None:
    (said,) = lever_notes(NAMES, (Lever("across_chest", 4.0, -20.0, 24.0, 0.0),), "front-neck-raised")
    assert said.severity is Severity.NOTE
    assert not list(lever_notes(NAMES, (Lever("across_chest", 0.3, -20.0, 24.0, 0.0),), "front-neck-raised"))


def test_of_several_that_gave_way_for_one_cause_the_most_is_to_be_looked_at() -> None:
    levers = (
        Lever("shoulder", 11.0, 0.0, 12.0, 0.0),
        Lever("across_back", -14.0, -20.0, 24.0, 0.0),
        Lever("across_chest", -9.0, -20.0, 24.0, 0.0),
    )
    said = {note.where: note.severity for note in lever_notes(NAMES, levers, "front-neck-raised")}
    assert said == {
        "bodice.front/shoulder": Severity.NOTE,
        "bodice.back/across_back_line": Severity.LOOK,
        "bodice.front/across_chest_line": Severity.NOTE,
    }


def test_a_dart_in_the_neck_is_advised_where_there_is_none() -> None:
    said = {}
    for contour in ("none", "dart"):
        done = bodice_run(body(FULL_BUST), contour=contour)
        said[contour] = {note.code for note in done.notes if note.code.startswith("front-neck")}
    assert said == {"none": {"front-neck-raised"}, "dart": {"front-neck-with-dart"}}
    man = bodice_run(body(MAN, "men", center_front_length=300.0))
    assert "front-neck-too-deep" in {note.code for note in man.notes}


def test_the_codes_of_refusal_stand_in_the_catalogue() -> None:
    for code in UPPER_REFUSES:
        assert entry(code).why


def test_the_numbers_refuse_with_no_other_code() -> None:
    folder = Path(draft_bodice.__globals__["__file__"]).parent
    source = "".join(path.read_text(encoding="utf-8") for path in folder.glob("*.py"))
    raised = set(re.findall(r'"(bodice-[a-z-]+)"', source))
    assert raised == set(UPPER_REFUSES)


def test_measures_that_no_bodice_has_are_refused_in_words() -> None:
    assert stopped(body(neck_base_girth=700.0)) in UPPER_REFUSES
    assert stopped(body(), length="hip", bust_dart="waist") == "bust-dart-needs-a-waist-seam"


def test_back_shoulder_by_ease_is_declared_on_its_seam() -> None:
    eased = bodice(body(), back_shoulder="ease", back_shoulder_amount="8 mm")
    assert eased.seams["bodice/shoulder"].ease == pytest.approx(8.0)
    assert "bodice.back/shoulder_dart" not in eased.intakes
    assert bodice(body()).seams["bodice/shoulder"].ease == 0.0


def test_an_estimated_front_length_of_a_man_is_not_used() -> None:
    taken = body(MAN, "men", center_front_length=400.0)
    measure = taken.values["center_front_length"]
    guessed = replace(
        taken,
        values={
            **taken.values,
            "center_front_length": replace(measure, status="estimated", method="by hand", error=30.0),
        },
    )
    plain = bodice(body(MAN, "men")).pieces["bodice.front"]
    assert bodice(guessed).pieces["bodice.front"] == plain


def test_an_estimated_scye_depth_follows_the_measured_slope() -> None:
    """Shoulder point and armhole go down by the same amount (a patternmaker's review)."""

    def depth(slope: float, *, is_estimate: bool) -> float:
        measures = body(shoulder_slope=slope)
        if is_estimate:
            guessed = replace(measures.values["scye_depth"], status="estimated", method="by hand", error=12.0)
            measures = replace(measures, values={**measures.values, "scye_depth": guessed})
        points = bodice(measures).pieces["bodice.back"].points
        return points["bodice.back/nape"].y - points["bodice.back/underarm"].y

    assert depth(30.0, is_estimate=False) == pytest.approx(depth(24.3, is_estimate=False), abs=1e-6)
    lower = depth(30.0, is_estimate=True) - depth(24.3, is_estimate=True)
    assert lower == pytest.approx(
        123.0 * (math.sin(math.radians(30.0)) - math.sin(math.radians(24.3))), abs=0.01
    )


def test_to_the_hip_everything_closes_and_darts_have_two_points() -> None:
    done = bodice_run(body(), length="hip")
    front = done.pattern.pieces["bodice.front"]
    assert [dart.name for dart in front.inner_darts] == ["bodice.front/waist_dart"]
    assert {promise.measure for promise in done.expectations} >= {"hip_girth", "waist_girth"}
    assert "bodice.front/waist_notch" in done.pattern.notches


@pytest.mark.parametrize("place", get_args(DartPlace))
def test_nothing_that_would_spoil_cloth_is_found_at_any_place(place: str) -> None:
    """With a contour dart, whose askew notches must stay clear of the sew line in a narrow allowance."""
    done = bodice_run(body(FULL_BUST), bust_dart=place, contour="dart")
    report = run_checks(Subject(done.pattern, expectations=done.expectations))
    assert [one.code for one in report.findings if one.severity is Severity.STOP] == []


def test_an_ordinary_bodice_is_quiet() -> None:
    done = bodice_run(body())
    assert run_checks(Subject(done.pattern, expectations=done.expectations)).findings == ()


def test_the_second_waist_dart_ends_lower_than_the_first() -> None:
    points = bodice(body(FULL_BUST), front_darts=2).pieces["bodice.front"].points
    first, second = (points[f"bodice.front/waist_dart_{word}/point"] for word in ("center", "side"))
    assert second.y < first.y - 10.0


def test_one_cause_is_told_once() -> None:
    """A center front that goes with no front length moves neck and balance; the neck alone speaks of it."""
    said = codes(body(MAN, "men", center_front_length=455.0))
    assert "front-neck-lowered" in said
    assert "front-back-balance" not in said


def test_a_front_without_a_waist_dart_still_promises_its_length() -> None:
    for length in ("waist", "hip"):
        done = bodice_run(body(waist_girth=905.0), front_darts=0, length=length)
        front = done.pattern.pieces["bodice.front"]
        assert not front.inner_darts
        promise = {one.measure: one for one in done.expectations}["front_waist_length"]
        points = [front.points[name] for name in promise.chains[0]]
        drawn = sum(first.distance_to(second) for first, second in pairwise(points))
        assert drawn == pytest.approx(body().value("front_waist_length"), abs=0.1)


@pytest.mark.parametrize("place", ["side", "underarm", "french", "waist", "shoulder"])
def test_the_upper_bust_is_promised_as_drafted(place: str) -> None:
    done = bodice_run(body(upper_bust_girth=890.0), bust_dart=place)
    promises = {one.measure: one for one in done.expectations}
    if place == "shoulder":  # There the underarm lies where the dart, when closed, takes it away.
        assert "upper_bust_girth" not in promises
        return
    promise = promises["upper_bust_girth"]
    pieces = done.pattern.pieces
    points = pieces["bodice.front"].points | pieces["bodice.back"].points
    drawn = 2.0 * sum(abs(points[end].x - points[start].x) for start, end in promise.chains)
    assert drawn == pytest.approx(promise.wanted, abs=0.1)
    assert promise.body == 890.0


def test_what_is_said_of_the_whole_body_is_said_once() -> None:
    slip = body(front_waist_length=520.0).with_value("shoulder_slope", 27.0, "left")
    done = bodice_run(slip)
    said = [note for note in done.notes if note.check == "upper-measures"]
    assert said
    assert len(said) == len({(note.code, note.measured) for note in said})
    assert not any("wearer" in note.message for note in said)
