"""Cuffs as long as the hem that they are sewn to; slits with their strips; whether the hand passes."""

import math
from typing import Any

import pytest

from notchbook.finish import finish, production_table
from notchbook.finish.allowance import Allowances
from notchbook.pattern import pattern_to_data, sewn_length, walk_seam
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
    bishop,
    sleeve_style,
    stopped_with,
)


def cuffed(**parameters: Any) -> Replay:
    return sleeve_style([BISHOP, PLACKET, ("cuff", "cuff", parameters)])


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


def test_a_placket_is_sewn_with_the_allowance_of_the_charts() -> None:
    """Bound vents and plackets 1/8 in, 3 mm (a factory's allowance chart)."""
    pattern = bishop().pattern
    given = Allowances(pattern, production_table())
    assert {given.of(edge).width for edge in pattern.pieces["placket.strip"].outline} == {3.0}


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
    again = sleeve_style([BISHOP, PLACKET, ("sleeve_placket", "again", {})])
    assert stopped_with(again) == "placket-hem-parted"
    long = sleeve_style([("sleeve_placket", "placket", {"length": "70 cm"})])
    assert stopped_with(long) == "placket-too-long"
    assert stopped_with(sleeve_style([CUFF], length="none")) == "sleeve-missing"
    assert stopped_with(sleeve_style([CAPPED, CUFF])) == "sleeve-without-wrist"


def test_a_hem_laid_in_pleats_is_slit_and_cuffed_as_it_is_sewn() -> None:
    pleats = {
        "edge": f"{SLEEVE}/hem",
        "from_point": f"{SLEEVE}/hem_back",
        "across": f"{SLEEVE}/cap_back",
        "across_point": f"{SLEEVE}/underarm_back",
        "number": 2,
        "depth": "1 cm",
        "first_distance": "8 cm",
        "spacing": "25 mm",
        "across_depth": "0 cm",
        "run": "share",
    }
    plain = sleeve_style([PLACKET, CUFF]).pattern
    pattern = sleeve_style([("pleats", "folds", pleats), PLACKET, CUFF]).pattern
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
