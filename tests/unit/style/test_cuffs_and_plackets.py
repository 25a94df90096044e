"""Cuffs as long as the hem that they are sewn to; slits with their strips; whether the hand passes."""

import math
from itertools import accumulate
from typing import Any

import pytest

from notchbook.finish import finish, production_table
from notchbook.finish.allowance import Allowances
from notchbook.pattern import Pattern, locate, pattern_to_data, sewn_length, walk_seam
from notchbook.pattern.names import last_word
from notchbook.pattern.sewn import place_distance
from notchbook.recipe import Replay
from notchbook.style.sleeves.figures import PLACKET_LENGTH, PLACKET_WIDTH
from support.skirt_judge import Judge
from support.sleeve_bodies import spoken_of, woman
from support.sleeve_styles import (
    BISHOP,
    CAPPED,
    CUFF,
    PLACKET,
    PUFF,
    SLEEVE,
    TWO_PIECE,
    Step,
    bishop,
    sleeve_style,
    stopped_with,
)


def cuffed(**parameters: Any) -> Replay:
    return sleeve_style([BISHOP, PLACKET, ("cuff", "cuff", parameters)])


def towered(cuff: dict[str, Any] | None = None, **parameters: Any) -> Replay:
    tower = ("sleeve_placket", "placket", {"kind": "tower", "length": "14 cm", **parameters})
    return sleeve_style([BISHOP, tower, ("cuff", "cuff", cuff or {})])


def test_a_cuff_is_as_long_as_its_hem_and_begins_at_the_slit() -> None:
    pattern = bishop().pattern
    edge = pattern.edges["cuff.cuff/cuff_edge"]
    assert edge.length == pytest.approx(sewn_length(pattern, f"{SLEEVE}/hem"), abs=1e-6)
    walk = walk_seam(pattern, pattern.seams["cuff/cuff_seam"])
    assert walk.misfit == pytest.approx(0.0, abs=1e-6)
    assert [use.edge for use in pattern.seams["cuff/cuff_seam"].second] == [
        f"{SLEEVE}/hem/far",
        f"{SLEEVE}/hem/near",
    ]
    for stop in walk.stations:
        assert stop.first == pytest.approx(stop.second, abs=1e-6)
    box = pattern.pieces["cuff.cuff"].bounds
    assert (box.width, box.height) == pytest.approx((edge.length + 20.0, 120.0)), "folded, with its overlap"


def test_a_placket_slits_a_quarter_of_the_hem_along_the_grain_and_is_bound_twice_its_length() -> None:
    pattern = bishop().pattern
    near, far = (pattern.edges[f"{SLEEVE}/hem/{role}"].length for role in ("near", "far"))
    assert near / (near + far) == pytest.approx(0.25, abs=1e-9)
    slit = pattern.pieces[SLEEVE].line("placket.sleeve/slit")
    assert slit.kind == "cut_line"
    assert slit.path.length == pytest.approx(PLACKET_LENGTH.value)
    assert slit.path.tangent_at(0.0, "after").direction() == pytest.approx(90.0)
    box = pattern.pieces["placket.strip"].bounds
    assert (box.width, box.height) == pytest.approx((2.0 * PLACKET_WIDTH.value, 2.0 * PLACKET_LENGTH.value))
    assert 3.0 <= PLACKET_WIDTH.value <= 6.0, "bound 3 to 6 mm (common practice, no source)"


def allowances(pattern: Pattern, piece: str) -> dict[str, float]:
    """How wide the allowance of each edge of a piece is, mm."""
    given = Allowances(pattern, production_table())
    return {last_word(edge.name): given.of(edge).width for edge in pattern.pieces[piece].outline}


def test_a_placket_is_sewn_with_the_allowance_of_the_charts() -> None:
    """Bound vents and plackets 1/8 in, 3 mm (a factory's allowance chart); both ends of the strip lie in the
    seam of the cuff (common practice, no source)."""
    found = allowances(bishop().pattern, "placket.strip")
    assert found == {"left_side": 3.0, "right_side": 3.0, "lower_end": 10.0, "upper_end": 10.0}


def test_a_tower_is_turned_under_by_a_quarter_inch_and_sewn_into_the_cuff_below() -> None:
    """1/4 in where an edge is turned, the allowance of the cuff where it ends in its seam (common practice,
    no source)."""
    pattern = towered().pattern
    for piece in ("placket.tower", "placket.strip"):
        found = allowances(pattern, piece)
        assert found.pop("lower_end") == 10.0
        assert set(found.values()) == {6.0}


@pytest.mark.parametrize(("strip", "under"), [("1 cm", 4.0), ("6 mm", 0.0), ("4 mm", 0.0)])
@pytest.mark.parametrize("shape", ["straight", "shaped"])
def test_a_cuff_ends_at_the_folds_of_a_tower_and_of_the_strip_below_it(
    strip: str, under: float, shape: str
) -> None:
    """Both are sewn 1/4 in inside the slit (common practice, no source): of a tower 25 mm wide 19 reach over
    it, of a strip 10 mm wide 4 under it; one no wider than its seam binds the edge."""
    done = towered(strip_width=strip, cuff={"shape": shape, "overlap": "30 mm"})
    pattern, piece = done.pattern, done.pattern.pieces["cuff.cuff"]
    assert piece.edge("cuff.cuff/overlap").length == pytest.approx(25.0 - 6.0, abs=1e-3)
    assert piece.has_edge("cuff.cuff/underlap") == (under > 0.0)
    if under:
        assert piece.edge("cuff.cuff/underlap").length == pytest.approx(under, abs=1e-3)
    seam = walk_seam(pattern, pattern.seams["cuff/cuff_seam"])
    assert seam.misfit == pytest.approx(0.0, abs=1e-6), "between them it is as long as the hem"
    (told,) = [note for note in done.notes if note.code == "cuff-laps-as-tower"]
    assert told.measured == pytest.approx(19.0 + under), "whatever overlap was asked for"
    assert Judge(pattern_to_data(pattern)).polygon("cuff.cuff").is_valid
    assert "cuff-laps-as-tower" not in [note.code for note in bishop().notes]


@pytest.mark.parametrize("strip", ["1 cm", "6 mm"])
def test_the_button_comes_to_lie_in_its_hole_over_a_tower(strip: str) -> None:
    """Closed, both ends of the hem lie on the slit: a place so far beyond one end is as far inside the
    other."""
    piece = towered(strip_width=strip).pattern.pieces["cuff.cuff"]
    upper, lower = (piece.points[f"cuff.cuff/cuff_edge_{word}"].x for word in ("start", "end"))
    (mark,) = [mark for mark in piece.marks if mark.kind == "button"]
    (hole,) = [line.path for line in piece.lines if line.kind == "buttonhole"]
    lapped = mark.position.x - lower
    assert hole.start.x - upper <= lapped <= hole.end.x - upper
    ends = piece.bounds.min_x - upper, piece.bounds.max_x - lower
    assert lapped == pytest.approx(sum(ends) / 2.0), "in the middle of the lap"


@pytest.mark.parametrize("width", ["6 mm", "1 mm", "7 cm", "40 cm"])
def test_a_tower_that_laps_nothing_or_has_no_room_for_its_point_is_refused(width: str) -> None:
    step = ("sleeve_placket", "placket", {"kind": "tower", "tower_width": width})
    assert stopped_with(sleeve_style([BISHOP, step])) == "placket-tower-width"


def test_the_grain_line_of_a_narrow_strip_runs_along_it() -> None:
    """Over a third of its length at the least, as the check of grain lines wants it."""
    pattern = bishop().pattern
    (cut,) = [one for one in finish(pattern, production_table()) if one.name == "placket.strip"]
    line = cut.grain.end - cut.grain.start
    assert abs(line.x) < 1e-9
    assert line.norm() > PLACKET_LENGTH.value * 2.0 / 3.0


def test_a_shaped_cuff_is_a_part_of_a_ring() -> None:
    """Of two arcs about one center the inner is shorter by its depth times the angle (plane geometry)."""
    pattern = cuffed(shape="shaped", narrower="15 mm", depth="7 cm", buttons=2).pattern
    piece = pattern.pieces["cuff.cuff"]
    long, short = (piece.edge(f"cuff.cuff/{word}").length for word in ("cuff_edge", "free_edge"))
    radius = long * 70.0 / 15.0
    angle = (long + 20.0) / radius
    assert short == pytest.approx(angle * (radius - 70.0), abs=1e-3)
    assert 2.0 * math.pi * radius > long
    assert [one.times for one in piece.instructions] == [2, 1], "an outer and an inner layer, one fused"
    assert len([mark for mark in piece.marks if mark.kind == "button"]) == 2
    holes = [line for line in piece.lines if line.kind == "buttonhole"]
    assert [hole.path.length for hole in holes] == pytest.approx([14.0, 14.0], abs=1e-6)
    assert Judge(pattern_to_data(pattern)).polygon("cuff.cuff").is_valid


def test_buttons_lie_on_the_underlap_where_the_holes_come_to_lie() -> None:
    """Lapped by the overlap, the middle of the button lies in the hole, no farther from its end than 3 mm."""
    piece = bishop().pattern.pieces["cuff.cuff"]
    (mark,) = [mark for mark in piece.marks if mark.kind == "button"]
    (hole,) = [line.path for line in piece.lines if line.kind == "buttonhole"]
    length = piece.edge("cuff.cuff/cuff_edge").length
    lapped = mark.position.x - length
    assert hole.start.x <= lapped <= hole.end.x
    assert mark.position.y == pytest.approx(hole.start.y)


def test_a_cuff_that_nothing_opens_is_a_ring_that_the_hand_must_pass() -> None:
    ring = sleeve_style([BISHOP, CUFF], woman(hand_girth=205.0))
    assert walk_seam(ring.pattern, ring.pattern.seams["cuff/cuff_end"]).misfit == pytest.approx(0.0, abs=1e-9)
    assert "cuff-under-hand" in [note.code for note in ring.notes]
    small = sleeve_style([BISHOP, CUFF], woman(hand_girth=170.0))
    assert "cuff-under-hand" not in [note.code for note in small.notes]
    slit = sleeve_style([BISHOP, PLACKET, CUFF], woman(hand_girth=205.0))
    assert "cuff-under-hand" not in [note.code for note in slit.notes]


def test_the_checks_have_no_word_to_say_of_cuffs_and_plackets() -> None:
    tower = ("sleeve_placket", "placket", {"kind": "tower", "length": "14 cm", "strip_width": "1 cm"})
    for steps in ([BISHOP, tower, CUFF], [TWO_PIECE, CUFF]):
        assert [finding.code for finding in spoken_of(sleeve_style(steps))] == []
    band = sleeve_style([PUFF, ("cuff", "cuff", {"depth": "3 cm"})], length="short")
    assert [finding.code for finding in spoken_of(band)] == []


def test_what_a_cuff_cannot_be_is_refused_in_words() -> None:
    assert stopped_with(cuffed(depth="12 cm")) == "cuff-too-small"
    assert stopped_with(cuffed(shape="shaped", narrower="11 cm")) == "cuff-too-small"
    assert stopped_with(cuffed(shape="shaped", narrower="15 mm", depth="15 mm")) == "cuff-bends"
    assert cuffed(shape="shaped", narrower="15 mm", depth="20 mm").suspended is None
    assert stopped_with(cuffed(shape="shaped", overlap="200 cm")) == "cuff-bends"
    again = sleeve_style([BISHOP, PLACKET, ("sleeve_placket", "again", {})])
    assert stopped_with(again) == "placket-hem-parted"
    long = sleeve_style([("sleeve_placket", "placket", {"length": "70 cm"})])
    assert stopped_with(long) == "placket-too-long"
    assert stopped_with(sleeve_style([CUFF], length="none")) == "sleeve-missing"
    assert stopped_with(sleeve_style([CAPPED, CUFF])) == "sleeve-without-wrist"


def pleated(first: str = "8 cm", **more: Any) -> Step:
    """Two pleats at the hem that run out to nothing at the cap."""
    pleats = {
        "edge": f"{SLEEVE}/hem",
        "from_point": f"{SLEEVE}/hem_back",
        "across": f"{SLEEVE}/cap_back",
        "across_point": f"{SLEEVE}/underarm_back",
        "number": 2,
        "depth": "1 cm",
        "first_distance": first,
        "spacing": "25 mm",
        "across_depth": "0 cm",
        "run": "share",
    }
    return ("pleats", "folds", {**pleats, **more})


def test_a_hem_laid_in_pleats_is_slit_and_cuffed_as_it_is_sewn() -> None:
    plain = sleeve_style([PLACKET, CUFF]).pattern
    pattern = sleeve_style([pleated(), PLACKET, CUFF]).pattern
    cuffs = [one.edges["cuff.cuff/cuff_edge"].length for one in (pattern, plain)]
    assert cuffs[0] == pytest.approx(cuffs[1], abs=0.5), "what the pleats take is not in the cuff"
    walk = walk_seam(pattern, pattern.seams["cuff/cuff_seam"])
    assert walk.misfit == pytest.approx(0.0, abs=0.01)
    assert len(pattern.seams["cuff/cuff_seam"].second) == 4, "slit once and folded twice"
    assert "cuff/cuff_end" not in pattern.seams, "it opens at the slit"
    met = [stop for stop in walk.stations if stop.first]
    assert met
    for stop in met:
        assert stop.first == pytest.approx(stop.second, abs=0.01)


def test_the_notch_of_a_cuff_is_not_read_as_one_of_a_pleat() -> None:
    """Notches of different meaning stand farther apart than the two of a double one, 3/8 to 1/2 in (common
    practice, no source)."""
    would_have_met = False
    for first in ("9 cm", "10 cm", "11 cm", "12 cm"):
        pattern = sleeve_style([pleated(first), PLACKET, CUFF]).pattern
        seam = pattern.seams["cuff/cuff_seam"]
        joints = list(accumulate(sewn_length(pattern, use.edge) for use in seam.second))
        along = place_distance(pattern, pattern.notches["cuff.cuff/cuff_notch"].place)
        assert min(abs(along - joint) for joint in joints[:-2]) >= 12.0
        would_have_met |= min(abs(joints[-2] * 0.4 - joint) for joint in joints[:-2]) < 12.0
        spot = locate(pattern, pattern.notches["cuff/cuff_notch"].place).position
        points = pattern.pieces[SLEEVE].points
        mouths = [points[name] for name in points if name.startswith("folds") and name.endswith("mouth")]
        assert len(mouths) == 4
        assert min(spot.distance_to(mouth) for mouth in mouths) >= 11.9
    assert would_have_met, "at two fifths it would have stood beside a pleat"


def test_a_fold_that_has_run_out_to_nothing_is_not_notched() -> None:
    """There nothing is folded; a notch beside those of the cap reads as one of them (common practice, no
    source)."""
    cut_off = {"across_depth": "1 cm"}
    for more, wanted in (({}, 0), (cut_off, 2)):
        pattern = sleeve_style([pleated("13 cm", **more), PLACKET, CUFF]).pattern
        (cut,) = [one for one in finish(pattern, production_table()) if one.name == SLEEVE]
        folds = [notch for notch in cut.notches if notch.name.startswith("folds")]
        on_cap = [notch for notch in folds if notch.sew_position.y > 0.0]
        assert len(on_cap) == wanted, [notch.name for notch in on_cap]
        assert len(folds) - len(on_cap) == 4, "both lines of both at the hem"
