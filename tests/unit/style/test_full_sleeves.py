"""Puff, bishop, bell and leg-of-mutton: fuller where asked, and still as long as the armhole and the arm."""

from dataclasses import replace
from typing import Any

import pytest

from notchbook.errors import StepRefused
from notchbook.finish import production_table
from notchbook.geometry import Path, Point
from notchbook.geometry.offset_join import arc_segments
from notchbook.pattern import Pattern, pattern_to_data, sewn_length, walk_seam
from notchbook.recipe import Replay
from notchbook.style.sleeves.figures import BISHOP_BACK, BISHOP_DROP, CUFF_EASE, PUFF_HEIGHT
from notchbook.style.sleeves.found import sleeve_found
from notchbook.style.sleeves.hems import hem_class
from support.skirt_judge import Judge
from support.sleeve_bodies import ARM, spoken_of, woman
from support.sleeve_styles import (
    BELL,
    BISHOP,
    CAPPED,
    MUTTON,
    PUFF,
    SLEEVE,
    TWO_PIECE,
    Step,
    belled,
    bishop,
    mutton,
    plain,
    puffed,
    sleeve_style,
    stopped_with,
)

HALVES = ("front", "back")
SHAPED = {"puff": (puffed, "short"), "bishop": (bishop, "long"), "bell": (belled, "three_quarter")}
SHAPED |= {"mutton": (mutton, "long")}
TURNED: Step = ("turn_sleeve", "turned", {"degrees": 8})


def runs(name: str) -> tuple[Replay, Replay]:
    shaped, length = SHAPED[name]
    assert shaped().suspended is None, str(shaped().suspended)
    return plain(length), shaped()


def up_and_down(pattern: Pattern) -> float:
    points = pattern.pieces[SLEEVE].points
    return points[f"{SLEEVE}/crown"].y - points[f"{SLEEVE}/hem_middle"].y


def to_notch(pattern: Pattern, which: str) -> float:
    walk = walk_seam(pattern, pattern.seams[f"sleeve/{which}_armhole"])
    return next(stop.second for stop in walk.stations if stop.notch == "balance_notch") or 0.0


@pytest.mark.parametrize("name", SHAPED)
def test_the_cap_still_goes_into_its_armhole_and_the_arm_is_as_long_as_asked(name: str) -> None:
    before, after = runs(name)
    for which in HALVES:
        seam = f"sleeve/{which}_armhole"
        assert walk_seam(after.pattern, after.pattern.seams[seam]).misfit == pytest.approx(0.0, abs=1e-5)
        assert to_notch(after.pattern, which) == pytest.approx(to_notch(before.pattern, which), abs=1e-5)
        seams = [found.pattern.edges[f"{SLEEVE}/{which}_seam"].length for found in (before, after)]
        assert seams[0] == pytest.approx(seams[1], abs=0.05), "within a pencil line, over eight hinges"
    assert up_and_down(after.pattern) == pytest.approx(up_and_down(before.pattern), abs=1e-6)
    assert Judge(pattern_to_data(after.pattern)).polygon(SLEEVE).is_valid
    assert after.pattern.pieces[SLEEVE].grain.degrees == 90.0


@pytest.mark.parametrize("name", SHAPED)
def test_the_checks_have_no_word_to_say_of_a_full_sleeve(name: str) -> None:
    assert [finding.code for finding in spoken_of(runs(name)[1])] == []


def test_a_puff_is_cut_so_many_times_as_long_between_its_notches_and_gathers_its_ease() -> None:
    before, after = runs("puff")
    for which in HALVES:
        armhole = walk_seam(before.pattern, before.pattern.seams[f"sleeve/{which}_armhole"]).first
        edge = after.pattern.edges[f"{SLEEVE}/cap_{which}/gathered"]
        reach = sewn_length(before.pattern, f"{SLEEVE}/cap_{which}") - to_notch(before.pattern, which)
        assert 1.5 * reach < edge.length < 1.95 * reach, "half as much again, and what the height adds"
        assert sewn_length(after.pattern, f"{SLEEVE}/cap_{which}") == pytest.approx(armhole, abs=1e-6)
        assert after.pattern.seams[f"sleeve/{which}_armhole"].ease == 0.0
    assert not [name for name in after.pattern.notches if name.endswith("ease_notch")]
    heights = [found.pattern.pieces[SLEEVE].bounds.max_y for found in (before, after)]
    assert heights[1] - heights[0] == pytest.approx(PUFF_HEIGHT.value, abs=1e-2)
    assert 25.0 <= PUFF_HEIGHT.value <= 51.0, "1 to 2 in (common practice, no source)"


def test_a_puff_that_is_not_gathered_would_not_go_in() -> None:
    """The planted fault: without its gathers the cap is too long by them, and the walk says so."""
    pattern = puffed().pattern
    bare = pattern.with_pieces(replace(pattern.pieces[SLEEVE], intakes=()))
    walk = walk_seam(bare, bare.seams["sleeve/front_armhole"])
    assert walk.misfit > 40.0


def test_a_puff_with_an_elastic_has_its_elastic_and_lets_the_hand_through() -> None:
    step: Step = ("puff_sleeve", "full", {"opens": "hem", "hem": "elastic"})
    done = sleeve_style([step], woman(hand_girth=300.0), length="short")
    assert [found.code for found in spoken_of(done)] == []
    (elastic,) = done.pattern.elastics.values()
    assert elastic.edges == (f"{SLEEVE}/hem",)
    assert sewn_length(done.pattern, f"{SLEEVE}/hem") == pytest.approx(
        ARM["upper_arm_girth"] + 30.0, abs=1e-6
    )


def test_a_bishop_hem_is_gathered_to_the_wrist_and_is_fuller_and_longer_behind() -> None:
    before, after = plain().pattern, sleeve_style([BISHOP]).pattern
    assert sewn_length(after, f"{SLEEVE}/hem") == pytest.approx(
        ARM["wrist_girth"] + CUFF_EASE.value, abs=1e-6
    )
    hems = [found.edges[f"{SLEEVE}/hem"].path for found in (before, after)]
    middles = [
        hem.nearest(found.pieces[SLEEVE].points[f"{SLEEVE}/hem_middle"]).distance_along
        for hem, found in zip(hems, (before, after), strict=True)
    ]
    more = [middles[1] - middles[0], (hems[1].length - middles[1]) - (hems[0].length - middles[0])]
    assert more[0] / sum(more) == pytest.approx(BISHOP_BACK.value, abs=0.06)
    level = sleeve_style([("bishop_sleeve", "full", {"drop": "0 mm"})]).pattern.edges[f"{SLEEVE}/hem"].path
    lower = level.point_at(level.length * 0.25).y - hems[1].point_at(hems[1].length * 0.25).y
    assert lower == pytest.approx(BISHOP_DROP.value, abs=2.0)


def test_what_a_hem_is_gathered_to_follows_where_the_sleeve_ends() -> None:
    """Round the wrist, round the arm, or between them as it was drafted."""
    drafted = plain("three_quarter").pattern.edges[f"{SLEEVE}/hem"].length
    for length, wanted in (("long", 163.0 + 30.0), ("three_quarter", drafted), ("short", 285.0 + 30.0)):
        pattern = sleeve_style([PUFF], length=length).pattern
        assert sewn_length(pattern, f"{SLEEVE}/hem") == pytest.approx(wanted, abs=1e-6)


def test_a_bell_keeps_its_cap_and_gets_a_lower_one() -> None:
    """The lower cap of a hinged sleeve is told by a drafting handbook: 6 in became 4.25 in in its example."""
    before, after = runs("bell")
    for which in HALVES:
        caps = [found.pattern.edges[f"{SLEEVE}/cap_{which}"].length for found in (before, after)]
        assert caps[0] == pytest.approx(caps[1], abs=1e-5)
    hems = [found.pattern.edges[f"{SLEEVE}/hem"].length for found in (before, after)]
    assert hems[1] - hems[0] == pytest.approx(160.0, abs=2.0)
    (note,) = [one for one in after.notes if one.code == "sleeve-cap-height-changed"]
    assert note.measured is not None
    assert note.wanted is not None
    assert 4.25 / 6.0 < note.measured / note.wanted < 1.0


def test_a_leg_of_mutton_leaves_the_lower_arm_as_it_was() -> None:
    before, after = runs("mutton")
    pieces = [found.pattern.pieces[SLEEVE] for found in (before, after)]
    for name in ("hem", "elbow_line"):
        lengths = [
            (piece.edge(f"{SLEEVE}/hem") if name == "hem" else piece.line(f"{SLEEVE}/{name}")).path.length
            for piece in pieces
        ]
        assert lengths[0] == pytest.approx(lengths[1], abs=1e-6)
    upper = [piece.line(f"{SLEEVE}/biceps_line").path.length for piece in pieces]
    assert upper[1] > upper[0] + 100.0


def test_a_cap_sleeve_ends_on_its_cap_and_leaves_the_lower_armhole() -> None:
    done = sleeve_style([CAPPED], length="short")
    assert done.suspended is None, str(done.suspended)
    assert [finding.code for finding in spoken_of(done)] == []
    pattern, piece = done.pattern, done.pattern.pieces[SLEEVE]
    crown, hem = piece.points[f"{SLEEVE}/crown"], piece.edge("capped.sleeve/hem").path
    assert crown.y - hem.bounds().min_y == pytest.approx(85.0, abs=0.5)
    for which in HALVES:
        before = plain("short").pattern.seams[f"sleeve/{which}_armhole"]
        seam = pattern.seams[f"sleeve/{which}_armhole"]
        walk = walk_seam(pattern, seam)
        assert walk.misfit == pytest.approx(0.0, abs=1e-6)
        assert 0.0 < seam.ease < before.ease
        assert seam.ease <= 0.05 * walk.first + 1e-6, "no more than a short run takes"
        whole = sewn_length(plain("short").pattern, f"bodice.{which}/armhole")
        assert sewn_length(pattern, f"bodice.{which}/armhole") == pytest.approx(whole, abs=1e-6)
        assert pattern.allowances[f"bodice.{which}/armhole/below"].allowance_class == "facing_edge"
    assert [one.times for one in piece.instructions] == [2], "cut double, so that the round hem is turned"
    assert stopped_with(sleeve_style([("cap_sleeve", "capped", {"length": "2 cm"})])) == "cap-sleeve-length"


def test_a_cap_sleeve_needs_an_armhole_in_one_part() -> None:
    dart = {"bust_dart": "armhole"}
    assert stopped_with(sleeve_style([CAPPED], top=dart, length="short")) == "cap-sleeve-armhole"


def test_either_sleeve_of_two_is_shaped() -> None:
    uneven = woman().with_value("shoulder_slope", 27.3, "left")
    done = sleeve_style([PUFF], uneven, base=woman(), length="short")
    assert {f"{SLEEVE}@right", f"{SLEEVE}@left"} <= done.pattern.pieces.keys()
    assert [finding.code for finding in spoken_of(done)] == []


@pytest.mark.parametrize(
    ("steps", "code"),
    [
        ([("puff_sleeve", "full", {"sleeve": "other"})], "sleeve-missing"),
        ([PUFF, ("bell_sleeve", "again", {})], "sleeve-full-already"),
        ([TWO_PIECE, BELL], "sleeve-missing"),
        ([TURNED, CAPPED], "sleeve-in-parts"),
        ([TURNED, ("raglan_sleeve", "raglan", {})], "sleeve-in-parts"),
        ([("bishop_sleeve", "full", {"hem_length": "80 cm"})], "sleeve-hem-too-small"),
        ([("leg_of_mutton_sleeve", "full", {"reach": "90 cm"})], "sleeve-reach"),
    ],
)
def test_what_cannot_be_done_is_refused_in_words(steps: list[Step], code: str) -> None:
    assert stopped_with(sleeve_style(steps)) == code


def test_a_cap_that_cannot_keep_its_length_is_refused() -> None:
    """Of a short sleeve spread by more than a meter the notches lie farther apart than the cap is long."""
    wide: Step = ("bell_sleeve", "full", {"flare": "120 cm", "slashes": 12})
    assert stopped_with(sleeve_style([wide], length="short")) == "sleeve-cap-not-kept"


def test_a_short_sleeve_has_no_elbow_to_be_full_to() -> None:
    assert stopped_with(sleeve_style([MUTTON], length="short")) == "sleeve-no-elbow"
    reached: dict[str, Any] = {"reach": "8 cm", "opens": "8 cm"}
    assert sleeve_style([("leg_of_mutton_sleeve", "full", reached)], length="short").suspended is None


def test_a_sleeve_without_its_balance_notch_is_refused() -> None:
    pattern = plain().pattern
    bare = pattern.with_notches(without=[f"{SLEEVE}/cap_front/balance_notch"])
    with pytest.raises(StepRefused) as refused:
        sleeve_found(bare, "sleeve")
    assert refused.value.code == "sleeve-no-notch"


def test_what_is_gathered_and_what_a_cuff_adds_is_told() -> None:
    told = {note.code: note for note in bishop().notes}
    pattern = bishop().pattern
    hem = told["sleeve-gathered"]
    assert hem.measured == pytest.approx(
        sum(edge.length for name, edge in pattern.edges.items() if name.startswith(f"{SLEEVE}/hem")), abs=1e-6
    )
    assert hem.wanted == pytest.approx(ARM["wrist_girth"] + CUFF_EASE.value, abs=1e-6)
    assert told["cuff-lengthens"].measured == pytest.approx(pattern.pieces["cuff.cuff"].bounds.height / 2.0)


@pytest.mark.parametrize(("radius", "deep"), [(2000.0, 25.0), (600.0, 15.0), (300.0, 10.0)])
def test_a_hem_is_turned_less_deep_where_it_bends_more(radius: float, deep: float) -> None:
    """The raw edge of a hem turned on an arc is shorter by its depth over the radius (geometry), and a house
    warns from 3 percent (own judgment)."""
    arc = Path(tuple(arc_segments(Point(0.0, radius), Point(0.0, 0.0), 20.0)))
    depth = production_table().width(hem_class(arc))
    assert depth == deep
    assert depth / radius < 0.03 or deep == 10.0
