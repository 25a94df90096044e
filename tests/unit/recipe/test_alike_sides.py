"""A piece that is alike on both of the wearer's sides stays one; what differs by a pencil line does not."""

from dataclasses import replace

import pytest

from notchbook.body import MeasureSet
from notchbook.pattern import Allowance, Group, Notch, Pattern, Place, pattern_to_data, walk_seam
from notchbook.recipe.alike_pieces import names_of_both, serving_both
from notchbook.recipe.sides import assemble
from support.hand_upper import hand_upper
from support.one_side import one_side
from support.sleeve_bodies import sleeve_run, woman
from support.two_sided import drafted, two_sided

RIGHT = hand_upper()
SLEEVE = "sleeve.sleeve"


def wider_front(by: float) -> Pattern:
    """The hand-drawn upper with the hem of its front at the side moved outward, mm."""
    front = RIGHT.pieces["top.front"]
    place = front.points["top.front/hem_side"]
    moved = replace(place, x=place.x - by)
    outline = tuple(
        replace(edge, path=edge.path.with_end(moved))
        if edge.end == "top.front/hem_side"
        else replace(edge, path=edge.path.with_start(moved))
        if edge.start == "top.front/hem_side"
        else edge
        for edge in front.outline
    )
    return RIGHT.with_pieces(replace(front, outline=outline))


def test_two_sides_that_are_alike_stay_the_half() -> None:
    assert serving_both(RIGHT, RIGHT) == set(RIGHT.pieces)
    assert assemble(RIGHT, RIGHT) == RIGHT


@pytest.mark.parametrize(("by", "is_alike"), [(0.05, True), (0.2, False), (-0.2, False)])
def test_what_a_pencil_line_shows_is_a_difference(by: float, is_alike: bool) -> None:
    assert ("top.front" in serving_both(RIGHT, wider_front(by))) is is_alike


def test_only_the_piece_that_differs_becomes_whole() -> None:
    whole = assemble(RIGHT, wider_front(4.0))
    assert {piece.name: piece.cut for piece in whole.pieces.values()} == {
        "top.front": "single",
        "top.back": "fold",
        SLEEVE: "pair",
    }
    front = whole.pieces["top.front"].points
    assert front["top.front/hem_side@left"].x == pytest.approx(-front["top.front/hem_side@right"].x + 4.0)


def test_a_seam_to_a_sided_piece_is_there_once_for_each_side() -> None:
    whole = assemble(RIGHT, wider_front(4.0))
    for side in ("right", "left"):
        seam = whole.seams[f"sleeve/front_armhole@{side}"]
        assert [use.edge for use in seam.first] == [f"top.front/armhole@{side}"]
        assert [use.edge for use in seam.second] == [f"{SLEEVE}/cap_front"]
    assert "sleeve/back_armhole" in whole.seams


def test_a_notch_of_a_piece_that_serves_both_is_met_on_both_seams() -> None:
    whole = assemble(RIGHT, wider_front(4.0))
    labels = [notch for notch in RIGHT.notches.values() if notch.serves("sleeve/front_armhole")]
    assert labels
    for side in ("right", "left"):
        stations = walk_seam(whole, whole.seams[f"sleeve/front_armhole@{side}"]).stations
        met = walk_seam(RIGHT, RIGHT.seams["sleeve/front_armhole"]).stations
        assert [one.notch for one in stations] == [one.notch for one in met]
        for one, other in zip(stations, met, strict=True):
            assert (one.first, one.second) == pytest.approx((other.first, other.second))


@pytest.mark.parametrize(
    ("seam", "serves"), [("a/s", True), ("a/s@left", True), ("a/s@right", True), ("a/t", False)]
)
def test_a_plain_notch_serves_the_seams_of_both_sides(seam: str, serves: bool) -> None:
    notch = Notch("a.b/c_notch", Place("a.b/c", "a.b/d", 10.0), seam="a/s")
    assert notch.serves(seam) is serves
    assert replace(notch, seam="a/s@left").serves("a/s@right") is False
    assert replace(notch, seam=None).serves(seam) is False


def test_other_notches_or_allowances_make_a_difference() -> None:
    edge, start = f"{SLEEVE}/front_seam", f"{SLEEVE}/hem_front"
    marked = RIGHT.with_notches(Notch(f"{SLEEVE}/mark_notch", Place(edge, start, 40.0)))
    assert SLEEVE not in serving_both(RIGHT, marked)
    assert SLEEVE not in serving_both(RIGHT.with_allowances({edge: Allowance("side", 20.0)}), RIGHT)
    moved = RIGHT.with_notches(Notch(f"{SLEEVE}/mark_notch", Place(edge, start, 40.3)))
    assert SLEEVE not in serving_both(marked, moved)
    assert SLEEVE in serving_both(marked, marked)


def test_names_of_both_are_those_of_the_pieces_and_between_them() -> None:
    names = names_of_both(RIGHT, frozenset({SLEEVE}))
    assert {SLEEVE, f"{SLEEVE}/cap_front", "sleeve/sleeve_seam"} <= names
    assert "sleeve/front_armhole" not in names
    assert not any(name.startswith("top.") for name in names)


ONE_SLEEVE: dict[str, MeasureSet] = {
    "hip of a bodice to the hip": woman().with_value("hip_depth", 212.0, "left"),
    "under bust": woman().with_value("under_bust_girth", 800.0, "left"),
    "slope by less than is seen": woman().with_value("shoulder_slope", 24.33, "left"),
    "elbow that the sleeve holds in any case": woman().with_value("elbow_girth", 252.0, "left"),
}
TWO_SLEEVES: dict[str, MeasureSet] = {
    "slope": woman().with_value("shoulder_slope", 27.3, "left"),
    "arm length": woman().with_value("arm_length", 602.0, "left"),
    "upper arm": woman().with_value("upper_arm_girth", 300.0, "left"),
}


@pytest.mark.parametrize("measures", ONE_SLEEVE.values(), ids=ONE_SLEEVE.keys())
def test_one_sleeve_serves_where_both_armholes_are_one_shape(measures: MeasureSet) -> None:
    done = sleeve_run(measures, {"length": "hip"})
    assert done.left is not None
    assert done.pattern.pieces[SLEEVE].cut == "pair"
    assert {abs(walk_seam(done.pattern, seam).misfit) < 0.1 for seam in done.pattern.seams.values()} == {True}


@pytest.mark.parametrize("measures", TWO_SLEEVES.values(), ids=TWO_SLEEVES.keys())
def test_two_sleeves_where_arms_or_armholes_differ(measures: MeasureSet) -> None:
    done = sleeve_run(measures)
    sleeves = [piece for piece in done.pattern.pieces.values() if piece.name.startswith(SLEEVE)]
    assert [(piece.name, piece.cut, piece.side) for piece in sleeves] == [
        (f"{SLEEVE}@right", "single", "right"),
        (f"{SLEEVE}@left", "single", "left"),
    ]


def test_a_front_stays_on_the_fold_where_only_the_sleeves_differ() -> None:
    pieces = sleeve_run(TWO_SLEEVES["arm length"]).pattern.pieces
    assert (pieces["bodice.front"].cut, pieces["bodice.back"].cut) == ("fold", "fold")


def test_what_is_said_alike_of_both_sides_is_said_once() -> None:
    done = drafted("dress", two_sided("dress", "shoulder_slope", "hip_depth"))
    said = [note.message for note in done.notes if note.code == "cup-unknown"]
    assert len(said) <= 1
    assert not any("wearer" in message for message in said)
    arms = drafted("bodice and sleeve", two_sided("bodice and sleeve", "arm_length"))
    pitch = [note for note in arms.notes if note.code == "sleeve-pitch"]
    assert [note.message.rpartition("(")[2] for note in pitch] in (
        ["The wearer's right.)", "The wearer's left.)"],
        [],
    )


def test_the_sides_taken_apart_again_are_the_two_that_were_laid_together() -> None:
    """By other code: the half of each side, out of the whole pattern's data, is what its own draft drew."""
    done = drafted("skirt", two_sided("skirt", "hip_girth", "hip_depth"))
    assert done.left is not None
    whole = pattern_to_data(done.pattern)
    for side, track in (("right", done.right), ("left", done.left)):
        half = one_side(whole, side)
        own = pattern_to_data(track.pattern)
        for mine, drawn in zip(half["pieces"], own["pieces"], strict=True):
            edges = {edge["name"]: edge["path"] for edge in mine["outline"]}
            for edge in drawn["outline"]:
                if edge["kind"] != "fold":
                    flat = [value for row in edge["path"] for value in row[1:]]
                    there = [value for row in edges[edge["name"]] for value in row[1:]]
                    assert there == pytest.approx(flat, abs=1e-5)


def test_a_piece_leaves_with_one_that_leaves_only_because_of_another() -> None:
    """Front grouped with the back, back with the sleeve: a sleeve that differs takes both along."""
    front, back, sleeve = "top.front/hem", "top.back/hem", f"{SLEEVE}/hem"
    groups = {
        "top.a/one": Group((front, back), "test"),
        "top.b/two": Group((back, sleeve), "test"),
    }
    for names in (list(groups), list(groups)[::-1]):
        grouped = replace(RIGHT, groups={name: groups[name] for name in names})
        other = grouped.with_allowances({sleeve: Allowance("hem", 31.0)})
        assert serving_both(grouped, other) == frozenset()
