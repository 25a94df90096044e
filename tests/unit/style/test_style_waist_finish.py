"""Waistband and facing: made from the waist as sewn, and never stale."""

from typing import Any

import numpy as np
import pytest

from notchbook.pattern import Pattern, pattern_to_data, sewn_length, walk_seam
from notchbook.recipe import Recipe, change_step
from support.skirt_judge import Judge, length
from support.yoke_skirt import (
    BACK,
    FACING,
    FLARE,
    FORM_A,
    FRONT,
    WAISTBAND,
    YOKE,
    place,
    run,
    skirt_recipe,
    stopped,
    with_steps,
)

WAIST = 695.0
UNEVEN = FORM_A.with_value("waist_girth", 700.0, "left")


def banded(start: Recipe | None = None, **changes: Any) -> Recipe:
    return with_steps(start or skirt_recipe(), ("waistband", "waistband", {**WAISTBAND[2], **changes}))


def faced(start: Recipe | None = None, **changes: Any) -> Recipe:
    return with_steps(start or skirt_recipe(), ("waist_facing", "waist_facing", {**FACING[2], **changes}))


@pytest.mark.parametrize(("ease", "underlap"), [(0.0, 30.0), (10.0, 30.0), (0.0, 0.0), (6.0, 45.0)])
def test_the_band_is_the_waist_less_its_ease_plus_the_underlap(ease: float, underlap: float) -> None:
    pattern = run(banded(ease=ease, underlap=underlap)).pattern
    judge = Judge(pattern_to_data(pattern))
    band = judge.polygon("waistband.band")
    west, south, east, north = band.bounds
    assert east - west == pytest.approx(WAIST - ease + underlap, abs=0.01)
    assert north - south == pytest.approx(70.0)
    assert band.area == pytest.approx((east - west) * 70.0, rel=1e-9)
    for side in ("right", "left"):
        walk = walk_seam(pattern, pattern.seams[f"waistband/waist_{side}"])
        assert walk.first == pytest.approx((WAIST - ease) / 2.0, abs=0.01)
        assert walk.misfit == pytest.approx(0.0, abs=0.01)
        assert walk.ease == pytest.approx(ease / 2.0)


def test_the_marks_of_the_band_lie_at_side_seams_center_and_opening() -> None:
    pattern = run(banded()).pattern
    band = pattern.pieces["waistband.band"]
    back = sewn_length(pattern, f"{BACK}/waist")
    marks = {
        name.rsplit("/", 1)[1]: notch.place
        for name, notch in pattern.notches.items()
        if name.startswith("waistband")
    }
    assert marks["right_seam_notch"].amount == pytest.approx(back)
    assert marks["left_seam_notch"].amount == pytest.approx(back)
    assert marks["center_notch"].amount == pytest.approx(WAIST / 2.0)
    assert band.lines[0].kind == "fold_line"
    assert band.lines[0].path.start.y == pytest.approx(35.0)


def test_with_ease_the_marks_of_the_band_share_it_evenly() -> None:
    pattern = run(banded(ease="10 mm")).pattern
    mark = pattern.notches["waistband.band/right_seam_notch"].place
    back = sewn_length(pattern, f"{BACK}/waist")
    assert mark.amount == pytest.approx(back * (WAIST - 10.0) / WAIST, abs=0.01)


def test_uneven_sides_each_get_their_part_of_the_band() -> None:
    done = run(banded(), UNEVEN)
    pattern = done.pattern
    right, left = (pattern.edges[f"waistband.band/lower/{side}"].length for side in ("right", "left"))
    assert [right, left] == pytest.approx([347.5, 357.5], abs=0.01)
    for side in ("right", "left"):
        assert walk_seam(pattern, pattern.seams[f"waistband/waist_{side}"]).misfit == pytest.approx(
            0.0, abs=0.01
        )


def test_bands_that_cannot_be_made_are_refused() -> None:
    assert stopped(banded(ease="-1 cm")) == "band-negative"
    assert stopped(banded(underlap="-1 cm")) == "band-negative"
    assert stopped(banded(depth="50 cm")) == "band-too-short"
    assert stopped(banded(depth="0 cm")) == "amount-not-positive"
    assert stopped(banded(edges=[{"edge": f"{BACK}/waist", "starts_at": f"{BACK}/hem_side"}])) == "end-lost"


def walks(pattern: Pattern) -> dict[str, float]:
    return {
        name: walk_seam(pattern, seam).misfit
        for name, seam in pattern.seams.items()
        if name.startswith("waist_facing")
    }


@pytest.mark.parametrize(
    "start",
    [
        skirt_recipe(),
        skirt_recipe(front_darts=2, back_darts=3),
        with_steps(skirt_recipe(), FLARE),
        with_steps(skirt_recipe(), YOKE),
    ],
    ids=["block", "many darts", "flared", "yoke"],
)
def test_every_edge_of_the_facing_walks_against_what_it_is_sewn_to(start: Recipe) -> None:
    pattern = run(faced(start)).pattern
    found = walks(pattern)
    assert {"waist_facing/front_waist", "waist_facing/back_waist", "waist_facing/side_seam"} <= set(found)
    assert found == pytest.approx(dict.fromkeys(found, 0.0), abs=0.05)
    judge = Judge(pattern_to_data(pattern))
    for panel in ("front", "back"):
        assert judge.polygon(f"waist_facing.{panel}").is_valid
        assert judge.polygon(f"waist_facing.{panel}").exterior.is_ccw
        waist = sum(length(judge.edges[name]) for name in pattern.groups[f"skirt.{panel}/waist"].members)
        assert judge.length(f"waist_facing.{panel}/upper") == pytest.approx(waist, abs=0.01)


def test_the_facing_is_as_deep_as_asked_and_has_no_darts() -> None:
    pattern = run(faced(depth="6 cm")).pattern
    judge = Judge(pattern_to_data(pattern))
    for panel in ("front", "back"):
        piece = f"waist_facing.{panel}"
        assert pattern.pieces[piece].intakes == ()
        # In the middle, away from the stretch that is squared to the side seam.
        upper, lower = judge.edges[f"{piece}/upper"], judge.edges[f"{piece}/lower"]
        middle = upper[len(upper) // 2]
        assert float(np.linalg.norm(lower - middle, axis=1).min()) == pytest.approx(60.0, abs=0.6)
        assert judge.length(f"{piece}/center") == pytest.approx(60.0, abs=0.5)
    assert pattern.pieces["waist_facing.front"].cut == "fold"
    assert pattern.pieces["waist_facing.back"].cut == "pair"


def test_the_facing_keeps_the_grain_at_the_center() -> None:
    """However far the darts swing it round, its center lies along the grain as that of the skirt does."""
    pattern = run(faced()).pattern
    judge = Judge(pattern_to_data(pattern))
    for panel in ("front", "back"):
        center = judge.edges[f"waist_facing.{panel}/center"]
        assert abs(center[-1][0] - center[0][0]) < 1e-6
        assert pattern.pieces[f"waist_facing.{panel}"].grain.degrees == pytest.approx(90.0)


def test_the_facing_meets_smoothly_across_the_side_seam() -> None:
    judge = Judge(pattern_to_data(run(faced()).pattern))
    for point in ("upper_side", "lower_side"):
        across = sum(judge.corner(f"waist_facing.{panel}", point) for panel in ("front", "back"))
        assert across == pytest.approx(180.0, abs=3.0), point


def test_the_facing_follows_the_block() -> None:
    recipe = faced()
    wider = change_step(recipe, "skirt-1", {"waist_ease": "35 mm"}, base=FORM_A)
    assert walks(run(wider).pattern) == pytest.approx(
        dict.fromkeys(walks(run(recipe).pattern), 0.0), abs=0.05
    )


def test_facings_that_cannot_be_traced_are_refused() -> None:
    assert stopped(faced(depth="30 cm", start=with_steps(skirt_recipe(), YOKE))) == "facing-too-deep"
    assert stopped(faced(depth="-1 cm")) == "amount-not-positive"
    one = {"edge": f"{FRONT}/waist", "center": f"{FRONT}/hem_center"}
    assert stopped(faced(edges=[one])) == "facing-center-elsewhere"
    line = {
        "start": place(f"{FRONT}/waist", f"{FRONT}/waist_center", "40 mm", part=f"{FRONT}/waist/center"),
        "end": place(f"{FRONT}/hem", f"{FRONT}/hem_center", "60 mm"),
    }
    panels = ("cut_style_line", "panel", {"lines": [line], "first_role": "middle", "second_role": "side"})
    assert stopped(faced(with_steps(skirt_recipe(), panels))) == "facing-edge-broken"
