"""Facings of neck and armhole in one in the sewing order: edges first, then each back is pulled through its
shoulders, then the sides are closed (common practice, no source)."""

from functools import cache

from notchbook.finish.sewing import sewing_order
from notchbook.recipe import Replay
from support.closure_steps import stepped
from support.edge_steps import BACK, FRONT, bodice
from support.traced_steps import ARMHOLE, NECK, PARTS

LINE = "all_in_one_facing/pulled_through"
UNDER = "all_in_one_facing/understitched"
CENTER = {"center": f"{BACK}/center_back"}


@cache
def faced(*, opened: bool) -> Replay:
    """The bodice, its back on the fold or with a center seam, neck and armholes faced in one."""
    steps = [("center_seam", CENTER)] if opened else []
    return stepped(bodice(), *steps, ("all_in_one_facing", {"parts": PARTS}))


def keys(run: Replay) -> list[str]:
    order = sewing_order(run.pattern)
    assert (order.gaps, order.waiting) == ((), ())
    return [line.key for line in order.lines]


def test_the_sides_are_closed_after_neck_and_armholes() -> None:
    order = keys(faced(opened=True))
    edges = [f"all_in_one_facing/{word}" for word in ("front_neck", "front_armhole")]
    shoulders = ["bodice/shoulder", "all_in_one_facing/shoulder"]
    sides = ["bodice/side_seam", "all_in_one_facing/side_seam"]
    assert max(map(order.index, shoulders)) < min(map(order.index, edges))
    assert max(map(order.index, edges)) < order.index(LINE) < min(map(order.index, sides))


def test_neck_and_armhole_are_each_sewn_in_one_go() -> None:
    """Shoulders and their facings are closed then: one run from end to end (common practice, no source)."""
    lines = {line.key: line for line in sewing_order(faced(opened=True).pattern).lines}
    for word, edge in (("neck", "neck"), ("armhole", "armhole")):
        line = lines[f"all_in_one_facing/front_{word}"]
        assert {f"{FRONT}/{edge}", f"{BACK}/{edge}"} <= set(line.at)
        assert line.text.endswith(f": {word}")
        assert f"all_in_one_facing/back_{word}" not in lines


def test_it_is_understitched_when_it_is_turned_as_far_as_it_goes_and_before_the_sides_are_closed() -> None:
    """Between the shoulders the machine does not reach; with closed sides it reaches nothing."""
    order = keys(faced(opened=True))
    line = next(one for one in sewing_order(faced(opened=True).pattern).lines if one.key == UNDER)
    assert line.text == "Understitch the facing at the neck and armhole as far as it goes"
    assert order.index(LINE) < order.index(UNDER) < order.index("bodice/side_seam")
    assert order.index("facings/neatened") < order.index(LINE), "while it lies flat"
    apart = [one for one in sewing_order(faced(opened=False).pattern).lines if "understitch" in one.text]
    assert len(apart) == 2
    assert all(one.text.endswith("as far as it goes") for one in apart)


def test_the_line_says_which_facings_are_turned() -> None:
    line = next(line for line in sewing_order(faced(opened=True).pattern).lines if line.key == LINE)
    assert "front and back all-in-one facing" in line.text
    assert "through its shoulders" in line.text


def test_where_both_centers_lie_on_the_fold_nothing_is_pulled_through() -> None:
    """The two halves of the back hang together: they cannot go through two shoulders."""
    order = keys(faced(opened=False))
    assert LINE not in order
    assert order.index("bodice/side_seam") < order.index("all_in_one_facing/front_armhole")


def test_facings_apart_are_sewn_on_when_the_garment_is_closed() -> None:
    apart = stepped(
        bodice(), ("center_seam", CENTER), ("facing", {"edges": NECK}), ("facing", {"edges": ARMHOLE})
    )
    order = keys(apart)
    assert not [key for key in order if key.endswith("pulled_through")]
    assert order.index("bodice/side_seam") < order.index("facing_2/front_armhole")
