"""The hem of a tailored sleeve lies flat when it is turned up: in every size, as deep as that of a jacket."""

from collections.abc import Callable

import pytest
from shapely.affinity import affine_transform
from shapely.geometry import Polygon

from notchbook.body.charts import shipped_chart
from notchbook.checks import Subject, run_checks
from notchbook.finish import CutPiece, finish, production_table
from notchbook.geometry import Line, Path, curve_between
from notchbook.pattern import sewn_length
from notchbook.recipe import Recipe, Replay, add_step, recipe_from_json, recipe_to_json, replay
from support.bent import path_changed
from support.closure_steps import upper_sets
from support.sleeve_bodies import spoken_of, woman
from support.sleeve_styles import SLEEVE, plain, sleeve_style, stopped_with, two_piece

TOP, UNDER = "arm.top_sleeve", "arm.under_sleeve"

BODIES = {
    **{size.name.rsplit(maxsplit=1)[-1]: size for size in shipped_chart("women").sizes},
    **{name: body for name, body in upper_sets().items() if name != "uneven"},
}
CLOTH = {"fabric": "tailored_jacket", "upper_arm_ease": "7 cm", "wrist_ease": "9 cm"}


def jacket_sleeve(body: str, **parameters: str) -> Replay:
    of = BODIES[body]
    recipe = add_step(Recipe("Sleeve"), "bodice", {"silhouette": "jacket"}, base=of)
    recipe = add_step(recipe, "sleeve", CLOTH, base=of)
    return replay(add_step(recipe, "two_piece_sleeve", parameters, base=of, slug="arm"), of)


def sleeves_cut(done: Replay) -> list[CutPiece]:
    assert done.suspended is None, str(done.suspended)
    return [piece for piece in finish(done.pattern, production_table()) if piece.name in (TOP, UNDER)]


def off_when_turned(piece: CutPiece) -> tuple[float, float]:
    """How deep the hem of a piece is, and by how much what is turned up and what it lies on differ, mm² to
    the mm of its length: shapely folds the cut piece on the chord of its hem."""
    (hem,) = (edge.sew for edge in piece.edges if edge.kind == "hem")
    (depth,) = (edge.width for edge in piece.edges if edge.kind == "hem")
    start, along = hem.start, (hem.end - hem.start).unit()
    up = along.perpendicular()
    # Into a frame with the hem on the x axis and the sleeve above it.
    frame = (along.x, along.y, up.x, up.y, -start.dot(along), -start.dot(up))
    cut = piece.cut_line.flattened(0.005)
    whole = affine_transform(Polygon([(point.x, point.y) for point in cut]), frame)
    wide = hem.length * 3.0
    below = whole.intersection(Polygon([(-wide, -depth), (wide, -depth), (wide, 0.0), (-wide, 0.0)]))
    above = whole.intersection(Polygon([(-wide, 0.0), (wide, 0.0), (wide, depth), (-wide, depth)]))
    folded = affine_transform(below, (1.0, 0.0, 0.0, -1.0, 0.0, 0.0))
    return depth, float(folded.symmetric_difference(above).area) / hem.length


@pytest.mark.parametrize("body", BODIES)
def test_what_is_turned_up_lies_on_its_like(body: str) -> None:
    """The hem of a jacket is 1 1/2 to 2 in deep, 38 to 51 mm (hem depth table of a fashion school, as in the
    house's table); a turn-up lies flat where it is the mirror picture of what it lies on (geometry)."""
    done = jacket_sleeve(body)
    for piece in sleeves_cut(done):
        depth, off = off_when_turned(piece)
        assert 38.0 <= depth <= 51.0
        assert off < 0.05
    assert [one.code for one in spoken_of(done) if (one.piece or "").startswith("arm.")] == []


@pytest.mark.parametrize("body", ["76", "92", "128"])
def test_the_hem_is_straight_and_square_to_every_seam(body: str) -> None:
    pattern = jacket_sleeve(body).pattern
    for name in (TOP, UNDER):
        piece = pattern.pieces[name]
        hem, after, before = (piece.outline[index].path for index in (0, 1, -1))
        assert [type(segment) for segment in hem.segments] == [Line]
        along = hem.tangent_at(0.0, "after").direction()
        for way in (after.tangent_at(0.0, "after"), -before.tangent_at(before.length)):
            assert (way.direction() - along) % 180.0 == pytest.approx(90.0, abs=1e-6)


def test_the_hem_is_as_long_as_that_of_the_sleeve_and_its_seams_walk() -> None:
    before, after = plain().pattern, two_piece().pattern
    assert sewn_length(after, f"{SLEEVE}/hem") == pytest.approx(
        sewn_length(before, f"{SLEEVE}/hem"), abs=1e-9
    )


def test_a_recipe_of_the_first_version_keeps_its_curved_hem() -> None:
    """Its hem was square to both folds of the sleeve, which lean in by as much, and turned up 15 mm."""
    data = recipe_to_json(two_piece().recipe).replace('"hem_square": "40 mm",', "")
    old = recipe_from_json(
        data.replace(
            '"title": "Two-piece sleeve",\n   "version": 2', '"title": "Two-piece sleeve",\n   "version": 1'
        )
    )
    (step,) = [step for step in old.steps if step.operation == "two_piece_sleeve"]
    assert step.parameters["hem_square"] == "0 mm"
    pattern = replay(old, woman()).pattern
    for name in (TOP, UNDER):
        hem = pattern.pieces[name].outline[0].path
        turn = hem.tangent_at(hem.length).direction() - hem.tangent_at(0.0, "after").direction()
        assert abs((turn + 180.0) % 360.0 - 180.0) > 3.0
    (hems,) = {pattern.allowances[hem].allowance_class for hem in (f"{SLEEVE}/hem",)}
    assert hems == "hem_sleeve_tapered"


def test_seams_without_room_to_turn_to_the_hem_are_refused() -> None:
    for height in ("15 cm", "13.5 cm"):  # at 13.5 cm there would be less than 1 cm to turn in
        high = ("two_piece_sleeve", "arm", {"hem_square": height})
        assert stopped_with(sleeve_style([high])) == "two-piece-wrist"
    near = ("two_piece_sleeve", "arm", {"hem_square": "15 cm", "bend_reach": "5 cm"})
    assert sleeve_style([near]).suspended is None
    negative = ("two_piece_sleeve", "arm", {"hem_square": "-1 mm"})
    assert stopped_with(sleeve_style([negative])) == "amount-negative"


@pytest.mark.parametrize("bend", ["10 mm", "30 mm"])
@pytest.mark.parametrize("height", ["10 cm", "12 cm"])
def test_high_square_ends_leave_the_seams_fair(height: str, bend: str) -> None:
    done = sleeve_style([("two_piece_sleeve", "arm", {"hem_square": height, "bend": bend})])
    assert done.suspended is None, str(done.suspended)
    assert [one.code for one in spoken_of(done)] == []


def test_the_ease_lies_round_the_elbow_behind_and_down_to_the_square_end_in_front() -> None:
    """At the hind arm both seams lie on the fold below the elbow; at the forearm they lie beside it where it
    turns to the hem too, and differ there (parallel curves, as above)."""
    pattern = two_piece().pattern
    for name in (TOP, UNDER):
        piece = pattern.pieces[name]
        above = {}
        for word in ("forearm", "hind_arm"):
            notch = pattern.notches[f"{name}/{word}_seam/lower_elbow_notch"]
            above[word] = piece.edge(f"{name}/{word}_seam").length - notch.place.amount
        assert above["forearm"] == pytest.approx(40.0, abs=1e-6)
        assert above["hind_arm"] > 150.0


HIND_ARM = f"{UNDER}/hind_arm_seam"


def told_of_hind_arm(shape: Callable[[Path], Path], square: str = "40 mm") -> list[str]:
    """What the check for fair edges says of the hind arm of the under sleeve, drawn so."""
    done = sleeve_style([("two_piece_sleeve", "arm", {"hem_square": square})])
    pattern = path_changed(done.pattern, HIND_ARM, shape)
    report = run_checks(Subject(pattern), ["fair-edges"])
    return [finding.code for finding in report.findings if finding.where == HIND_ARM]


def wavering(path: Path, begin: float, finish: float) -> Path:
    """The path with a wave from one share of its length to another."""
    before, after = path.between(0.0, begin * path.length), path.between(finish * path.length, path.length)
    along = after.start - before.end
    middle = before.end.lerp(after.start, 0.5) + along.unit().perpendicular() * 4.0
    way = before.tangent_at(before.length).direction()
    on = after.tangent_at(0.0, "after").direction()
    out = curve_between(before.end, way, middle, along.direction())
    back = curve_between(middle, along.direction(), after.start, on)
    return before.joined(Path.of(out, back)).joined(after)


def hollow_above(path: Path) -> Path:
    """The path, walked up, that turns back the other way over its last fifth."""
    below = path.between(0.0, 0.8 * path.length)
    along = path.end - below.end
    middle = below.end.lerp(path.end, 0.5) + along.unit().perpendicular() * 4.0
    way, back = along.direction(), (path.end - middle).direction() - 3.0
    out = curve_between(below.end, way, middle, way)
    return below.joined(Path.of(out, curve_between(middle, way, path.end, back)))


def test_a_hind_arm_bends_both_ways_only_to_end_square_to_its_hem() -> None:
    assert told_of_hind_arm(lambda path: path) == []
    # Walked up from the hem: 40 mm square, then the turn; the elbow lies beyond the middle.
    assert "edge-wavers" in told_of_hind_arm(lambda path: wavering(path, 0.7, 0.95))
    assert "edge-wavers" in told_of_hind_arm(lambda path: wavering(path, 0.02, 0.2))


def test_a_hind_arm_that_bends_back_above_the_elbow_is_told_of() -> None:
    assert told_of_hind_arm(lambda path: path, "0 mm") == []
    assert told_of_hind_arm(hollow_above, "0 mm") == ["edge-wavers"]


def test_the_forearm_of_a_sleeve_that_widens_to_its_hem_may_bend_both_ways() -> None:
    wide = sleeve_style([("two_piece_sleeve", "arm", {"bend": "10 mm"})], wrist_ease="20 cm")
    assert [one.code for one in spoken_of(wide) if one.code.startswith("edge-")] == []
