"""Bands and vents in the flat: a band as wide as it is made, a vent at the side folded in.

Closed forms: a contoured band is a part of a ring, as wide everywhere as its depth.
"""

from typing import Any

import pytest

from notchbook.output.flat import garment_flat
from notchbook.output.flat.strips import strip_depth
from notchbook.recipe import Replay
from support.closure_steps import BACK_OPENING, FLY, FLY_WAIST, stepped
from support.edge_steps import skirt, trousers

BEHIND = (skirt, (), {"edges": BACK_OPENING})
IN_FRONT = (trousers, (("fly", FLY),), {"edges": FLY_WAIST, "underlap_on": "right"})


def banded(way: tuple[Any, tuple[tuple[str, dict[str, Any]], ...], dict[str, Any]], cut_in: str) -> Replay:
    base, before, given = way
    return stepped(base(), *before, ("contoured_waistband", {**given, "depth": "45 mm", "cut_in": cut_in}))


@pytest.mark.parametrize("way", [BEHIND, IN_FRONT], ids=["behind", "in front"])
@pytest.mark.parametrize("cut_in", ["one", "two", "three"])
def test_a_contoured_band_is_drawn_as_wide_as_it_is(way: Any, cut_in: str) -> None:
    pattern = banded(way, cut_in).pattern
    for side in ("right", "left"):
        own = pattern.seams[f"contoured_waistband/waist_{side}"].first
        pieces = tuple(dict.fromkeys(pattern.carriers[use.edge] for use in own))
        assert strip_depth(pattern, own, pieces) == pytest.approx(45.0, abs=0.05)


@pytest.mark.parametrize("cut_in", ["one", "two", "three"])
def test_every_view_has_its_band(cut_in: str) -> None:
    """However many pieces it is cut in: without one the view ends at the waist."""
    bare, made = (garment_flat(one.pattern) for one in (skirt(), banded(BEHIND, cut_in)))
    for before, after in zip(bare, made, strict=True):
        assert after.bounds.max_y - before.bounds.max_y == pytest.approx(45.0, abs=12.0)


def test_the_extension_of_a_vent_at_the_side_is_folded_in() -> None:
    """Worn, the fold is the edge of the skirt: its flat is no wider than that of the skirt without a vent."""
    side = {"edge": "skirt.front/side_seam", "hem_end": "skirt.front/hem_side"}
    center = {"edge": "skirt.back/center_back", "hem_end": "skirt.back/hem_center"}
    bare, vented = (
        garment_flat(one.pattern) for one in (skirt(), stepped(skirt(), ("vent", {**side, "width": "4 cm"})))
    )
    widths = [(one.bounds.width, two.bounds.width) for one, two in zip(bare, vented, strict=True)]
    assert [two for _, two in widths] == pytest.approx([one for one, _ in widths], abs=2.0)
    behind = garment_flat(stepped(skirt(), ("vent", {**center, "width": "4 cm"})).pattern)[1]
    reach = [place.x for shape in behind.shapes for line in shape.lines for place in (line.start, line.end)]
    assert any(abs(abs(x) - 40.0) < 1.0 for x in reach)  # at a center it is seen as it lies under
