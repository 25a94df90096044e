"""Longer and shorter at the hem."""

from typing import Any

import pytest

from notchbook.pattern import Pattern
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.upper_patterns import drafted
from support.yoke_skirt import BACK, FLARE, FRONT, VENT, YOKE, run, skirt_recipe, stopped, with_steps

HEMS = [f"{FRONT}/hem", f"{BACK}/hem"]


def moved(amount: str, *, recipe: Recipe | None = None, **more: Any) -> Recipe:
    parameters = {"hems": HEMS, "amount": amount, **more}
    return with_steps(recipe or skirt_recipe(), ("change_length", "longer", parameters))


def lengths(pattern: Pattern) -> dict[str, float]:
    return {name: edge.length for name, edge in pattern.edges.items()}


def test_every_edge_beside_the_hem_grows_by_the_amount_and_nothing_else_moves() -> None:
    before, after = lengths(run(skirt_recipe()).pattern), lengths(run(moved("5 cm")).pattern)
    grown = {name: round(after[name] - before[name], 6) for name in before}
    longer = {name for name, more in grown.items() if more}
    assert longer == {
        f"{FRONT}/center_front",
        f"{FRONT}/side_seam",
        f"{BACK}/center_back",
        f"{BACK}/side_seam",
    }
    assert {grown[name] for name in longer} == {50.0}


def test_the_area_grows_by_the_amount_times_the_hem_of_a_straight_skirt() -> None:
    before, after = (run(recipe).pattern.pieces[BACK].sew_line for recipe in (skirt_recipe(), moved("5 cm")))
    assert after.area() - before.area() == pytest.approx(50.0 * (990.0 / 4.0 + 7.5), abs=1e-3)


@pytest.mark.parametrize(
    "start", [skirt_recipe(), with_steps(skirt_recipe(), FLARE)], ids=["straight", "flared"]
)
def test_longer_then_shorter_is_as_before(start: Recipe) -> None:
    before = run(start).pattern
    there = moved("7 cm", recipe=start)
    back = run(moved("-7 cm", recipe=there)).pattern
    for name, edge in before.edges.items():
        assert back.edges[name].length == pytest.approx(edge.length, abs=0.02), name
        for share in (0.0, 0.5, 1.0):
            gap = edge.path.point_at(edge.length * share).distance_to(
                back.edges[name].path.point_at(back.edges[name].length * share)
            )
            assert gap < 0.02, name
    # A step that did nothing would pass, but for this.
    assert (
        lengths(run(there).pattern)[f"{FRONT}/center_front"]
        > before.edges[f"{FRONT}/center_front"].length + 69
    )


def test_nothing_by_nothing() -> None:
    assert run(moved("0 cm")).pattern.pieces == run(skirt_recipe()).pattern.pieces


def test_a_hem_named_twice_moves_once() -> None:
    twice = run(moved("5 cm", hems=[HEMS[0], HEMS[0], HEMS[1]])).pattern
    assert lengths(twice) == lengths(run(moved("5 cm")).pattern)


def test_the_hem_of_what_was_cut_moves_on_the_lower_part() -> None:
    cut = with_steps(skirt_recipe(), YOKE)
    pattern = run(moved("5 cm", recipe=cut)).pattern
    assert pattern.edges[f"{FRONT}/side_seam/above"] == run(cut).pattern.edges[f"{FRONT}/side_seam/above"]


def test_refusals() -> None:
    assert stopped(moved("-2000 mm")) == "hem-beyond-edge"
    assert stopped(moved("5 cm", recipe=with_steps(skirt_recipe(), VENT))) == "hem-not-square"
    assert stopped(moved("5 cm", hems=[f"{FRONT}/belly"])) == "name-lost"


def test_a_level_beyond_the_new_hem_goes_with_the_cloth_and_is_said_to() -> None:
    """A short sleeve has no elbow line; a skirt above the hip none at the hip."""
    sleeve = drafted("small-80")
    hem, elbow = "sleeve.sleeve/hem", "sleeve.sleeve/elbow_line"
    assert elbow in sleeve.pattern.index

    def shortened(amount: str) -> Replay:
        recipe = add_step(
            sleeve.recipe, "change_length", {"hems": [hem], "amount": amount}, base=sleeve.measures
        )
        done = replay(recipe, sleeve.measures)
        assert done.suspended is None
        return done

    assert elbow in shortened("-5 cm").pattern.index
    short = shortened("-32 cm").pattern
    piece = short.pieces["sleeve.sleeve"]
    assert elbow not in short.index
    assert short.fates[elbow].reason == "it lay beyond the new hem"
    for line in piece.lines:
        assert all(piece.sew_line.contains(end) for end in (line.path.start, line.path.end))
