"""The stretch blocks as steps, judged from the pattern's data by other code than the construction."""

from typing import Any

import pytest

from notchbook.app.eases.ease_rows import ease_table
from notchbook.blocks.stretch_pieces.parameters import BodysuitParameters, StretchTorsoParameters
from notchbook.body import MeasureSet
from notchbook.checks import Subject
from notchbook.checks.shapes import shape_closures
from notchbook.pattern import STRETCH_FABRIC, pattern_from_data, pattern_to_data, spoken, walk_seam
from notchbook.pattern.names import last_word
from notchbook.recipe import Replay, all_definitions, definition, replay
from support.bodice_judge import Closure
from support.one_side import one_side
from support.skirt_judge import length
from support.stretch_bodies import BODIES, spoken_of, stretch_run, whole
from support.stretch_judge import StretchJudge, leggings_closures, torso_closures

FABRICS = [("25 %", "25 %"), ("50 %", "50 %"), ("100 %", "60 %")]
BLOCKS: list[tuple[str, dict[str, Any]]] = [
    ("stretch_torso", {}),
    ("stretch_torso", {"fit": "fitted", "sleeve": "long", "length": "hip"}),
    ("stretch_torso", {"fit": "fitted", "sleeve": "none", "length": "waist", "neck": "scoop"}),
    ("stretch_torso", {"sleeve": "three_quarter", "neck": "base", "back": "base", "own_length": "15 cm"}),
    ("bodysuit", {}),
    ("bodysuit", {"use": "dance", "sleeve": "long", "back": "high"}),
    ("bodysuit", {"leg": "high", "back": "low", "shoulder": "full"}),
    ("leggings", {}),
]


def wanted(run: Replay) -> dict[str, float]:
    return {last_word(promise.name): promise.wanted for promise in run.expectations}


def misses(run: Replay, block: str, data: dict[str, Any] | None = None) -> list[Closure]:
    """What does not agree by the judge's own measuring."""
    judge = StretchJudge(data or pattern_to_data(run.pattern), block)
    closures = leggings_closures if block == "leggings" else torso_closures
    return [one for one in closures(judge, wanted(run)) if not one.holds]


def require_done(run: Replay) -> Replay:
    assert run.suspended is None, str(run.suspended)
    return run


@pytest.mark.parametrize("name", BODIES)
@pytest.mark.parametrize(("block", "parameters"), BLOCKS, ids=str)
def test_every_closure_holds_by_other_code(name: str, block: str, parameters: dict[str, Any]) -> None:
    for across, along in FABRICS:
        run = require_done(stretch_run(block, whole(name), across=across, along=along, **parameters))
        assert misses(run, block) == []
        assert [row.name for row in ease_table(run) if row.pattern is None or row.miss > 0.1] == []


@pytest.mark.parametrize(("block", "parameters"), BLOCKS, ids=str)
def test_no_check_stops_an_ordinary_body(block: str, parameters: dict[str, Any]) -> None:
    run = require_done(stretch_run(block, **parameters))
    assert [finding.code for finding in spoken_of(run) if finding.severity == "stop"] == []


@pytest.mark.parametrize(("block", "piece"), [("stretch_torso", "front"), ("bodysuit", "back")])
def test_a_planted_fault_is_seen(block: str, piece: str) -> None:
    run = stretch_run(block)
    data = pattern_to_data(run.pattern)
    found = next(one for one in data["pieces"] if one["name"] == f"{block}.{piece}")
    edge = next(one for one in found["outline"] if one["name"].endswith("/side_seam"))
    edge["path"][-1][-1] += 0.3
    assert misses(run, block, data)


@pytest.mark.parametrize(
    ("block", "parameters", "pieces"),
    [
        ("stretch_torso", {}, {"front": "fold", "back": "fold", "sleeve": "pair"}),
        ("stretch_torso", {"sleeve": "none"}, {"front": "fold", "back": "fold"}),
        ("bodysuit", {}, {"front": "fold", "back": "fold", "lining": "fold"}),
        ("leggings", {}, {"leg": "pair"}),
        ("leggings", {"side_seam": True}, {"front": "pair", "back": "pair"}),
    ],
    ids=str,
)
def test_the_pieces_and_how_they_are_cut(
    block: str, parameters: dict[str, Any], pieces: dict[str, str]
) -> None:
    pattern = require_done(stretch_run(block, **parameters)).pattern
    assert {name: piece.cut for name, piece in pattern.pieces.items()} == {
        f"{block}.{word}": cut for word, cut in pieces.items()
    }
    assert pattern.materials["self"] == STRETCH_FABRIC
    assert pattern_from_data(pattern_to_data(pattern)) == pattern


@pytest.mark.parametrize(("block", "parameters"), BLOCKS, ids=str)
def test_every_seam_walks_from_notch_to_notch(block: str, parameters: dict[str, Any]) -> None:
    pattern = stretch_run(block, **parameters).pattern
    assert pattern.seams
    for seam in pattern.seams.values():
        walk = walk_seam(pattern, seam)
        assert walk.misfit == pytest.approx(0.0, abs=0.05), seam.name
        assert seam.ease == 0.0
        for station in walk.stations:
            if station.first is not None and station.second is not None:
                assert station.first == pytest.approx(station.second, abs=0.05), station.notch


def test_the_lining_is_the_front_edge_on_edge() -> None:
    pattern = stretch_run("bodysuit").pattern
    front, lining = (pattern.pieces[f"bodysuit.{word}"] for word in ("front", "lining"))
    own = lining.edge("bodysuit.lining/leg_opening").path
    leg = front.edge("bodysuit.front/leg_opening").path
    for step in range(11):
        assert leg.nearest(own.point_at(own.length * step / 10.0)).gap < 1e-3
    assert lining.edge("bodysuit.lining/crotch").length == pytest.approx(
        front.edge("bodysuit.front/crotch").length
    )
    assert [told.material for told in lining.instructions] == ["lining"]
    assert pattern.materials["lining"] == "stretch lining"


def test_another_cloth_refigures_the_pattern() -> None:
    girths = [
        wanted(stretch_run("bodysuit", across=across, along="50 %"))["bust_girth"]
        for across in ("25 %", "50 %", "10 cm to 20 cm")
    ]
    assert girths == pytest.approx([920.0 * share for share in (0.95, 0.90, 0.80)])
    lengths = [
        wanted(stretch_run("bodysuit", across="50 %", along=along))["crotch_length"]
        for along in ("0 %", "50 %", "100 %")
    ]
    assert lengths == pytest.approx([700.0 * share for share in (1.0, 0.95, 0.90)])


def test_an_ease_of_her_own_replaces_that_of_the_cloth() -> None:
    asked = wanted(stretch_run("leggings", hip_ease="-1/20 hip", knee_ease="10 mm"))
    assert asked["hip_girth"] == pytest.approx(0.95 * 980.0)
    assert asked["knee_girth"] == pytest.approx(380.0)


@pytest.mark.parametrize("block", ["stretch_torso", "bodysuit", "leggings"])
def test_a_missing_stretch_is_asked_for(block: str) -> None:
    run = stretch_run(block, across=None)
    assert run.suspended is not None
    assert run.suspended.error.code == "stretch-not-tested"


@pytest.mark.parametrize("block", ["stretch_torso", "bodysuit", "leggings"])
def test_the_needs_are_exactly_what_a_draft_cannot_do_without(block: str) -> None:
    base = whole()
    step = definition(block)
    needs = step.needs_of(step.parameters(), base)
    bare = MeasureSet.from_mm("Bare", {key: base.value(key) for key in needs.needed}, population="women")
    require_done(stretch_run(block, bare))
    for key in needs.needed:
        less = {other: base.value(other) for other in needs.needed if other != key}
        run = stretch_run(block, MeasureSet.from_mm("Less", less, population="women"))
        assert run.suspended is not None, key
        assert run.suspended.error.code == "measure-missing"


@pytest.mark.parametrize("taken", ["outside_leg", "sitting_rise"])
def test_the_rise_of_leggings_may_come_from_elsewhere(taken: str) -> None:
    base = whole()
    values = {key: base.value(key) for key in base.values if key != "standing_rise"}
    values[taken] = {"outside_leg": 1045.0, "sitting_rise": 275.0}[taken]
    step = definition("leggings")
    other = MeasureSet.from_mm("Other", values, population="women")
    assert taken in step.needs_of(step.parameters(), other).needed
    run = require_done(stretch_run("leggings", other))
    assert pattern_to_data(run.pattern) == pattern_to_data(stretch_run("leggings").pattern)


@pytest.mark.parametrize(
    ("block", "parameters", "body", "code"),
    [
        ("bodysuit", {"across": "5 %"}, {}, "cloth-hardly-stretches"),
        ("leggings", {"across": "5 %"}, {}, "cloth-hardly-stretches"),
        ("stretch_torso", {"bust_ease": "-100 cm"}, {}, "stretch-ease-too-small"),
        ("bodysuit", {"shoulder": "strap", "sleeve": "long"}, {}, "stretch-strap-with-sleeve"),
        ("bodysuit", {"strap_width": "2 mm"}, {}, "stretch-strap-narrow"),
        ("bodysuit", {}, {"crotch_length": 400.0}, "bodysuit-crotch-short"),
        ("stretch_torso", {"sleeve": "long"}, {"upper_arm_girth": 800.0}, "stretch-arm-too-full"),
        ("leggings", {}, {"crotch_length": 1000.0}, "leggings-crotch-long"),
        ("stretch_torso", {"own_sleeve_length": "3 cm"}, {}, "stretch-sleeve-short"),
    ],
    ids=str,
)
def test_what_cannot_be_drafted_is_refused_with_its_reason(
    block: str, parameters: dict[str, Any], body: dict[str, float], code: str
) -> None:
    run = stretch_run(block, whole("woman", **body), **parameters)
    assert run.suspended is not None
    error = run.suspended.error
    assert error.code == code
    assert error.text() and error.next_step()


@pytest.mark.parametrize("block", ["stretch_torso", "bodysuit", "leggings"])
def test_what_the_block_refuses_is_listed(block: str) -> None:
    step = next(one for one in all_definitions() if one.operation == block)
    assert {"stretch-not-tested", "stretch-ease-too-small"} <= set(step.refuses)
    assert step.eases is not None and step.eases()


SIDED: list[tuple[str, float]] = [
    ("shoulder_slope", 4.0),
    ("shoulder_length", 8.0),
    ("across_back", 10.0),
    ("hip_girth", 20.0),
    ("hip_depth", 10.0),
    ("thigh_girth", 20.0),
    ("upper_arm_girth", 15.0),
    ("inside_leg", 10.0),
    ("standing_rise", 8.0),
]


@pytest.mark.parametrize("block", ["stretch_torso", "bodysuit", "leggings"])
@pytest.mark.parametrize(("key", "more"), SIDED)
def test_sides_that_differ_are_drafted_apart_and_meet(block: str, key: str, more: float) -> None:
    base = whole()
    uneven = base.with_value(key, base.value(key) + more, "left")
    run = require_done(stretch_run(block, uneven))
    data = pattern_to_data(run.pattern)
    for side in ("right", "left"):
        judge = StretchJudge(one_side(data, side), block)
        closures = leggings_closures if block == "leggings" else torso_closures
        assert [one for one in closures(judge, {}) if not one.holds] == []


@pytest.mark.parametrize("block", ["stretch_torso", "bodysuit", "leggings"])
def test_no_check_stops_a_body_whose_sides_differ(block: str) -> None:
    base = whole()
    for key, more in SIDED:
        base = base.with_value(key, base.value(key) + more, "left")
    run = require_done(stretch_run(block, base))
    assert [finding.code for finding in spoken_of(run) if finding.severity == "stop"] == []
    assert any(name.endswith("@left") for name in run.pattern.index)


def test_the_neck_pit_of_uneven_shoulders_lies_at_the_mean() -> None:
    base = whole()
    even = [stretch_run("stretch_torso", whole(neck_base_girth=girth)).pattern for girth in (370.0, 390.0)]
    pits = [one.pieces["stretch_torso.front"].points["stretch_torso.front/neck_pit"].y for one in even]
    run = require_done(stretch_run("stretch_torso", base.with_value("neck_base_girth", 390.0, "left")))
    front = run.pattern.pieces["stretch_torso.front"]
    assert front.points["stretch_torso.front/neck_pit"].y == pytest.approx(sum(pits) / 2.0, abs=1e-6)


def test_a_torso_to_the_waist_ends_at_the_waist() -> None:
    run = stretch_run("stretch_torso", fit="fitted", length="waist")
    assert wanted(run)["waist_girth"] == pytest.approx(0.97 * 760.0)
    assert "hip_girth" not in wanted(run)
    assert misses(run, "stretch_torso") == []


def test_a_loose_top_falls_past_the_waist_unless_the_waist_is_large() -> None:
    assert "waist_girth" not in wanted(stretch_run("stretch_torso"))
    belly = stretch_run("stretch_torso", whole(waist_girth=1050.0))
    assert wanted(belly)["waist_girth"] == pytest.approx(1050.0 + 80.0)


@pytest.mark.parametrize("name", BODIES)
@pytest.mark.parametrize(("block", "parameters"), [("stretch_torso", {}), ("bodysuit", {"use": "dance"})])
def test_a_short_sleeve_has_a_seam_under_the_arm(name: str, block: str, parameters: dict[str, Any]) -> None:
    """40 to 60 mm below the cap: common practice."""
    pattern = require_done(stretch_run(block, whole(name), sleeve="short", **parameters)).pattern
    assert pattern.edges[f"{block}.sleeve/front_seam"].length >= 45.0
    own = require_done(stretch_run(block, whole(name), sleeve="long", **parameters)).pattern
    assert own.edges[f"{block}.sleeve/front_seam"].length > 200.0


def test_a_strap_is_as_wide_as_asked() -> None:
    run = stretch_run("bodysuit", strap_width="25 mm")
    assert wanted(run)["strap_width"] == 25.0
    assert run.pattern.edges["bodysuit.front/shoulder"].length == pytest.approx(25.0)


def test_the_nape_of_the_body_is_kept_where_the_back_is_cut_low() -> None:
    run = stretch_run("bodysuit", back="low")
    back = run.pattern.pieces["bodysuit.back"]
    base, cut = (back.points[f"bodysuit.back/{word}"] for word in ("neck_base", "nape"))
    assert base.y - cut.y == pytest.approx(0.5 * 0.95 * 400.0)
    assert "bodysuit.back/neck_base" not in stretch_run("bodysuit", neck="base", back="base").pattern.index
    rises = [one for one in shape_closures(Subject(run.pattern)) if "rise to width" in one.name]
    assert all(one.agrees for one in rises), "the lowering is allowed for"


def test_choices_are_those_of_the_table() -> None:
    """A word without a figure would be found only when somebody chose it."""
    for neck in ("base", "crew", "scoop", "deep"):
        require_done(stretch_run("stretch_torso", neck=neck))
    for leg in ("low", "classic", "high"):
        require_done(stretch_run("bodysuit", leg=leg))
    assert StretchTorsoParameters().neck == "crew"
    assert BodysuitParameters().leg == "classic"


def test_the_hem_of_the_sleeve_is_not_told_as_the_hem_of_the_garment() -> None:
    """A dress of 97 cm at the hem was said to have a hem of 19.6 cm."""
    run = stretch_run("stretch_torso", sleeve="three_quarter")
    hems = {spoken(one.name): one.wanted for one in run.expectations if one.name.endswith("hem_girth")}
    judge = StretchJudge(pattern_to_data(run.pattern), "stretch_torso")
    assert hems == {"sleeve, hem girth": pytest.approx(length(judge.edge("sleeve", "hem")), abs=0.1)}


@pytest.mark.parametrize(("own_length", "key"), [("345 mm", "knee_girth"), ("7 cm", "thigh_girth")])
def test_shorter_leggings_are_as_wide_at_the_hem_as_the_leg_is_there(own_length: str, key: str) -> None:
    """The knee of the usual woman lies 345 mm below the crotch; along the cloth nothing is reduced."""
    whole_leg = stretch_run("leggings", along="0 %")
    run = require_done(stretch_run("leggings", along="0 %", own_length=own_length))
    judge = StretchJudge(pattern_to_data(run.pattern), "leggings")
    assert judge.leg_whole("hem") == pytest.approx(wanted(whole_leg)[key], abs=0.1)
    assert wanted(run)["hem_girth"] == pytest.approx(wanted(whole_leg)[key], abs=0.1)
    assert "ankle_girth" not in wanted(run)


def test_a_step_that_went_by_a_measure_runs_again_when_it_changes() -> None:
    """Without a population, bust and height tell whose body it is, and so which crotch length is usual."""
    told_by = {"crotch_length", "bust_girth", "neck_to_bust_point", "bust_point_width"}
    values = {key: whole().value(key) for key in whole().values if key not in told_by}
    base = MeasureSet.from_mm("Nobody said whose", values)
    before = require_done(stretch_run("leggings", base))
    small = base.with_value("bust_girth", 700.0)
    kept, fresh = replay(before.recipe, small, before), replay(before.recipe, small)
    assert kept.expectations == fresh.expectations
    assert kept.expectations != before.expectations
