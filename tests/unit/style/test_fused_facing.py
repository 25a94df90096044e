"""The fusible of facings that are cut on: what lies behind the buttonholes, up to the fold, and nothing more.

Outside: shapely cuts the drawn front at its fold. That a buttonhole is worked through fused cloth, and that
fusing is done before anything is sewn: common practice, no source.
"""

from typing import Any

import pytest
from shapely.geometry import Point as Place
from shapely.geometry import box

from notchbook.finish import finish, production_table
from notchbook.finish.sewing import sewing_order
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, InternalLine, Pattern, Piece
from notchbook.pattern.operation import laid_layers
from notchbook.recipe import Replay, replay
from notchbook.style.traced.folded_back import folded_back
from support.closure_steps import STAND, holes, polygon, stepped, upper_sets
from support.edge_steps import BACK, FRONT, bodice, refusal
from support.yoke_skirt import BACK as SKIRT_BACK
from support.yoke_skirt import VENT, run, skirt_recipe, with_steps

STRIP = "fused_facing.front_facing"
FREE = "button_stand.front/facing_edge"


def stood(**changes: Any) -> Replay:
    return stepped(bodice(), ("button_stand", {**STAND, **changes}))


def fused(**changes: Any) -> Pattern:
    return stepped(stood(), ("fused_facing", {"facings": [FREE], **changes})).pattern


def test_the_strip_is_the_front_beyond_its_fold() -> None:
    pattern = fused()
    whole = polygon(pattern.pieces[FRONT])
    (fold,) = [line.path.start.x for line in pattern.pieces[FRONT].lines if line.kind == "fold_line"]
    facing = whole.intersection(box(fold, -3000.0, 3000.0, 3000.0))
    strip = polygon(pattern.pieces[STRIP])
    assert strip.symmetric_difference(facing).area < 1e-6
    assert strip.area > 60.0 * 300.0


def test_turned_back_it_lies_behind_every_buttonhole() -> None:
    pattern = fused()
    (fold,) = [line.path.start.x for line in pattern.pieces[FRONT].lines if line.kind == "fold_line"]
    strip = polygon(pattern.pieces[STRIP])
    worked = list(holes(pattern.pieces[FRONT]))
    assert len(worked) > 3
    for hole in worked:
        for x, y in hole:
            assert strip.buffer(1e-6).contains(Place(2.0 * fold - x, y))


def test_it_is_cut_in_fusible_in_pairs_without_allowances() -> None:
    pattern = fused()
    piece = pattern.pieces[STRIP]
    assert (piece.cut, [told.material for told in piece.instructions]) == ("pair", ["fusible"])
    assert piece.grain == pattern.pieces[FRONT].grain
    (cut,) = [one for one in finish(pattern, production_table()) if one.name == STRIP]
    assert abs(cut.cut_line.area()) == pytest.approx(abs(piece.sew_line.area()), abs=0.1)
    smaller = fused(trimmed="2 mm").pieces[STRIP]
    least = polygon(piece).buffer(-2.0, join_style="mitre")
    assert polygon(smaller).symmetric_difference(least).area < 1.0


def test_it_is_fused_before_anything_is_sewn_and_nothing_is_sewn_of_it_alone() -> None:
    assert STRIP in laid_layers(fused().operations.values())
    texts = [line.text for line in sewing_order(fused()).lines]
    (told,) = [text for text in texts if "interfacing" in text]
    assert told == "Fuse the front facing interfacing to the wrong side, up to the fold line."
    first = next(
        index for index, text in enumerate(texts) if text.startswith(("Sew", "Work", "Turn", "Fold"))
    )
    assert texts.index(told) < first < next(i for i, text in enumerate(texts) if "buttonhole" in text)


def test_fronts_that_differ_beyond_their_facings_share_the_strip_and_its_line() -> None:
    done = stepped(stood(), ("fused_facing", {"facings": [FREE]}))
    both = replay(done.recipe, upper_sets()["uneven"])
    assert both.suspended is None
    assert {f"{FRONT}@left", f"{FRONT}@right", STRIP} <= both.pattern.pieces.keys()
    texts = [line.text for line in sewing_order(both.pattern).lines]
    assert len([text for text in texts if "interfacing" in text]) == 1


def test_the_extension_of_a_vent_is_fused_up_to_its_fold() -> None:
    recipe = with_steps(
        skirt_recipe(), VENT, ("fused_facing", "fusing", {"facings": [f"{SKIRT_BACK}/center_back/vent"]})
    )
    pattern = run(recipe).pattern
    # 18 cm high and 4 cm wide, its top slanting by 2 cm: a plain sum.
    assert abs(pattern.pieces["fusing.back_facing"].sew_line.area()) == pytest.approx(
        180.0 * 40.0 - 20.0 * 20.0
    )


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("facing-not-folded", {"facings": [f"{BACK}/center_back"]}),
        ("layer-twice", {"material": "self"}),
        ("trim-below-nothing", {"trimmed": "-1 mm"}),
        ("trim-too-much", {"trimmed": "4 cm"}),
        ("name-lost", {"facings": ["button_stand.front/free_edge"]}),
    ],
)
def test_facings_that_cannot_be_fused_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(stood(), "fused_facing", **{"facings": [FREE], **changes}) == code


def test_of_two_folds_the_one_that_leaves_less_beyond_it_is_meant() -> None:
    """A strip folded at 60 and at 80 mm: with its edge at 100 mm, 20 mm are turned in there."""
    low = [Point(x, 0.0) for x in (0.0, 60.0, 80.0, 100.0)]
    ring = [*low, *(Point(point.x, 300.0) for point in reversed(low))]
    sides = list(zip(ring, (*ring[1:], ring[0]), strict=True))
    corners = [f"test.strip/p{index}" for index in (*range(8), 0)]
    edges = [
        Edge(f"test.strip/e{index}", Path.line(*side), corners[index], corners[index + 1])
        for index, side in enumerate(sides)
    ]
    lines = [
        InternalLine(f"test.strip/fold_{x:.0f}", Path.line(Point(x, 0.0), Point(x, 300.0)), "fold_line")
        for x in (60.0, 80.0)
    ]
    part = folded_back(Piece("test.strip", "Strip", tuple(edges), lines=tuple(lines)), "test.strip/e3")
    assert part is not None
    assert [edge.name for edge in part.edges] == ["test.strip/e2", "test.strip/e3", "test.strip/e4"]
    assert (part.fold.path.start, part.fold.path.end) == (Point(80.0, 300.0), Point(80.0, 0.0))


def test_a_stand_without_a_facing_has_nothing_to_fuse() -> None:
    none = stood(facing="none")
    assert refusal(none, "fused_facing", facings=["button_stand.front/lap"]) == "facing-not-folded"
