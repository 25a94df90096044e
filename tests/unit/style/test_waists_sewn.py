"""How bands, casings, ties and loops of belts are sewn on, cut and told of.

Figures of common practice and of factory allowance charts are named beside each check.
"""

import pytest

from notchbook.finish import production_table
from notchbook.finish.allowance import Allowances
from notchbook.finish.sewing import sewing_order
from support.closure_steps import BACK_OPENING, stepped
from support.edge_steps import place, skirt

CONTOURED = {"edges": BACK_OPENING}


def test_a_casing_of_its_own_is_closed_once_and_sewn_on_once() -> None:
    done = stepped(skirt(), ("elastic_casing", {"made": "separate"})).pattern
    lines = [line for line in sewing_order(done).lines if "casing" in line.text or "casing" in line.key]
    assert [line.key.split("/")[1] for line in lines] == ["casing_end", "waist", "casing", "elastic_drawn"]
    assert [("ring" in line.text, "gap" in line.text) for line in lines[2:]] == [(False, True)] * 2


@pytest.mark.parametrize("places", [[], [place("skirt.front/side_seam", "skirt.front/waist_side", "1 cm")]])
def test_ties_are_sewn_on_somewhere(places: list[dict[str, str]]) -> None:
    order = sewing_order(stepped(skirt(), ("tie", {"places": places})).pattern).lines
    texts = {line.key.split("/")[1]: (line.number, line.text) for line in order if line.key.startswith("tie")}
    assert texts.keys() == {"tie", "tie_caught" if places else "tie_sewn_on"}
    assert texts["tie"][0] < max(number for number, _ in texts.values())


def test_the_strip_for_belt_loops_has_every_loop_with_its_ends() -> None:
    """Each is as long as the belt is wide and 1 cm, and 1/2 in at each end (common practice, no source); it
    is cut twice as wide as it is finished."""
    told = {"edges": BACK_OPENING, "each_side": 3, "belt": "45 mm", "width": "8 mm"}
    strip = stepped(skirt(), ("belt_loops", told)).pattern.pieces["belt_loops.loops"]
    assert (strip.bounds.width, strip.bounds.height) == pytest.approx((7 * (45.0 + 10.0 + 24.0), 16.0))
    assert len([line for line in strip.lines if line.kind == "cut_line"]) == 6


@pytest.mark.parametrize("cut_in", ["one", "two", "three"])
def test_the_facing_of_a_contoured_band_is_sewn_on_in_one_line(cut_in: str) -> None:
    """Upper edge and ends in one go, when band and waist are sewn (common practice, no source)."""
    order = sewing_order(stepped(skirt(), ("contoured_waistband", {**CONTOURED, "cut_in": cut_in})).pattern)
    texts = [line.text for line in order.lines]
    (faced,) = [
        index for index, text in enumerate(texts) if text.startswith("Sew the facing of the waistband")
    ]
    (waist,) = [index for index, text in enumerate(texts) if text.endswith("front: waist")]
    (turned,) = [index for index, text in enumerate(texts) if "turn the band" in text]
    assert waist < faced < turned
    assert not [text for text in texts if text.endswith(("upper", "end"))]


@pytest.mark.parametrize("cut_in", ["one", "two", "three"])
def test_the_edges_of_a_contoured_band_and_its_facing_are_cut_by_their_seams(cut_in: str) -> None:
    """Waist 1/2 in, the turned edges 1/4 in (factory allowance charts), a waistband's free edge 10 mm, its
    own seams an inch (common practice, no source)."""
    pattern = stepped(skirt(), ("contoured_waistband", {**CONTOURED, "cut_in": cut_in})).pattern
    given = Allowances(pattern, production_table())
    wanted = {"band": 12.0, "facing": 10.0}
    for name in (one for one in pattern.pieces if one.startswith("contoured_waistband.")):
        for edge in pattern.pieces[name].outline:
            word = "facing" if "facing" in name else "band"
            turned = 25.0 if edge.kind == "seam" and "/lower/" not in edge.name else 6.0
            assert given.of(edge).width == (wanted[word] if "/lower/" in edge.name else turned), edge.name


def test_darts_in_a_casing_are_told_where_they_lie() -> None:
    """All of them by name, on the piece of the first: it was told on the piece that the waist begins with."""
    done = stepped(skirt(), ("elastic_casing", {"edges": BACK_OPENING, "made": "separate"}))
    (told,) = [one for one in done.notes if one.code == "casing-darts"]
    darts = {dart.name: piece.name for piece in done.pattern.pieces.values() for dart in piece.darts}
    assert set(told.names) == darts.keys() and len(darts) == 3
    assert told.piece == darts[told.names[0]]
    assert told.where == next(dart.mouth for dart in done.pattern.pieces[told.piece].darts)


def test_a_casing_cut_on_is_folded_at_both_ends_of_every_edge() -> None:
    """Turned over, its ends lie on the seams beside it: each corner is the mirror of the seam (handbooks)."""
    pattern = stepped(skirt(), ("elastic_casing", {"edges": BACK_OPENING})).pattern
    ends = ("back/waist_center", "back/waist_side", "front/waist_center", "front/waist_side")
    assert {name: pattern.corners.get(name) for name in (f"skirt.{end}" for end in ends)} == dict.fromkeys(
        (f"skirt.{end}" for end in ends), "folded"
    )
