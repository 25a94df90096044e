"""How far a pattern moves: against a finite difference worked out by hand from two drafts."""

from collections.abc import Iterator
from math import hypot

import pytest

from notchbook.app.bodies.uncertainty import outline_movements, seam_changes, sensitivities, sensitivity
from notchbook.app.drafting import draft, draft_recipe
from notchbook.body import Measure, MeasureSet
from notchbook.geometry import Path
from notchbook.pattern import Pattern
from notchbook.recipe import replay

TAKEN = {"waist_girth": 740.0, "hip_girth": 980.0, "hip_depth": 205.0}
DARTS = {"front_darts": 1, "back_darts": 2}
GUESS = Measure(205.0, "estimated", 18.0)


def body(hip_depth: Measure | float = 205.0) -> MeasureSet:
    return MeasureSet.from_mm("Invented", TAKEN).with_value("hip_depth", hip_depth)


def drafted(hip_depth: float) -> Pattern:
    return draft("skirt", body(hip_depth), DARTS).pattern


def points(path: Path) -> Iterator[tuple[float, float]]:
    """Many points of a path, by its own lengths and nothing else."""
    for step in range(151):
        point = path.point_at(path.length * step / 150.0)
        yield point.x, point.y


def farthest(before: Path, after: Path) -> float:
    """The largest distance from a point of one path to the other, by brute force."""
    first, second = list(points(before)), list(points(after))
    return max(
        max(min(hypot(x - u, y - v) for u, v in others) for x, y in those)
        for those, others in ((first, second), (second, first))
    )


def test_the_movement_is_that_of_two_drafts_laid_over_each_other() -> None:
    run = replay(draft_recipe("skirt", body(GUESS), DARTS), body(GUESS))
    (found,) = sensitivities(run.recipe, body(GUESS))
    assert (found.key, found.error, found.refused) == ("hip_depth", 18.0, ())
    before = run.pattern.edges[found.outline.name].path
    moved = [drafted(value).edges[found.outline.name].path for value in (187.0, 223.0)]
    by_hand = max(
        max(farthest(before, path), before.start.distance_to(path.start), before.end.distance_to(path.end))
        for path in moved
    )
    deeper = drafted(223.0)
    others = [
        edge.path.end.distance_to(deeper.edges[name].path.end) for name, edge in run.pattern.edges.items()
    ]
    assert found.outline.amount >= max(others) - 1e-6
    assert found.outline.amount == pytest.approx(by_hand, rel=0.01)
    # The hip line lies at the origin: the waist goes up and down with the hip depth, about mm for mm.
    assert 16.0 < found.outline.amount < 22.0
    assert 0.9 < found.per_mm < 1.2


def test_the_side_seam_grows_by_what_the_hip_depth_does() -> None:
    """The length at the center is set; the side is the hip depth and the way from the hip line to the hem."""
    run = replay(draft_recipe("skirt", body(GUESS), DARTS), body(GUESS))
    changes = {moved.name: moved.amount for moved in seam_changes(run.pattern, drafted(223.0))}
    before, after = (
        pattern.edges["skirt.front/side_seam"].length for pattern in (run.pattern, drafted(223.0))
    )
    assert changes["skirt/side_seam"] == pytest.approx(abs(after - before), abs=1e-6)


def test_a_pattern_laid_on_itself_has_not_moved() -> None:
    pattern = drafted(205.0)
    assert all(moved.amount == 0.0 for moved in outline_movements(pattern, pattern))
    assert all(moved.amount == 0.0 for moved in seam_changes(pattern, pattern))


def test_the_pattern_does_not_answer_to_a_measure_that_only_judges() -> None:
    run = replay(draft_recipe("skirt", body(), DARTS), body())
    found = sensitivity(run, "outside_leg", Measure(1050.0, "estimated", 40.0))
    assert found.outline.amount < 0.01


def test_a_value_at_which_the_draft_is_refused_is_told() -> None:
    wide = body(Measure(100.0, "estimated", 60.0))
    run = replay(draft_recipe("skirt", wide, DARTS), wide)
    if run.suspended is not None:
        pytest.fail("the draft in the middle must stand")
    found = sensitivity(run, "hip_depth", wide.get("hip_depth"))
    assert found.refused == (40.0,)
    assert found.per_mm > 0.5


def test_a_recipe_that_does_not_run_has_no_movements() -> None:
    recipe = draft_recipe("skirt", body(GUESS), DARTS)
    assert sensitivities(recipe, MeasureSet.from_mm("Invented", {"hip_girth": 980.0})) == ()
