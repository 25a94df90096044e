"""Longer and shorter at the hem."""

from typing import Any

import pytest

from notchbook.pattern import Pattern, walk_seam
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.stretch_bodies import stretch_run
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
    "start", [skirt_recipe(), with_steps(skirt_recipe(front_darts=1), FLARE)], ids=["straight", "flared"]
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
    sleeve = drafted("small-80")
    cap = {"hems": ["sleeve.sleeve/cap_front"], "amount": "-2 cm"}
    recipe = add_step(sleeve.recipe, "change_length", cap, base=sleeve.measures)
    assert stopped(recipe, sleeve.measures) == "hem-not-square"


def test_the_hem_of_a_vent_goes_with_the_hem_it_runs_on_from() -> None:
    vented = with_steps(skirt_recipe(), VENT)
    before, done = run(vented).pattern, run(moved("5 cm", recipe=vented))
    after, grown = lengths(done.pattern), lengths(before)
    assert after[f"{BACK}/center_back/vent"] - grown[f"{BACK}/center_back/vent"] == pytest.approx(50.0)
    assert after["vent.back/hem"] == pytest.approx(grown["vent.back/hem"])
    fold = next(line.path for line in done.pattern.pieces[BACK].lines if line.kind == "fold_line")
    hem = done.pattern.edges["vent.back/hem"].path
    assert min(hem.nearest(end).gap for end in (fold.start, fold.end)) < 1e-6
    told = [note for note in done.notes if note.code == "hem-went-along"]
    assert [(note.names[0], note.measured) for note in told] == [("vent.back/hem", 50.0)]


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


def test_a_notch_beyond_the_new_hem_goes_with_the_cloth_and_is_said_to() -> None:
    before = run(skirt_recipe()).pattern
    hip = next(name for name in before.notches if name.startswith(FRONT) and "hip" in name)
    below = before.edges[f"{FRONT}/side_seam"].length - before.notches[hip].place.amount
    done = run(moved(f"-{below + 15.0:.0f} mm"))
    assert hip not in done.pattern.notches
    assert done.pattern.fates[hip].reason == "it lay beyond the new hem"
    assert hip in run(moved(f"-{below - 15.0:.0f} mm")).pattern.notches


def test_a_hem_that_bends_to_its_seams_says_so_and_both_sides_agree() -> None:
    """A leg narrows in a curve to its hem: cut shorter, both inseams lean and the hem dips to them."""
    before = stretch_run("leggings")
    hem = {"hems": ["leggings.leg/hem"], "amount": "-3 cm"}
    done = run(add_step(before.recipe, "change_length", hem, base=before.measures), before.measures)
    told = {note.where: note.measured for note in done.notes if note.code == "hem-bent"}
    assert set(told) == {"leggings.leg/back_inseam", "leggings.leg/front_inseam"}
    assert all(amount is not None and 0.2 < amount < 15.0 for amount in told.values())
    seam = done.pattern.seams["leggings/inseam"]
    assert abs(walk_seam(done.pattern, seam).misfit) < 0.05
    assert [note.code for note in done.notes if note.code == "seam-put-out"] == []
