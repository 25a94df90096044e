"""A raglan whose two lines are one, a cut-on sleeve whose seams are equally long, a gusset that goes in."""

import math
from typing import Any

import pytest

from lower_sheets import lower_bodies
from notchbook.body import MeasureSet
from notchbook.errors import StepRefused
from notchbook.finish import finish, production_table
from notchbook.geometry import Path, Point, Transform
from notchbook.output.flat.garment import garment_flat
from notchbook.pattern import Pattern, Severity, directed, locate, pattern_to_data, sewn_length, walk_seam
from notchbook.pattern.joining import gap_between, laying_motion
from notchbook.recipe import Replay
from notchbook.style.sleeves.raglan.taken import panel_of, require_inside
from support.skirt_judge import Judge
from support.sleeve_bodies import ARM, spoken_of, woman
from support.sleeve_styles import (
    GUSSET,
    KIMONO,
    RAGLAN,
    SLEEVE,
    gusseted,
    kimono,
    raglan,
    sleeve_style,
    stopped_with,
)

EASED = {"back_shoulder": "ease"}
SHOULDER = {"bust_dart": "shoulder"}
HALVES = ("front", "back")


def up(pattern: Pattern, name: str, start: str) -> Path:
    """An edge walked from the named point."""
    (step,) = directed(pattern, name, start)
    return step.path


def lines(pattern: Pattern, which: str) -> tuple[Path, Path]:
    """The raglan line of the body and of the sleeve, from the armhole up."""
    owners = f"raglan.{which}", f"raglan.{which}_sleeve"
    body, arm = (up(pattern, f"{owner}/raglan_line", f"{owner}/raglan_armhole") for owner in owners)
    return body, arm


def kimonos(**parameters: Any) -> Replay:
    return sleeve_style([("kimono_sleeve", "kimono", parameters)], top=SHOULDER, length="none")


def test_bodice_and_sleeve_of_a_raglan_have_one_line() -> None:
    assert raglan().suspended is None, str(raglan().suspended)
    pattern = raglan().pattern
    for which in HALVES:
        body, arm = lines(pattern, which)
        assert gap_between(body, arm.transformed(laying_motion(body, arm))) < 1e-6
        walk = walk_seam(pattern, pattern.seams[f"sleeve/{which}_armhole"])
        assert walk.misfit == pytest.approx(0.0, abs=1e-6)
        assert all(stop.first == pytest.approx(stop.second, abs=1e-5) for stop in walk.stations)


def test_a_raglan_keeps_neck_and_shoulders_and_runs_smoothly_out_of_armhole_and_cap() -> None:
    before = sleeve_style([], top=EASED, fabric="shirting").pattern
    after = raglan().pattern
    for which in HALVES:
        for word in ("neck", "shoulder"):
            name = f"bodice.{which}/{word}"
            assert sewn_length(after, name) == pytest.approx(sewn_length(before, name), abs=1e-6)
        body, arm = lines(after, which)
        hole = up(after, f"bodice.{which}/armhole/below", f"bodice.{which}/underarm")
        cap = up(after, f"{SLEEVE}/cap_{which}/below", f"{SLEEVE}/underarm_{which}")
        assert hole.length == pytest.approx(cap.length, abs=1e-6), "sewn flat up to the raglan line"
        for lower, upper in ((hole, body), (cap, arm)):
            along = lower.tangent_at(lower.length).dot(upper.tangent_at(0.0, "after"))
            assert along > 0.9998, "within about a degree"


def test_the_seams_over_the_arm_of_a_raglan_are_equally_long_and_notched_where_the_shoulder_ends() -> None:
    """The ease of the back shoulder must not wander down the arm."""
    pattern = raglan().pattern
    for which in HALVES:
        tip = pattern.pieces[f"raglan.{which}_sleeve"].points[f"bodice.{which}/shoulder_point"]
        assert spot(pattern, f"raglan.{which}_sleeve/overarm/shoulder_notch").distance_to(tip) < 1e-6
    walk = walk_seam(pattern, pattern.seams["raglan/overarm_seam"])
    assert walk.misfit == pytest.approx(0.0, abs=1e-4)
    apart = next(note for note in raglan().notes if note.code == "raglan-shoulders-apart")
    assert apart.measured is not None
    assert apart.measured >= 8.0
    assert "raglan-shoulders-lap" not in [note.code for note in raglan().notes]
    low = sleeve_style([("raglan_sleeve", "raglan", {"above": "0 mm"})], top=EASED, fabric="shirting")
    assert low.suspended is None, str(low.suspended)
    (lap,) = [note for note in low.notes if note.code.startswith("raglan-shoulders")]
    assert lap.code == "raglan-shoulders-lap"
    front, back = (
        low.pattern.pieces[f"raglan.{which}_sleeve"].points[f"bodice.{which}/shoulder_point"].x
        for which in HALVES
    )
    assert lap.measured == pytest.approx(front - back, abs=1e-9)
    assert front < back, "the front lies at the right of a sleeve: each reaches past the other"


@pytest.mark.parametrize("name", ["small-80", "medium-92", "plus-128", "man-100", "child-116"])
@pytest.mark.parametrize("shoulder", ["seam", "dart"])
def test_a_raglan_lies_round_over_the_bone_of_the_shoulder(name: str, shoulder: str) -> None:
    """A seam that turns at once stands out as a point; a shoulder is as round as a circle of 6 cm at the
    least, of which 1 cm turns by 10 degrees (common practice, no source)."""
    body = dict(lower_bodies())[name]
    step = ("raglan_sleeve", "raglan", {"shoulder": shoulder})
    done = sleeve_style([step], measures=body, top=EASED, fabric="shirting")
    assert done.suspended is None, str(done.suspended)
    for which in HALVES:
        tip, neck = f"bodice.{which}/shoulder_point", f"bodice.{which}/side_neck_point"
        over = up(done.pattern, f"raglan.{which}_sleeve/overarm", tip)
        seam = up(done.pattern, f"bodice.{which}/shoulder", neck).joined(over)
        shoulder_ends = seam.length - over.length
        places = [shoulder_ends + step_on for step_on in range(-60, 90, 5)]
        ways = [seam.tangent_at(at).direction() for at in places]
        turns = [abs((two - one + 180.0) % 360.0 - 180.0) for one, two in zip(ways, ways[2:], strict=False)]
        assert max(turns) < 10.0


def test_a_raglan_in_one_piece_has_a_dart_over_the_shoulder() -> None:
    darted = sleeve_style([("raglan_sleeve", "raglan", {"shoulder": "dart"})], top=EASED, fabric="shirting")
    assert darted.suspended is None, str(darted.suspended)
    assert [finding.code for finding in spoken_of(darted)] == []
    pattern, piece = darted.pattern, darted.pattern.pieces[SLEEVE]
    assert {name for name in pattern.pieces if "sleeve" in name} == {SLEEVE}
    assert piece.has_edge(f"{SLEEVE}/hem"), "below the dart the sleeve is as it was"
    walk = walk_seam(pattern, pattern.seams["raglan/overarm_seam"])
    assert walk.misfit == pytest.approx(0.0, abs=1e-4)
    (cut,) = [one for one in finish(pattern, production_table()) if one.name == SLEEVE]
    middle = pattern.edges["raglan.front_sleeve/overarm"].path.end
    assert cut.cut_line.contains(middle), "cut on over the dart, as over every other"
    for which in HALVES:
        assert lines(pattern, which)[0].length == pytest.approx(lines(pattern, which)[1].length, abs=1e-9)


def test_a_cut_on_sleeve_is_as_long_as_the_arm_and_equally_long_under_it() -> None:
    assert kimono().suspended is None, str(kimono().suspended)
    pattern = kimono().pattern
    for which in HALVES:
        assert pattern.edges[f"kimono.{which}/overarm"].length == pytest.approx(ARM["arm_length"], abs=1e-6)
    for word in ("overarm", "underarm"):
        walk = walk_seam(pattern, pattern.seams[f"kimono/{word}_seam"])
        assert walk.misfit == pytest.approx(0.0, abs=1e-5)
    side = walk_seam(pattern, pattern.seams["bodice/side_seam"])
    assert side.misfit == pytest.approx(0.0, abs=1e-5)
    assert not [name for name in pattern.edges if name.endswith("/armhole")]
    hems = [pattern.edges[f"kimono.{which}/hem"].length for which in HALVES]
    assert sum(hems) == pytest.approx(ARM["wrist_girth"] + 100.0, rel=0.01)


def test_a_gusset_goes_into_its_four_slashes() -> None:
    pattern = gusseted().pattern
    seams = [seam for name, seam in pattern.seams.items() if name.endswith("_gusset")]
    assert len(seams) == 4
    for seam in seams:
        walk = walk_seam(pattern, seam)
        assert walk.misfit == pytest.approx(0.0, abs=1e-9)
        assert walk.first == pytest.approx(90.0, abs=1.0)
    box = pattern.pieces["kimono.gusset"].bounds
    assert box.height == pytest.approx(90.0, abs=1.5), "at 60 degrees two equal triangles"


def test_a_panel_is_cut_on_over_the_slash_of_its_gusset() -> None:
    """The cloth between the sides of the slash is its allowance: it is slit when it is sewn (common practice,
    no source)."""
    pattern = gusseted().pattern
    for which in HALVES:
        piece = pattern.pieces[f"bodice.{which}"]
        (cut,) = [one for one in finish(pattern, production_table()) if one.name == piece.name]
        slash = piece.line(f"kimono.{which}/slash_line").path
        assert cut.cut_line.contains(slash.point_at(slash.length / 2.0))
        assert not cut.cut_line.self_crossings()
        assert len([line for line in piece.lines if line.kind == "stitch_line"]) == 2
        sides = [pattern.edges[f"kimono.{which}/{word}_slash"].path for word in ("sleeve", "side")]
        ends = [{(point.x, point.y): point for point in (side.start, side.end)} for side in sides]
        (one,) = [point for at, point in ends[0].items() if at not in ends[1]]
        (other,) = [point for at, point in ends[1].items() if at not in ends[0]]
        mouth = one.distance_to(other)
        assert mouth >= 2.0 * 5.9, "1/4 in beside the slash where it begins"


def test_the_checks_have_no_word_to_say_of_raglans_and_kimonos() -> None:
    for done in (raglan(), kimono(), gusseted()):
        assert [finding.code for finding in spoken_of(done)] == []
        judge = Judge(pattern_to_data(done.pattern))
        assert all(judge.polygon(name).is_valid for name in done.pattern.pieces)


def test_the_flat_shows_both_halves_of_a_raglan_and_hides_the_gusset() -> None:
    views = garment_flat(raglan().pattern)
    assert [len(view.shapes) for view in views] == [4, 4], "two halves of the sleeve and of the body"
    for view, which in zip(views, HALVES, strict=True):
        sleeve = raglan().pattern.pieces[f"raglan.{which}_sleeve"]
        areas = sorted(abs(shape.fill.area()) for shape in view.shapes)
        assert any(area == pytest.approx(abs(sleeve.sew_line.area()), rel=0.01) for area in areas)
    plain, gusset = (garment_flat(done.pattern) for done in (kimono(), gusseted()))
    assert [len(view.shapes) for view in plain] == [len(view.shapes) for view in gusset]


def test_both_are_drawn_on_two_different_sides() -> None:
    uneven = woman().with_value("shoulder_slope", 27.3, "left")
    for step, top, length in ((RAGLAN, EASED, "long"), (KIMONO, SHOULDER, "none")):
        done = sleeve_style([step], uneven, top, woman(), length=length)
        assert done.suspended is None, str(done.suspended)
        assert [finding.code for finding in spoken_of(done)] == []


@pytest.mark.parametrize(
    ("step", "top", "length", "code"),
    [
        (KIMONO, SHOULDER, "long", "kimono-sleeve-there"),
        (("kimono_sleeve", "kimono", {"bodice": "other"}), SHOULDER, "none", "sleeve-no-panel"),
        (("kimono_sleeve", "kimono", {"depth": "8 cm"}), {}, "none", "kimono-side-short"),
        (("kimono_sleeve", "kimono", {"length": "6 cm"}), SHOULDER, "none", "kimono-sleeve-short"),
        (KIMONO, {"bust_dart": "armhole"}, "none", "kimono-parted"),
        (("kimono_sleeve", "kimono", {**GUSSET[2], "angle": 40}), SHOULDER, "none", "kimono-gusset-close"),
        (RAGLAN, {"back_shoulder": "dart"}, "long", "raglan-parted"),
        (("raglan_sleeve", "raglan", {"front_neck": "30 cm"}), EASED, "long", "raglan-neck-short"),
        (("raglan_sleeve", "raglan", {"above": "20 cm"}), EASED, "long", "raglan-cap-high"),
    ],
)
def test_what_cannot_be_drawn_is_refused_in_words(
    step: Any, top: dict[str, Any], length: str, code: str
) -> None:
    assert stopped_with(sleeve_style([step], top=top, length=length)) == code


def test_a_cut_on_sleeve_that_binds_is_told() -> None:
    close = kimonos(depth="7 cm", angle=15)
    (told,) = [note for note in close.notes if note.code == "kimono-arm-close"]
    assert told.severity is Severity.LOOK
    assert told.measured is not None
    assert woman().value("upper_arm_girth") <= told.measured < woman().value("upper_arm_girth") + 50.0
    assert "kimono-arm-close" not in [note.code for note in kimono().notes]


def test_a_cut_on_sleeve_that_the_arm_does_not_go_into_stops_the_papers_and_a_freer_one_is_offered() -> None:
    """The invented plus 128: an arm of 40 cm; a sleeve narrower than its arm cannot be put on."""
    plus = dict(lower_bodies())["plus-128"]
    tight = sleeve_style([KIMONO], measures=plus, top=SHOULDER, length="none")
    (told,) = [note for note in tight.notes if note.code == "kimono-arm-tight"]
    assert told.severity is Severity.STOP
    assert told.measured is not None
    assert told.measured < plus.value("upper_arm_girth")
    (cure,) = told.cures
    angle = float(str(cure.value))
    freer = kimono_at(angle, plus)
    assert not [note for note in freer.notes if note.code.startswith("kimono-arm")]
    assert [note for note in kimono_at(angle + 1.0, plus).notes if note.code.startswith("kimono-arm")]


def test_an_arm_that_no_angle_frees_is_offered_none() -> None:
    """The sleeve meets the side right under the arm of a body whose arm is as thick as a leg."""
    stout = woman().with_value("upper_arm_girth", 620.0)
    done = sleeve_style(
        [("kimono_sleeve", "kimono", {"depth": "1 cm"})], measures=stout, top=SHOULDER, length="none"
    )
    (told,) = [note for note in done.notes if note.code == "kimono-arm-tight"]
    assert told.cures == ()


def kimono_at(angle: float, measures: MeasureSet) -> Replay:
    done = sleeve_style(
        [("kimono_sleeve", "kimono", {"angle": angle})], measures=measures, top=SHOULDER, length="none"
    )
    assert done.suspended is None
    return done


def spot(pattern: Pattern, notch: str) -> Point:
    return locate(pattern, pattern.notches[notch].place).position


def test_the_notches_of_the_side_seam_stay_on_their_cloth_or_come_to_the_middle_of_what_is_left() -> None:
    before = sleeve_style([], top=SHOULDER, length="none").pattern
    shallow = kimonos(depth="5 mm", curve="1 mm").pattern
    for which in HALVES:
        notch, side = f"bodice.{which}/side_notch", f"bodice.{which}/side_seam"
        assert spot(shallow, notch).distance_to(spot(before, notch)) < 1e-6
        left = kimono().pattern.edges[side].path
        assert left.length < before.edges[side].length - 40.0, "the sleeve took where the notch stood"
        assert spot(kimono().pattern, notch).distance_to(left.point_at(left.length / 2.0)) < 1e-6


def test_the_angle_that_is_told_of_the_back_is_that_of_the_drawn_sleeve() -> None:
    (told,) = [note for note in kimono().notes if note.code == "kimono-back-angle"]
    pattern = kimono().pattern
    over = up(pattern, "kimono.back/overarm", "bodice.back/shoulder_point")
    shoulder, arm = over.tangent_at(0.0, "after"), over.tangent_at(over.length)
    assert told.measured == pytest.approx(math.degrees(math.acos(shoulder.dot(arm))), abs=1e-6)


def test_a_back_that_no_angle_makes_as_long_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("notchbook.style.sleeves.kimono.lines._MOST", 0.01)
    assert stopped_with(kimonos()) == "kimono-underarms-differ"


def test_seams_over_the_arm_that_no_height_evens_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("notchbook.style.sleeves.raglan.laid._MOST", 0.01)
    assert stopped_with(sleeve_style([RAGLAN], top=EASED)) == "raglan-overarms-differ"


def test_a_raglan_line_must_lie_on_its_panel() -> None:
    panel = panel_of(sleeve_style([], top=EASED).pattern, "bodice.front", "front", 35.0)
    good = panel.line_from(60.0)
    require_inside(panel, good)
    beside = panel.outward * 200.0
    for line in (
        Path.polyline([good.start, good.start + beside, good.end]),
        good.transformed(Transform.translation(beside.x, beside.y)),
    ):
        with pytest.raises(StepRefused) as refused:
            require_inside(panel, line)
        assert refused.value.code == "raglan-leaves-panel"
