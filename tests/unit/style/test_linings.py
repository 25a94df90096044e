"""All-in-one facings, linings, interfacings and interlinings: derived from the pieces that stand."""

from typing import Any

import pytest
from shapely.geometry import Polygon

from notchbook.app.examining import examine
from notchbook.finish import production_table
from notchbook.finish.allowance import Allowances
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Piece
from notchbook.recipe import Replay
from support.edge_steps import BACK, FRONT, applied, area, bodice, changed, misfits, notes, refusal, skirt
from support.traced_steps import LINING, NECK, PARTS


def outline(piece: Piece) -> Polygon:
    """The piece for the outside program."""
    return Polygon([(point.x, point.y) for point in piece.sew_line.flattened(0.005)])


def faced() -> Replay:
    return applied(bodice(), "facing", edges=NECK, interfaced=False)


def stops(done: Replay, slug: str) -> list[str]:
    """The codes of what stops the papers and speaks of what the step made."""
    found = examine(done).findings
    return [one.code for one in found if one.severity == "stop" and f"{slug}" in f"{one.piece} {one.names}"]


def test_an_all_in_one_facing_walks_at_neck_armhole_shoulder_and_side() -> None:
    done = applied(bodice(), "all_in_one_facing", parts=PARTS)
    pattern = done.pattern
    words = ("front_neck", "front_armhole", "back_neck", "back_armhole", "shoulder", "side_seam")
    found = misfits(pattern)
    for word in words:
        assert found[f"all_in_one_facing/{word}"] == pytest.approx(0.0, abs=0.05)
    front, back = (pattern.pieces[f"all_in_one_facing.{side}"] for side in ("front", "back"))
    assert (front.cut, back.cut) == ("fold", "fold")
    assert back.intakes == ()
    assert pattern.edges["all_in_one_facing.front/center_front"].length == pytest.approx(60.0)
    assert stops(done, "all_in_one_facing") == []


def test_the_turn_of_an_all_in_one_facing_is_near_what_was_asked() -> None:
    """The strap moves in by the turn, so that neck and armhole are shorter by about as much."""
    pattern = changed(bodice(), "all_in_one_facing", parts=PARTS, turn="2 mm")
    for word in ("front_neck", "back_neck"):
        assert 0.5 < pattern.seams[f"all_in_one_facing/{word}"].ease <= 2.1
    still = changed(bodice(), "all_in_one_facing", parts=PARTS, turn="0 mm")
    assert still.seams["all_in_one_facing/front_neck"].ease == pytest.approx(0.0, abs=0.02)
    assert outline(still.pieces["all_in_one_facing.front"]).difference(
        outline(still.pieces[FRONT])
    ).area == pytest.approx(0.0, abs=5.0)


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("all-in-one-apart", {"parts": [{**PARTS[0], "armhole": f"{BACK}/armhole"}]}),
        ("all-in-one-narrow", {"parts": PARTS, "center_depth": "1 cm", "side_depth": "1 cm"}),
        ("facing-too-deep", {"parts": PARTS, "side_depth": "40 cm"}),
        ("facing-end-elsewhere", {"parts": [{**PARTS[0], "center": f"{FRONT}/underarm"}]}),
    ],
)
def test_all_in_one_facings_that_cannot_be_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(bodice(), "all_in_one_facing", **changes) == code


def test_a_lining_has_its_pleat_its_higher_armhole_and_ends_at_the_facing() -> None:
    done = applied(faced(), "lining", **LINING)
    pattern = done.pattern
    side = "side_seam"
    assert pattern.edges["lining.back/side_seam"].length == pytest.approx(
        pattern.edges[f"{BACK}/{side}"].length + 10.0, abs=0.05
    )
    center = pattern.edges["lining.back/center_back"].path
    assert center.start.distance_to(center.end) == pytest.approx(350.0, abs=0.05)
    assert outline(pattern.pieces["lining.back"]).bounds[0] == pytest.approx(
        outline(pattern.pieces[BACK]).bounds[0] - 20.0, abs=0.01
    )
    found = {name: misfit for name, misfit in misfits(pattern).items() if name.startswith("lining/")}
    assert set(found) == {"lining/shoulder", "lining/side_seam", "lining/front_facing", "lining/back_facing"}
    assert found == pytest.approx(dict.fromkeys(found, 0.0), abs=0.1)
    assert all(0.0 <= pattern.seams[f"lining/{one}_facing"].ease <= 1.7 for one in ("front", "back"))
    assert stops(done, "lining") == []


def test_lining_and_facing_together_are_the_piece() -> None:
    """Areas by an outside program: what the facing takes, the lining does not have."""
    done = applied(bodice(), "facing", edges=NECK, turn="0 mm", interfaced=False)
    plain = changed(done, "lining", **{**LINING, "centers": [], "armholes": []})
    for side, panel in (("front", FRONT), ("back", BACK)):
        together = area(plain.pieces[f"lining.{side}"]) + area(plain.pieces[f"facing.{side}"])
        assert together == pytest.approx(area(plain.pieces[panel]), abs=10.0)


def test_a_lining_without_changes_is_the_piece_in_lining() -> None:
    pattern = changed(skirt(), "lining", pieces=["skirt.front", "skirt.back"])
    for side in ("front", "back"):
        lining, panel = pattern.pieces[f"lining.{side}"], pattern.pieces[f"skirt.{side}"]
        assert outline(lining).equals(outline(panel))
        assert [told.material for told in lining.instructions] == ["lining"]
        assert lining.cut == panel.cut and len(lining.darts) == len(panel.darts)
    assert pattern.materials["lining"] == "lining"
    assert {"lining/side_seam", "lining/center_back"} <= set(pattern.seams)
    assert "lining.front/side_seam" in pattern.index


def test_a_hem_of_lining_is_shorter_and_turned_as_lining() -> None:
    hems = ["skirt.front/hem", "skirt.back/hem"]
    pattern = changed(skirt(), "lining", pieces=["skirt.front", "skirt.back"], hems=hems, shorter="25 mm")
    lost = (
        pattern.edges["skirt.front/center_front"].length - pattern.edges["lining.front/center_front"].length
    )
    assert lost == pytest.approx(25.0)
    assert pattern.allowances["lining.front/hem"].allowance_class == "hem_lining"
    assert misfits(pattern)["lining/side_seam"] == pytest.approx(0.0, abs=0.05)


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("lining-elsewhere", {"pieces": [FRONT], "facings": [], "armholes": []}),
        ("lining-no-facing", {"facings": [f"{FRONT}/neck"]}),
        ("lining-no-facing", {"pieces": [BACK], "armholes": [], "centers": []}),
        ("lining-center-curved", {"centers": [f"{BACK}/armhole"]}),
        ("name-lost", {"facings": ["facing.front/hem"]}),
    ],
)
def test_linings_that_cannot_be_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(faced(), "lining", **{**LINING, **changes}) == code


def test_interfacing_is_the_facing_itself_or_smaller_all_round() -> None:
    same = changed(faced(), "interfacing", pieces=["facing.front"])
    assert outline(same.pieces["interfacing.front"]).equals(outline(same.pieces["facing.front"]))
    assert same.allowances["interfacing.front/neck"].width == 0.0
    less = changed(faced(), "interfacing", pieces=["facing.front"], trimmed="4 mm")
    parent, made = (outline(less.pieces[f"{slug}.front"]) for slug in ("facing", "interfacing"))
    assert made.area < parent.area
    assert parent.buffer(0.01).contains(made)
    # Trimmed at every edge but the fold: an outside program measures the rest.
    fold = min(abs(x) for x, _ in made.exterior.coords)
    assert fold == pytest.approx(0.0, abs=0.01)
    neck = less.pieces["interfacing.front"].edge("interfacing.front/neck").path
    assert less.pieces["facing.front"].edge("facing.front/neck").path.nearest(
        neck.point_at(neck.length / 2.0)
    ).gap == pytest.approx(4.0, abs=0.06)


def test_the_strip_of_a_pleat_is_hemmed_with_the_hem_and_folded_into_the_waist() -> None:
    pleated = {"pieces": ["skirt.back"], "centers": ["skirt.back/center_back"], "hems": ["skirt.back/hem"]}
    back = changed(skirt(), "lining", **pleated).pieces["lining.back"]
    strips = {edge.name.rsplit("/", 1)[1]: edge for edge in back.outline if "pleat" in edge.name}
    assert {word: edge.kind for word, edge in strips.items() if word.endswith("_end")} == {
        "pleat_hem_center_end": "hem",
        "pleat_waist_center_end": "plain",
    }


def test_a_pleat_along_a_center_that_a_zip_opens_is_told() -> None:
    """Common practice, no source: beside a zip the lining is sewn to its tape and cannot be folded."""
    back = applied(bodice(), "center_seam", center="bodice.back/center_back")
    zip_in = {"edge": "bodice.back/center_back", "from_point": "bodice.back/nape", "length": "30 cm"}
    pleated = {"pieces": ["bodice.back"], "centers": ["bodice.back/center_back"]}
    told = [
        (zipped, pleat, "lining-pleat-at-zip" in notes(start, "lining", **pleated, pleat=pleat))
        for zipped, start in ((False, back), (True, applied(back, "zip_opening", **zip_in)))
        for pleat in ("20 mm", "0 mm")
    ]
    assert [one for one in told if one[2]] == [(True, "20 mm", True)]


@pytest.mark.parametrize("trimmed", ["2 mm", "3 mm", "5 mm"])
def test_a_trimmed_layer_has_no_part_too_short_to_draw(trimmed: str) -> None:
    """The neighbors of an edge cut it beside a joint of its curves: 0.001 mm were left of a waist."""
    names = ["bodice.front", "bodice.back"]
    made = changed(bodice(), "interfacing", pieces=names, trimmed=trimmed)
    parts = {
        edge.name: min(part.length for part in edge.path.segments)
        for name in names
        for edge in made.pieces[name.replace("bodice", "interfacing")].outline
    }
    assert {name: length for name, length in parts.items() if length < 0.1} == {}


def test_interlining_keeps_the_allowances_and_the_quantities_of_its_piece() -> None:
    pattern = changed(skirt(), "interlining", pieces=["skirt.back"])
    piece = pattern.pieces["interlining.back"]
    assert (piece.cut, [(told.material, told.times) for told in piece.instructions]) == (
        "pair",
        [("interlining", 1)],
    )
    given = {name.rsplit(".", 1)[1] for name in pattern.allowances if name.startswith("interlining")}
    assert {"back/hem", "back/side_seam"} <= given
    table = Allowances(pattern, production_table())
    for word in ("hem", "side_seam", "center_back"):
        own, layer = (table.of(pattern.edges[f"{slug}.back/{word}"]) for slug in ("skirt", "interlining"))
        assert layer.width == own.width > 0.0


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("layer-twice", {"pieces": ["facing.front"], "material": "self"}),
        ("trim-too-much", {"pieces": ["facing.front"], "trimmed": "4 cm"}),
        ("trim-below-nothing", {"pieces": ["facing.front"], "trimmed": "-1 mm"}),
        ("name-lost", {"pieces": ["facing.collar"]}),
    ],
)
def test_layers_that_cannot_be_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(faced(), "interfacing", **changes) == code


@pytest.mark.parametrize(("operation", "says"), [("interfacing", "cut out"), ("interlining", "as one")])
def test_a_layer_is_laid_first_and_nothing_is_sewn_of_it_alone(operation: str, says: str) -> None:
    """Layers are fused or basted to their piece before its darts are sewn (common practice, no source)."""
    order = sewing_order(changed(skirt(), operation, pieces=["skirt.back"]))
    texts = [line.text for line in order.lines]
    laid = next(index for index, text in enumerate(texts) if f"back {operation}" in text)
    assert says in texts[laid]
    assert laid < next(index for index, text in enumerate(texts) if "dart of the back" in text)
    assert [text for text in texts if f"back {operation}" in text] == [texts[laid]]
