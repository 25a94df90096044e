"""Top and under sleeve: shares equal and opposite, seams that walk, a bend that the outer line pays for."""

import math
from typing import Any

import pytest

from notchbook.geometry import Path
from notchbook.pattern import Pattern, pattern_to_data, sewn_length, walk_seam
from notchbook.style.sleeves.figures import ELBOW_BEND, FOREARM_SHIFT
from support.skirt_judge import Judge
from support.sleeve_bodies import spoken_of, woman
from support.sleeve_styles import SLEEVE, TWO_PIECE, plain, sleeve_style, stopped_with, two_piece

TOP, UNDER = "arm.top_sleeve", "arm.under_sleeve"


def bent(**parameters: Any) -> Pattern:
    done = sleeve_style([("two_piece_sleeve", "arm", parameters)])
    assert done.suspended is None, str(done.suspended)
    return done.pattern


def turned(path: Path) -> float:
    """By how much a path turns from end to end, radians."""
    way = path.tangent_at(path.length).direction() - path.tangent_at(0.0, "after").direction()
    return math.radians((way + 180.0) % 360.0 - 180.0)


def seam(pattern: Pattern, piece: str, word: str) -> Path:
    return pattern.edges[f"{piece}/{word}_seam"].path


def test_both_pieces_together_have_the_cap_the_biceps_and_the_hem_of_the_sleeve() -> None:
    before, after = plain().pattern, two_piece().pattern
    for which in ("front", "back"):
        walk = walk_seam(after, after.seams[f"sleeve/{which}_armhole"])
        assert walk.misfit == pytest.approx(0.0, abs=1e-6)
        was = walk_seam(before, before.seams[f"sleeve/{which}_armhole"])
        for old, new in zip(was.stations, walk.stations, strict=True):
            assert (new.first, new.second) == pytest.approx((old.first, old.second), abs=1e-6)
    lines = [line for piece in (TOP, UNDER) for line in after.pieces[piece].lines]
    biceps = sum(line.path.length for line in lines if "/biceps_line/" in line.name)
    assert biceps == pytest.approx(before.pieces[SLEEVE].line(f"{SLEEVE}/biceps_line").path.length, abs=1e-6)
    hems = sewn_length(after, f"{SLEEVE}/hem"), sewn_length(before, f"{SLEEVE}/hem")
    assert hems[0] == pytest.approx(hems[1], abs=0.5)


def test_what_the_top_is_wider_the_under_sleeve_is_narrower() -> None:
    """At the forearm 20 to 30 mm (common practice, no source), as much at one as at the other."""
    assert 20.0 <= FOREARM_SHIFT.value <= 30.0
    wide, none = two_piece().pattern, bent(forearm_shift="0 mm", hind_arm_shift="0 mm")
    widths = [
        next(line.path.length for line in pattern.pieces[TOP].lines if "/biceps_line/" in line.name)
        for pattern in (wide, none)
    ]
    half = plain().pattern.pieces[SLEEVE].line(f"{SLEEVE}/biceps_line").path.length / 2.0
    assert widths[1] == pytest.approx(half, rel=0.01)
    assert widths[0] - widths[1] == pytest.approx(25.0 + 20.0, rel=0.02)


def test_the_outer_of_two_parallel_lines_is_longer_by_their_distance_times_the_turn() -> None:
    """Parallel curves differ in length by their distance times the angle that they turn by (a theorem of the
    differential geometry of plane curves, from memory)."""
    for bend in ("10 mm", "35 mm"):
        pattern = bent(bend=bend)
        top, under = seam(pattern, TOP, "forearm"), seam(pattern, UNDER, "forearm")
        wanted = 2.0 * FOREARM_SHIFT.value * abs(turned(under))
        assert under.length - top.length == pytest.approx(wanted, abs=0.3)


def test_the_seams_walk_and_what_they_differ_lies_round_the_elbow() -> None:
    pattern = two_piece().pattern
    for word, sign in (("forearm", -1.0), ("hind_arm", 1.0)):
        sewn = pattern.seams[f"arm/{word}_seam"]
        assert math.copysign(1.0, sewn.ease) == sign, "the top is stretched in front and eased in behind"
        walk = walk_seam(pattern, sewn)
        assert walk.misfit == pytest.approx(0.0, abs=1e-9)
        if word == "hind_arm":
            (told,) = [note for note in two_piece().notes if note.code == "two-piece-elbow-ease"]
            assert told.measured == pytest.approx(walk.second - walk.first, abs=1e-9)
        above, below = walk.stations
        assert above.first == pytest.approx(above.second, abs=1e-6)
        assert walk.first - (below.first or 0.0) == pytest.approx(
            walk.second - (below.second or 0.0), abs=1e-6
        )


def test_a_bend_swings_the_hem_forward_and_keeps_the_length() -> None:
    before = plain().pattern.pieces[SLEEVE].points
    straight, now = (found.pieces[TOP].points for found in (bent(bend="0 mm"), two_piece().pattern))
    middle = f"{SLEEVE}/hem_middle"
    assert now[middle].x - straight[middle].x == pytest.approx(ELBOW_BEND.value, abs=1e-6)
    assert now[middle].y == pytest.approx(before[middle].y, abs=1e-6)


def test_the_checks_have_no_word_to_say_on_two_different_sides_or_with_a_vent() -> None:
    assert [finding.code for finding in spoken_of(two_piece())] == []
    uneven = woman().with_value("shoulder_slope", 27.3, "left")
    both = sleeve_style([TWO_PIECE], uneven, base=woman())
    assert f"{UNDER}@left" in both.pattern.pieces
    assert [finding.code for finding in spoken_of(both)] == []
    vent = {"edge": "arm.top_sleeve/hind_arm_seam", "hem_end": "arm.top_sleeve/hem_hind_arm"}
    sizes = {"height": "10 cm", "width": "3 cm", "slant": "1 cm"}
    operation, slug, drawn = TWO_PIECE
    square = (operation, slug, {**drawn, "hem_square": "10 cm"})
    vented = sleeve_style([square, ("vent", "vent", {**vent, **sizes})])
    assert vented.suspended is None, str(vented.suspended)
    assert {"vent.top_sleeve/hem", "vent.under_sleeve/hem"} <= vented.pattern.edges.keys()
    assert [finding.code for finding in spoken_of(vented)] == []


def test_the_hems_of_both_pieces_are_one_opening_for_the_hand() -> None:
    """Each by itself is smaller than a hand of 18 cm; together with 21 cm they let it through."""
    small = sleeve_style([TWO_PIECE], woman(hand_girth=180.0))
    assert "opening-under-hand" not in [finding.code for finding in spoken_of(small)]
    large = sleeve_style([TWO_PIECE], woman(hand_girth=200.0))
    assert [finding.code for finding in spoken_of(large)] == ["opening-under-hand"]


def test_both_pieces_are_sound() -> None:
    judge = Judge(pattern_to_data(two_piece().pattern))
    assert judge.polygon(TOP).is_valid
    assert judge.polygon(UNDER).is_valid


def test_what_is_no_plain_sleeve_is_refused_in_words() -> None:
    assert stopped_with(sleeve_style([TWO_PIECE], elbow="dart")) == "two-piece-not-plain"
    assert stopped_with(sleeve_style([TWO_PIECE], length="short")) == "two-piece-not-plain"
    far = ("two_piece_sleeve", "arm", {"bend_reach": "24 cm"})
    assert stopped_with(sleeve_style([far])) == "two-piece-elbow"
    out = ("two_piece_sleeve", "arm", {"hind_arm_shift": "30 cm"})
    assert stopped_with(sleeve_style([out])) == "two-piece-misses-cap"


def test_seams_that_lean_differently_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("notchbook.style.sleeves.two_piece.folds._UNEVEN", -1.0)
    assert stopped_with(sleeve_style([TWO_PIECE])) == "two-piece-uneven"
