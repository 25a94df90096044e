"""What is done to a facing beside its seams: neatened, trimmed and clipped, understitched, tacked down.

All of it is common practice, no source: a facing that is not understitched rolls out, one whose hollow curve
is not clipped puckers, one that is not tacked flaps; in leather nothing is tacked or understitched but glued.
"""

from dataclasses import replace
from functools import cache

import pytest

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack
from notchbook.finish.sewing import sewing_order
from notchbook.finish.sewing.curved import clip_words
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import Edge, Pattern
from notchbook.recipe import replay
from support.closure_steps import stepped
from support.collar_steps import BUTTON_STAND, FRONT_EDGE
from support.edge_steps import bodice, necks, skirt
from support.traced_steps import ARMHOLE, NECK

RECIPES = {style.stem: style.recipe for style in rack()}
WAIST = [
    {"edge": "skirt.front/waist", "starts_at": "skirt.front/waist_center"},
    {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_side"},
]
_OPPOSITE = {
    "clip them in the hollow curve": "cut wedges out of them round the curve",
    "cut wedges out of them round the curve": "clip them in the hollow curve",
    "": "",
}
LAP = {"edge": FRONT_EDGE, "starts_at": "button_stand.front/lap_top_outer"}
WORDS = ("understitch", "Neaten the free edge", "Tack the free edge", "glue it along")


@cache
def rack_pattern(stem: str) -> Pattern:
    return replay(RECIPES[stem], dict(lower_bodies())["medium-92"]).pattern


def texts(pattern: Pattern) -> dict[str, str]:
    order = sewing_order(pattern)
    assert order.waiting == ()
    return {line.key: line.text for line in order.lines}


def told(pattern: Pattern) -> set[str]:
    return {word for word in WORDS for text in texts(pattern).values() if word in text}


@pytest.mark.parametrize(
    ("stem", "words"),
    [
        ("darted_shell", {"understitch", "Neaten the free edge", "Tack the free edge"}),
        ("princess_dress", {"Neaten the free edge", "Tack the free edge"}),
        ("pleated_yoke_skirt", {"understitch", "Neaten the free edge", "Tack the free edge"}),
        ("leather_mini_skirt", {"glue it along"}),
        ("six_gore_skirt", set()),
        ("work_shirt", set()),
        ("tailored_trousers", set()),
        ("gathered_blouse", set()),
        ("stretch_dress", set()),
        ("bias_slip", set()),
        ("bodysuit", set()),
        ("tailored_jacket", set()),
    ],
)
def test_each_line_stands_where_there_is_a_facing_and_nowhere_else(stem: str, words: set[str]) -> None:
    """Bands, collars that enclose their seam, bindings and rolled lapels are finished by lines of their own;
    a facing of leather is glued, and the lining holds its free edge."""
    assert told(rack_pattern(stem)) == words


def test_a_facing_in_one_with_neck_and_armhole_is_understitched_as_far_as_it_goes() -> None:
    said = texts(rack_pattern("princess_dress"))
    assert said["facing/understitched"] == "Understitch the facing at the neck and armhole as far as it goes"


def test_seam_then_trimmed_then_tacked_and_the_free_edge_neatened_first() -> None:
    order = list(texts(rack_pattern("darted_shell")))
    wanted = [
        "facings/neatened",
        "armhole_facing/back_armhole",
        "armhole_facing/back_armhole/trimmed",
        "armhole_facing/tacked",
    ]
    assert [key for key in order if key in wanted] == wanted
    assert order.index("neck_facing/back_neck/trimmed") < order.index("neck_facing/zip_ends")
    assert order.index("neck_facing/zip_ends") < order.index("neck_facing/tacked")


def test_the_line_says_what_its_curve_asks_for() -> None:
    said = texts(stepped(bodice(), ("facing", {"edges": NECK}), ("facing", {"edges": ARMHOLE})).pattern)
    trimmed = [text for key, text in said.items() if key.endswith("/trimmed")]
    assert len(trimmed) == 2
    assert all("clip them in the hollow curve" in text for text in trimmed)
    assert all(text.endswith("press them toward the facing and understitch it") for text in trimmed)


def test_a_lined_facing_is_neither_neatened_nor_tacked() -> None:
    lined = texts(rack_pattern("leather_mini_skirt"))
    assert not [text for text in lined.values() if "free edge" in text]


def test_a_facing_of_leather_without_a_lining_is_glued_down() -> None:
    run = stepped(skirt(), ("leather_making", {}), ("facing", {"edges": WAIST, "interfaced": False}))
    said = texts(run.pattern)
    assert said["facing/tacked"].startswith("Glue the free edge of the")
    assert "facings/neatened" not in said
    assert "understitch" not in said["facing/front_waist/trimmed"]
    assert "air the room" in said["facing/front_waist/trimmed"], "of glue (usual caution)"


def test_a_free_edge_that_is_bound_is_not_neatened() -> None:
    said = texts(stepped(skirt(), ("facing", {"edges": WAIST, "free_edge": "bound"})).pattern)
    assert "facings/neatened" not in said
    assert "facing/tacked" in said


@pytest.mark.parametrize(
    ("points", "words"),
    [
        ((Point(0.0, 0.0), 60.0, Point(100.0, 0.0), -60.0), "clip them in the hollow curve"),
        ((Point(0.0, 0.0), -30.0, Point(100.0, 0.0), 30.0), "cut wedges out of them round the curve"),
        ((Point(0.0, 0.0), -3.0, Point(100.0, 0.0), 3.0), ""),
    ],
    ids=["clockwise", "counter-clockwise", "nearly straight"],
)
def test_an_edge_is_clipped_where_it_is_hollow_and_wedged_where_it_is_round(
    points: tuple[Point, float, Point, float], words: str
) -> None:
    """Counter-clockwise round a piece the inside lies left: an edge that turns right is hollow."""
    start, leaving, end, arriving = points
    path = Path.of(curve_between(start, leaving, end, arriving))
    edge = Edge("a.b/c", path, "a.b/d", "a.b/e")
    back = Edge("a.b/c", path.reversed(), "a.b/e", "a.b/d")
    assert clip_words([edge]) == words
    assert clip_words([back]) == _OPPOSITE[words]


def test_a_corner_is_clipped_into() -> None:
    path = Path.polyline([Point(0.0, 0.0), Point(50.0, 0.0), Point(50.0, -50.0)])
    assert clip_words([Edge("a.b/c", path, "a.b/d", "a.b/e")]) == "clip into the corners"
    assert clip_words([Edge("a.b/c", path.reversed(), "a.b/e", "a.b/d")]) == ""
    across, down = (Path.line(*path.flattened(1.0)[start : start + 2]) for start in (0, 1))
    apart = [Edge("a.b/c", across, "a.b/d", "a.b/f"), Edge("a.b/g", down, "a.b/f", "a.b/e")]
    assert clip_words(apart) == clip_words(reversed(apart)) == "clip into the corners"


def test_round_a_square_neck_the_needle_goes_as_far_as_it_goes() -> None:
    """Into a corner the machine does not come under the facing (common practice, no source)."""
    opened = ("change_neckline", {"necks": necks("square", "8 cm"), "width": "3 cm"})
    square = stepped(bodice(), opened, ("facing", {"edges": NECK}))
    assert square.suspended is None
    (trimmed,) = [text for key, text in texts(square.pattern).items() if key.endswith("neck/trimmed")]
    assert "clip into the corners" in trimmed
    assert trimmed.endswith("understitch it as far as it goes")


@pytest.mark.parametrize(
    ("stem", "collar"), [("work_shirt", "collar stand"), ("gathered_blouse", "stand collar")]
)
def test_a_neck_seam_inside_a_collar_is_trimmed_before_it_is_closed_in(stem: str, collar: str) -> None:
    said = texts(rack_pattern(stem))
    assert said["collar/neck/trimmed"].endswith(f"clip them to the stitches and press them into the {collar}")
    closing = "collar/closed" if stem == "work_shirt" else "collar/turned"
    order = list(said)
    assert order.index("collar/neck") < order.index("collar/neck/trimmed") < order.index(closing)
    assert "collar/neck/trimmed" not in texts(rack_pattern("tailored_jacket")), "pressed open under a lining"


@pytest.mark.parametrize(
    ("stem", "keys"),
    [
        (
            "princess_dress",
            {f"{half}_princess/bodice_{half}_style_line/clipped" for half in ("front", "back")},
        ),
        ("six_gore_skirt", set()),
        ("pleated_yoke_skirt", set()),
        ("leather_mini_skirt", set()),
    ],
)
def test_a_princess_seam_is_clipped_over_the_bust_and_a_straight_one_is_not(
    stem: str, keys: set[str]
) -> None:
    """Its two edges bend against each other by more than 30 degrees; those of gores and hip yokes nearly run
    alike."""
    said = texts(rack_pattern(stem))
    assert {key for key in said if key.endswith("style_line/clipped")} == keys
    for key in keys:
        order = list(said)
        assert order.index(key.removesuffix("/clipped")) < order.index(key) < order.index("dress/shoulder")
        assert said[key].startswith("Clip the allowance of the bodice center")


def test_the_free_edge_of_a_facing_in_cloth_is_left_to_its_lining() -> None:
    """It lies in a seam then, and is neither raw nor free."""
    facing = ("facing", {"edges": WAIST})
    pieces = ["skirt.front", "skirt.back"]
    edges = [f"facing.{half}/edge" for half in ("front", "back")]
    lined = stepped(skirt(), facing, ("lining", {"pieces": pieces, "facings": edges}))
    assert lined.suspended is None
    said = texts(lined.pattern)
    assert "facings/neatened" not in said
    assert "facing/tacked" not in said
    assert said["facing/front_waist/trimmed"].endswith("understitch it")


def test_nothing_is_clipped_in_leather_or_in_cloth_that_gives() -> None:
    """Leather is glued open, a knit gives way by itself (common practice, no source)."""
    dress = rack_pattern("princess_dress")
    assert any(key.endswith("/clipped") for key in texts(dress))
    leather = replace(dress, making=rack_pattern("leather_mini_skirt").making)
    knit = dress.with_pieces(*(replace(piece, stretches=True) for piece in dress.pieces.values()))
    for other in (leather, knit):
        assert not [key for key in texts(other) if key.endswith("/clipped")]


def test_facings_that_nothing_joins_are_sewn_on_one_by_one() -> None:
    both = stepped(skirt(), ("facing", {"edges": WAIST})).pattern
    assert "facing/back_waist" not in texts(both)
    apart = texts(both.with_seams(without=["facing/side_seam"]))
    assert {"facing/front_waist", "facing/back_waist"} <= set(apart)
    assert {"facing/front_waist/trimmed", "facing/back_waist/trimmed"} <= set(apart)


def test_an_edge_that_is_seen_from_both_sides_is_not_understitched() -> None:
    """The front edge of an opening turns back, or shows its inside (common practice, no source)."""
    run = stepped(bodice(), ("button_stand", BUTTON_STAND), ("facing", {"edges": [LAP], "depth": "15 mm"}))
    assert run.suspended is None
    said = texts(run.pattern)
    assert "facing/front_lap" in said
    assert not [key for key in said if key.endswith("/trimmed")]
