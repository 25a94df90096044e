"""Broken on purpose: each time the right answer, the last good state kept, and nothing silent."""

from typing import Any

import pytest

from notchbook.body import MeasureSet
from notchbook.pattern import Ambiguous, Found, Lost, resolve, walk_seam
from notchbook.recipe import (
    Recipe,
    Replay,
    add_step,
    change_step,
    move_step,
    rebind,
    recipe_from_data,
    recipe_to_data,
    remove_step,
    replay,
)
from support.yoke_skirt import (
    BACK,
    FACING,
    FLARE,
    FORM_A,
    FRONT,
    LONGER,
    VENT,
    WAISTBAND,
    WHOLE_BACK,
    YOKE,
    ZIP,
    body,
    place,
    run,
    skirt_recipe,
    with_steps,
    yoke_line,
    yoke_recipe,
)

RECIPE = yoke_recipe()


def stop(recipe: Recipe, measures: MeasureSet = FORM_A) -> dict[str, Any]:
    """Where and why a recipe stopped, as plain data."""
    done: Replay = replay(recipe, measures)
    assert done.suspended is not None, "it should have stopped"
    ran = [state.record.id for state in done.states]
    assert done.suspended.step not in ran
    assert set(done.suspended.waiting).isdisjoint(ran)
    return {
        "step": done.suspended.step,
        "code": done.suspended.error.code,
        "name": done.suspended.name,
        "candidates": done.suspended.candidates,
        "taken_by": done.suspended.taken_by,
        "waiting": done.suspended.waiting,
        "pieces": list(done.pattern.pieces),
        "text": str(done.suspended.error),
    }


def test_a_removed_step_that_others_use() -> None:
    found = stop(remove_step(RECIPE, "cut_style_line-1"))
    assert found["step"] == "join_pieces-1"
    assert found["code"] == "name-lost"
    assert found["name"] == "yoke.back_below/style_line"
    waiting = ("change_length-1", "vent-1", "zip_opening-1", "waist_facing-1", "waistband-1")
    assert found["waiting"] == waiting
    assert found["pieces"] == [FRONT, BACK]
    assert "was removed" in found["text"]


def test_a_part_of_an_edge_that_is_not_cut_any_more_offers_the_whole_edge() -> None:
    part = f"{FRONT}/side_seam/below"
    recipe = with_steps(skirt_recipe(), YOKE, ("set_allowance", "wide", {"edges": [part], "width": "2 cm"}))
    found = stop(remove_step(recipe, "cut_style_line-1"))
    assert (found["code"], found["name"]) == ("name-lost", part)
    assert found["candidates"] == (f"{FRONT}/side_seam",)


def test_steps_in_another_order() -> None:
    found = stop(move_step(RECIPE, "join_pieces-1", "cut_style_line-1"))
    assert (found["step"], found["code"]) == ("join_pieces-1", "name-later")
    assert found["taken_by"] == "cut_style_line-1"
    assert found["waiting"][0] == "cut_style_line-1"
    found = stop(move_step(RECIPE, "skirt-1", None))
    assert (found["step"], found["code"], found["taken_by"]) == ("dart_to_flare-1", "name-later", "skirt-1")


def test_a_dart_that_was_closed_is_not_there_any_more() -> None:
    recipe = with_steps(skirt_recipe(), FLARE, ("dart_to_flare", "again", FLARE[2]))
    found = stop(recipe)
    assert (found["step"], found["code"]) == ("dart_to_flare-2", "name-lost")
    assert (found["name"], found["taken_by"]) == (f"{FRONT}/waist_dart", "dart_to_flare-1")


def test_a_point_that_was_joined_away_names_what_took_it() -> None:
    recipe = with_steps(
        skirt_recipe(),
        YOKE,
        WHOLE_BACK,
        ("zip_opening", "zip", {"edge": f"{BACK}/center_back", "from_point": f"{BACK}/hem_side"}),
    )
    found = stop(recipe)
    assert (found["code"], found["name"]) == ("end-lost", f"{BACK}/hem_side")
    assert set(found["candidates"]) == {f"{BACK}/waist_center", f"{BACK}/hem_center"}


def test_an_edge_that_is_wanted_single_and_was_split() -> None:
    recipe = with_steps(skirt_recipe(), YOKE, WHOLE_BACK)
    recipe = with_steps(
        recipe,
        ("join_pieces", "odd", {"first_edge": f"{FRONT}/side_seam", "second_edge": f"{BACK}/side_seam"}),
    )
    found = stop(recipe)
    assert (found["step"], found["code"]) == ("join_pieces-2", "name-ambiguous")
    assert found["name"] == f"{FRONT}/side_seam"
    assert found["candidates"] == (f"{FRONT}/side_seam/above", f"{FRONT}/side_seam/below")
    assert found["taken_by"] == "cut_style_line-1"


def test_resolutions_say_found_ambiguous_or_lost() -> None:
    pattern = run(RECIPE).pattern
    assert isinstance(resolve(pattern, f"{FRONT}/side_seam", "edge"), Ambiguous)
    assert isinstance(resolve(pattern, f"{FRONT}/side_seam", "run"), Found)
    lost = resolve(pattern, "yoke.back_below/style_line")
    assert isinstance(lost, Lost)
    assert lost.by == "join_pieces-1"
    merged = resolve(pattern, "yoke.back_below", "piece")
    assert isinstance(merged, Lost)
    assert merged.candidates == ("whole_back.back",)


def test_a_style_line_across_a_dart_on_another_body() -> None:
    """High on the base, the line clears the dart; with the long dart of the other body it does not."""
    recipe = skirt_recipe(FORM_A, front_dart_length="1/2 hip_depth")
    line = {
        "start": place(f"{FRONT}/side_seam", f"{FRONT}/waist_side", "115 mm"),
        "end": place(f"{FRONT}/center_front", f"{FRONT}/waist_center", "115 mm"),
    }
    recipe = with_steps(recipe, ("cut_style_line", "yoke", {"lines": [line]}), LONGER)
    assert list(run(recipe).pattern.pieces) == [BACK, "yoke.front_above", "yoke.front_below"]
    found = stop(recipe, body(680.0, 940.0, 250.0))
    assert (found["step"], found["code"]) == ("cut_style_line-1", "style-line-crosses")
    assert found["name"].startswith(f"{FRONT}/waist_dart/")
    assert found["waiting"] == ("change_length-1",)
    assert found["pieces"] == [FRONT, BACK]


WAIST_LINE = {
    "start": place(f"{BACK}/waist", f"{BACK}/waist_center", "40 mm", part=f"{BACK}/waist/center"),
    "end": place(f"{BACK}/hem", f"{BACK}/hem_center", "60 mm"),
}


def panel_recipe(**start: Any) -> Recipe:
    line = {**WAIST_LINE, "start": {**WAIST_LINE["start"], **start}}
    return with_steps(
        skirt_recipe(),
        ("cut_style_line", "panel", {"lines": [line], "first_role": "center", "second_role": "side"}),
    )


def test_a_line_to_an_edge_of_several_parts_needs_the_part() -> None:
    pattern = run(panel_recipe()).pattern
    assert pattern.groups[f"{BACK}/waist/center"].members == (
        f"{BACK}/waist/center/side",
        f"{BACK}/waist/center/center",
    )
    found = stop(panel_recipe(part=None))
    assert found["code"] == "name-ambiguous"
    assert found["candidates"] == tuple(f"{BACK}/waist/{part}" for part in ("side", "middle", "center"))


def test_a_line_that_ends_on_another_part_on_another_body_is_lost() -> None:
    recipe = panel_recipe(distance="56 mm")
    assert "panel.back_center" in run(recipe).pattern.pieces
    found = stop(recipe, body(540.0, 800.0, 190.0))
    assert found["code"] == "style-line-elsewhere"
    assert found["name"] == f"{BACK}/waist/center"
    assert found["candidates"] == (f"{BACK}/waist/middle",)


def test_a_derived_piece_asked_for_too_early() -> None:
    recipe = with_steps(
        yoke_recipe(), ("set_allowance", "edge", {"edges": ["waist_facing.front/lower"], "width": "5 mm"})
    )
    # Added through the front door, the step goes to the second phase and runs.
    assert recipe.step("set_allowance-1").phase == "derived"
    assert run(recipe).pattern.allowances["waist_facing.front/lower"].width == 5.0
    # Written by hand into the first phase, it is told to come after.
    data = recipe_to_data(recipe)
    next(step for step in data["steps"] if step["id"] == "set_allowance-1")["phase"] = "shaping"
    found = stop(recipe_from_data(data))
    assert (found["step"], found["code"]) == ("set_allowance-1", "name-derived")
    assert (found["name"], found["taken_by"]) == ("waist_facing.front/lower", "waist_facing-1")
    assert "waist_facing-1" in found["waiting"]
    # Changed or bound to a derived piece, a step moves to the second phase as well, and back again.
    early = with_steps(RECIPE, ("set_allowance", "edge", {"edges": [f"{FRONT}/hem"], "width": "5 mm"}))
    late = change_step(early, "set_allowance-1", {"edges": ["waist_facing.front/lower"]}, base=FORM_A)
    assert late.step("set_allowance-1").phase == "derived"
    bound = rebind(early, "set_allowance-1", f"{FRONT}/hem", "waist_facing.front/lower")
    assert bound.step("set_allowance-1").phase == "derived"
    back = rebind(bound, "set_allowance-1", "waist_facing.front/lower", f"{FRONT}/hem")
    assert back.step("set_allowance-1").phase == "shaping"


def test_binding_anew_is_recorded_and_mends() -> None:
    broken = remove_step(with_steps(skirt_recipe(), YOKE, ZIP), "cut_style_line-1")
    recipe = with_steps(
        broken, ("set_allowance", "wide", {"edges": ["yoke.front_above/style_line"], "width": "2 cm"})
    )
    assert stop(recipe)["name"] == "yoke.front_above/style_line"
    mended = rebind(recipe, "set_allowance-1", "yoke.front_above/style_line", f"{FRONT}/hem")
    assert run(mended).pattern.allowances[f"{FRONT}/hem"].width == 20.0
    assert mended.step("set_allowance-1").rebound == (("yoke.front_above/style_line", f"{FRONT}/hem"),)


def test_a_slug_used_again_after_removal_does_not_bind_silently() -> None:
    recipe = with_steps(skirt_recipe(), YOKE, WHOLE_BACK)
    removed = remove_step(recipe, "cut_style_line-1")
    again = add_step(removed, "cut_style_line", YOKE[2], base=FORM_A, slug="yoke", before="join_pieces-1")
    record = again.step("cut_style_line-2")
    assert record.slug == "yoke_2"
    found = stop(again)
    assert (found["step"], found["name"]) == ("join_pieces-1", "yoke.back_below/style_line")


def test_an_emptied_dart_keeps_its_names() -> None:
    recipe = with_steps(skirt_recipe(), FLARE, FACING)
    straight = run(recipe, body(1030.0, 990.0, 190.0)).pattern
    assert list(straight.index) == list(run(recipe).pattern.index)
    assert straight.edges[f"{FRONT}/hem"].length == pytest.approx(1040.0 / 4.0 - 7.5, abs=0.01)


# ---------------------------------------------------------------- seams survive


def misfit(recipe: Recipe, name: str) -> float:
    pattern = run(recipe).pattern
    return walk_seam(pattern, pattern.seams[name]).misfit


def test_a_seam_survives_when_one_of_its_sides_is_split() -> None:
    recipe = with_steps(
        skirt_recipe(), ("cut_style_line", "yoke", {"lines": [yoke_line(FRONT, "center_front")]})
    )
    pattern = run(recipe).pattern
    walk = walk_seam(pattern, pattern.seams["skirt/side_seam"])
    assert walk.misfit == pytest.approx(0.0, abs=0.01)
    (hip,) = walk.stations
    assert hip.first == pytest.approx(206.0, abs=0.01)
    assert hip.second == pytest.approx(206.0, abs=0.01)


def test_a_seam_survives_a_dart_moved_out_of_its_edge() -> None:
    recipe = with_steps(skirt_recipe(), WAISTBAND, FACING)
    flared = with_steps(recipe, FLARE)
    for seam in ("waistband/waist_right", "waistband/waist_left", "waist_facing/front_waist"):
        assert misfit(recipe, seam) == pytest.approx(0.0, abs=0.01)
        assert misfit(flared, seam) == pytest.approx(0.0, abs=0.01)


def test_seams_survive_a_yoke_cut_across() -> None:
    recipe = with_steps(skirt_recipe(), YOKE, WAISTBAND, FACING)
    pattern = run(recipe).pattern
    assert {"yoke/front_style_line", "yoke/back_style_line", "waistband/waist_left"} <= set(pattern.seams)
    for seam in pattern.seams.values():
        assert walk_seam(pattern, seam).misfit == pytest.approx(0.0, abs=0.01), seam.name


def test_two_lines_across_one_panel() -> None:
    """Cut twice, the edges stay in order and no two corners get one name."""
    lower = {
        "start": place(f"{FRONT}/side_seam", f"{FRONT}/waist_side", "30 cm", part=f"{FRONT}/side_seam/below"),
        "end": place(
            f"{FRONT}/center_front", f"{FRONT}/waist_center", "30 cm", part=f"{FRONT}/center_front/below"
        ),
    }
    recipe = with_steps(
        skirt_recipe(),
        ("cut_style_line", "yoke", {"lines": [yoke_line(FRONT, "center_front")]}),
        ("cut_style_line", "band", {"lines": [lower]}),
    )
    pattern = run(recipe).pattern
    assert list(pattern.pieces) == [
        BACK,
        "yoke.front_above",
        "band.front_below_above",
        "band.front_below_below",
    ]
    assert pattern.groups[f"{FRONT}/side_seam/below"].members == (
        f"{FRONT}/side_seam/below/above",
        f"{FRONT}/side_seam/below/below",
    )
    assert misfit(recipe, "skirt/side_seam") == pytest.approx(0.0, abs=0.01)


def test_a_vent_after_the_yoke_shortens_the_seam_that_is_sewn() -> None:
    plain = run(with_steps(skirt_recipe(), YOKE)).pattern
    vented = run(with_steps(skirt_recipe(), YOKE, VENT)).pattern
    before = walk_seam(plain, plain.seams["skirt/center_back"])
    after = walk_seam(vented, vented.seams["skirt/center_back"])
    assert before.first - after.first == pytest.approx(180.0, abs=0.01)
    assert after.misfit == pytest.approx(0.0, abs=0.01)
