"""Lines of the sewing order for collars, hoods, cuffs and sleeves that no style of the rack has.

What comes first, and what is sewn as one, is common practice, no source: a collar that lies flat has no room
for the allowances of the neck between its layers and is sewn on as one; one that stands encloses them; the
hem round the face is made before the neck seam catches its ends; a ring is closed before it is sewn on; what
an elastic draws in gets no gathering threads; the seam over the shoulder of a raglan is sewn on down the arm.
"""

import pytest

from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Pattern
from notchbook.recipe import Replay
from support.collar_steps import FRONT_EDGE, after, collared, on_stand, pattern_of
from support.sleeve_styles import CUFF, GUSSET, PUFF, SLEEVE, TWO_PIECE, raglan, sleeve_style


def order(run: Replay) -> dict[str, str]:
    """The lines by their keys, in order."""
    return {line.key: line.text for line in sewing_order(pattern_of(run)).lines}


def comes(lines: dict[str, str], *keys: str) -> bool:
    places = [list(lines).index(key) for key in keys]
    return places == sorted(places)


def edges_at(pattern: Pattern, key: str) -> tuple[str, ...]:
    return next(line.at for line in sewing_order(pattern).lines if line.key == key)


def test_both_layers_of_a_flat_collar_are_sewn_on_as_one() -> None:
    run = on_stand("flat_collar")
    lines = order(run)
    assert lines["flat_collar/neck"] == "Sew the undercollar and collar as one to the front and back: neck"
    assert "flat_collar/upper_neck" not in lines
    assert not any("enclose" in text or "into the undercollar" in text for text in lines.values())
    assert comes(lines, "flat_collar/outer", "flat_collar/turned", "flat_collar/basted", "flat_collar/neck")
    layers = {"flat_collar.undercollar/neck_edge", "flat_collar.collar/neck_edge"}
    assert layers <= set(edges_at(run.pattern, "flat_collar/neck"))


def test_a_roll_collar_is_stitched_down_over_its_neck_seam() -> None:
    lines = order(on_stand("roll_collar"))
    assert "roll_collar/upper_neck" not in lines
    assert comes(lines, "roll_collar/turned", "roll_collar/neck", "roll_collar/closed")
    assert "stitch it down over the neck seam" in lines["roll_collar/closed"]


@pytest.mark.parametrize(
    ("operation", "upper"), [("notched_lapel", "upper collar"), ("shawl_collar", "facing")]
)
def test_an_upper_collar_without_a_lining_is_stitched_down_behind(operation: str, upper: str) -> None:
    lines = order(on_stand(operation, edge=FRONT_EDGE, breaks="16 cm"))
    assert f"{operation}/upper_neck" not in lines
    assert lines[f"{operation}/closed"].startswith(f"Clip the {upper} at the shoulder")
    assert comes(lines, f"{operation}/neck", f"{operation}/turned", f"{operation}/closed")
    assert not any("neck" in text and "understitch" in text for text in lines.values())


def test_the_inner_corners_of_a_shawl_are_stayed_before_they_are_clipped() -> None:
    """Front and facing turn inward where the collar leaves the shoulder."""
    run = on_stand("shawl_collar", edge=FRONT_EDGE, breaks="16 cm")
    assert comes(order(run), "shawl_collar/corner_stayed", "bodice/shoulder", "shawl_collar/neck")
    assert edges_at(run.pattern, "shawl_collar/corner_stayed") == ("bodice.front", "shawl_collar.facing")
    assert "stayed" not in " ".join(order(on_stand("notched_lapel", edge=FRONT_EDGE, breaks="16 cm")))


def test_an_upper_collar_is_sewn_to_a_facing_of_the_back_neck() -> None:
    lapel = on_stand("notched_lapel", edge=FRONT_EDGE, breaks="16 cm")
    neck = {"edge": "bodice.back/neck", "starts_at": "bodice.back/side_neck_point"}
    lines = order(after(lapel, "facing", edges=[neck]))
    assert lines["notched_lapel/upper_neck"] == "Sew the upper collar to the back neck facing: neck"
    assert lines["facing/back_neck"].startswith(
        "Lay the neck seam of the back neck facing on that of the back"
    )
    assert "notched_lapel/closed" not in lines


@pytest.mark.parametrize(("panels", "has_cord"), [("two", False), ("three", False), ("two", True)])
def test_the_face_of_a_hood_is_hemmed_before_the_neck_seam_catches_it(panels: str, has_cord: bool) -> None:
    run = on_stand("hood", panels=panels, drawstring=has_cord)
    lines = order(run)
    assert comes(lines, "hood/head_seam", "hood/face_hemmed", "hood/neck")
    faces = edges_at(run.pattern, "hood/face_hemmed")
    assert len(faces) == (2 if panels == "three" else 1)
    assert ("cord" in lines["hood/face_hemmed"]) is has_cord
    assert not any("hem of the hood" in text for key, text in lines.items() if key != "hood/face_hemmed")


@pytest.mark.parametrize("shape", ["straight", "shaped"])
def test_a_cuff_without_an_opening_is_closed_to_a_ring_once(shape: str) -> None:
    done = sleeve_style([PUFF, (CUFF[0], CUFF[1], {"shape": shape, "depth": "4 cm"})], length="short")
    lines = order(done)
    assert not any("to a ring" in text for text in lines.values())
    made = [key for key in lines if key == "cuff/cuff_made"]
    assert comes(lines, "cuff/cuff_end", *made, "cuff/cuff_seam", "cuff/cuff_closed")
    assert bool(made) is (shape == "shaped"), "a straight ring is folded when its inner edge is stitched down"


def test_what_an_elastic_draws_in_gets_no_gathering_threads_and_is_turned_once() -> None:
    done = sleeve_style([("puff_sleeve", "full", {"hem": "elastic"})], length="short")
    lines = order(done)
    assert [text for text in lines.values() if "hem" in text] == [lines["full/casing_hemmed"]]
    assert sum("gathering threads" in text for text in lines.values()) == 2, "those of both halves of the cap"
    banded = order(sleeve_style([PUFF, CUFF], length="short"))
    assert sum("gathering threads" in text for text in banded.values()) == 3


def test_the_shoulder_of_a_raglan_is_sewn_on_down_the_arm_before_the_sleeve_is_closed() -> None:
    keys = list(order(raglan()))
    at = keys.index("bodice/shoulder")
    assert keys[at : at + 3] == ["bodice/shoulder", "raglan/overarm_seam", "sleeve/sleeve_seam"]
    assert [
        line.text for line in sewing_order(sleeve_style([TWO_PIECE]).pattern).lines if "hind" in line.text
    ]


def test_the_corners_of_a_gusset_are_told_before_it_is_sewn_in() -> None:
    done = sleeve_style([GUSSET], top={"bust_dart": "shoulder"}, length="none")
    lines = order(done)
    first = next(key for key in lines if key.endswith("_gusset"))
    assert comes(lines, "kimono/gusset_stayed", "kimono/underarm_seam", "kimono/gusset_pinned", first)
    gusset = done.pattern.pieces["kimono.gusset"]
    along = {gusset.points[f"kimono.gusset/{word}_point"].x for word in ("sleeve", "side")}
    assert gusset.grain.degrees == 90.0
    assert along == {0.0}, "the corners at arm and side lie on the grain, as the line says"


def test_collars_of_a_closed_front_are_told_alike() -> None:
    lines = order(collared("flat_collar"))
    assert comes(lines, "flat_collar/basted", "flat_collar/neck")
    assert SLEEVE not in lines
