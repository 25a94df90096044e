"""The sleeve as a step: into the armhole of the bodice as it stands, with its names, seams and words."""

from typing import Any

import pytest

from notchbook.app.curing import draft_taking
from notchbook.blocks.sleeve_pieces.fabrics import fabric_rows
from notchbook.blocks.sleeve_pieces.parameters import SleeveParameters
from notchbook.blocks.sleeve_pieces.sewn_armhole import sewn_armhole
from notchbook.blocks.sleeve_pieces.sleeve_measures import needs_for
from notchbook.body import Measure
from notchbook.errors import InputError, NotchbookError
from notchbook.pattern import Pattern, pattern_from_data, pattern_to_data, walk_seam
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.asked_of_upper import asked_of
from support.bodice_bodies import CHILD, body
from support.bodice_judge import misses
from support.skirt_judge import Judge
from support.sleeve_bodies import sleeve_run, spoken_of, woman, woman_without

SLEEVE = "sleeve.sleeve"


def stopped(run: Replay) -> NotchbookError:
    assert run.suspended is not None
    return run.suspended.error


def wanted(run: Replay) -> dict[str, float]:
    return {promise.measure: promise.wanted for promise in run.expectations if promise.measure}


def outside(run: Replay) -> list[str]:
    """What another code than the program's finds wrong in the finished pattern."""
    return misses(pattern_to_data(run.pattern), asked_of(run))


@pytest.mark.parametrize(
    "parameters",
    [
        {},
        {"fabric": "shirting"},
        {"fabric": "knit"},
        {"cap_ease": "38 mm"},
        {"elbow": "ease"},
        {"elbow": "dart"},
        {"length": "short"},
        {"length": "three_quarter"},
        {"length": "cap"},
        {"pitch": 6.0},
        {"keep": "cap_height", "cap_height": "135 mm"},
    ],
    ids=str,
)
def test_an_ordinary_body_closes_and_no_check_has_a_word_to_say(parameters: dict[str, Any]) -> None:
    run = sleeve_run(**parameters)
    assert run.suspended is None, str(run.suspended)
    assert not outside(run)
    assert [finding.code for finding in spoken_of(run)] == []


@pytest.mark.parametrize("place", ["side", "underarm", "shoulder", "french", "waist"])
def test_the_sleeve_fits_wherever_the_bust_dart_opens(place: str) -> None:
    run = sleeve_run(top={"bust_dart": place})
    assert run.suspended is None, str(run.suspended)
    assert not outside(run)


def test_a_dart_in_the_armhole_is_closed_before_the_sleeve_is_drafted() -> None:
    """Closed about its drawn point, which lies short of the bust point: so the tip may move a little."""
    plain, opened = sleeve_run(), sleeve_run(top={"bust_dart": "armhole"})
    holes = [sewn_armhole(run.pattern, "bodice").given.front for run in (plain, opened)]
    assert holes[1].length == pytest.approx(holes[0].length, abs=0.1)
    for along in (20.0, 45.0, 70.0):
        assert holes[1].point_at(along).distance_to(holes[0].point_at(along)) < 0.1
    assert holes[1].end.distance_to(holes[0].end) < 8.0
    assert "cap-off-armhole" not in {finding.code for finding in spoken_of(opened)}


def test_the_armhole_is_read_as_it_stands() -> None:
    """A later change of the bodice is seen: the cap grows with its armhole."""
    plain, lower = sleeve_run(), sleeve_run(top={"armhole_lowered": "15 mm"})
    lengths = [run.pattern.edges[f"{SLEEVE}/cap_back"].length for run in (plain, lower)]
    assert lengths[1] > lengths[0] + 10.0
    assert not outside(lower)


def test_names_and_their_order() -> None:
    pattern = sleeve_run().pattern
    piece = pattern.pieces[SLEEVE]
    assert [edge.name for edge in piece.outline] == [
        f"{SLEEVE}/{word}" for word in ("hem", "front_seam", "cap_front", "cap_back", "back_seam")
    ]
    assert [edge.start for edge in piece.outline] == [
        f"{SLEEVE}/{word}" for word in ("hem_back", "hem_front", "underarm_front", "cap_top", "underarm_back")
    ]
    assert {line.name for line in piece.lines} == {f"{SLEEVE}/biceps_line", f"{SLEEVE}/elbow_line"}
    assert piece.cut == "pair"
    points = piece.points
    assert points[f"{SLEEVE}/underarm_front"].x > 0.0 > points[f"{SLEEVE}/underarm_back"].x
    assert Judge(pattern_to_data(pattern)).polygon(SLEEVE).exterior.is_ccw


def test_an_elbow_dart_parts_the_back_seam() -> None:
    pattern = sleeve_run(elbow="dart").pattern
    assert pattern.groups[f"{SLEEVE}/back_seam"].members == (
        f"{SLEEVE}/back_seam/above",
        f"{SLEEVE}/back_seam/below",
    )
    (dart,) = pattern.pieces[SLEEVE].intakes
    legs = [pattern.edges[leg].length for leg in (dart.first_leg, dart.second_leg)]
    assert legs[0] == pytest.approx(legs[1], abs=1e-9)
    assert walk_seam(pattern, pattern.seams["sleeve/sleeve_seam"]).misfit == pytest.approx(0.0, abs=1e-5)


def stations(pattern: Pattern, seam: str) -> dict[str, tuple[float, float]]:
    walk = walk_seam(pattern, pattern.seams[seam])
    found = {}
    for station in walk.stations:
        assert station.first is not None
        assert station.second is not None
        found[station.notch] = (station.first, station.second)
    return found


def test_the_ease_lies_between_balance_notch_and_twenty_before_the_shoulder() -> None:
    pattern = sleeve_run(cap_ease="24 mm").pattern
    for which, share in (("front", 0.45), ("back", 0.55)):
        seam = f"sleeve/{which}_armhole"
        walk, met = walk_seam(pattern, pattern.seams[seam]), stations(pattern, seam)
        assert walk.ease == pytest.approx(24.0 * share)
        assert met["balance_notch"][0] == pytest.approx(met["balance_notch"][1], abs=1e-6)
        ends = (walk.first - met["ease_notch"][0], walk.second - met["ease_notch"][1])
        assert ends == pytest.approx((20.0, 20.0), abs=1e-6)
    kinds = [pattern.notches[f"{SLEEVE}/cap_{which}/balance_notch"].kind for which in ("front", "back")]
    assert kinds == ["single", "double"]


def test_a_cap_without_ease_has_no_notches_for_it() -> None:
    pattern = sleeve_run(fabric="knit").pattern
    assert not [name for name in pattern.notches if name.endswith("ease_notch")]
    assert pattern.seams["sleeve/front_armhole"].ease_between is None


def test_the_cloth_is_asked_for() -> None:
    with pytest.raises(InputError) as refused:
        base = woman()
        recipe = add_step(Recipe("Asked"), "bodice", {}, base=base)
        raise stopped(replay(add_step(recipe, "sleeve", {}, base=base), base))
    assert refused.value.code == "sleeve-fabric-not-named"
    assert refused.value.facts["setting"] == "fabric"
    assert refused.value.facts["choices"] == tuple(fabric_rows())
    said = refused.value.facts["said"]
    assert isinstance(said, tuple)
    assert len(said) == len(fabric_rows())


def test_cap_ease_by_cloth_is_that_of_the_trade() -> None:
    """Ranges by fabric (common practice; poplin, crepe, coated by a patternmaker's review), mm."""
    ranges = {name: (row.least, row.most) for name, row in fabric_rows().items()}
    assert ranges["shirting"] == (0.0, 10.0)
    assert ranges["wool_dress"] == (20.0, 30.0)
    assert ranges["leather_or_coated"] == (0.0, 10.0)
    assert ranges["tailored_jacket"] == (25.0, 40.0)
    assert ranges["light_woven"] == (10.0, 20.0)
    assert ranges["knit"][0] == 0.0
    for row in fabric_rows().values():
        assert row.least <= row.drafted <= row.most
        assert row.source


def test_a_full_arm_is_refused_and_the_cure_heals_it() -> None:
    full = woman(upper_arm_girth=350.0)
    refused = stopped(sleeve_run(full))
    assert refused.code == "sleeve-arm-too-full"
    cures = refused.facts["cures"]
    assert isinstance(cures, tuple)
    cure = cures[0]
    assert (cure.step, cure.parameter, cure.added) == ("bodice", "armhole_lowered", True)
    cured, taken = draft_taking("sleeve", full, {"fabric": "wool_dress"}, ["sleeve-arm-too-full"])
    assert len(taken) == 1
    assert not outside(cured)
    height = cured.pattern.pieces[SLEEVE].points[f"{SLEEVE}/crown"].y
    armhole = sum(
        walk_seam(cured.pattern, cured.pattern.seams[f"sleeve/{w}_armhole"]).first for w in ("front", "back")
    )
    assert height / armhole >= 0.25 - 1e-3


def test_an_arm_that_no_lowering_serves_is_told_what_would() -> None:
    refused = stopped(sleeve_run(woman(upper_arm_girth=480.0)))
    assert refused.code == "sleeve-arm-beyond-armhole"
    cures = refused.facts["cures"]
    assert isinstance(cures, tuple)
    assert {cure.parameter for cure in cures} <= {"silhouette", "upper_arm_ease"}


def test_the_cap_has_a_notch_where_it_meets_the_shoulder_seam() -> None:
    for parameters in ({}, {"fabric": "knit"}, {"pitch": 8.0}):
        pattern = sleeve_run(**parameters).pattern
        place = pattern.notches[f"{SLEEVE}/shoulder_notch"].place
        assert (place.from_point, place.amount) == (f"{SLEEVE}/cap_top", 0.0)
        assert {mark.kind for mark in pattern.pieces[SLEEVE].marks} == {"datum"}


def test_a_full_arm_gives_a_little_ease_which_is_said_and_can_be_forbidden() -> None:
    full = woman(upper_arm_girth=330.0)
    run = sleeve_run(full)
    (note,) = [note for note in run.notes if note.code == "sleeve-arm-ease-gave-way"]
    assert note.severity == "note"
    assert 0.0 < (note.wanted or 0.0) - (note.measured or 0.0) <= 10.0
    assert note.wanted == 330.0 + 50.0
    assert not outside(run)
    assert wanted(run)["upper_arm_girth"] == pytest.approx(note.measured)
    for parameter, amount in (("upper_arm_gives", "0 mm"), ("upper_arm_ease", "40 mm")):
        codes = {note.code for note in sleeve_run(full, None, **{parameter: amount}).notes}
        assert "sleeve-arm-ease-gave-way" not in codes


def test_a_low_cap_offers_a_lower_armhole_before_anybody_is_refused() -> None:
    for girth in range(300, 345, 3):
        run = sleeve_run(woman(upper_arm_girth=float(girth)))
        low = [note for note in run.notes if note.code == "sleeve-cap-low"]
        if low:
            assert [cure.parameter for cure in low[0].cures] == ["armhole_lowered"]
            assert not outside(run)
            return
    raise AssertionError("no arm makes a low cap")


def test_a_cap_ease_outside_the_range_of_its_cloth_is_said() -> None:
    codes = {note.code for note in sleeve_run(fabric="wool_dress", cap_ease="45 mm").notes}
    assert "sleeve-cap-ease-unusual" in codes
    assert "sleeve-cap-ease-unusual" not in {note.code for note in sleeve_run(cap_ease="25 mm").notes}


def test_a_sleeve_without_pitch_hangs_straight_and_is_said_so() -> None:
    (note,) = [note for note in sleeve_run(pitch=0.0).notes if note.code == "sleeve-hangs-straight"]
    assert note.severity == "look"


def test_an_estimated_elbow_does_not_widen_the_hem() -> None:
    guessed = Measure(300.0, "estimated", 10.0, method="height and wrist")
    run = sleeve_run(woman().with_value("elbow_girth", guessed))
    assert "sleeve-hem-widened" not in {note.code for note in run.notes}


def test_a_child_gets_a_low_cap_with_little_ease_whatever_the_cloth() -> None:
    """Some 12 mm at most (own judgment)."""
    arm = {"upper_arm_girth": 185.0, "wrist_girth": 130.0, "arm_length": 395.0}
    run = sleeve_run(body({**CHILD, **arm}, population=None), fabric="tailored_jacket")
    eases = [run.pattern.seams[f"sleeve/{which}_armhole"].ease for which in ("front", "back")]
    assert sum(eases) == pytest.approx(12.0)
    assert not outside(run)


@pytest.mark.parametrize(
    ("parameters", "code"),
    [
        ({"bodice": "coat"}, "sleeve-no-bodice"),
        ({"cap_ease": "-3 mm"}, "sleeve-cap-ease-negative"),
        ({"keep": "cap_height"}, "sleeve-cap-height-missing"),
        ({"keep": "cap_height", "cap_height": "300 mm"}, "sleeve-cap-not-reached"),
        ({"own_length": "90 mm"}, "sleeve-too-short"),
        ({"upper_arm_ease": "-150 mm"}, "sleeve-arm-too-thin"),
        ({"elbow": "dart", "own_length": "300 mm"}, "sleeve-elbow-out-of-reach"),
        ({"own_hem": "0 mm"}, "amount-not-positive"),
    ],
)
def test_what_cannot_be_is_refused_with_its_code(parameters: dict[str, Any], code: str) -> None:
    refused = stopped(sleeve_run(**parameters))
    assert refused.code == code
    assert str(refused)


def test_without_a_bodice_there_is_no_sleeve() -> None:
    base = woman()
    run = replay(add_step(Recipe("Alone"), "sleeve", {"fabric": "knit"}, base=base), base)
    assert stopped(run).code == "sleeve-no-bodice"


def test_missing_arm_measures_are_named() -> None:
    short = woman_without("wrist_girth")
    assert stopped(sleeve_run(short)).code == "measure-missing"
    assert sleeve_run(short, length="short").suspended is None
    assert not needs_for(SleeveParameters(length="cap"), short).helpful
    assert needs_for(SleeveParameters(length="short"), short).needed == ("upper_arm_girth", "arm_length")
    assert "wrist_girth" in needs_for(SleeveParameters(), short).needed


def test_two_arms_get_a_sleeve_each() -> None:
    run = sleeve_run(woman().with_value("upper_arm_girth", 298.0, "left"))
    assert run.suspended is None, str(run.suspended)
    widths = [
        run.pattern.pieces[f"{SLEEVE}@{side}"].line(f"{SLEEVE}/biceps_line@{side}").path.length
        for side in ("right", "left")
    ]
    assert widths == pytest.approx([335.0, 348.0], abs=1e-4)
    for which in ("front", "back"):
        for side in ("right", "left"):
            seam = run.pattern.seams[f"sleeve/{which}_armhole@{side}"]
            assert walk_seam(run.pattern, seam).misfit == pytest.approx(0.0, abs=1e-5)


def test_a_child_without_bust_dart_gets_a_sleeve() -> None:
    child = body(
        {**CHILD, "upper_arm_girth": 185.0, "wrist_girth": 130.0, "arm_length": 395.0}, population=None
    )
    run = sleeve_run(child, fabric="knit", upper_arm_ease="40 mm")
    assert run.suspended is None, str(run.suspended)
    assert not outside(run)


def test_the_pitch_is_said_in_degrees() -> None:
    (note,) = [note for note in sleeve_run(pitch=5.0).notes if note.code == "sleeve-pitch"]
    assert note.unit == "deg"
    assert note.measured == pytest.approx(5.0)
    assert "5.0 degrees" in note.message


def test_forced_shapes_are_said() -> None:
    codes = {note.code for note in sleeve_run(woman(elbow_girth=300.0)).notes}
    assert "sleeve-hem-widened" in codes
    low = {note.code for note in sleeve_run(keep="cap_height", cap_height="100 mm").notes}
    assert "sleeve-cap-low" in low
    assumed = sleeve_run(woman_without("elbow_length")).notes
    assert "sleeve-elbow-assumed" in {note.code for note in assumed}


def test_a_pattern_with_a_sleeve_is_stored_without_loss() -> None:
    data = pattern_to_data(sleeve_run(elbow="ease").pattern)
    assert pattern_to_data(pattern_from_data(data)) == data


def test_a_lowered_armhole_and_an_unusual_ease_are_said() -> None:
    codes = {finding.code for finding in spoken_of(sleeve_run(top={"armhole_lowered": "35 mm"}))}
    assert "armhole-lowered" in codes
    assert "ease-unusual" in {finding.code for finding in spoken_of(sleeve_run(top={"bust_ease": "30 mm"}))}
    assert not {"ease-unusual", "armhole-lowered"} & {finding.code for finding in spoken_of(sleeve_run())}
