"""The crotch lining of a suit: one seam takes all three layers, and the elastic of the leg its sides.

Common practice of swimwear and dance wear, no source.
"""

from dataclasses import replace
from typing import Any

from notchbook.finish.sewing import SewingLine, sewing_order
from notchbook.pattern import CutInstruction, Pattern, frozen_map
from support.stretch_bodies import stretch_run

SUIT = "bodysuit"


def suit(**parameters: Any) -> Pattern:
    return stretch_run(SUIT, **parameters).pattern


def lines(pattern: Pattern) -> dict[str, SewingLine]:
    order = sewing_order(pattern)
    assert order.waiting == ()
    return {line.key: line for line in order.lines}


def test_one_seam_takes_front_back_and_lining() -> None:
    told = lines(suit())
    crotch = told["bodysuit/crotch"]
    assert crotch.text == (
        "Lay the crotch lining on the wrong side of the front, edge on edge, and sew both to the back in one "
        "seam: crotch"
    )
    assert set(crotch.at) == {f"bodysuit.{piece}/crotch" for piece in ("front", "back", "lining")}
    assert "bodysuit/lining_crotch" not in told, "a second seam through the same edge would be sewn twice"


def test_the_elastic_of_the_leg_comes_after_it_and_catches_the_sides_of_the_lining() -> None:
    told = lines(suit())
    leg = told["bodysuit/leg_elastic"]
    assert leg.number > told["bodysuit/crotch"].number
    assert leg.text.endswith("; it catches the sides of the crotch lining")
    assert "lining" not in told["bodysuit/armhole_elastic"].text


def test_a_piece_of_the_same_cloth_is_sewn_on_by_a_seam_of_its_own() -> None:
    """A gusset is no lining that lies on another piece."""
    pattern = suit()
    lining = pattern.pieces["bodysuit.lining"]
    other = replace(lining, title="Gusset", instructions=(CutInstruction("self"),))
    told = lines(replace(pattern, pieces=frozen_map({**pattern.pieces, lining.name: other})))
    assert "bodysuit/lining_crotch" in told
    assert "lining" not in told["bodysuit/leg_elastic"].text


def test_a_suit_without_elastic_at_the_leg_tells_of_no_catching() -> None:
    pattern = suit()
    bare = replace(pattern, elastics=frozen_map({}))
    assert not [line for line in sewing_order(bare).lines if "catches" in line.text]
