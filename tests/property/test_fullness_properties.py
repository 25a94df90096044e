"""Invariants of fullness on bodies and amounts that nobody chose: exact before truing, true after it."""

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from notchbook.geometry import Point, Transform
from notchbook.pattern import closed_path, pattern_to_data, sewn_length, walk_seam
from notchbook.pattern.slashing import located_on
from notchbook.recipe import remove_step, replay
from notchbook.style.fullness.opening import Opening, even_shares
from notchbook.style.fullness.spread import SlashLine, spread
from support.fullness import gather_step, pleats_step, rectangle, spread_step
from support.skirt_judge import Judge
from support.yoke_skirt import FORM_A, FRONT, WAISTBAND, body, skirt_recipe, with_steps

mm = st.floats
WAIST = f"{FRONT}/waist"
BASE = skirt_recipe(front_darts=0)
FEW = settings(max_examples=10, deadline=None)


@given(number=st.integers(1, 12), opens=mm(0.5, 40.0), across=mm(0.0, 40.0), lean=mm(-60.0, 60.0))
@FEW
def test_n_slits_add_exactly_what_each_opens(number: int, opens: float, across: float, lean: float) -> None:
    """Plane geometry: n equal slits by d add n d at the edge; areas add up to the strips and the gaps."""
    piece = rectangle(400.0, 500.0)
    shares = even_shares(number, 0.2, 0.8)
    lines = [
        SlashLine(
            located_on(piece, "cloth.panel/hem", share * 400.0),
            located_on(piece, "cloth.panel/waist", (1.0 - share) * 400.0 + lean),
            opens,
            across,
        )
        for share in shares
    ]
    made = spread(piece, lines, forward=True)
    assert abs(made.edges["cloth.panel/hem"].opened - number * opens) < 1e-6
    assert abs(made.edges["cloth.panel/waist"].opened - number * across) < 1e-6
    for word in ("left", "right"):
        assert abs(made.piece.edge(f"cloth.panel/{word}").length - 500.0) < 1e-6
    for motion in made.motions:
        assert abs(motion.determinant - 1.0) < 1e-12, "every strip keeps its area"
    assert Polygon([(p.x, p.y) for p in made.piece.sew_line.flattened(0.01)]).is_valid


@given(
    start=st.tuples(mm(-50.0, 50.0), mm(-50.0, 50.0)),
    opens=mm(0.0, 80.0),
    across=mm(0.0, 80.0),
    leftward=st.booleans(),
    level=st.booleans(),
)
@FEW
def test_a_slash_opened_and_shut_again_is_where_it_was(
    start: tuple[float, float], opens: float, across: float, leftward: bool, level: bool
) -> None:
    direction = Point(1.0, 0.0) if level else None
    slash = Opening(Point(*start), Point(20.0, 600.0), opens, across, leftward, direction)
    again = slash.motion().then(slash.motion().inverse())
    for place in (slash.start, slash.end, Point(300.0, 40.0)):
        assert again.apply(place).distance_to(Transform.identity().apply(place)) < 1e-6


@given(
    waist=mm(560.0, 1100.0),
    more=mm(120.0, 320.0),
    number=st.integers(1, 9),
    opens=mm(2.0, 45.0),
    across=st.sampled_from([0.0, 0.5, 1.0]),
)
@FEW
def test_a_spread_front_stays_true_on_any_body(
    waist: float, more: float, number: int, opens: float, across: float
) -> None:
    measures = body(waist, waist + more, 200.0)
    settings_of = {"opens": f"{opens:.3f} mm", "across_opens": f"{opens * across:.3f} mm"}
    step = spread_step(number=number, across_taken_up="gather", **settings_of)
    plain = replay(BASE, measures).pattern
    done = replay(with_steps(BASE, step, WAISTBAND), measures)
    assert done.suspended is None, str(done.suspended)
    # A hinged waist keeps its length, a gathered one as sewn.
    assert abs(sewn_length(done.pattern, WAIST) - sewn_length(plain, WAIST)) < 1e-6
    assert all(abs(walk_seam(done.pattern, seam).misfit) < 0.01 for seam in done.pattern.seams.values())
    assert Judge(pattern_to_data(done.pattern)).polygon(FRONT).is_valid
    assert set(plain.index) <= set(done.pattern.index), "no name is gone"


@given(
    waist=mm(600.0, 1000.0),
    depth=mm(5.0, 45.0),
    across=mm(0.0, 1.0),
    kind=st.sampled_from(["knife", "box", "inverted"]),
    laid=st.sampled_from(["toward", "away"]),
)
@FEW
def test_pleats_closed_are_the_waist_that_was(
    waist: float, depth: float, across: float, kind: str, laid: str
) -> None:
    measures = body(waist, waist + 250.0, 200.0)
    step = pleats_step(
        kind=kind,
        laid=laid,
        depth=f"{depth:.3f} mm",
        across_depth=f"{depth * across:.3f} mm",
        first_distance="7 cm",
    )
    plain, done = replay(BASE, measures), replay(with_steps(BASE, step), measures)
    if done.suspended is not None:
        assert done.suspended.error.code in ("fold-deeper-than-edge", "slash-bounds")
        return
    before, after = (closed_path(found.pattern, WAIST) for found in (plain, done))
    for share in (0.0, 0.2, 0.5, 0.8, 1.0):
        gap = before.point_at(before.length * share).distance_to(after.point_at(after.length * share))
        assert gap < 1e-6


def test_without_the_step_its_names_are_lost_and_no_others() -> None:
    gathers = gather_step(from_distance="4 cm", to_distance="14 cm")
    longer = ("set_allowance", "wide", {"edges": [f"{WAIST}/gathered"], "width": "15 mm"})
    band = WAISTBAND
    recipe = with_steps(BASE, gathers, longer, band)
    assert replay(recipe, FORM_A).suspended is None
    without = replay(remove_step(recipe, "gather_edge-1"), FORM_A)
    assert without.suspended is not None
    assert without.suspended.step == "set_allowance-1"
    assert without.suspended.error.code == "name-lost"
    alone = replay(remove_step(with_steps(BASE, gathers, band), "gather_edge-1"), FORM_A)
    assert alone.suspended is None
