"""What is cut of leather: narrow seams, glued hems, short slits, no holes, panels cut singly."""

import json

import pytest

from notchbook.app.leather_words import leather_notes
from notchbook.app.papers import job_of
from notchbook.finish import CutPiece, finish, muslin_table, production_table
from notchbook.finish.allowance import Given
from notchbook.finish.leather import given_in_leather
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Pattern, pattern_from_data, pattern_to_data
from notchbook.recipe import Replay
from notchbook.units import LengthStyle
from support.edge_steps import applied, notes, refusal, skirt
from support.pockets import PATCH, uneven


@pytest.fixture(scope="module")
def cloth() -> Replay:
    return applied(skirt(), "patch_pocket", **PATCH, flap=True, flap_under="lining")


@pytest.fixture(scope="module")
def leather(cloth: Replay) -> Replay:
    return applied(cloth, "leather_making")


def cut(pattern: Pattern) -> dict[str, CutPiece]:
    return {piece.name: piece for piece in finish(pattern, production_table())}


def test_seams_are_a_centimeter_and_hems_are_glued_three(leather: Replay) -> None:
    pieces = cut(leather.pattern)
    widths = {edge.source: edge.width for piece in pieces.values() for edge in piece.edges}
    assert widths["skirt.front/side_seam"] == 10.0  # 3/8 in, common practice, no source
    assert 25.0 <= widths["skirt.front/hem"] <= 30.0  # common practice, no source
    assert widths["skirt.back/center_back"] == production_table().width("center_back")  # the zip needs it
    assert widths["patch_pocket.front_flap/near"] == 6.0  # nothing gets wider than in cloth


@pytest.mark.parametrize(("setting", "width"), [("lapped", 25.0), ("invisible", 16.0), ("centered", 19.0)])
def test_a_zip_has_the_allowance_of_its_setting_in_leather_too(setting: str, width: float) -> None:
    """A lap of 10 mm and what holds it cannot be sewn of 10 mm; the figures are those of cloth."""
    given = {"edge": "skirt.back/center_back", "from_point": "skirt.back/waist_center", "setting": setting}
    zipped = applied(applied(skirt(), "zip_opening", **given), "leather_making")
    assert cut(zipped.pattern)["skirt.back"].edge("skirt.back/center_back").width == width


@pytest.mark.parametrize(
    ("given", "kind", "width"),
    [
        ("hem_skirt_straight", "hem", 30.0),
        ("hem_skirt_straight", "plain", 30.0),  # the lower edge of a bodice that a step gave a hem
        ("side", "seam", 10.0),
        ("side", "hem", 30.0),
    ],
)
def test_a_hem_is_told_by_its_edge_or_by_its_class(
    leather: Replay, given: str, kind: str, width: float
) -> None:
    making = leather.pattern.making
    assert making is not None
    assert given_in_leather(Given(given, 51.0), making, kind).width == width


def test_notches_are_short_slits_in_the_allowance(leather: Replay) -> None:
    slits = [notch.depth for piece in cut(leather.pattern).values() for notch in piece.notches if notch.depth]
    assert slits
    assert all(2.0 <= depth <= 3.0 for depth in slits)  # common practice, no source


def test_nothing_is_drilled_and_the_places_are_drawn(cloth: Replay, leather: Replay) -> None:
    woven, front = (cut(run.pattern)["skirt.front"] for run in (cloth, leather))
    assert front.drills == ()
    drilled = {hole.name for hole in woven.drills}
    marked = {mark.name for mark in front.marks if mark.kind == "drill"}
    assert marked == {name for name in drilled if name.startswith("patch_pocket")}


def test_panels_are_cut_singly_left_and_right_apart(leather: Replay) -> None:
    pieces = cut(leather.pattern)
    assert pieces["skirt.back"].quantities[0].text == "cut 1 left, 1 right, singly"
    assert pieces["skirt.back"].quantities[0].panels == 2
    assert pieces["skirt.front"].quantities[0].text == "cut 1, right side up"
    assert pieces["patch_pocket.front_flap_under"].quantities[0].text == "cut 1 pair"  # of lining


def test_coated_cloth_is_cut_in_pairs_from_the_roll(cloth: Replay) -> None:
    coated = applied(cloth, "leather_making", hide="coated_cloth")
    assert cut(coated.pattern)["skirt.back"].quantities[0].text == "cut 1 pair"
    assert coated.pattern.materials["self"] == "coated cloth"
    sized = applied(cloth, "leather_making", hide="coated_cloth", panel_length="50 cm", panel_width="50 cm")
    assert sized.pattern.making is not None and not sized.pattern.making.is_hide


def test_a_width_that_a_step_gave_and_a_muslin_stay_as_they_are(cloth: Replay) -> None:
    wide = applied(cloth, "set_allowance", edges=["skirt.front/side_seam"], width="15 mm")
    made = applied(wide, "leather_making")
    assert cut(made.pattern)["skirt.front"].edge("skirt.front/side_seam").width == 15.0
    muslin = {piece.name: piece for piece in finish(made.pattern, muslin_table())}
    assert muslin["skirt.back"].edge("skirt.back/side_seam").width == muslin_table().width("side")
    assert muslin["skirt.back"].drills


def test_the_papers_say_how_it_is_marked_held_and_skived(leather: Replay) -> None:
    said = " ".join(job_of(leather, "1 May").info.notes)
    assert all(word in said for word in ("singly", "no drill holes, no pins", "0.8 cm", "2.5 cm", "clips"))
    assert leather_notes(skirt().pattern, LengthStyle()) == ()
    keys = [line.key for line in sewing_order(leather.pattern).lines]
    assert keys.index("leather_making/edges_held") < keys.index("skirt/side_seam")
    assert keys.index("leather_making/seams_glued") < keys.index("skirt/side_seam"), "before one is crossed"


def test_the_hem_of_leather_is_glued_and_that_of_cloth_is_not(cloth: Replay, leather: Replay) -> None:
    """A hem turned once and glued: common practice, no source; the glue wants fresh air."""
    told = [
        next(line.text for line in sewing_order(run.pattern).lines if line.key == "skirt.front/hem_line")
        for run in (cloth, leather)
    ]
    assert told[0] == "Turn up the hem of the front and back"
    assert "glue" in told[1]
    assert "air the room" in told[1]


def test_each_dart_is_to_be_trimmed() -> None:
    assert "leather-dart" in notes(skirt(), "leather_making")


def test_both_sides_of_an_uneven_body_are_of_leather() -> None:
    done = applied(uneven("skirt"), "leather_making", hide="pig")
    assert done.suspended is None
    found = cut(done.pattern)["skirt.back@left"]
    assert found.quantities[0].text == "cut 1, right side up"


def test_the_way_of_making_is_kept_in_files(leather: Replay) -> None:
    data = json.loads(json.dumps(pattern_to_data(leather.pattern)))
    assert pattern_from_data(data) == leather.pattern
    assert pattern_from_data(data).making == leather.pattern.making is not None


@pytest.mark.parametrize("field", ["seam", "hem", "notch", "cap_ease"])
def test_amounts_that_leather_is_not_made_with_are_refused(field: str) -> None:
    assert refusal(skirt(), "leather_making", **{field: "12 cm"}) == "amount-outside-trade"
