"""Shoulder straps in the flat: as long as they are made, caught in both views, level on the shoulder."""

from functools import cache

import pytest

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack_style
from notchbook.geometry import Path
from notchbook.output.flat import FlatView, garment_flat
from notchbook.pattern import Pattern
from notchbook.recipe import replay


@cache
def _slip() -> Pattern:
    return replay(rack_style("S-210").recipe, dict(lower_bodies())["medium-92"]).pattern


def _straps(view: FlatView) -> list[Path]:
    shapes = [shape.fill for shape in view.shapes]
    return [path for path in shapes if len(path.segments) == 4 and path.bounds().width < 60.0]


def test_a_strap_stands_on_each_side_of_both_views() -> None:
    views = garment_flat(_slip())
    assert [len(_straps(view)) for view in views] == [2, 2]
    for view in views:
        middles = [(path.bounds().min_x + path.bounds().max_x) / 2.0 for path in _straps(view)]
        assert sum(middles) == pytest.approx(0.0, abs=0.1)


def test_front_and_back_of_a_strap_are_as_long_as_it_is_cut() -> None:
    rises = [_straps(view)[0].bounds().height for view in garment_flat(_slip())]
    cut = _slip().pieces["straps.strap"].bounds.width
    assert sum(rises) == pytest.approx(cut, abs=0.5)
    assert rises[1] > rises[0], "a low back asks for the longer part"


def test_both_views_end_level_on_the_shoulder() -> None:
    heads = [max(path.bounds().max_y for path in _straps(view)) for view in garment_flat(_slip())]
    assert heads[0] == pytest.approx(heads[1], abs=5.0), "a picture: 5 mm at life size"
