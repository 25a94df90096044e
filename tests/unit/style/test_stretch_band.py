"""The stretch band: as long as its material asks, marked in quarters, and looked at for what must pass."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from notchbook.pattern import Finding, pattern_from_data, pattern_to_data, sewn_length, walk_seam
from notchbook.recipe import Replay, add_step, change_step, replay
from notchbook.style._band_materials import BAND_ROWS
from notchbook.style._band_passing import passing
from support.skirt_judge import Judge
from support.stretch_bodies import CLOTH, banded_run, spoken_of, stretch_run, whole

Edges = list[tuple[str, str]]
TORSO, SUIT, LEG = "stretch_torso", "bodysuit", "leggings.leg"
NECK: Edges = [
    (f"{TORSO}.front/neck", f"{TORSO}.front/neck_pit"),
    (f"{TORSO}.back/neck", f"{TORSO}.back/side_neck_point"),
]
HEM: Edges = [
    (f"{TORSO}.front/hem", f"{TORSO}.front/hem_center"),
    (f"{TORSO}.back/hem", f"{TORSO}.back/hem_side"),
]
CUFF: Edges = [(f"{TORSO}.sleeve/hem", f"{TORSO}.sleeve/hem_front")]
LEG_OPENING: Edges = [
    (f"{SUIT}.front/leg_opening", f"{SUIT}.front/crotch_side"),
    (f"{SUIT}.back/leg_opening", f"{SUIT}.back/leg_side"),
]
ARMHOLE: Edges = [
    (f"{SUIT}.front/armhole", f"{SUIT}.front/underarm"),
    (f"{SUIT}.back/armhole", f"{SUIT}.back/shoulder_point"),
]
WAIST: Edges = [(f"{LEG}/waist", f"{LEG}/waist_center_front")]
BANDS: list[tuple[str, Edges, bool]] = [
    ("stretch_torso", NECK, True),
    ("stretch_torso", HEM, True),
    ("stretch_torso", CUFF, False),
    ("bodysuit", LEG_OPENING, False),
    ("bodysuit", ARMHOLE, False),
    ("leggings", WAIST, True),
]
IDS = ["neck", "hem", "cuff", "leg opening", "armhole", "waist"]


def said(run: Replay, code: str) -> list[Finding]:
    return [finding for finding in run.notes if finding.code == code]


def refusal(run: Replay) -> str:
    assert run.suspended is not None
    assert run.suspended.error.text() and run.suspended.error.next_step()
    return run.suspended.error.code


@pytest.mark.parametrize(("block", "edges", "is_half"), BANDS, ids=IDS)
def test_the_band_is_its_opening_times_the_ratio(block: str, edges: Edges, is_half: bool) -> None:
    pattern = banded_run(block, edges).pattern
    data = pattern_to_data(pattern)
    judge = Judge(data)
    band = judge.polygon("stretch_band.band")
    west, south, east, north = band.bounds
    opening = judge.length(*(edge for edge, _ in edges))
    assert isinstance(band, Polygon)
    assert east - west == pytest.approx(0.85 * opening, abs=0.01)
    assert north - south == pytest.approx(40.0)
    assert band.area == pytest.approx((east - west) * 40.0)
    assert pattern.pieces["stretch_band.band"].cut == ("fold" if is_half else "pair")
    assert pattern_from_data(data) == pattern


@pytest.mark.parametrize(("block", "edges", "is_half"), BANDS, ids=IDS)
def test_quarter_marks_meet_and_share_the_stretch_evenly(block: str, edges: Edges, is_half: bool) -> None:
    run = banded_run(block, edges)
    pattern = run.pattern
    seam = next(seam for seam in pattern.seams.values() if seam.first[0].edge == "stretch_band.band/lower")
    walk = walk_seam(pattern, seam)
    assert walk.misfit == pytest.approx(0.0, abs=0.01)
    shares = [0.5] if is_half else [0.25, 0.5, 0.75]
    marks = [one for one in walk.stations if "quarter" in one.notch or "half" in one.notch]
    assert [one.first for one in marks] == pytest.approx([share * walk.first for share in shares], abs=0.01)
    assert [one.second for one in marks] == pytest.approx([share * walk.second for share in shares], abs=0.01)
    assert not {"notch-mate-missing", "notch-stretch-differs", "seam-uneven"} & {
        finding.code for finding in spoken_of(run)
    }


@pytest.mark.parametrize("material", sorted(BAND_ROWS))
def test_each_material_has_its_own_ratio_within_its_range(material: str) -> None:
    row = BAND_ROWS[material]  # type: ignore[index]  # the words of the table are its own
    assert row.least <= row.share <= row.most <= 1.0
    assert row.source and row.grade
    run = banded_run("stretch_torso", NECK, material=material, stretch="60 %")
    band = run.pattern.pieces["stretch_band.band"]
    half = sum(sewn_length(run.pattern, edge) for edge, _ in NECK)
    assert band.bounds.width == pytest.approx(row.share * half)
    assert band.bounds.height == pytest.approx(20.0 * row.layers)
    assert bool(band.lines) == (row.layers == 2)


def test_rib_is_eight_to_nine_tenths_of_its_seam() -> None:
    """Neck rib 0.80 to 0.90 of the seam, jersey 0.85 (handbook figures, from memory)."""
    assert (BAND_ROWS["rib"].least, BAND_ROWS["rib"].most) == (0.80, 0.90)
    assert BAND_ROWS["jersey"].share == 0.85


@settings(max_examples=15, deadline=None)
@given(share=st.floats(0.7, 1.0), depth=st.integers(8, 60))
def test_any_ratio_and_depth_close(share: float, depth: int) -> None:
    run = banded_run("stretch_torso", NECK, share=share, depth=f"{depth} mm")
    seam = run.pattern.seams["stretch_band/neck"]
    walk = walk_seam(run.pattern, seam)
    assert walk.misfit == pytest.approx(0.0, abs=0.01)
    assert walk.first == pytest.approx(share * walk.second, abs=0.01)


def test_the_band_follows_its_opening() -> None:
    run = banded_run("stretch_torso", NECK)
    step = run.recipe.steps[0]
    wider = change_step(run.recipe, step.id, {**step.parameters, "neck": "scoop"}, base=run.measures)
    after = replay(wider, run.measures).pattern
    half = sum(sewn_length(after, edge) for edge, _ in NECK)
    assert half > sum(sewn_length(run.pattern, edge) for edge, _ in NECK) + 30.0
    assert after.pieces["stretch_band.band"].bounds.width == pytest.approx(0.85 * half)


def test_a_banded_hem_is_sewn_and_no_longer_turned_up() -> None:
    pattern = banded_run("stretch_torso", HEM).pattern
    assert pattern.edges[HEM[0][0]].kind == "seam"
    assert pattern.allowances[HEM[0][0]].allowance_class == "overlock"
    assert pattern.edges[CUFF[0][0]].kind == "hem"


def test_an_elastic_is_laid_on_and_not_seamed() -> None:
    """The edge is turned over it: it has no allowance of its own, and both carry quarter marks."""
    run = banded_run("bodysuit", LEG_OPENING, material="elastic", depth="8 mm")
    pattern = run.pattern
    band = pattern.pieces["stretch_band.band"]
    assert (band.bounds.height, band.lines) == (8.0, ())
    assert [told.material for told in band.instructions] == ["elastic"]
    assert set(pattern.seams) >= {"stretch_band/band_end"}
    assert "stretch_band/leg_opening" not in pattern.seams
    assert pattern.allowances[LEG_OPENING[0][0]].allowance_class == "elastic_edge"
    marks = [notch for notch in pattern.notches.values() if "quarter" in notch.purpose]
    assert len(marks) == 6
    assert {notch.seam for notch in marks} == {None}
    assert {finding.code for finding in spoken_of(run)} == {"label-outside"}  # 8 mm hold no words


def test_a_head_that_does_not_pass_is_told_with_needed_and_available_stretch() -> None:
    top = {"neck": "base", "back": "base"}
    run = banded_run("stretch_torso", NECK, whole(head_girth=570.0), top, material="self", stretch="25 %")
    (told,) = said(run, "band-does-not-pass")
    length = 2.0 * run.pattern.pieces["stretch_band.band"].bounds.width
    needed = 100.0 * (570.0 / length - 1.0)
    assert (
        f"the head does not pass the band: needs {needed:.0f} %, the garment's own cloth gives 25 %"
        in told.message
    )
    assert told.measured == pytest.approx(length)
    assert told.wanted == pytest.approx(570.0 / 1.25)


def test_a_longer_band_is_offered_where_it_lets_the_head_pass() -> None:
    run = banded_run(
        "stretch_torso", NECK, whole(head_girth=570.0), material="self", stretch="33 %", share=0.8
    )
    (told,) = said(run, "band-does-not-pass")
    longer = next(cure for cure in told.cures if cure.parameter == "share")
    band = run.recipe.steps[-1]
    cured = replay(
        change_step(run.recipe, band.id, {**band.parameters, "share": longer.value}, base=run.measures),
        run.measures,
    )
    assert not said(cured, "band-does-not-pass")
    assert 0.8 < longer.value <= 1.0
    opened = replay(
        change_step(run.recipe, band.id, {**band.parameters, "put_on": "opening"}, base=run.measures),
        run.measures,
    )
    assert not said(opened, "band-does-not-pass")


def test_an_opening_whose_cloth_gives_too_little_is_told() -> None:
    top = {"neck": "base", "back": "base"}
    run = banded_run("stretch_torso", NECK, whole(head_girth=570.0), top, cloth="18 %")
    assert said(run, "opening-does-not-pass")
    assert not said(run, "band-does-not-pass")
    assert not said(banded_run("stretch_torso", NECK, whole(head_girth=570.0), top), "opening-does-not-pass")


@pytest.mark.parametrize(
    ("word", "piece", "put_on", "what"),
    [
        ("neck", "front", "over_head", "head"),
        ("neck", "front", "stepped_into", "hip"),
        ("neck", "front", "opening", "nothing"),
        ("hem", "sleeve", "over_head", "hand"),
        ("hem", "leg", "stepped_into", "heel"),
        ("waist", "leg", "stepped_into", "hip"),
        ("hem", "front", "over_head", "bust"),
        ("leg_opening", "front", "stepped_into", "thigh"),
        ("armhole", "front", "opening", "upper_arm"),
        ("style_line", "front", "over_head", "nothing"),
    ],
)
def test_what_must_pass_goes_by_the_opening(word: str, piece: str, put_on: Any, what: str) -> None:
    assert passing(word, piece, put_on) == what


@pytest.mark.parametrize(
    ("edges", "parameters", "code"),
    [
        (NECK, {"material": "jersey"}, "band-stretch-not-tested"),
        (NECK, {"depth": "15 cm"}, "band-too-short"),
        (NECK[:1], {}, "band-opening-half-closed"),
        ([NECK[0], HEM[1]], {}, "band-opening-broken"),
        ([NECK[0], (NECK[1][0], f"{TORSO}.back/nape")], {}, "band-opening-broken"),
        ([(f"{TORSO}.front/collar", f"{TORSO}.front/neck_pit")], {}, "name-lost"),
    ],
    ids=str,
)
def test_what_cannot_be_banded_is_refused(edges: Edges, parameters: dict[str, Any], code: str) -> None:
    assert refusal(banded_run("stretch_torso", edges, None, None, **parameters)) == code


def test_sides_that_differ_get_a_band_each_half_as_long_as_its_neck() -> None:
    base = whole()
    run = banded_run("stretch_torso", NECK, base.with_value("neck_base_girth", 390.0, "left"))
    assert run.suspended is None, str(run.suspended)
    pattern = run.pattern
    for side in ("right", "left"):
        seam = pattern.seams[f"stretch_band/neck@{side}"]
        assert walk_seam(pattern, seam).misfit == pytest.approx(0.0, abs=0.05)
    assert not [finding for finding in spoken_of(run) if finding.severity == "stop"]


def test_the_band_is_stretched_to_its_opening_and_said_so() -> None:
    """A rib is pulled to the neck; the neck is not eased into the rib (facts of the trade)."""
    found = [one for one in spoken_of(banded_run(TORSO, NECK), notes=True) if one.code == "seam-stretched"]
    assert [one.message for one in found] == [
        "stretch band, neck: band, lower is stretched onto the run from front, neck, as declared."
    ]


def worded_run(block: str, word: str, **more: Any) -> Replay:
    """The block with a band round a whole opening by its word."""
    run = stretch_run(block, **more)
    recipe = add_step(run.recipe, "stretch_band", {"opening": word}, base=run.measures)
    return replay(recipe, run.measures)


@pytest.mark.parametrize(
    ("block", "word", "edges"),
    [
        (TORSO, "neck", NECK),
        (TORSO, "hem", HEM),
        (TORSO, "sleeve_hem", CUFF),
        (SUIT, "leg_opening", LEG_OPENING),
        (SUIT, "armhole", ARMHOLE),
        ("leggings", "waist", WAIST),
    ],
)
def test_a_whole_opening_by_its_word_is_the_opening_of_its_edges(block: str, word: str, edges: Edges) -> None:
    by_word = worded_run(block, word)
    assert by_word.suspended is None
    one, other = (run.pattern.pieces["stretch_band.band"] for run in (by_word, banded_run(block, edges)))
    assert one.bounds.width == pytest.approx(other.bounds.width)
    assert (one.cut, one.title) == (other.cut, other.title)


def test_the_whole_neck_of_two_sides_is_one_ring() -> None:
    run = worded_run(TORSO, "neck", base=whole().with_value("shoulder_length", 112.0, "left"))
    assert run.suspended is None
    neck = sum(
        edge.length for name, edge in run.pattern.edges.items() if name.split("@")[0].endswith("/neck")
    )
    band = run.pattern.pieces["stretch_band.band"]
    share = 2.0 if band.cut == "fold" else 1.0
    assert share * band.bounds.width == pytest.approx(0.85 * neck, abs=0.1)


@pytest.mark.parametrize(
    ("asked", "code"),
    [
        ({}, "band-opening-unsaid"),
        ({"opening": "armhole"}, "band-opening-missing"),
        ({"opening": "neck", "edges": [{"edge": NECK[0][0], "starts_at": NECK[0][1]}]}, "band-opening-twice"),
    ],
)
def test_an_opening_that_is_not_said_or_not_there_is_refused(asked: dict[str, Any], code: str) -> None:
    run = stretch_run("leggings" if code == "band-opening-missing" else TORSO)
    assert (
        refusal(replay(add_step(run.recipe, "stretch_band", asked, base=run.measures), run.measures)) == code
    )


def test_two_openings_of_one_word_must_be_named() -> None:
    run = stretch_run(TORSO)
    recipe = add_step(run.recipe, SUIT, CLOTH, base=run.measures)
    recipe = add_step(recipe, "stretch_band", {"opening": "neck"}, base=run.measures)
    assert refusal(replay(recipe, run.measures)) == "band-opening-several"


@pytest.mark.parametrize(("share", "cure"), [(0.45, 0.80), (0.98, 0.90)])
def test_a_share_that_is_unusual_in_the_material_is_said_with_the_nearest_usual_one(
    share: float, cure: float
) -> None:
    """Neck rib 0.80 to 0.90 of the seam (handbook figures, from memory)."""
    run = banded_run(TORSO, NECK, share=share)
    (told,) = said(run, "band-share-unusual")
    assert [(one.parameter, one.value) for one in told.cures] == [("share", cure)]
    cured = replay(
        change_step(run.recipe, "stretch_band-1", {"share": cure}, base=run.measures), run.measures
    )
    assert said(cured, "band-share-unusual") == []


@pytest.mark.parametrize("share", [0.80, 0.85, 0.90])
def test_a_usual_share_is_not_spoken_of(share: float) -> None:
    assert said(banded_run(TORSO, NECK, share=share), "band-share-unusual") == []


def test_the_band_of_a_child_is_judged_by_a_child_s_head() -> None:
    """52 to 54 cm at six years, 56 to 58 grown up (common practice, no source): this neck between."""
    child = banded_run(TORSO, NECK, whole("child"), material="self", stretch="30 %", share=0.85)
    girth = 0.85 * 2.0 * sum(sewn_length(child.pattern, edge) for edge, _ in NECK)
    least = {head: head / girth - 1.0 for head in (530.0, 570.0)}
    between = (least[530.0] + least[570.0]) / 2.0
    run = banded_run(
        TORSO, NECK, whole("child"), material="self", stretch=f"{100.0 * between:.1f} %", share=0.85
    )
    assert said(run, "band-does-not-pass") == []
