"""Facings of neck and armhole in one in the sewing order: edges first, then each back is pulled through its
shoulders, then the sides are closed (common practice, no source)."""

from functools import cache

from notchbook.finish.sewing import sewing_order
from notchbook.recipe import Replay
from support.closure_steps import stepped
from support.edge_steps import BACK, bodice
from support.traced_steps import ARMHOLE, NECK, PARTS

LINE = "all_in_one_facing/pulled_through"
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
    words = ("front_neck", "back_neck", "front_armhole", "back_armhole")
    edges = [f"all_in_one_facing/{word}" for word in words]
    shoulders = ["bodice/shoulder", "all_in_one_facing/shoulder"]
    sides = ["bodice/side_seam", "all_in_one_facing/side_seam"]
    assert max(map(order.index, shoulders)) < min(map(order.index, edges))
    assert max(map(order.index, edges)) < order.index(LINE) < min(map(order.index, sides))


def test_the_line_says_which_facings_are_turned() -> None:
    line = next(line for line in sewing_order(faced(opened=True).pattern).lines if line.key == LINE)
    assert "front all-in-one facing and back all-in-one facing" in line.text
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
