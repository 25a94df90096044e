"""Circle and gored skirts on any body: they close, or are refused in words; no gore bends both ways."""

from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.errors import catalogue
from notchbook.pattern import pattern_to_data
from notchbook.recipe import Recipe, add_step, replay
from support.round_skirt_judge import RingWanted, circle_closures, gore_closures, gore_faults
from support.yoke_skirt import FORM_A, body

mm = st.floats
NO_EASE = {"waist_ease": "0 mm", "hip_ease": "0 mm"}


@settings(max_examples=100, deadline=None)
@given(
    waist=mm(600.0, 1100.0),
    drop=mm(0.0, 350.0),
    gores=st.integers(4, 12),
    center=st.sampled_from(["gore", "seam"]),
    fullness=mm(1.1, 2.5),
)
def test_plausible_gores_close_and_none_bends_both_ways(
    waist: float, drop: float, gores: int, center: str, fullness: float
) -> None:
    # The bodies and hems of the 1,152 trial drafts that the closed forms were found on.
    hem = fullness * (waist + drop)
    chosen = {"gores": gores, "center_front": center, "hem_girth": f"{hem:.3f} mm"}
    recipe = add_step(Recipe("Gored"), "gored_skirt", chosen | NO_EASE, base=FORM_A)
    done = replay(recipe, body(waist, waist + drop, 206.0))
    assert done.suspended is None, str(done.suspended)
    wanted = {"waist_girth": waist, "hip_girth": waist + drop, "hem_girth": float(f"{hem:.3f}")}
    data = pattern_to_data(done.pattern)
    assert [one.name for one in gore_closures(data, wanted) if not one.holds] == []
    assert gore_faults(data) == []


@settings(max_examples=60, deadline=None)
@given(
    waist=mm(1.0, 5000.0),
    hip=mm(1.0, 5000.0),
    depth=mm(1.0, 1000.0),
    gores=st.integers(4, 12),
    hem=mm(1.0, 20000.0),
    length=mm(1.0, 3000.0),
)
def test_any_gores_close_or_are_refused_in_words(
    waist: float, hip: float, depth: float, gores: int, hem: float, length: float
) -> None:
    chosen = {"gores": gores, "hem_girth": f"{hem:.2f} mm", "length": f"{length:.2f} mm"}
    done = replay(add_step(Recipe("Gored"), "gored_skirt", chosen, base=FORM_A), body(waist, hip, depth))
    if done.suspended is not None:
        assert done.suspended.error.code in catalogue()
        return
    wanted = {"waist_girth": waist + 15.0, "hip_girth": hip + 50.0, "hem_girth": float(f"{hem:.2f}")}
    found = gore_closures(pattern_to_data(done.pattern), wanted)
    assert [one.name for one in found if not one.holds] == []


@settings(max_examples=60, deadline=None)
@given(
    waist=mm(300.0, 1600.0),
    share=mm(0.05, 2.0),
    length=mm(50.0, 1500.0),
    panels=st.sampled_from(["one", "two", "three", "four"]),
)
def test_any_circle_closes_or_is_refused_in_words(
    waist: float, share: float, length: float, panels: str
) -> None:
    chosen = {"own_share": share, "length": f"{length:.2f} mm", "panels": panels, "waist_ease": "0 mm"}
    recipe = add_step(Recipe("Circle"), "circle_skirt", chosen, base=FORM_A)
    done = replay(recipe, body(waist, waist + 100.0, 200.0))
    if done.suspended is not None:
        assert done.suspended.error.code == "circle-piece-meets-itself"
        assert share * 360.0 > 300.0
        return
    wanted = RingWanted(waist, share, float(f"{length:.2f}"))
    found = circle_closures(pattern_to_data(done.pattern), wanted)
    assert [one.name for one in found if not one.holds] == []
