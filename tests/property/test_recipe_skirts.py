"""Plausible and impossible bodies: a skirt that closes or a refusal in words, and the same names always."""

from hypothesis import example, given
from hypothesis import strategies as st

from notchbook.errors import catalogue
from notchbook.pattern import Pattern, pattern_to_data, walk_seam
from notchbook.recipe import Recipe, replay
from support.skirt_judge import PANELS, Judge, closures, misses, turns_both_ways
from support.yoke_skirt import FORM_A, auto_skirt, body, yoke_recipe

COUNTS = [(front, back) for front in range(4) for back in range(4)]
RECIPES = {counts: auto_skirt(front_darts=counts[0], back_darts=counts[1]) for counts in COUNTS}
YOKE = yoke_recipe(FORM_A)
NAMES = list(replay(YOKE, FORM_A).pattern.index)

mm = st.floats


def faults(recipe: Recipe, pattern: Pattern, depth: float, wanted: dict[str, float]) -> list[str]:
    """What another code finds wrong in a drafted skirt."""
    data = pattern_to_data(pattern)
    found = misses(closures(data, wanted["waist_girth"], wanted["hip_girth"], depth))
    judge = Judge(data)
    found += [f"{panel} crosses itself" for panel in PANELS if not judge.polygon(panel).is_valid]
    sides = [panel for panel in PANELS if turns_both_ways(judge.edges[f"{panel}/side_seam"])]
    return found + [f"{panel} bends back" for panel in sides]


@given(
    waist=mm(500.0, 1400.0),
    more=mm(-150.0, 380.0),
    depth=mm(120.0, 270.0),
    counts=st.sampled_from(COUNTS),
)
def test_a_plausible_body_closes_or_is_refused_in_words(
    waist: float, more: float, depth: float, counts: tuple[int, int]
) -> None:
    done = replay(RECIPES[counts], body(waist, waist + more, depth))
    if done.suspended is not None:
        assert done.suspended.error.code in catalogue()
        return
    wanted = {promise.measure: promise.wanted for promise in done.expectations}
    assert faults(done.recipe, done.pattern, depth, wanted) == []


@given(waist=mm(1.0, 1e5), hip=mm(1.0, 1e5), depth=mm(1.0, 1e4), counts=st.sampled_from(COUNTS))
@example(waist=1040.136, hip=922.857, depth=64.626, counts=(0, 0))
def test_nonsense_is_refused_in_words_or_closes(
    waist: float, hip: float, depth: float, counts: tuple[int, int]
) -> None:
    done = replay(RECIPES[counts], body(waist, hip, depth))
    if done.suspended is not None:
        assert str(done.suspended.error).endswith(f"[{done.suspended.error.code}]")
        return
    wanted = {promise.measure: promise.wanted for promise in done.expectations}
    assert misses(closures(pattern_to_data(done.pattern), **_girths(wanted), hip_depth=depth)) == []


def _girths(wanted: dict[str, float]) -> dict[str, float]:
    return {"waist": wanted["waist_girth"], "hip": wanted["hip_girth"]}


@given(waist=mm(600.0, 1100.0), more=mm(60.0, 330.0), depth=mm(170.0, 240.0))
def test_a_style_has_the_same_names_on_every_body_and_its_seams_walk(
    waist: float, more: float, depth: float
) -> None:
    done = replay(YOKE, body(waist, waist + more, depth))
    assert done.suspended is None, done.suspended
    assert list(done.pattern.index) == NAMES
    for seam in done.pattern.seams.values():
        assert abs(walk_seam(done.pattern, seam).misfit) < 0.01, seam.name
